import { LONGEST_MM } from '../kernel/units.ts';

/** Nothing that a plan counts or measures is more than this. */
const MOST = 1e15;

/**
 * The first number in what a file holds that is too large to be meant, with the way to it, in words; undefined where all
 * can be. Drawings, ways of cables and sums over such numbers would have no end, so what holds one is not read.
 */
export const farNumber = (value: unknown, path: readonly string[] = []): string | undefined => {
  if (typeof value === 'number') {
    const length = /mm$/i.test(path.findLast((step) => !/^\d+$/.test(step)) ?? '');
    if (Math.abs(value) <= (length ? LONGEST_MM : MOST)) return undefined;
    return `${path.join('.')} is ${value}, ${length ? 'more than 100 km' : 'too large to be meant'}`;
  }
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, v] of Object.entries(value)) {
    if (typeof v === 'string' || typeof v === 'boolean') continue;
    const far = farNumber(v, [...path, key]);
    if (far !== undefined) return far;
  }
  return undefined;
};
