import type { Found } from './search.ts';
import { BalanceState, scoreOf } from './state.ts';
import type { BalanceProblem } from './types.ts';

/** Steps after which the exact search gives up and says so: for the legs, for fewer overloads, for the ways of one choice of legs. */
const LEG_STEPS = 8_000_000;
const OVERLOAD_STEPS = 800_000;
const WAY_STEPS = 40_000;
/** And for the ways in all. */
const ALL_WAY_STEPS = 2_400_000;
const EPS = 1e-7;

/**
 * Lower bound on the worst leg over all setups, whatever the assignment: in each setup the legs share all amps at best
 * evenly, no leg falls below what does not move, and the largest plug lies somewhere whole.
 */
export const worstLegBound = (p: BalanceProblem): number => {
  let bound = 0;
  for (let s = 0; s < p.setups; s++) {
    let total = 0;
    for (let l = 0; l < p.legs; l++) {
      const fixed = p.fixedA[l * p.setups + s] as number;
      total += fixed;
      bound = Math.max(bound, fixed);
    }
    for (const plug of p.plugs)
      for (let k = 0; k < plug.positions; k++) {
        const a = plug.amps[s * plug.positions + k] as number;
        total += a;
        bound = Math.max(bound, a);
      }
    bound = Math.max(bound, total / p.legs);
  }
  return bound;
};

/**
 * Looks for something better than `start` in overloads and worst leg, exactly: legs first, largest plugs first, cutting off
 * what can be no better; then ways. `proved` tells whether it came to its end within its steps.
 */
export const improveExactly = (
  problem: BalanceProblem,
  start: Found,
): { readonly found: Found; readonly proved: boolean } => {
  const bound = worstLegBound(problem);
  let best = start;
  const done = (): boolean => best.score.overloads === 0 && best.score.worstLegA <= bound + EPS;
  if (done()) return { found: best, proved: true };
  let cut = false;
  // A step takes as long as there are setups.
  const steps = (n: number): number => Math.ceil(n / Math.max(1, problem.setups));
  // What cannot be helped is over by its own fixed amps.
  const least = new BalanceState(problem, new Int32Array(problem.plugs.length).fill(-1)).overloads;
  if (best.score.overloads > least) {
    // Fewer overloads count before any leg: try for each smaller number, whatever the legs.
    const budget: Budget = { left: steps(OVERLOAD_STEPS), ways: steps(OVERLOAD_STEPS), cut: false };
    for (let target = least; target < best.score.overloads && !budget.cut; target++) {
      const at = assign(problem, target, Number.POSITIVE_INFINITY, budget);
      if (at) best = { at, score: scoreOf(problem, at) };
    }
    cut = budget.cut;
  }
  const budget: Budget = { left: steps(LEG_STEPS), ways: steps(ALL_WAY_STEPS), cut: false };
  while (!budget.cut && !done()) {
    const at = assign(problem, best.score.overloads, best.score.worstLegA - EPS, budget);
    if (!at) break;
    best = { at, score: scoreOf(problem, at) };
  }
  return { found: best, proved: !cut && !budget.cut };
};

/** Steps left, and whether some branch was given up for want of them. */
interface Budget {
  left: number;
  ways: number;
  cut: boolean;
}

