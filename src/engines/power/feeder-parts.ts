import type { Complex, ComplexMatrix, FeederLoad, FeederSegment } from './feeder.ts';

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
  /** Delta to earthed wye, the low side 30° ahead: leg A's winding lies between lines A and B of the feed. */
  deltaWyeAhead: (turns: number): number[][] => [
    [turns, -turns, 0, 0],
    [0, turns, -turns, 0],
    [-turns, 0, turns, 0],
    [0, 0, 0, 0],
  ],
  /** Wye with an open star point to delta: line AB out follows leg A in; volts to earth are those about the middle. */
  wyeDelta: (turns: number): number[][] => [
    [turns / 3, 0, -turns / 3, 0],
    [-turns / 3, turns / 3, 0, 0],
    [0, -turns / 3, turns / 3, 0],
    [0, 0, 0, 0],
  ],
  /** Two windings in open delta, over lines AB and BC in and out; volts to earth are those about the middle. */
  openDelta: (turns: number): number[][] => [
    [(2 * turns) / 3, -turns / 3, -turns / 3, 0],
    [-turns / 3, (2 * turns) / 3, -turns / 3, 0],
    [-turns / 3, -turns / 3, (2 * turns) / 3, 0],
    [0, 0, 0, 0],
  ],
  /** Open wye to open delta: windings on legs A and B of the feed give lines AB and BC. */
  openWyeOpenDelta: (turns: number): number[][] => [
    [(2 * turns) / 3, turns / 3, 0, -turns],
    [-turns / 3, turns / 3, 0, 0],
    [-turns / 3, (-2 * turns) / 3, 0, turns],
    [0, 0, 0, 0],
  ],
  /** Three one-leg regulators at fixed steps, each leg to the neutral. A step is mostly 0.00625. */
  regulator: (a: number, b: number, c: number): number[][] => [
    [a, 0, 0, 1 - a],
    [0, b, 0, 1 - b],
    [0, 0, c, 1 - c],
    [0, 0, 0, 1],
  ],
  /** Two regulators in open delta at fixed steps, over lines AB and CB; leg B goes straight through. */
  openDeltaRegulator: (ab: number, cb: number): number[][] => [
    [ab, 1 - ab, 0, 0],
    [0, 1, 0, 0],
    [0, 1 - cb, cb, 0],
    [0, 0, 0, 1],
  ],
} as const;

/** A load spread evenly along a stretch of line, from one node to the next. Watts and vars are of the whole stretch. */
export interface SpreadLoad {
  readonly along: readonly [from: string, to: string];
  readonly load: Omit<FeederLoad, 'node'>;
}

/**
 * Puts spread loads at points: `middle`, all at half the length; `ends`, half at each end; `quarter`, two thirds at a quarter
 * of the length and one third at its end, which gives the same drop and the same loss as an even spread (Kersting, from
 * memory). Gives the segments, cut where a point lies between, and all loads as spot loads. A stretch that is not there is
 * left as a load on a node of its name, so that the solver refuses it.
 */
export const spreadLoads = (
  segments: readonly FeederSegment[],
  spread: readonly SpreadLoad[],
  how: 'middle' | 'ends' | 'quarter',
): { readonly segments: readonly FeederSegment[]; readonly loads: readonly FeederLoad[] } => {
  const parts = {
    middle: [[0.5, 1]],
    ends: [
      [0, 0.5],
      [1, 0.5],
    ],
    quarter: [
      [0.25, 2 / 3],
      [1, 1 / 3],
    ],
  }[how];
  const cut = parts.find(([at]) => at !== undefined && at > 0 && at < 1)?.[0];
  const name = (from: string, to: string): string => `${from}~${to}`;
  const cuts = new Set(cut === undefined ? [] : spread.map((s) => name(...s.along)));
  const piece = (s: FeederSegment, from: string, to: string, share: number): FeederSegment => {
    const { ratio: _, ...rest } = s;
    return {
      ...rest,
      from,
      to,
      ohm: s.ohm.map((row) => row.map((z): Complex => [z[0] * share, z[1] * share])),
      ...(s.shuntS ? { shuntS: s.shuntS.map((row) => row.map((b) => b * share)) } : {}),
    };
  };
  return {
    segments: segments.flatMap((s) => {
      const mid = name(s.from, s.to);
      if (cut === undefined || !cuts.has(mid)) return [s];
      const head = piece(s, s.from, mid, cut);
      return [s.ratio ? { ...head, ratio: s.ratio } : head, piece(s, mid, s.to, 1 - cut)];
    }),
    loads: spread.flatMap(({ along: [from, to], load }) =>
      parts.map(
        ([at = 0, share = 0]): FeederLoad => ({
          ...load,
          node: at === 0 ? from : at === 1 ? to : name(from, to),
          wattsW: load.wattsW * share,
          varsVar: load.varsVar * share,
        }),
      ),
    ),
  };
};

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
