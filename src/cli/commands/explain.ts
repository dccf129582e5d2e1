import { parseArgs } from 'node:util';
import { type Command, EXIT, planFrom, UsageError } from '../command.ts';
import { explainCommand } from '../explain.ts';

export const explain: Command = {
  usage: 'explain PLAN KEY',
  summary: 'print the working behind one figure: formula, inputs, rule and source',
  details: '  KEY   a figure’s key, as printed by check --json',
  run: async (args, output) => {
    const { positionals } = parseArgs({ args: [...args], allowPositionals: true, options: {} });
    const [path, key, ...more] = positionals;
    if (path === undefined || key === undefined || more.length > 0)
      throw new UsageError('Name a plan file and the key of a figure.');
    const plan = await planFrom(path, output);
    const { text, exitCode } = explainCommand(plan, key);
    (exitCode === 0 ? output.out : output.err)(text.endsWith('\n') ? text : `${text}\n`);
    // A figure that is not there is no stop finding.
    return exitCode === 0 ? EXIT.done : EXIT.refused;
  },
};
