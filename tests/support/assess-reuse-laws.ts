import { expect } from 'vitest';
import { applyChanges, type ChangeSet } from '../../src/plan/change-set.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { assess } from '../../src/report/assess.ts';
import type { Assessment } from '../../src/report/types.ts';
import { type Dice, randomEdit, undone } from './random-edits.ts';

/** The plan of records that nothing was ever made of. */
const unseen = (plan: Plan): Plan => ({
  ...plan,
  records: new Map([...plan.records].map(([id, r]) => [id, structuredClone(r)])),
});

const plain = (a: Assessment) => ({
  setups: a.setups,
  entities: a.entities,
  findings: a.findings,
  assumptions: a.assumptions,
  figures: [...a.figures.values],
});

/** The first few values in which two results differ, by the way to them. */
const differences = (a: unknown, b: unknown, at = ''): readonly string[] => {
  if (Object.is(a, b)) return [];
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null)
    return [`${at}: ${String(a)}, from nothing ${String(b)}`];
  const [x, y] = [a as Record<string, unknown>, b as Record<string, unknown>];
  const out: string[] = [];
  for (const key of new Set([...Object.keys(x), ...Object.keys(y)])) {
    out.push(...differences(x[key], y[key], `${at}/${key}`));
    if (out.length > 5) break;
  }
  return out;
};

/**
 * Assesses a plan after each edit with the assessment before it; every now and then takes the last edits back. Each must be
 * what an assessment of the same records gives that has nothing to go by.
 */
export const reusesRightly = (start: Plan, edits: readonly Dice[]): void => {
  let plan = start;
  let previous = assess(plan, { revision: 0 });
  const steps: { readonly plan: Plan; readonly seen: ReturnType<typeof plain>; readonly edit: ChangeSet }[] =
    [];
  const step = (edit: ChangeSet): void => {
    plan = applyChanges(plan, edit);
    previous = assess(plan, { revision: steps.length + 1, previous });
    steps.push({ plan, seen: plain(previous), edit });
  };
  for (const d of edits) {
    step(randomEdit(plan, d));
    const last = steps.at(-1);
    if (d[2] % 10 === 3 && last) step(undone(last.edit));
  }
  for (const { plan: then, seen, edit } of steps)
    expect(
      differences(seen, plain(assess(unseen(then), { revision: 0 }))),
      JSON.stringify(edit).slice(0, 2000),
    ).toEqual([]);
};
