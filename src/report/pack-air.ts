import { airClass } from '../engines/battery/index.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';

const AIR = {
  cabin: 'to 100 Wh: cabin, spares with their contacts covered',
  'ask-operator': 'over 100 Wh: ask the operator; two spares a person at most, in the cabin',
  cargo: 'over 160 Wh: not with passengers, cargo only',
} as const;

/** Where the limits on passengers’ lithium cells are from, and that they change. */
export const AIR_SOURCE =
  'Rules as on public pages up to March 2026 (49 CFR 175.10, IATA Dangerous Goods Regulations). Operators may be stricter; lithium packs as cargo travel at 30 % charge or less. Ask the operator.';

/** How a lithium pack of so many watt-hours travels with passengers, in words; empty for other chemistries. */
export const airWords = (chemistry: string, energyWh: number): string =>
  chemistry === 'li-ion' || chemistry === 'lifepo4' ? AIR[airClass(energyWh)] : '';

/** The same with the rules it is from, for a list of facts; undefined for other chemistries. */
export const airFact = (chemistry: string, energyWh: number): string | undefined => {
  const words = airWords(chemistry, energyWh);
  return words ? `${words} (49 CFR 175.10, IATA rules, as of March 2026; ask the operator)` : undefined;
};

/** How what a unit runs on travels by air: its packs, those on the floor it hangs on, or its own cells. Undefined where nothing is known. */
export const packAir = (
  plan: Plan,
  f: Fixture,
): { readonly text: string; readonly source: string } | undefined => {
  const kindId = f.packFrom ? recordOf(plan, 'pack', f.packFrom.packId)?.kindId : f.packs?.kindId;
  const pack = kindId === undefined ? undefined : kindOf(plan, kindId, 'pack');
  const own = kindId === undefined ? kindOf(plan, f.kindId, 'fixture')?.ownCellsWh : undefined;
  const text = pack
    ? airWords(pack.chemistry, pack.energyWh)
    : own
      ? `${Math.round(own)} Wh built in, taken to be lithium: ${AIR[airClass(own)]}`
      : '';
  return text ? { text, source: AIR_SOURCE } : undefined;
};