/** An assignment with at most so many overloads and every leg of the source below `legA`; undefined where none was found. */
const assign = (
  problem: BalanceProblem,
  overloads: number,
  legA: number,
  budget: Budget,
): Int32Array | undefined => {
  const { plugs, slots, setups, legs } = problem;
  const most = (i: number): number => Math.max(0, ...(plugs[i]?.amps ?? []));
  const order = plugs.map((_, i) => i).sort((a, b) => most(b) - most(a));
  // Kinds of place by legs alone, for the first pass.
  const patterns = plugs.map((p) => {
    const seen = new Map<string, { legs: readonly number[]; slots: number[] }>();
    for (const x of p.slots) {
      const l = slots[x]?.legs ?? [];
      const known = seen.get(l.join());
      if (known) known.slots.push(x);
      else seen.set(l.join(), { legs: l, slots: [x] });
    }
    return [...seen.values()];
  });
  // Plugs that lie on some legs can be no more than the outlets there take.
  const room = new Map<string, number>();
  for (const s of slots) room.set(s.legs.join(), (room.get(s.legs.join()) ?? 0) + s.capacity);
  const legSums = Float64Array.from(problem.fixedA.subarray(0, legs * setups));
  const chosen: number[][] = plugs.map(() => []);

  const alike = slots.map((s) => `${s.chain.slice(1).join()}|${problem.limitA[s.way]}|${s.legs.join()}`);
  const waySlots = new Map<number, number[]>();
  slots.forEach((s, x) => {
    waySlots.set(s.way, [...(waySlots.get(s.way) ?? []), x]);
  });
  const ways = { left: 0 };
  const place = (depth: number, state: BalanceState): boolean => {
    if (ways.left-- <= 0 || budget.ways-- <= 0) {
      budget.cut = true;
      return false;
    }
    if (depth === order.length) return true;
    const i = order[depth] as number;
    const tried = new Set<string>();
    for (const slot of chosen[i] ?? []) {
      if (!state.free(slot)) continue;
      const s = slots[slot];
      if (!s) continue;
      // Ways that look alike, with the same amps on them and the same limit, need one try.
      const same = `${alike[slot]}|${fingerprint(state, s.way).toFixed(5)}|${freeOn(state, waySlots.get(s.way) ?? [])}`;
      if (tried.has(same)) continue;
      tried.add(same);
      state.put(i, slot);
      if (state.overloads <= overloads && place(depth + 1, state)) return true;
      state.put(i, -1);
    }
    return false;
  };

  const byLegs = (depth: number): Int32Array | undefined => {
    if (budget.left-- <= 0) {
      budget.cut = true;
      return undefined;
    }
    if (depth === order.length) {
      ways.left = WAY_STEPS;
      const state = new BalanceState(problem, new Int32Array(plugs.length).fill(-1));
      return place(0, state) ? Int32Array.from(state.at) : undefined;
    }
    const i = order[depth] as number;
    const p = plugs[i];
    if (!p) return undefined;
    for (const pattern of patterns[i] ?? []) {
      const key = pattern.legs.join();
      const open = room.get(key) ?? 0;
      if (open === 0) continue;
      room.set(key, open - 1);
      let fits = true;
      for (let k = 0; k < p.positions; k++)
        for (let s = 0; s < setups; s++) {
          const r = (pattern.legs[k] as number) * setups + s;
          legSums[r] = (legSums[r] as number) + (p.amps[s * p.positions + k] as number);
          if ((legSums[r] as number) > legA) fits = false;
        }
      if (fits) {
        chosen[i] = pattern.slots;
        const found = byLegs(depth + 1);
        if (found) return found;
      }
      room.set(key, open);
      for (let k = 0; k < p.positions; k++)
        for (let s = 0; s < setups; s++) {
          const r = (pattern.legs[k] as number) * setups + s;
          legSums[r] = (legSums[r] as number) - (p.amps[s * p.positions + k] as number);
        }
    }
    return undefined;
  };

  if (Number.isFinite(legA)) return byLegs(0);
  plugs.forEach((p, i) => {
    chosen[i] = [...p.slots];
  });
  ways.left = budget.ways;
  const state = new BalanceState(problem, new Int32Array(plugs.length).fill(-1));
  return place(0, state) ? Int32Array.from(state.at) : undefined;
};

/** A number that tells the amps on a way apart: a sum with weights that no two loads share. */
const fingerprint = (state: BalanceState, way: number): number => {
  const width = state.problem.legs * state.problem.setups;
  let sum = 0;
  for (let k = 0; k < width; k++) sum += (state.amps[way * width + k] as number) * Math.sqrt(2 + k);
  return sum;
};

const freeOn = (state: BalanceState, onWay: readonly number[]): number => {
  let n = 0;
  for (const x of onWay) n += (state.problem.slots[x]?.capacity ?? 0) - (state.taken[x] as number);
  return n;
};
