import type { Complex, ComplexMatrix } from './feeder.ts';

/** Ratios of usual three-phase transformers by turns, for `FeederSegment.ratio`; `turns` is volts of a winding out over in. */
export const transformerRatio = {
  /** Earthed wye to earthed wye: each leg by itself. */
  wyeWye: (turns: number): number[][] => [
    [turns, 0, 0, -turns],
    [0, turns, 0, -turns],
    [0, 0, turns, -turns],
    [0, 0, 0, 0],
  ],
  /** Delta to earthed wye, the low side 30° behind: leg A's winding lies between lines A and C of the feed. */
  deltaWye: (turns: number): number[][] => [
    [turns, 0, -turns, 0],
    [-turns, turns, 0, 0],
    [0, -turns, turns, 0],
    [0, 0, 0, 0],
  ],
  /** Delta to delta: volts between lines by turns; the volts to earth are those about the middle of the three. */
  deltaDelta: (turns: number): number[][] => [
    [(2 * turns) / 3, -turns / 3, -turns / 3, 0],
    [-turns / 3, (2 * turns) / 3, -turns / 3, 0],
    [-turns / 3, -turns / 3, (2 * turns) / 3, 0],
    [0, 0, 0, 0],
  ],
} as const;

/**
 * A 4×4 impedance with its earthed neutral folded in: Z_ij − Z_in × Z_nj ÷ Z_nn (Kron's reduction). Exact where the
 * neutral is at earth at both ends.
 */
export const foldNeutral = (z: ComplexMatrix): ComplexMatrix =>
  [0, 1, 2].map((i) =>
    [0, 1, 2].map((j): Complex => {
      const own = z[i]?.[j] ?? [0, 0];
      const [a, b, n] = [z[i]?.[3] ?? [0, 0], z[3]?.[j] ?? [0, 0], z[3]?.[3] ?? [0, 0]];
      const d = n[0] ** 2 + n[1] ** 2;
      if (d === 0) return own;
      const [pr, pi] = [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
      return [own[0] - (pr * n[0] + pi * n[1]) / d, own[1] - (pi * n[0] - pr * n[1]) / d];
    }),
  );
