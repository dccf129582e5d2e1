/** A place a plug can go: one outlet on one way. `chain` are the limited things it is fed through, the source (0) last. */
export interface Slot {
  readonly key: string;
  readonly way: number;
  readonly chain: readonly number[];
  /** Legs of the source it lies on, by position of the plug's own legs. */
  readonly legs: readonly number[];
  readonly capacity: number;
}

/** A plug that may move, with all that hangs on it. */
export interface Plug {
  readonly key: string;
  /** Rms amps at nominal volts: at setup × legs + position. */
  readonly amps: Float64Array;
  /** What it puts on the neutral, relative to its leg's own angle, as (re, im): at (setup × legs + position) × 2. */
  readonly neutral: Float64Array;
  readonly positions: number;
  /** Slots it may take, with the run each needs in mm; its present one is among them, unless it is not plugged in. */
  readonly slots: readonly number[];
  readonly runMm: readonly number[];
  /** Its present slot; -1 when it is not plugged in. */
  readonly at: number;
}

/**
 * One source's plugs and where they may go, at nominal currents. A leg of a thing carries the plain sum of the rms amps on
 * it, which is never too kind. Neutrals are phasor sums at the source.
 */
export interface BalanceProblem {
  readonly setups: number;
  readonly legs: number;
  readonly anglesRad: readonly number[];
  /** Limit of each thing per leg in A; NaN where none is known. Thing 0 is the source. */
  readonly limitA: Float64Array;
  /** Amps that do not move: at (thing × legs + leg) × setups + setup. */
  readonly fixedA: Float64Array;
  readonly fixedNeutral: Float64Array;
  readonly slots: readonly Slot[];
  readonly plugs: readonly Plug[];
}

/** How good an assignment is: each figure counts before the next. */
export interface Score {
  /** Things over their limit in any setup. */
  readonly overloads: number;
  /** Most amps on a leg of the source over all setups. */
  readonly worstLegA: number;
  readonly neutralA: number;
  readonly moves: number;
  readonly cableMm: number;
}
