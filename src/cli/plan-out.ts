import { realpath, rename, rm, stat, writeFile } from 'node:fs/promises';
import { idMaker, type NewId } from '../kernel/ids.ts';
import { planFileBytes } from '../plan/container.ts';
import type { Plan } from '../plan/plan.ts';
import { readPlanFile } from '../storage/file-node.ts';
import { type Output, orRefuse, Refusal, UsageError } from './command.ts';

/** A plan to change and write anew. A file of a newer version is refused: an older program would lose what it holds. */
export const planToChange = async (path: string, output: Output): Promise<Plan> => {
  const read = orRefuse(await readPlanFile(path));
  if (read.newer)
    throw new Refusal({
      what: `${path} was saved by a newer version of this program.`,
      todo: 'Use that version to change it.',
    });
  for (const notice of read.notices) output.err(`Note: ${notice}\n`);
  return read.plan;
};

/** Writes a plan whole or not at all, and never over the one it came from, by whatever name. */
export const writePlanTo = async (out: string, plan: Plan, input: string): Promise<void> => {
  const there = await stat(out).catch(() => undefined);
  if (there?.isDirectory())
    throw new Refusal({ what: `${out} is a folder.`, todo: 'Name a file for --out.' });
  const own = await stat(input);
  const same = there && there.ino === own.ino && there.dev === own.dev;
  if (same || (there && (await realpath(out)) === (await realpath(input))))
    throw new Refusal({ what: `${out} is the plan that is read.`, todo: 'Name another file for --out.' });
  const beside = `${out}.${process.pid}.part`;
  try {
    await writeFile(beside, planFileBytes(plan).bytes, { flag: 'wx' });
    await rename(beside, out);
  } catch (error) {
    await rm(beside, { force: true });
    const code = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    throw new Refusal({
      what: `${out} could not be written (${code}).`,
      todo: 'Name another file for --out.',
    });
  }
};

/** Ids that are the same on every run and are not in the plan yet. */
export const repeatableIds = (plan: Plan): NewId => {
  let x = 20;
  const make = idMaker(() => {
    x = (Math.imul(x, 1664525) + 1013904223) >>> 0;
    return x / 4294967296;
  });
  return (prefix) => {
    let id = make(prefix);
    while (plan.records.has(id)) id = make(prefix);
    return id;
  };
};

/** A whole number of an option, or a usage error. */
export const wholeNumber = (text: string | undefined, name: string): number | undefined => {
  if (text === undefined) return undefined;
  if (!/^\d+$/.test(text)) throw new UsageError(`“${text}” is no whole number for ${name}.`);
  return Number(text);
};

/** The one plan file a command was given. */
export const onePath = (positionals: readonly string[]): string => {
  const [path, ...more] = positionals;
  if (path === undefined || more.length > 0) throw new UsageError('Name one plan file.');
  return path;
};
