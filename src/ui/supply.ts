import type { Plan } from '../plan/plan.ts';
import { type SupplySummary, supplySummary } from '../report/summary.ts';
import type { Assessment } from '../report/types.ts';
import { useSessionSlice } from './hooks.ts';

let last:
  | { plan: Plan; assessment: Assessment; setupId: string | undefined; made: SupplySummary }
  | undefined;

/** The supply as meters and circuits for the chosen setup; made once for all panels that show it. */
export const useSupply = (): SupplySummary | undefined => {
  const { plan, assessment, setupId } = useSessionSlice((s) => ({
    plan: s.plan,
    assessment: s.assessment,
    setupId: s.setupId,
  }));
  if (!assessment) return undefined;
  // Words and units come from the plan, figures from the assessment: while it is behind, the old words stay with it.
  if (last?.assessment === assessment && last.setupId === setupId) return last.made;
  last = { plan, assessment, setupId, made: supplySummary(plan, assessment, setupId) };
  return last.made;
};
