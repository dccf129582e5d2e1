import { LONGEST_MM } from '../kernel/units.ts';

/** Nothing that a plan counts or measures is more than this. */
const MOST = 1e15;
/** Nothing comes in such numbers on a set: packs are given out one by one. */
const MOST_THINGS = 10_000;
const COUNTS: ReadonlySet<string> = new Set(['count', 'bays', 'reserve']);

/**
 * The first number in what a file holds that is too large to be meant, with the way to it, in words; undefined where all
 * can be. Drawings, ways of cables and sums over such numbers would have no end, so what holds one is not read.
 */
export const farNumber = (value: unknown, path: readonly string[] = []): string | undefined => {
  if (typeof value === 'number') {
    const name = path.findLast((step) => !/^\d+$/.test(step)) ?? '';
    const [most, words] = /mm$/i.test(name)
      ? [LONGEST_MM, 'more than 100 km']
      : COUNTS.has(name)
        ? [MOST_THINGS, `more than ${MOST_THINGS}`]
        : [MOST, 'too large to be meant'];
    return Math.abs(value) <= most ? undefined : `${path.join('.')} is ${value}, ${words}`;
  }
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, v] of Object.entries(value)) {
    if (typeof v === 'string' || typeof v === 'boolean') continue;
    const far = farNumber(v, [...path, key]);
    if (far !== undefined) return far;
  }
  return undefined;
};
