import { compareIds, type Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from './plan.ts';
import type { Floor } from './records/index.ts';

/** The floors of a plan in their order: as put by hand, else from the lowest up. */
export const floorsOf = (plan: Plan): readonly Floor[] =>
  [...recordsOf(plan, 'floor')].sort(
    (a, b) => (a.order ?? 0) - (b.order ?? 0) || a.levelMm - b.levelMm || compareIds(a.id, b.id),
  );

/** The floor that lies next beneath another by its level; undefined for the lowest. */
export const floorBeneath = (plan: Plan, id: Id): Floor | undefined => {
  const all = recordsOf(plan, 'floor');
  const own = all.find((f) => f.id === id);
  if (!own) return undefined;
  return all
    .filter((f) => f.id !== id && f.levelMm < own.levelMm)
    .sort((a, b) => b.levelMm - a.levelMm || compareIds(a.id, b.id))[0];
};
