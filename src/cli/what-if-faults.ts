import { canonicalJson } from '../kernel/canonical.ts';
import { formatAmps } from '../kernel/units.ts';
import type { Plan } from '../plan/plan.ts';
import { disconnectionHint, disconnectionWanted, FAULT_CAUTION, faultLevels } from '../report/faults.ts';

const ohm = (n: number | undefined): string => (n === undefined ? 'not known' : `${n.toFixed(3)} Ω`);

/** Loop impedance and prospective fault current at the end of every run, printed for people or machines. */
export const faultsPrinted = (plan: Plan, json: boolean): string => {
  const rows = faultLevels(plan).map((l) => ({ ...l, hint: disconnectionHint(plan, l) }));
  if (json)
    return `${canonicalJson({
      format: 'lampwright-fault-loops',
      version: 1,
      rows,
      wanted: disconnectionWanted(plan),
      caution: FAULT_CAUTION,
    })}\n`;
  const lines = rows.map(
    (l) =>
      `${l.label}: runs ${ohm(l.runsOhm)}, loop ${ohm(l.loopOhm)}, ${l.faultA === undefined ? 'fault current not known' : formatAmps(l.faultA)}. ${l.hint}`,
  );
  return `${[...lines, disconnectionWanted(plan), FAULT_CAUTION].join('\n')}\n`;
};
