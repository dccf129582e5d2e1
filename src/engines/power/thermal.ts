import { type TimeClass, tripMinutes } from '../../derive/breakers.ts';
import { limitOf } from '../../derive/limits.ts';
import type { Curve } from '../../plan/kinds/ports.ts';
import type { Plan } from '../../plan/plan.ts';
import { magneticBand } from './findings/inrush.ts';

/**
 * How long a breaker carries a steady current by its test standard: a band, never a time. `holds`: it does not open within
 * its conventional time. `open`: the standard promises nothing either way. `opens`: it has opened by `mostMin` at the latest,
 * and not before `leastS`. `at once`: within the band of its magnetic release or above.
 */
export interface TripBand {
  readonly says: 'holds' | 'open' | 'opens' | 'at once';
  /** Current over rating. */
  readonly times: number;
  readonly mostMin: number | undefined;
  readonly leastS: number | undefined;
  /** The row of the limits table that says so. */
  readonly limitRow: string;
  /** Times of the rating from which on the standard promises that it opens, and the minutes it has then. */
  readonly fromTimes: number;
  readonly fromMin: number | undefined;
}

/**
 * The band of a curve (IEC 60898-1 for B, C and D: 1.13, 1.45 and 2.55 times; UL 489, from memory, for moulded-case breakers:
 * 1.00, 1.35 and 2.00 times) at so many amps. Without a current or a rating above nothing it is undefined.
 */
export const tripBand = (plan: Plan, curve: Curve, ratingA: number, amps: number): TripBand | undefined => {
  if (!(ratingA > 0) || !(amps > 0) || !Number.isFinite(amps) || !Number.isFinite(ratingA)) return undefined;
  const family: 'na' | 'iec' = curve === 'na' ? 'na' : 'iec';
  const at = (row: 'hold' | 'trip' | 'fast'): number => limitOf(plan, `thermal-${family}-${row}`).value;
  const minutes = (c: TimeClass): number | undefined => tripMinutes(c, ratingA);
  const times = amps / ratingA;
  const magnetic = magneticBand(plan, curve);
  const from = { fromTimes: at('trip'), fromMin: minutes(family) };
  const band = (says: TripBand['says'], row: string, mostMin?: number, leastS?: number): TripBand => ({
    says,
    times,
    mostMin,
    leastS,
    limitRow: row,
    ...from,
  });
  // The same small allowance for rounding as elsewhere.
  const reaches = (t: number): boolean => times >= t * (1 - 1e-9);
  if (reaches(magnetic.high)) return band('at once', `magnetic-${curve.toLowerCase()}-high`, 0);
  if (reaches(at('fast'))) return band('opens', `thermal-${family}-fast`, minutes(`${family}-fast`));
  if (reaches(at('trip')))
    return band('opens', `thermal-${family}-trip`, minutes(family), family === 'iec' ? 1 : undefined);
  if (times > at('hold') * (1 + 1e-9)) return band('open', `thermal-${family}-trip`);
  return band('holds', `thermal-${family}-hold`);
};

const span = (min: number): string => (min < 60 ? `${min} min` : `${min / 60} h`);

/**
 * How long a breaker bears a current, in a sentence; empty where nothing can be said. It is a band of its test standard: no
 * one knows the minute, and air, neighbours and what ran before move it.
 */
export const tripWords = (plan: Plan, curve: Curve, ratingA: number, amps: number): string => {
  const b = tripBand(plan, curve, ratingA, amps);
  if (!b) return '';
  const memory = limitOf(plan, b.limitRow).status === 'from memory' ? ' (test standard, from memory)' : '';
  const at = `At ${b.times.toFixed(2)} times its rating the breaker`;
  switch (b.says) {
    case 'holds':
      return `${at} need not open at all${memory}.`;
    case 'open':
      return `${at} may hold for hours or open: it must open${b.fromMin === undefined ? '' : ` within ${span(b.fromMin)}`} only from ${b.fromTimes} times on${memory}.`;
    case 'opens':
      return b.mostMin === undefined
        ? `${at} opens; in what time is not known.`
        : `${at} opens within ${span(b.mostMin)}, sooner or later in that time${memory}.`;
    case 'at once':
      return `${at} opens at once${memory}.`;
  }
};
