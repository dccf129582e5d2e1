import type { PackKind } from '../../plan/kinds/kinds.ts';
import { chemistryOf, cutOffRows, type Range, temperatureRows, travel } from './tables.ts';

/** Energy in Wh of a pack of so many volts and ampere-hours: E = V × Ah. */
export const energyWh = (voltsV: number, capacityAh: number): number => voltsV * capacityAh;

/** How hard a load works a pack: watts over watt-hours. 1 C empties the label's energy in an hour. */
export const cRate = (loadW: number, energyWhRated: number): number => loadW / energyWhRated;

/** Hours a pack rated for `ratedH` hours lasts at a current, by Peukert's law in its rated form: t = H × (C / (I × H))^k. */
export const peukertHours = (ratedH: number, capacityAh: number, amps: number, k: number): number =>
  ratedH * (capacityAh / (amps * ratedH)) ** k;

/** The same law with the capacity given at one ampere: t = Cp / I^k. Not for capacities at other rates. */
export const peukertOneAmpereHours = (oneAmpereAh: number, amps: number, k: number): number =>
  oneAmpereAh / amps ** k;

/** Peukert's exponent from two ratings (Ah at h hours): ln(H2 / H1) ÷ ln((C1 / H1) / (C2 / H2)). */
export const peukertExponent = (c1Ah: number, h1: number, c2Ah: number, h2: number): number =>
  Math.log(h2 / h1) / Math.log(c1Ah / h1 / (c2Ah / h2));

/** Share of its capacity a pack gives at a current: (C / (I × H))^(k − 1), never above 1. */
export const rateFactor = (ratedH: number, capacityAh: number, amps: number, k: number): number =>
  amps > 0 ? Math.min(1, (capacityAh / (amps * ratedH)) ** (k - 1)) : 1;

/** Runtime in minutes from usable energy and the power drawn from the pack. Infinity where nothing is drawn. */
export const runtimeMinutes = (usableWh: number, drawnW: number): number =>
  drawnW > 0 ? (60 * usableWh) / drawnW : Number.POSITIVE_INFINITY;

/** Share of its energy a pack gives at a cell temperature: low, planning value, high. Straight lines between rows, clamped outside. */
export const temperatureFactor = (chemistry: PackKind['chemistry'], cellC: number): Range => {
  const rows = temperatureRows(chemistry);
  const first = rows[0];
  const last = rows.at(-1);
  if (!first || !last) throw new Error(`no temperatures for ${chemistry}`);
  const at = Math.min(last.cellC, Math.max(first.cellC, cellC));
  const i = Math.max(
    1,
    rows.findIndex((r) => at <= r.cellC),
  );
  const [a, b] = [rows[i - 1] ?? first, rows[i] ?? last];
  const t = b.cellC === a.cellC ? 0 : (at - a.cellC) / (b.cellC - a.cellC);
  const mix = (x: number, y: number): number => x + (y - x) * t;
  return {
    low: mix(a.factor.low, b.factor.low),
    plan: mix(a.factor.plan, b.factor.plan),
    high: mix(a.factor.high, b.factor.high),
  };
};

/** Share of its charge that is left in a pack whose cells have come down to so many volts: straight lines, clamped outside. */
export const leftAtCutOff = (chemistry: PackKind['chemistry'], cellV: number): number => {
  const rows = cutOffRows(chemistry);
  const above = rows.findIndex(([v]) => cellV <= v);
  if (above < 0) return 1;
  const [v1, s1] = rows[above] ?? [0, 0];
  const [v0, s0] = rows[above - 1] ?? [v1, s1];
  return v1 === v0 ? s1 : s0 + ((s1 - s0) * (cellV - v0)) / (v1 - v0);
};

/** Current of a constant power at a voltage. At the cut-off volts of the pack it is the most. */
export const ampsOf = (watts: number, voltsV: number): number => watts / voltsV;

