import { supplyTree } from '../derive/supply.ts';
import { type FaultLoop, faultLoops } from '../engines/power/index.ts';
import type { Plan } from '../plan/plan.ts';

export type { FaultLoop } from '../engines/power/index.ts';

/** Said wherever fault loops are shown. */
export const FAULT_CAUTION =
  'Reckoned from the plan’s cables, for orientation: measure loops before use. A generator’s fault current falls to a few times its rating within a moment, so breakers behind it may not open at once; earthing and disconnection are for a qualified person.';

/** Fault loops and prospective fault currents at the end of every run. */
export const faultLevels = (plan: Plan): readonly FaultLoop[] => faultLoops(plan, supplyTree(plan));
