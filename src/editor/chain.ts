import { applyChanges, type ChangeSet, compose, noChanges } from '../plan/change-set.ts';
import type { Plan } from '../plan/plan.ts';

/** Edits done one after the other, each on the plan the one before left, as one change-set. */
export const chainEdits = <T>(
  plan: Plan,
  things: Iterable<T>,
  edit: (plan: Plan, thing: T) => ChangeSet,
): ChangeSet => {
  let at = plan;
  let all = noChanges;
  for (const thing of things) {
    const step = edit(at, thing);
    at = applyChanges(at, step);
    all = compose(all, step);
  }
  return all;
};