/** The most watts a pack may give for long: its continuous current at its cut-off volts. */
export const packMostW = (continuousA: number, emptyV: number): number => continuousA * emptyV;

/** Volts and current at the end of a lead. */
export interface LeadEnd {
  readonly voltsV: number;
  readonly amps: number;
  readonly dropV: number;
  readonly dropPct: number;
}

/**
 * The end of a direct-current lead of `loopOhm` that feeds a constant power: V = (Vs + √(Vs² − 4 × R × P)) ÷ 2. Undefined
 * where P is more than Vs² ÷ 4R: then it cannot start.
 */
export const leadEnd = (sourceV: number, watts: number, loopOhm: number): LeadEnd | undefined => {
  const under = sourceV * sourceV - 4 * loopOhm * watts;
  if (under < 0) return undefined;
  const voltsV = (sourceV + Math.sqrt(under)) / 2;
  const dropV = sourceV - voltsV;
  return { voltsV, amps: watts / voltsV, dropV, dropPct: (100 * dropV) / sourceV };
};

/** Fall in volts of a steady current in a lead: ΔV = I × R. */
export const leadDropV = (amps: number, loopOhm: number): number => amps * loopOhm;

/** Charging from empty: until the change-over to constant volts, and until full, in minutes. */
export interface ChargeTimes {
  readonly toChangeOverMin: number;
  readonly fullMin: number;
}

/**
 * Constant current up to a share `changeOver` of the capacity, then a current that falls exponentially to `endA`. The charge
 * balance sets its time constant: τ = (1 − s) × C ÷ (I − I_end), so the taper takes τ × ln(I ÷ I_end).
 */
export const chargeTimes = (
  capacityAh: number,
  amps: number,
  changeOver: number,
  endA: number,
): ChargeTimes => {
  const toChangeOverMin = (60 * changeOver * capacityAh) / amps;
  const tau = ((1 - changeOver) * capacityAh) / (amps - endA);
  return { toChangeOverMin, fullMin: toChangeOverMin + 60 * tau * Math.log(amps / endA) };
};

/** Minutes until the last of some charges is done, in so many bays: the longest first, each into the bay free first. */
export const chargeMakespan = (minutes: readonly number[], bays: number): number => {
  const free = Array.from({ length: bays }, () => 0);
  for (const m of [...minutes].sort((a, b) => b - a)) {
    const first = free.indexOf(Math.min(...free));
    free[first] = (free[first] ?? 0) + m;
  }
  return Math.max(0, ...free);
};

/** No order of charges is done before this: the longest one, or all of them shared out evenly. */
export const chargeMakespanBound = (minutes: readonly number[], bays: number): number =>
  Math.max(0, ...minutes, minutes.reduce((a, b) => a + b, 0) / bays);

/** How a lithium pack travels with a passenger. Limits belong to the lower class. */
export type AirClass = 'cabin' | 'ask-operator' | 'cargo';

/** Class of a pack by the Wh on its label: to 100 Wh, to 160 Wh with the operator's approval and two spares at most, above. */
export const airClass = (wh: number): AirClass =>
  wh <= travel.smallWh ? 'cabin' : wh <= travel.largeWh ? 'ask-operator' : 'cargo';

/** Packs that one unit on all the time keeps in circulation, with a bay for each: ⌈(run + charge + swap) ÷ run⌉. */
export const packsInCirculation = (runMin: number, chargeMin: number, swapMin: number): number =>
  Math.ceil((runMin + chargeMin + swapMin) / runMin);

/** Watts a converter takes for what it gives, and what it loses. */
export const converterIn = (
  outW: number,
  efficiency: number,
): { readonly inW: number; readonly lossW: number } => ({
  inW: outW / efficiency,
  lossW: outW / efficiency - outW,
});

/** The current limits and the volts of a pack as its chemistry's table has them, for a working. */
export const ratedHoursOf = (chemistry: PackKind['chemistry']): number => chemistryOf(chemistry).ratedHours;
