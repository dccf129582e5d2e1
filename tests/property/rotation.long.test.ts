import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastPacksBound } from '../../src/engines/battery/bound.ts';
import { FIT_STYLES, fitDay } from '../../src/engines/battery/fit.ts';
import { dayOf, leastBays, leastPacks } from '../../src/engines/battery/least.ts';
import { rotate, rotateEarly } from '../../src/engines/battery/rotate.ts';
import type { Rotation } from '../../src/engines/battery/rotation-types.ts';
import { keepsItsLaws } from '../support/rotation-laws.ts';
import { rotation, smallDays } from '../support/rotation-rig.ts';

/** Larger days: up to nine units, some with two packs at once. */
const days: fc.Arbitrary<Rotation> = fc.oneof(
  smallDays,
  fc
    .record({
      units: fc.array(
        fc.tuple(
          fc.integer({ min: 0, max: 500 }),
          fc.integer({ min: 20, max: 700 }),
          fc.integer({ min: 25, max: 240 }),
        ),
        { minLength: 1, maxLength: 9 },
      ),
      counts: fc.array(fc.integer({ min: 1, max: 2 }), { minLength: 9, maxLength: 9 }),
      bays: fc.integer({ min: 0, max: 5 }),
      chargeMin: fc.integer({ min: 30, max: 240 }),
      swapAt: fc.constantFrom(0, 0.05, 0.2),
    })
    .map(({ units, ...more }) =>
      rotation(
        units.map(([from, length, run]) => [[from, from + length, run]]),
        more,
      ),
    ),
);
const packs = fc.integer({ min: 0, max: 14 });
describe('a day of packs', () => {
  it('battery-rotation: energy is kept, and no pack is in two places or used while it charges', () => {
    fc.assert(
      fc.property(days, packs, (r, n) => {
        keepsItsLaws(
          r,
          dayOf(r, () => n),
          n,
        );
        for (const l of leastPacks(r)) keepsItsLaws(r, l.day, l.packs);
      }),
      { numRuns: 120 },
    );
  });

  it('battery-more: more packs never shorten the day', () => {
    const short = (r: Rotation, n: number): number =>
      rotate(r, () => n).firstShort?.dueMin ?? Number.POSITIVE_INFINITY;
    fc.assert(
      fc.property(days, packs, (r, n) => {
        expect(short(r, n + 1)).toBeGreaterThanOrEqual(short(r, n) - 1e-6);
      }),
      { numRuns: 400 },
    );
  });

  it('battery-more: nor do they once schedules are looked for', () => {
    const short = (r: Rotation, n: number): number =>
      dayOf(r, () => n).firstShort?.dueMin ?? Number.POSITIVE_INFINITY;
    fc.assert(
      fc.property(days, packs, (r, n) => {
        expect(short(r, n + 1)).toBeGreaterThanOrEqual(short(r, n) - 1e-6);
      }),
      { numRuns: 100 },
    );
  }, 60_000);

  it('battery-least: a fitted day keeps the laws whatever its style, and no day does with fewer packs than the bound', () => {
    let fitted = 0;
    fc.assert(
      fc.property(days, packs, fc.constantFrom(...FIT_STYLES), (some, n, style) => {
        const r: Rotation = { ...some, units: some.units.map((u) => ({ ...u, count: 1 })) };
        const [pool] = r.pools;
        const d = pool && fitDay(r, pool, n, style);
        if (!pool || !d) return;
        fitted++;
        keepsItsLaws(r, d, n);
        expect(d.spans.every((x) => x.state === 'burning')).toBe(true);
        expect(leastPacksBound(r, pool)).toBeLessThanOrEqual(n);
      }),
      { numRuns: 400 },
    );
    expect(fitted).toBeGreaterThan(100);
  }, 60_000);

  /** The same day with the last stretch of its first unit longer. */
  const longerBy = (r: Rotation, by: number): Rotation => ({
    ...r,
    units: r.units.map((u, i) =>
      i > 0
        ? u
        : {
            ...u,
            stretches: u.stretches.map((s, k) =>
              k === u.stretches.length - 1 ? { ...s, endMin: s.endMin + by } : s,
            ),
          },
    ),
  });

  it('battery-longer: a longer block never needs fewer packs than are proven to be the fewest of the shorter', () => {
    let proven = 0;
    fc.assert(
      fc.property(fc.oneof(smallDays, days), fc.integer({ min: 1, max: 120 }), (r, by) => {
        const longer = longerBy(r, by);
        const bound = (x: Rotation): number => Math.max(0, ...x.pools.map((p) => leastPacksBound(x, p)));
        const [a, b] = [leastPacks(r)[0], leastPacks(longer)[0]];
        // Whatever is found for the longer day would do for the shorter one, so it is never below that one's bound.
        expect(b?.packs ?? 0).toBeGreaterThanOrEqual(bound(r));
        if (!a || a.bound < a.packs) return;
        proven++;
        expect(b?.packs ?? 0).toBeGreaterThanOrEqual(a.packs);
      }),
      { numRuns: 250 },
    );
    expect(proven).toBeGreaterThan(100);
  }, 60_000);

  it('battery-least: the least meets the day, one fewer by the plain rule does not, and no bound lies above it', () => {
    fc.assert(
      fc.property(days, (r) => {
        for (const l of leastPacks(r)) {
          expect(l.day.firstShort).toBeUndefined();
          expect(l.bound).toBeLessThanOrEqual(l.packs);
          expect(dayOf(r, () => l.packs).firstShort).toBeUndefined();
          expect(l.fewer === undefined).toBe(l.packs === 0);
        }
      }),
      { numRuns: 150 },
    );
  }, 60_000);

  it('battery-bound: with fewer packs than the bound every rotation leaves a unit waiting', () => {
    const busy = fc
      .record({
        units: fc.integer({ min: 4, max: 24 }),
        run: fc.integer({ min: 30, max: 200 }),
        hours: fc.integer({ min: 3, max: 14 }),
        bays: fc.integer({ min: 1, max: 16 }),
        chargeMin: fc.integer({ min: 20, max: 200 }),
        swapAt: fc.constantFrom(0, 0.05, 0.2),
        below: fc.constantFrom(0, 0.3, 0.6, 0.9),
        shortFirst: fc.boolean(),
      })
      .map(({ units, run, hours, below, shortFirst, ...more }) => ({
        r: rotation(
          Array.from({ length: units }, (_, i) => [
            [i * 3, hours * 60 - ((i * 7) % 50), run + ((i * 13) % 40)],
          ]),
          more,
        ),
        below,
        shortFirst,
      }));
    let sharper = 0;
    fc.assert(
      fc.property(busy, ({ r, below, shortFirst }) => {
        const [pool] = r.pools;
        const bound = pool ? leastPacksBound(r, pool) : 0;
        if (bound > r.units.length) sharper++;
        expect(rotate(r, () => bound - 1).firstShort).toBeDefined();
        expect(rotateEarly(r, () => bound - 1, below, shortFirst).firstShort).toBeDefined();
      }),
      { numRuns: 100 },
    );
    expect(sharper).toBeGreaterThan(25);
  }, 60_000);

  it('battery-bound: with fewer units to exchange than the bound one waits, each on its own lead', () => {
    let sharper = 0;
    fc.assert(
      fc.property(days, fc.constantFrom(0, 0.4, 0.8), (some, below) => {
        const r: Rotation = { ...some, bays: [], pools: some.pools.map((p) => ({ ...p, exchange: true })) };
        const [pool] = r.pools;
        const bound = pool ? leastPacksBound(r, pool) : 0;
        if (bound < 1) return;
        if (bound > 2) sharper++;
        expect(rotate(r, () => bound - 1).firstShort).toBeDefined();
        expect(rotateEarly(r, () => bound - 1, below).firstShort).toBeDefined();
      }),
      { numRuns: 100 },
    );
    expect(sharper).toBeGreaterThan(20);
  }, 60_000);

  it('battery-bays: the fewest bays do, one fewer do not', () => {
    fc.assert(
      fc.property(days, packs, (r, n) => {
        const bays = leastBays(r, () => n);
        const does = (k: number): boolean =>
          dayOf({ ...r, bays: r.bays.slice(0, k) }, () => n).firstShort === undefined;
        if (bays === undefined) expect(does(r.bays.length)).toBe(false);
        else {
          expect(does(bays)).toBe(true);
          if (bays > 0) expect(does(bays - 1)).toBe(false);
        }
      }),
      { numRuns: 80 },
    );
  }, 60_000);
});

