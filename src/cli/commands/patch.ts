import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { parseArgs } from 'node:util';
import { parseAddress } from '../../plan/address.ts';
import { type Command, EXIT, orRefuse, planFrom, Refusal, UsageError } from '../command.ts';
import { PATCH_ORDERS, patchCommand } from '../patch.ts';

const isOrder = (s: string): s is keyof typeof PATCH_ORDERS => Object.hasOwn(PATCH_ORDERS, s);

const wholeNumber = (text: string | undefined, name: string): number | undefined => {
  if (text === undefined) return undefined;
  if (!/^\d+$/.test(text)) throw new UsageError(`“${text}” is no whole number for ${name}.`);
  return Number(text);
};

/** Writes the plan whole or not at all, and never over the one that was read. */
const writePlan = async (path: string, text: string, input: string): Promise<void> => {
  const there = await stat(path).catch(() => undefined);
  if (there?.isDirectory())
    throw new Refusal({ what: `${path} is a folder.`, todo: 'Name a file for --out.' });
  if (there && (await realpath(path)) === (await realpath(input)))
    throw new Refusal({ what: `${path} is the plan that is read.`, todo: 'Name another file for --out.' });
  const beside = `${path}.${process.pid}.part`;
  try {
    await writeFile(beside, text, { flag: 'wx' });
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true });
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new Refusal({ what: `${path} could not be written (${code}).`, todo: 'Choose another place.' });
  }
};

export const patch: Command = {
  usage: 'patch PLAN --out NEW [--order unit|channel|position|rows|path] [--json]',
  summary: 'assign modes, universes and addresses, and write the plan anew',
  details:
    '  PLAN            a plan file\n' +
    '  --out NEW       where the new plan goes; never the plan that is read\n' +
    '  --order ORDER   by unit (as usual) or channel, by position from left to right, by rows from top to bottom,\n' +
    '                  or along a short path from unit to unit\n' +
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
        json: { type: 'boolean' },
      },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) throw new UsageError('Name one plan file.');
    if (values.out === undefined) throw new UsageError('Say where the new plan goes: --out NEW.');
    const order = values.order ?? 'unit';
    if (!isOrder(order))
      throw new UsageError(`“${order}” is no order: use ${Object.keys(PATCH_ORDERS).join(', ')}.`);
    const start = values.start === undefined ? undefined : orRefuse(parseAddress(values.start));
    const step = wholeNumber(values.step, '--step');
    const gapSlots = wholeNumber(values.gap, '--gap');
    const spareSlots = wholeNumber(values.spare, '--spare');
    const plan = await planFrom(path, output);
    const done = orRefuse(
      patchCommand(plan, {
        order: PATCH_ORDERS[order],
        json: values.json ?? false,
        keepPatched: values.keep ?? false,
        fewest: values.fewest ?? false,
        part: values.part ?? false,
        ...(start ? { start } : {}),
        ...(step === undefined ? {} : { step }),
        ...(gapSlots === undefined ? {} : { gapSlots }),
        ...(spareSlots === undefined ? {} : { spareSlots }),
      }),
    );
    await writePlan(values.out, done.planText, path);
    output.out(done.text);
    return EXIT.done;
  },
};
