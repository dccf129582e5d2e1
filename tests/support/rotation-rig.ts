import fc from 'fast-check';
import type { Rotation, RotationUnit } from '../../src/engines/battery/rotation-types.ts';

/** A rotation of units with stretches `[from, to, minutes a full pack lasts]`, one pool, so many bays. */
export const rotation = (
  units: readonly (readonly (readonly [fromMin: number, toMin: number, runMin: number])[])[],
  more: {
    readonly bays?: number;
    readonly chargeMin?: number;
    readonly swapAt?: number;
    readonly packs?: number;
    readonly counts?: readonly number[];
  } = {},
): Rotation => ({
  units: units.map(
    (stretches, i): RotationUnit => ({
      id: `unit-${i + 1}`,
      label: `Unit ${i + 1}`,
      feeds: [`unit-${i + 1}`],
      pool: 'brick',
      count: more.counts?.[i] ?? 1,
      hotSwap: false,
      swapMin: 2,
      stretches: stretches.map(([startMin, endMin, runMin]) => ({
        startMin,
        endMin,
        drain: 1 / runMin,
        levelPct: 100,
        setupId: 'setup-1',
      })),
    }),
  ),
  pools: [
    {
      id: 'brick',
      name: 'Brick',
      packs: more.packs,
      reserve: 0,
      chargeMin: more.chargeMin ?? 180,
      chargeW: 60,
      exchange: false,
    },
  ],
  bays: Array.from({ length: more.bays ?? 0 }, (_, i) => ({
    id: `c/${i + 1}`,
    chargerId: 'c',
    label: `bay ${i + 1}`,
    pools: new Set(['brick']),
    slower: new Map(),
  })),
  swapAt: more.swapAt ?? 0,
  changeOver: 0.8,
  changeOverTime: 0.61,
  taper: 10,
});

/** Days of up to four units, in quarters of an hour, with runtimes and charges that make rotation matter. */
export const smallDays: fc.Arbitrary<Rotation> = fc
  .record({
    units: fc.array(
      fc.array(
        fc.tuple(
          fc.integer({ min: 0, max: 10 }),
          fc.integer({ min: 1, max: 6 }),
          fc.constantFrom(45, 60, 75, 100, 150),
        ),
        {
          minLength: 1,
          maxLength: 2,
        },
      ),
      { minLength: 1, maxLength: 4 },
    ),
    bays: fc.integer({ min: 0, max: 2 }),
    chargeMin: fc.constantFrom(40, 60, 90, 120),
    swapAt: fc.constantFrom(0, 0.05, 0.1),
  })
  .map(({ units, ...more }) =>
    rotation(
      units.map((list) => {
        let last = -1;
        return [...list]
          .sort((a, b) => a[0] - b[0])
          .flatMap(([from, length, run]) => {
            const start = Math.max(from, last);
            last = start + length;
            return [[start * 15, last * 15, run] as const];
          });
      }),
      more,
    ),
  );
