import { fuelLitresPerH } from '../derive/fuel.ts';
import { limitOf } from '../derive/limits.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import type { PowerStep } from './day-types.ts';

/** Litres a set's tank holds: as the plan says, else its kind's, which is then assumed. */
export const tankOf = (
  plan: Plan,
  sourceId: string,
): { readonly tankL: number | undefined; readonly assumed: boolean } => {
  const record = recordOf(plan, 'source', sourceId);
  return record?.tankL === undefined
    ? { tankL: record && kindOf(plan, record.kindId, 'source')?.tankL, assumed: true }
    : { tankL: record.tankL, assumed: false };
};

/**
 * When a set is refuelled on a day: it begins with a full tank and is filled up whenever `fuel-refill-at` of it is left.
 * Undefined where its tank is not known or the chart does not go there.
 */
export const refuelTimes = (
  plan: Plan,
  sourceId: string,
  ratedKw: number | undefined,
  steps: readonly PowerStep[],
): readonly number[] | undefined => {
  const { tankL } = tankOf(plan, sourceId);
  if (tankL === undefined || !(tankL > 0) || ratedKw === undefined) return undefined;
  const least = Math.min(0.9, Math.max(0, limitOf(plan, 'fuel-refill-at').value / 100)) * tankL;
  const times: number[] = [];
  let leftL = tankL;
  for (const s of steps) {
    const perH = fuelLitresPerH(ratedKw, (s.lightW + s.chargerW) / 1000);
    if (perH === undefined) return undefined;
    let at = s.startMin;
    while (perH > 0 && leftL - (perH * (s.endMin - at)) / 60 < least - 1e-9) {
      at += (60 * (leftL - least)) / perH;
      times.push(at);
      leftL = tankL;
      if (times.length > 200) return times;
    }
    leftL -= (perH * (s.endMin - at)) / 60;
  }
  return times;
};