describe('days of several kinds of pack', () => {
  it('battery-rotation: two kinds with their own bays keep the laws, and each has its own fewest', () => {
    /** Two small days side by side: the second one's units, packs and bays under other names. */
    const both = fc.tuple(smallDays, smallDays).map(([a, b]): Rotation => {
      const other = { ...b, swapAt: a.swapAt };
      return {
        ...a,
        units: [...a.units, ...other.units.map((u) => ({ ...u, id: `b-${u.id}`, pool: 'block' }))],
        pools: [...a.pools, ...other.pools.map((p) => ({ ...p, id: 'block', name: 'Block' }))],
        bays: [...a.bays, ...other.bays.map((x) => ({ ...x, id: `b-${x.id}`, pools: new Set(['block']) }))],
      };
    });
    fc.assert(
      fc.property(both, fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), (r, n, m) => {
        const day = dayOf(r, (id) => (id === 'brick' ? n : m));
        const least = new Map(leastPacks(r).map((l) => [l.pool, l.packs]));
        for (const [pool, packs] of [
          ['brick', n],
          ['block', m],
        ] as const)
          expect(day.shortPools.has(pool)).toBe(packs < (least.get(pool) ?? 0));
        expect(day.firstDark === undefined).toBe(!day.spans.some((s) => s.state === 'dark'));
        const supply = (id: string): number => (id === 'brick' ? n : m);
        const does = (k: number): boolean =>
          dayOf({ ...r, bays: r.bays.slice(0, k) }, supply).firstShort === undefined;
        const bays = leastBays(r, supply);
        if (bays === undefined) expect(does(r.bays.length)).toBe(false);
        else expect([does(bays), bays > 0 && does(bays - 1)]).toEqual([true, false]);
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});
