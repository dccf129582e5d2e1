import { parseArgs } from 'node:util';
import { recordsOf } from '../../plan/plan.ts';
import { type Command, EXIT, planFrom, Refusal, UsageError } from '../command.ts';
import { onePath } from '../plan-out.ts';
import { radioCommand } from '../radio.ts';

const count = (text: string): 1 | 2 => {
  if (text === '1') return 1;
  if (text === '2') return 2;
  throw new UsageError(`“${text}” is no number of transmitters: 1 or 2.`);
};

export const radio: Command = {
  usage: 'radio PLAN [--place] [--count 1|2] [--floor NAME] [--json]',
  summary: 'margins of all radio links, what is wrong with them, and where a transmitter would stand best',
  details:
    '  PLAN            a plan file\n' +
    '  --place         the best free places for a transmitter, and runners-up\n' +
    '  --count N       places for one or for two transmitters that share the units\n' +
    '  --floor NAME    the floor for --place; else the first\n' +
    '  --json          as JSON, every link with its sum term by term\n\n' +
    '  A margin is a planning estimate: a hint, not a guarantee; test on the day.',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        place: { type: 'boolean' },
        count: { type: 'string' },
        floor: { type: 'string' },
        json: { type: 'boolean' },
      },
    });
    const many = count(values.count ?? '1');
    const place = values.place || values.count !== undefined ? many : undefined;
    const plan = await planFrom(onePath(positionals), output);
    const floor =
      values.floor === undefined
        ? undefined
        : recordsOf(plan, 'floor').find((f) => f.name === values.floor || f.id === values.floor);
    if (values.floor !== undefined && !floor)
      throw new Refusal({
        what: `The plan has no floor “${values.floor}”.`,
        todo: 'Name one of its floors.',
      });
    output.out(radioCommand(plan, { json: values.json ?? false, place, floorId: floor?.id }));
    return EXIT.done;
  },
};
