import type { Id } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { universeProblem } from '../address.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';

/** Id of the universe with a number; it is put into the draft where the plan has none. */
export const universeAt = (plan: Plan, draft: Draft, number: number): Id => {
  const known = recordsOf(plan, 'universe').find((u) => u.number === number);
  if (known && draft.get(known.id)) return known.id;
  let id = `universe-${number}`;
  for (let n = 2; ; n++) {
    const there = draft.get(id);
    if (!there) break;
    if (there.type === 'universe' && there.number === number) return id;
    id = `universe-${number}-${n}`;
  }
  draft.put({ id, type: 'universe', number, name: '', colorIndex: number - 1 });
  return id;
};

/** The lowest number from 1 on that no universe has. */
export const freeUniverseNumber = (plan: Plan): number => {
  const taken = new Set(recordsOf(plan, 'universe').map((u) => u.number));
  let n = 1;
  while (taken.has(n)) n++;
  return n;
};

/** Adds a universe. Fails where its number is out of range or taken. */
export const addUniverse = (plan: Plan, number: number, name = ''): Result<ChangeSet> => {
  const problem = universeProblem(number) ?? takenProblem(plan, number, undefined);
  if (problem) return fail(problem);
  const draft = new Draft(plan);
  const id = universeAt(plan, draft, number);
  const u = draft.get(id);
  if (u?.type === 'universe' && name !== '') draft.put({ ...u, name });
  return ok(draft.changes());
};

const takenProblem = (plan: Plan, number: number, except: Id | undefined) =>
  recordsOf(plan, 'universe').some((u) => u.number === number && u.id !== except)
    ? { what: `There is a universe ${number} already.`, todo: 'Choose another number.' }
    : undefined;

/** Removes a universe; the fixtures and dimmers on it lose their addresses and keep their modes to be patched anew. */
export const removeUniverse = (plan: Plan, id: Id): ChangeSet => {
  const draft = new Draft(plan).remove(id);
  for (const f of recordsOf(plan, 'fixture')) {
    const on = f.patch?.universeId === id || f.patch?.spans?.some((s) => s.universeId === id);
    if (!on) continue;
    const { patch: _, ...rest } = f;
    draft.put(rest);
  }
  for (const b of recordsOf(plan, 'box')) {
    if (b.patch?.universeId !== id) continue;
    const { patch: _, ...rest } = b;
    draft.put(rest);
  }
  return draft.changes();
};

/** What of a universe can be changed: number, name, and the place of its colour in the palette. */
export interface UniverseChange {
  readonly number?: number;
  readonly name?: string;
  readonly colorIndex?: number;
}

/** Changes a universe. Fails where the new number is out of range or taken. */
export const changeUniverse = (plan: Plan, id: Id, change: UniverseChange): Result<ChangeSet> => {
  const u = recordOf(plan, 'universe', id);
  if (!u) return fail({ what: 'That universe is not in the plan.' });
  if (change.number !== undefined) {
    const problem = universeProblem(change.number) ?? takenProblem(plan, change.number, id);
    if (problem) return fail(problem);
  }
  return ok(new Draft(plan).put({ ...u, ...change }).changes());
};
