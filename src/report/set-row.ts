import { fuelLitresPerH, fuelSource } from '../derive/fuel.ts';
import { supplyTree } from '../derive/supply.ts';
import { lineToLineV, systemShape } from '../derive/systems.ts';
import type { Quantity, SupplyEntity } from '../derive/types.ts';
import { largestStep, sourceRating } from '../engines/power/index.ts';
import type { Plan } from '../plan/plan.ts';
import { tankOf } from './refuel.ts';
import type { SetRow } from './summary-types.ts';
import type { Assessment } from './types.ts';

/** What is told of a generator beyond its meters. `power` is the quantity its load is read from. */
export const setRow = (
  plan: Plan,
  a: Assessment,
  e: SupplyEntity,
  power: Quantity,
  setup: number,
): SetRow => {
  const rating = sourceRating(plan, e.recordId);
  const shape = e.system && systemShape(e.system);
  const watts = (s: number): number => a.figures.get(e.key, power, s);
  const times = (n: number | undefined, by: number): number | undefined =>
    n === undefined ? undefined : n * by;
  const legA = times(rating.legA, rating.share);
  const fuel = (w: number): number | undefined =>
    rating.kw === undefined || Number.isNaN(w) ? undefined : fuelLitresPerH(rating.kw, w / 1000);
  const { tankL, assumed } = tankOf(plan, e.recordId);
  const [fuelNow, fuelWorst] = [fuel(watts(setup)), fuel(a.figures.worst(e.key, power).value)];
  const hours = (perH: number | undefined): number | undefined =>
    tankL === undefined || perH === undefined || !(perH > 0) ? undefined : tankL / perH;
  const tree = supplyTree(plan);
  const node = tree.byKey.get(e.key);
  const step = node ? largestStep({ tree, setups: a.setups }, node, watts) : { watts: 0, what: '' };
  const running = a.setups.map((_, s) => watts(s)).filter((w) => w > 0);
  return {
    share: rating.share,
    shareFrom: rating.shareFrom,
    givesW: times(rating.kw, 1000 * rating.share),
    givesVa: times(rating.kva, 1000 * rating.share),
    legA,
    pairVa: shape && shape.legs > 1 ? times(legA, lineToLineV(shape, 0, 1)) : undefined,
    fuelNowLph: fuelNow,
    fuelWorstLph: fuelWorst,
    fuelSource,
    tankL,
    tankAssumed: assumed,
    tankNowH: hours(fuelNow),
    tankWorstH: hours(fuelWorst),
    lightestPct:
      rating.kw === undefined || running.length === 0
        ? Number.NaN
        : (100 * Math.min(...running)) / (rating.kw * 1000),
    stepW: step.watts,
    stepOf: step.what,
  };
};
