import { describe, expect, it } from 'vitest';
import {
  type Complex,
  type ComplexMatrix,
  foldNeutral,
  overheadOhmPerMile,
  sequenceOhm,
  solveFeeder,
} from '../../src/engines/power/index.ts';
import { polar } from '../support/circuit.ts';

const near = (z: ComplexMatrix, printed: readonly (readonly Complex[])[], to: number): void =>
  printed.forEach((row, i) => {
    row.forEach((p, j) => {
      const got = z[i]?.[j] ?? [Number.NaN, Number.NaN];
      expect(Math.abs(got[0] - p[0])).toBeLessThanOrEqual(to);
      expect(Math.abs(got[1] - p[1])).toBeLessThanOrEqual(to);
    });
  });

// Kersting, Distribution System Modeling and Analysis, example 4.1: 336,400 26/7 legs 2.5, 4.5 and 7 ft apart, a 4/0 6/1 neutral 4 ft below.
const leg = { ohmPerMile: 0.306, gmrFt: 0.0244, yFt: 29 };
const conductors = [
  { ...leg, xFt: 0 },
  { ...leg, xFt: 2.5 },
  { ...leg, xFt: 7 },
  { ohmPerMile: 0.592, gmrFt: 0.00814, xFt: 4, yFt: 25 },
];

describe('impedance of an overhead line from where its conductors hang (Kersting, example 4.1, from memory)', () => {
  const made = overheadOhmPerMile(conductors);
  if (!made.ok) throw new Error(made.error.what);
  const z = made.value;

  it('power-feeder: Carson’s equations, modified, give the printed 4×4 matrix', () => {
    near(
      z,
      [
        [
          [0.4013, 1.4133],
          [0.0953, 0.8515],
          [0.0953, 0.7266],
          [0.0953, 0.7524],
        ],
        [
          [0.0953, 0.8515],
          [0.4013, 1.4133],
          [0.0953, 0.7802],
          [0.0953, 0.7865],
        ],
        [
          [0.0953, 0.7266],
          [0.0953, 0.7802],
          [0.4013, 1.4133],
          [0.0953, 0.7674],
        ],
        [
          [0.0953, 0.7524],
          [0.0953, 0.7865],
          [0.0953, 0.7674],
          [0.6873, 1.5465],
        ],
      ],
      1e-4,
    );
  });

  it('power-feeder: with the neutral folded in they give the printed 3×3 matrix, 0.4576 + j1.0780 Ω a mile on leg A', () => {
    near(
      foldNeutral(z),
      [
        [
          [0.4576, 1.078],
          [0.156, 0.5017],
          [0.1535, 0.3849],
        ],
        [
          [0.156, 0.5017],
          [0.4666, 1.0482],
          [0.158, 0.4236],
        ],
        [
          [0.1535, 0.3849],
          [0.158, 0.4236],
          [0.4615, 1.0651],
        ],
      ],
      2e-4,
    );
  });

  it('power-feeder: sequence impedances of it, 0.7735 + j1.9373 zero and 0.3061 + j0.6270 Ω a mile positive, come back as its mean', () => {
    // Printed of the same example: means of the diagonal and of what lies beside it.
    const m = sequenceOhm([0.3061, 0.627], [0.7735, 1.9373]);
    near(
      [[m[0]?.[0] ?? [0, 0], m[0]?.[1] ?? [0, 0]]],
      [
        [
          [0.4619, 1.0638],
          [0.1558, 0.4368],
        ],
      ],
      2e-4,
    );
  });

  it('power-feeder: at 50 Hz the earth’s part is five sixths of that at 60 Hz', () => {
    const fifty = overheadOhmPerMile(conductors, 50);
    expect(fifty.ok && fifty.value[0]?.[1]?.[0]).toBeCloseTo((0.0953 * 5) / 6, 12);
  });

  it('power-feeder: conductors without values or in one place are refused in words', () => {
    const [a] = conductors;
    if (!a) throw new Error('no conductor');
    for (const [bad, words] of [
      [[{ ...a, gmrFt: 0 }], /Conductor 1/],
      [[{ ...a, ohmPerMile: Number.NaN }], /Conductor 1/],
      [[a, a], /one place/],
    ] as const) {
      const r = overheadOhmPerMile(bad);
      expect(!r.ok && r.error.what).toMatch(words);
    }
    expect(overheadOhmPerMile(conductors, 0).ok).toBe(false);
  });
});

describe('lines by their sequence impedances', () => {
  it('power-feeder: a balanced load sees the positive, one leg against earth a third of both and both of zero sequence', () => {
    const [z1, z0]: readonly Complex[] = [
      [0.3, 0.1],
      [1.2, 0.4],
    ];
    const run = (legs: readonly number[]) => {
      const r = solveFeeder({
        source: 's',
        sourceV: [polar(230, 0), polar(230, -120), polar(230, 120)],
        segments: [{ from: 's', to: 'e', ohm: sequenceOhm(z1 ?? [0, 0], z0 ?? [0, 0], 0.1) }],
        // 10 A each at unity power factor to their own volts.
        loads: legs.map((from) => ({
          node: 'e',
          from,
          to: 3,
          wattsW: 2300,
          varsVar: 0,
          nominalV: 230,
          expP: 1,
        })),
      });
      if (!r.ok) throw new Error(r.error.what);
      return r.value;
    };
    const lostW = (legs: readonly number[]): number => run(legs).lossVa[0];
    expect(lostW([0, 1, 2])).toBeCloseTo(3 * 10 ** 2 * 0.03, 6);
    expect(lostW([0])).toBeCloseTo((10 ** 2 * (2 * 0.03 + 0.12)) / 3, 6);
  });
});
