import { parseArgs } from 'node:util';
import { type Command, EXIT, planFrom, UsageError } from '../command.ts';
import { dayJson, dayText } from '../day.ts';

export const day: Command = {
  usage: 'day PLAN [--json]',
  summary: 'print the shooting days: time line, power, runtimes, changes of packs, the fewest packs and bays',
  details:
    '  PLAN     a plan file\n' +
    '  --json   print the days as one JSON document\n\n' +
    'Runtimes are planning values; the packs’ own state, cold and age decide.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { json: { type: 'boolean' } },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new UsageError('Name one plan file.');
    const plan = await planFrom(path, output);
    output.out(values.json ? `${JSON.stringify(dayJson(plan), undefined, 2)}\n` : `${dayText(plan)}\n`);
    return EXIT.done;
  },
};
