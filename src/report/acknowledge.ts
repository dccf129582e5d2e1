import { type Plan, recordsOf } from '../plan/plan.ts';
import type { Acknowledgement } from '../plan/records/index.ts';
import type { Finding, Severity } from './types.ts';

const RANK: Readonly<Record<Severity, number>> = { note: 0, warn: 1, stop: 2 };

/** Share by which a figure may differ before it counts as worse: rounding of the arithmetic. */
const ROUNDING = 1e-6;

/** How bad a finding is, as a number to keep with an acknowledgement: higher is worse. */
export const findingFigure = (f: Pick<Finding, 'params'>): number | undefined => {
  const v = f.params.figure;
  return typeof v === 'number' && Number.isFinite(v) ? v : undefined;
};

/** Whether an acknowledgement still holds: same finding, severity no worse, figure no worse. */
export const stillHolds = (a: Acknowledgement, f: Pick<Finding, 'id' | 'severity' | 'params'>): boolean => {
  if (a.findingId !== f.id || RANK[f.severity] > RANK[a.severity]) return false;
  const now = findingFigure(f);
  return a.figure === undefined || now === undefined || now <= a.figure * (1 + ROUNDING) + ROUNDING;
};

/** Acknowledgements of a plan by the finding they are about. */
export const acknowledgementsByFinding = (plan: Plan): ReadonlyMap<string, readonly Acknowledgement[]> => {
  const map = new Map<string, Acknowledgement[]>();
  for (const a of recordsOf(plan, 'acknowledgement')) {
    const list = map.get(a.findingId);
    if (list) list.push(a);
    else map.set(a.findingId, [a]);
  }
  return map;
};
