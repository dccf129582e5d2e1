import type { EngineFinding } from '../../derive/findings.ts';
import type { Plan } from '../../plan/plan.ts';
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

/** What is wrong or worth knowing with stands, frames, tube, lifts and cranes. */
export const riggingFindings = (plan: Plan): readonly EngineFinding[] => findingsOf(computeRigging(plan));
