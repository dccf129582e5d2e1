import { applyChanges, type ChangeSet, compose, noChanges } from '../../plan/change-set.ts';
import { replaceChosen } from '../../plan/edits/kinds.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Sized } from '../../report/size.ts';
import { swapSource } from '../../report/swap-source.ts';

/** Other sizes for some things as one change, and what no longer fits afterwards. */
export interface SizedChange {
  readonly changes: ChangeSet;
  readonly unfit: readonly string[];
}

/** Gives each thing the kind that was found for it; a source loses what was written of the old one alone. */
export const sizedChange = (plan: Plan, chosen: readonly Sized[]): SizedChange => {
  let after = plan;
  let changes = noChanges;
  const unfit: string[] = [];
  for (const s of chosen) {
    if (!s.kind) continue;
    const r =
      s.kind.family === 'source'
        ? swapSource(after, s.recordId, s.kind)
        : replaceChosen(after, new Set([s.recordId]), s.kind);
    if (!r.ok) {
      unfit.push(`${s.label}: ${r.error.what}`);
      continue;
    }
    after = applyChanges(after, r.value.changes);
    changes = compose(changes, r.value.changes);
    unfit.push(...r.value.unfit);
  }
  return { changes, unfit };
};
