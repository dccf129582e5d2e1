import { supplyTree } from '../derive/supply.ts';
import { type FaultLoop, faultLoops, tripWords } from '../engines/power/index.ts';
import { formatAmps } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';

export type { FaultLoop } from '../engines/power/index.ts';

/** Said wherever fault loops are shown. */
export const FAULT_CAUTION =
  'Reckoned from the plan’s cables, for orientation: measure loops before use. A generator’s fault current falls to a few times its rating within a moment, so breakers behind it may not open at once; earthing and disconnection are for a qualified person.';

/** Fault loops and prospective fault currents at the end of every run. */
export const faultLevels = (plan: Plan): readonly FaultLoop[] => faultLoops(plan, supplyTree(plan));

/** What the practice wants of disconnection, in a sentence, with its source. */
export const disconnectionWanted = (plan: Plan): string =>
  planRecord(plan).practice === 'europe'
    ? 'Wanted on 230 V to earth: within 0.4 s on circuits of outlets, 5 s on distribution; a residual-current device counts for faults to earth (IEC 60364-4-41 clause 411.3.2, from memory: verify).'
    : 'Wanted: an earth path of so little impedance that the breaker opens; no time is set (NEC 250.4(A)(5), from memory: verify).';

/** Said of every run of a source whose own impedance is not in the plan. */
export const LOOP_UNKNOWN = 'The supply’s own impedance is not known: measure the loop.';

/**
 * How the breaker and the device ahead of a run would take a fault at its end, in a sentence or two. `brief` leaves out what is
 * the same of every run of a source: that its own impedance is not known.
 */
export const disconnectionHint = (plan: Plan, l: FaultLoop, brief = false): string => {
  const device =
    l.rcdMa === undefined ? '' : ` A fault to earth opens its residual-current device of ${l.rcdMa} mA.`;
  if (l.breakerA === undefined || l.curve === undefined) return `No breaker is known ahead of it.${device}`;
  const most =
    l.mostOhm === undefined ? '' : ` It opens at once with a loop of ${l.mostOhm.toFixed(2)} Ω or less.`;
  if (l.faultA === undefined || l.loopOhm === undefined)
    return `${brief ? '' : LOOP_UNKNOWN}${most}${device}`.trim() || LOOP_UNKNOWN;
  const words = {
    'at once': `${formatAmps(l.faultA)} open its breaker at once.`,
    'perhaps at once': `${formatAmps(l.faultA)} lie within the magnetic band of its breaker: it may open at once or by heat. ${tripWords(plan, l.curve, l.breakerA, l.faultA)}`,
    slowly: `${formatAmps(l.faultA)} are too little for the magnetic release of its breaker. ${tripWords(plan, l.curve, l.breakerA, l.faultA)}`,
    'not known': '',
  }[l.opens];
  return `${words}${l.opens === 'at once' ? '' : most}${device}`;
};
