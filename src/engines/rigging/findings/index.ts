import { always, type EngineFinding } from '../../../derive/findings.ts';
import { recordLabel } from '../../../derive/labels.ts';
import { kindOf, recordsOf } from '../../../plan/plan.ts';
import type { RiggingResult } from '../figures.ts';
import { clearanceFindings } from './clear.ts';
import { liftFindings } from './lifts.ts';
import { standFindings, tipFindings } from './stands.ts';
import { windFindings } from './wind.ts';

/** Grip gear and rigging whose kind is not in the plan: nothing of them is computed. */
const kindFindings = (r: RiggingResult): readonly EngineFinding[] => {
  const { plan } = r.model;
  return [...recordsOf(plan, 'grip'), ...recordsOf(plan, 'rigging')]
    .filter((x) => !kindOf(plan, x.kindId, x.type))
    .map((x) => always('rigging-kind', 'warn', x.id, [x.id], { label: recordLabel(plan, x) }));
};

/** All findings of the stands engine in a stable order. */
export const findingsOf = (r: RiggingResult): readonly EngineFinding[] => [
  ...kindFindings(r),
  ...standFindings(r),
  ...tipFindings(r),
  ...windFindings(r),
  ...liftFindings(r),
  ...clearanceFindings(r),
];
