import { recordLabel } from '../derive/labels.ts';
import { minutesOn, shootingDays } from '../derive/schedule.ts';
import { compareNatural, type Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';

/** Hours one unit burns on a day: in all, and at a stretch without a pause of its own. */
export interface UnitHours {
  readonly fixtureId: Id;
  readonly label: string;
  readonly totalH: number;
  readonly longestH: number;
}

/** Hours each unit burns on a day by its blocks and levels, whether it gets its power or not; units that stay off are left out. */
export const unitHours = (plan: Plan, dayNumber: number): readonly UnitHours[] => {
  const day = shootingDays(plan).find((d) => d.day === dayNumber);
  if (!day) return [];
  return recordsOf(plan, 'fixture')
    .flatMap((f): UnitHours[] => {
      const { totalMin, longestMin } = minutesOn(day, new Set([f.id]), 1);
      return totalMin > 0
        ? [
            {
              fixtureId: f.id,
              label: recordLabel(plan, f),
              totalH: totalMin / 60,
              longestH: longestMin / 60,
            },
          ]
        : [];
    })
    .sort((a, b) => compareNatural(a.label, b.label));
};
