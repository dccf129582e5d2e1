import { parseArgs } from 'node:util';
import { checkCommand } from '../check.ts';
import { type Command, planFrom, UsageError } from '../command.ts';

export const check: Command = {
  usage: 'check PLAN [--json]',
  summary: 'print loads, limits and findings; the exit status tells of open stop findings',
  details:
    '  PLAN     a plan file\n' +
    '  --json   print the whole assessment as one JSON document\n\n' +
    'Exit status: 0 without an open stop finding, 1 with one or more (acknowledged ones are printed all the same),\n' +
    '2 where the file cannot be read as a plan.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean' } },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new UsageError('Name one plan file.');
    const plan = await planFrom(path, output);
    const { text, exitCode } = checkCommand(plan, { json: values.json ?? false });
    output.out(text.endsWith('\n') ? text : `${text}\n`);
    return exitCode;
  },
};
