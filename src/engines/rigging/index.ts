import type { EngineFinding } from '../../derive/findings.ts';
import { whateverChangesIn } from '../../plan/remembered.ts';
import { computeRigging } from './figures.ts';
import { findingsOf } from './findings/index.ts';

export { beaufort, WIND_SPEEDS_MPS } from './calc.ts';
export { explainRigging } from './explain.ts';
export { computeRigging, guyAt, type RiggingResult, type WindLine, windLine, windTable } from './figures.ts';
export { RIGGING_QUANTITIES, type RiggingQuantity, riggingKey } from './keys.ts';
export { isLift, type RiggingUse } from './lifts.ts';
export { balanceKg, type Sail, type StandUse } from './model.ts';
export {
  type FrameRow,
  frameRows,
  type RiggingRow,
  riggingRows,
  type StandRow,
  standRows,
} from './rows.ts';
export { sailForceN, type Tipping } from './tipping.ts';
export { formatFactor, formatKg, formatNewtons, formatWind } from './words.ts';
export type { RiggingWorking } from './working-shared.ts';

/** Types the findings do not look at. */
const NOT_LOOKED_AT = [
  'level',
  'block',
  'tick',
  'stock',
  'acknowledgement',
  'issue',
  'line',
  'universe',
] as const;

/** What is wrong or worth knowing with stands, frames, tube, lifts and cranes. */
export const riggingFindings = whateverChangesIn(NOT_LOOKED_AT, (plan): readonly EngineFinding[] =>
  findingsOf(computeRigging(plan)),
);
