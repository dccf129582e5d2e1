import fc from 'fast-check';
import { expect, it } from 'vitest';
import { assignAddresses, DEFAULT_ASSIGN } from '../../src/engines/control/index.ts';
import { patchRig } from '../support/patch-rig.ts';

/**
 * The fewest bins of 512 by subsets: for every set of items the fewest bins and, with those, the least filling of the last
 * one. Exact, and nothing like a search by branches.
 */
const fewestBins = (sizes: readonly number[]): number => {
  const all = 1 << sizes.length;
  const best: (readonly [number, number])[] = [[0, 512]];
  for (let set = 1; set < all; set++) {
    let least: readonly [number, number] = [Number.POSITIVE_INFINITY, 0];
    for (let i = 0; i < sizes.length; i++) {
      if ((set & (1 << i)) === 0) continue;
      const [bins, filled] = best[set & ~(1 << i)] ?? [0, 0];
      const n = sizes[i] ?? 0;
      const next = filled + n <= 512 ? ([bins, filled + n] as const) : ([bins + 1, n] as const);
      if (next[0] < least[0] || (next[0] === least[0] && next[1] < least[1])) least = next;
    }
    best[set] = least;
  }
  return best[all - 1]?.[0] ?? 0;
};

it('assign-fewest: as few universes as an exact packer finds, on 300 small rigs', () => {
  let improved = 0;
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 60, max: 330 }), { minLength: 1, maxLength: 11 }), (sizes) => {
      const r = assignAddresses(patchRig(sizes).plan, { ...DEFAULT_ASSIGN, fewest: true });
      if (!r.ok) throw new Error(r.error.what);
      const exact = fewestBins(sizes);
      expect(r.value.universes.length).toBe(exact);
      expect(r.value.lowerBound).toBeLessThanOrEqual(exact);
      expect(r.value.proved).toBe(true);
      improved++;
    }),
    { numRuns: 300 },
  );
  expect(improved).toBe(300);
});

it('assign-fewest: finds what first-fit decreasing misses', () => {
  // Two universes hold these exactly: 256 + 128 + 128 and 200 + 156 + 156. The largest first into the first that takes it needs three.
  const r = assignAddresses(patchRig([256, 200, 156, 156, 128, 128]).plan, {
    ...DEFAULT_ASSIGN,
    fewest: true,
  });
  expect(r.ok && r.value.universes).toEqual([1, 2]);
});
