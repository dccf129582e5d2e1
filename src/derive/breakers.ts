import table from '../../shared/breakers.json' with { type: 'json' };
import type { Practice } from '../plan/records/index.ts';

/** Standard ratings of breakers in A, and where they are from. */
export interface BreakerSizes {
  readonly practice: Practice;
  readonly ratingsA: readonly number[];
  readonly source: string;
}

/** The standard ratings of a practice. */
export const breakerSizes = (practice: Practice): BreakerSizes => {
  const row = (table.sizes as readonly BreakerSizes[]).find((s) => s.practice === practice);
  if (!row) throw new Error(`no breaker sizes for ${practice}`);
  return row;
};

/** The smallest standard rating of at least so many amps; undefined above the table. */
export const nextBreakerA = (practice: Practice, amps: number): number | undefined =>
  breakerSizes(practice).ratingsA.find((a) => a >= amps * (1 - 1e-9));

export type TimeClass = 'iec' | 'iec-fast' | 'na' | 'na-fast';

/** Minutes within which a breaker of a class and rating must have opened; undefined outside the table. */
export const tripMinutes = (timeClass: TimeClass, ratingA: number): number | undefined =>
  table.times.find((t) => t.class === timeClass && ratingA <= t.uptoA)?.tripMin;
