import type { Verdict } from '../../report/radio.ts';

/** Steps of the verdict by how many of four bars are filled. */
export const VERDICT_BARS: Readonly<Record<Verdict, number>> = { good: 4, fair: 3, weak: 2, none: 1 };

/** Minutes in words that say how rough they are. */
export const lastsText = (minutes: number): string =>
  minutes >= 120 ? `about ${Math.round(minutes / 60)} h` : `about ${Math.round(minutes)} min`;
