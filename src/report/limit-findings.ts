import { always, type EngineFinding } from '../derive/findings.ts';
import { limitRows, limitsOf } from '../derive/limits.ts';
import { type Plan, planRecord } from '../plan/plan.ts';

/**
 * Limits that the plan sets and that nothing uses: no row of the tables has that name, or none under the plan's practice and
 * country, or the value is no number.
 */
export const limitFindings = (plan: Plan): readonly EngineFinding[] => {
  const { id, limits } = planRecord(plan);
  const known = limitsOf(plan);
  return limits.flatMap((o) => {
    const finite = Number.isFinite(o.value);
    if (known.has(o.limit) && finite) return [];
    const why = !finite
      ? 'its value is no number'
      : limitRows.some((r) => r.id === o.limit)
        ? 'it is a limit of another practice or country'
        : 'there is no limit of that name';
    const set = `${o.limit} ${finite ? o.value : ''}`.trim();
    return [always('plan-limit', 'note', o.limit, [id], { limit: o.limit, set, why, reason: o.reason })];
  });
};
