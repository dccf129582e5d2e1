import { parseArgs } from 'node:util';
import { planJsonSchemaText } from '../../plan/json-schema.ts';
import { type Command, EXIT } from '../command.ts';

export const schema: Command = {
  usage: 'schema',
  summary: 'print the JSON Schema of plan files',
  run: async (args, output) => {
    parseArgs({ args: [...args], options: {} });
    output.out(planJsonSchemaText());
    return EXIT.done;
  },
};
