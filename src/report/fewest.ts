import { shootingDays } from '../derive/schedule.ts';
import { packsByRule, rotationOf } from '../engines/battery/index.ts';
import type { Plan } from '../plan/plan.ts';
import { leastBaysOf, leastOf } from './day.ts';
import type { LeastRow } from './day-types.ts';

/** How far a search for the fewest packs and bays is: what is looked at now, the how manieth of how many. */
export interface FewestStep {
  readonly now: number;
  readonly of: number;
  readonly what: string;
}

/** The fewest packs of each kind and the fewest bays of a day. */
export interface Fewest {
  readonly least: readonly LeastRow[];
  /** Undefined where all bays do not do with the packs at hand. */
  readonly bays: number | undefined;
}

/** Looks for the fewest packs of each kind that burns, then the fewest bays, and tells each step before it is taken. */
export const findFewest = (plan: Plan, day: number, tell: (step: FewestStep) => void): Fewest => {
  const planned = shootingDays(plan).find((d) => d.day === day);
  const r = planned && rotationOf(plan, planned);
  const bays = r?.bays.length ?? 0;
  const of = (r ? [...packsByRule(r).values()].filter((n) => n > 0).length : 0) + (bays > 0 ? 1 : 0);
  let now = 0;
  const least = leastOf(plan, day, (what) => {
    now += 1;
    tell({ now, of, what });
  });
  if (bays > 0) tell({ now: of, of, what: 'charger bays' });
  return { least, bays: leastBaysOf(plan, day) };
};
