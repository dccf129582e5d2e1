import type { EngineFinding } from '../../derive/findings.ts';
import type { Plan } from '../../plan/plan.ts';
import { blockFindings, dayFindings, overlapFindings, overnightFindings } from './findings/days.ts';
import { devicePackFindings } from './findings/device-packs.ts';
import { floorPackFindings } from './findings/floor-packs.ts';
import { travelFindings } from './findings/travel.ts';
import { unitFindings } from './findings/units.ts';
import { batteryUnits } from './model.ts';

export { type AirClass, airClass } from './calc.ts';
export { type PackCurrents, packCurrents } from './currents.ts';
export { type DevicePacks, devicePacks } from './device-packs.ts';
export {
  type BatteryWorking,
  explainRuntime,
  formatMinutes,
  formatRuntime,
  runtimeKey,
} from './explain.ts';
export { explainCurrents, packFullKey, packInrushKey } from './explain-currents.ts';
export { dayAtHand, dayOf, type LeastPacks, leastBays, leastPacks, packsByRule } from './least.ts';
export { batteryUnits, drawAt, leadDrop, runtimeAt, unitOnCells } from './model.ts';
export { minutesBetween, type Overnight, overnight } from './overnight.ts';
export { type OwnCellsDay, ownCellsDay } from './own-cells.ts';
export { baysOf, bayWatts, rotationOf, stockOf, supplyOf, takesPack } from './rotation.ts';
export type {
  BaySpan,
  FirstDark,
  FirstShort,
  Rotation,
  RotationPool,
  RotationResult,
  RotationUnit,
  Swap,
  UnitSpan,
} from './rotation-types.ts';
export { besideW, fullLoad, type SharedPack, sharedPacks, sharedRuntime } from './shared.ts';
export { type Range, travel } from './tables.ts';
export type { BatteryUnit, Runtime } from './types.ts';

const memo = new WeakMap<Plan, readonly EngineFinding[]>();

/** What is wrong with the packs and the days of a plan. */
export const batteryFindings = (plan: Plan): readonly EngineFinding[] => {
  const known = memo.get(plan);
  if (known) return known;
  const found = [
    ...batteryUnits(plan).flatMap((u) => unitFindings(plan, u)),
    ...floorPackFindings(plan),
    ...devicePackFindings(plan),
    ...travelFindings(plan),
    ...blockFindings(plan),
    ...overlapFindings(plan),
    ...dayFindings(plan),
    ...overnightFindings(plan),
  ];
  memo.set(plan, found);
  return found;
};
