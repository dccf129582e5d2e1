import { applyChanges, type ChangeSet, compose, noChanges } from '../../plan/change-set.ts';
import type { Plan } from '../../plan/plan.ts';
import type { AnyRecord } from '../../plan/records/index.ts';

/**
 * Some of several proposed steps as one change. A step's kind may have come with an earlier one that was left out, so
 * kinds are added where they are first needed.
 */
export const chosenChanges = (
  plan: Plan,
  all: readonly { readonly changes: ChangeSet }[],
  chosen: ReadonlySet<number>,
): ChangeSet => {
  const kinds = new Map<string, AnyRecord>();
  for (const s of all) for (const r of s.changes.added) if (r.type === 'kind') kinds.set(r.id, r);
  let after = plan;
  let changes = noChanges;
  all.forEach((step, i) => {
    if (!chosen.has(i)) return;
    const own = step.changes.added.filter((r) => r.type !== 'kind');
    const needed = own.flatMap((r) => {
      const id = 'kindId' in r && typeof r.kindId === 'string' ? r.kindId : undefined;
      const kind = id === undefined || after.records.has(id) ? undefined : kinds.get(id);
      return kind ? [kind] : [];
    });
    const part: ChangeSet = { ...step.changes, added: [...needed, ...own] };
    after = applyChanges(after, part);
    changes = compose(changes, part);
  });
  return changes;
};
