import type { BalanceProblem, Score } from './types.ts';

/** Share by which amps must pass a limit, or be less than another's, before it counts: rounding. */
const EPS = 1e-9;
/** Neutrals closer than this many amps count as equal, so that no plug moves for nothing. */
const NEUTRAL_STEP_A = 0.1;

/** Which of two scores is better: negative where `a` is. */
export const compareScores = (a: Score, b: Score): number => {
  if (a.overloads !== b.overloads) return a.overloads - b.overloads;
  if (Math.abs(a.worstLegA - b.worstLegA) > 1e-7) return a.worstLegA - b.worstLegA;
  const n = Math.round(a.neutralA / NEUTRAL_STEP_A) - Math.round(b.neutralA / NEUTRAL_STEP_A);
  if (n !== 0) return n;
  // Whole millimetres: sums kept up plug by plug drift, and a drift that counts as a gain is found again for ever.
  return a.moves - b.moves || Math.round(a.cableMm) - Math.round(b.cableMm);
};

/** Run of each plug to each slot in mm, NaN where it may not go there: made once for a problem. */
const runsOf = (problem: BalanceProblem): readonly Float64Array[] => {
  const known = runs.get(problem);
  if (known) return known;
  const made = problem.plugs.map((p) => {
    const row = new Float64Array(problem.slots.length).fill(Number.NaN);
    p.slots.forEach((slot, k) => {
      row[slot] = p.runMm[k] ?? 0;
    });
    return row;
  });
  runs.set(problem, made);
  return made;
};
const runs = new WeakMap<BalanceProblem, readonly Float64Array[]>();

/** An assignment of plugs to slots with all its sums, changed one plug at a time. */
export class BalanceState {
  readonly problem: BalanceProblem;
  readonly at: Int32Array;
  readonly taken: Int32Array;
  readonly amps: Float64Array;
  readonly #neutral: Float64Array;
  readonly #over: Uint8Array;
  readonly #runs: readonly Float64Array[];
  overloads = 0;
  moves = 0;
  cableMm = 0;

  constructor(problem: BalanceProblem, at?: Int32Array) {
    this.problem = problem;
    this.#runs = runsOf(problem);
    this.at = new Int32Array(problem.plugs.length).fill(-1);
    this.taken = new Int32Array(problem.slots.length);
    this.amps = Float64Array.from(problem.fixedA);
    this.#neutral = Float64Array.from(problem.fixedNeutral);
    this.#over = new Uint8Array(problem.limitA.length);
    for (let t = 0; t < this.#over.length; t++) this.#check(t);
    problem.plugs.forEach((p, i) => {
      this.put(i, at?.[i] ?? p.at);
    });
  }

  /** Puts a plug into a slot, or takes it out with -1. */
  put(i: number, slot: number): void {
    const was = this.at[i] as number;
    if (was === slot) return;
    const p = this.problem.plugs[i];
    if (!p) return;
    if (was >= 0) this.#add(i, was, -1);
    this.at[i] = slot;
    if (slot >= 0) this.#add(i, slot, 1);
    if (p.at >= 0) this.moves += Number(slot !== p.at) - Number(was !== p.at && was >= 0);
  }

  /** Whether a plug may go into a slot, be it free or not. */
  takes(i: number, slot: number): boolean {
    return !Number.isNaN(this.#runs[i]?.[slot] ?? Number.NaN);
  }

  free(slot: number): boolean {
    return (this.taken[slot] as number) < (this.problem.slots[slot]?.capacity ?? 0);
  }

  #add(i: number, slot: number, sign: number): void {
    const { setups, legs, slots, plugs, anglesRad } = this.problem;
    const s = slots[slot];
    const p = plugs[i];
    if (!s || !p) return;
    this.taken[slot] = (this.taken[slot] as number) + sign;
    const runMm = this.#runs[i]?.[slot] as number;
    if (!Number.isNaN(runMm)) this.cableMm += sign * runMm;
    for (const thing of s.chain) {
      for (let k = 0; k < p.positions; k++) {
        const row = (thing * legs + (s.legs[k] as number)) * setups;
        for (let x = 0; x < setups; x++)
          this.amps[row + x] =
            (this.amps[row + x] as number) + sign * (p.amps[x * p.positions + k] as number);
      }
      this.#check(thing);
    }
    for (let k = 0; k < p.positions; k++) {
      const angle = anglesRad[s.legs[k] as number] ?? 0;
      const [cos, sin] = [Math.cos(angle) * sign, Math.sin(angle) * sign];
      for (let x = 0; x < setups; x++) {
        const n = (x * p.positions + k) * 2;
        const [re, im] = [p.neutral[n] as number, p.neutral[n + 1] as number];
        this.#neutral[x * 2] = (this.#neutral[x * 2] as number) + re * cos - im * sin;
        this.#neutral[x * 2 + 1] = (this.#neutral[x * 2 + 1] as number) + re * sin + im * cos;
      }
    }
  }

  #check(thing: number): void {
    const { setups, legs, limitA } = this.problem;
    const limit = (limitA[thing] as number) * (1 + EPS) + EPS;
    let over = 0;
    for (let r = thing * legs * setups; r < (thing + 1) * legs * setups; r++)
      if ((this.amps[r] as number) > limit) over = 1;
    this.overloads += over - (this.#over[thing] as number);
    this.#over[thing] = over;
  }

  worstLegA(): number {
    const n = this.problem.legs * this.problem.setups;
    let most = 0;
    for (let r = 0; r < n; r++) if ((this.amps[r] as number) > most) most = this.amps[r] as number;
    return most;
  }

  /** Sum of squares of the source's legs: tells near misses apart where the worst leg does not. */
  squares(): number {
    const n = this.problem.legs * this.problem.setups;
    let sum = 0;
    for (let r = 0; r < n; r++) sum += (this.amps[r] as number) ** 2;
    return sum;
  }

  /** Amps over the limits, summed over all things, legs and setups. */
  excessA(): number {
    const { setups, legs, limitA } = this.problem;
    let sum = 0;
    for (let t = 0; t < limitA.length; t++) {
      if (!this.#over[t]) continue;
      for (let r = t * legs * setups; r < (t + 1) * legs * setups; r++)
        sum += Math.max(0, (this.amps[r] as number) - (limitA[t] as number));
    }
    return sum;
  }

  neutralA(): number {
    let most = 0;
    for (let x = 0; x < this.problem.setups; x++)
      most = Math.max(most, Math.hypot(this.#neutral[x * 2] as number, this.#neutral[x * 2 + 1] as number));
    return most;
  }

  score(): Score {
    return {
      overloads: this.overloads,
      worstLegA: this.worstLegA(),
      neutralA: this.neutralA(),
      moves: this.moves,
      cableMm: this.cableMm,
    };
  }
}

/** The score of an assignment, reckoned from nothing, so that no rounding of a search is in it. */
export const scoreOf = (problem: BalanceProblem, at: Int32Array): Score =>
  new BalanceState(problem, at).score();
