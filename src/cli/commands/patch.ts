import { parseArgs } from 'node:util';
import { parseAddress } from '../../plan/address.ts';
import { type Command, EXIT, orRefuse, UsageError } from '../command.ts';
import { PATCH_ORDERS, patchCommand } from '../patch.ts';
import { onePath, planToChange, wholeNumber, writePlanTo } from '../plan-out.ts';

const isOrder = (s: string): s is keyof typeof PATCH_ORDERS => Object.hasOwn(PATCH_ORDERS, s);

export const patch: Command = {
  usage: 'patch PLAN --out NEW [--order unit|channel|position|rows|path|line] [--json]',
  summary: 'assign modes, universes and addresses, and write the plan anew',
  details:
    '  PLAN            a plan file\n' +
    '  --out NEW       where the new plan goes; never the plan that is read\n' +
    '  --order ORDER   by unit (as usual) or channel, by position from left to right, by rows from top to bottom,\n' +
    '                  along a short path from unit to unit, or line by line as the data lines reach them\n' +
    '  --by-line       units of a line or transmitter go into the universe its port carries\n' +
    '  --start ADDR    where the first one goes, like 3/101; else U1 1\n' +
    '  --step N        addresses at 1 and every N slots on\n' +
    '  --gap N         slots left free after each unit\n' +
    '  --spare N       slots left free at the end of each universe\n' +
    '  --keep          units that have an address keep it; locked ones do in any case\n' +
    '  --fewest        as few universes as can be found\n' +
    '  --part          units of several parts fill a universe and go on in the next\n' +
    '  --json          print what changed as JSON',
  run: async (args, output) => {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        order: { type: 'string' },
        start: { type: 'string' },
        step: { type: 'string' },
        gap: { type: 'string' },
        spare: { type: 'string' },
        keep: { type: 'boolean' },
        fewest: { type: 'boolean' },
        part: { type: 'boolean' },
        'by-line': { type: 'boolean' },
        json: { type: 'boolean' },
      },
    });
    const path = onePath(positionals);
    if (values.out === undefined) throw new UsageError('Say where the new plan goes: --out NEW.');
    const order = values.order ?? 'unit';
    if (!isOrder(order))
      throw new UsageError(`“${order}” is no order: use ${Object.keys(PATCH_ORDERS).join(', ')}.`);
    const start = values.start === undefined ? undefined : orRefuse(parseAddress(values.start));
    const step = wholeNumber(values.step, '--step');
    const gapSlots = wholeNumber(values.gap, '--gap');
    const spareSlots = wholeNumber(values.spare, '--spare');
    const plan = await planToChange(path, output);
    const done = orRefuse(
      patchCommand(plan, {
        order: PATCH_ORDERS[order],
        json: values.json ?? false,
        keepPatched: values.keep ?? false,
        fewest: values.fewest ?? false,
        part: values.part ?? false,
        ownUniverse: values['by-line'] ? 'line' : 'nothing',
        ...(start ? { start } : {}),
        ...(step === undefined ? {} : { step }),
        ...(gapSlots === undefined ? {} : { gapSlots }),
        ...(spareSlots === undefined ? {} : { spareSlots }),
      }),
    );
    await writePlanTo(values.out, done.plan, path);
    output.out(done.text);
    return EXIT.done;
  },
};
