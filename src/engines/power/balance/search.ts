import { BalanceState, compareScores, scoreOf } from './state.ts';
import type { BalanceProblem, Score } from './types.ts';

export interface Found {
  readonly at: Int32Array;
  readonly score: Score;
}

/** How a state compares during the search: overloads, worst leg, how far over, then how uneven. */
type Rank = readonly [number, number, number, number];

const rankOf = (s: BalanceState): Rank => [
  s.overloads,
  s.worstLegA(),
  s.overloads > 0 ? s.excessA() : 0,
  s.squares(),
];

const better = (a: Rank, b: Rank): boolean => {
  for (let i = 0; i < 4; i++) {
    const d = (a[i] as number) - (b[i] as number);
    if (Math.abs(d) > 1e-9 * (1 + Math.abs(b[i] as number))) return d < 0;
  }
  return false;
};

/** Tries every single plug in every free slot, and every two plugs in one another's, as long as something gets better. */
const descend = <R>(
  s: BalanceState,
  rank: () => R,
  isBetter: (a: R, b: R) => boolean,
  how: {
    /** Also swaps. */
    readonly pairs: boolean;
    /** One free outlet of a way stands for all of them. */
    readonly oncePerWay?: boolean;
    /** Stops as soon as it is so. */
    readonly enough?: ((best: R) => boolean) | undefined;
  },
): void => {
  const { plugs, slots } = s.problem;
  const stamps = new Int32Array(s.problem.limitA.length).fill(-1);
  let stamp = 0;
  let best = rank();
  if (how.enough?.(best)) return;
  for (let again = true; again; ) {
    again = false;
    for (let i = 0; i < plugs.length; i++) {
      const was = s.at[i] as number;
      let keep = was;
      stamp++;
      for (const slot of plugs[i]?.slots ?? []) {
        if (slot === keep || !s.free(slot)) continue;
        const way = slots[slot]?.way ?? 0;
        if (how.oncePerWay && stamps[way] === stamp) continue;
        stamps[way] = stamp;
        const here = s.at[i] as number;
        s.put(i, slot);
        const now = rank();
        if (isBetter(now, best)) {
          best = now;
          keep = slot;
          again = true;
          if (how.enough?.(best)) return;
        } else s.put(i, here);
      }
    }
    // Swaps cost far more than moves: only where no move helps any more.
    if (!how.pairs || again) continue;
    for (let i = 0; i < plugs.length; i++)
      for (let j = i + 1; j < plugs.length; j++) {
        const [a, b] = [s.at[i] as number, s.at[j] as number];
        if (a < 0 || b < 0 || slots[a]?.way === slots[b]?.way) continue;
        if (!s.takes(i, b) || !s.takes(j, a)) continue;
        s.put(i, -1);
        s.put(j, a);
        s.put(i, b);
        const now = rank();
        if (isBetter(now, best)) {
          best = now;
          again = true;
          if (how.enough?.(best)) return;
        } else {
          s.put(i, -1);
          s.put(j, b);
          s.put(i, a);
        }
      }
  }
};

/** A repeatable stand-in for chance. */
const dice = (): (() => number) => {
  let x = 12345;
  return () => {
    x = (Math.imul(x, 1664525) + 1013904223) >>> 0;
    return x / 4294967296;
  };
};

/**
 * A good assignment by local search: single moves and swaps from where the plugs are, then again from shaken copies of the
 * best. Ends with the moves that spare neutral, plugs and cable without giving up what was won. The same on every run.
 * With `goal` it ends as soon as overloads and worst leg are as good as that.
 */
export const search = (
  problem: BalanceProblem,
  start?: Int32Array,
  goal?: Pick<Score, 'overloads' | 'worstLegA'>,
): Found => {
  const n = problem.plugs.length;
  const enough = goal && ((r: Rank): boolean => r[0] <= goal.overloads && r[1] <= goal.worstLegA);
  const how = { pairs: true, oncePerWay: true, enough };
  const first = new BalanceState(problem, start);
  descend(first, () => rankOf(first), better, how);
  let best = Int32Array.from(first.at);
  let bestRank = rankOf(first);
  if (enough?.(bestRank)) return { at: best, score: scoreOf(problem, best) };
  const roll = dice();
  const rounds = n === 0 ? 0 : Math.max(6, Math.min(240, Math.floor(40_000 / (n * n))));
  for (let r = 0; r < rounds; r++) {
    const s = new BalanceState(problem, best);
    for (let k = 0; k < Math.max(2, Math.ceil(n / 6)); k++) {
      const i = Math.floor(roll() * n);
      const open = (problem.plugs[i]?.slots ?? []).filter((x) => s.free(x));
      const slot = open[Math.floor(roll() * open.length)];
      if (slot !== undefined) s.put(i, slot);
    }
    descend(s, () => rankOf(s), better, how);
    const rank = rankOf(s);
    if (!better(rank, bestRank)) continue;
    best = Int32Array.from(s.at);
    bestRank = rank;
    if (enough?.(bestRank)) return { at: best, score: scoreOf(problem, best) };
  }
  return polish(problem, best);
};

/** Shakes of the last search, for a rig of so many plugs: neutrals of small rigs hang on a few plugs at once. */
const shakes = (n: number): number => (n < 2 ? 0 : Math.min(400, Math.floor(40_000 / (n * n))));

/**
 * Spares neutral, moves and cable, in this order, without giving up overloads or worst leg: by descent, then again from
 * shaken copies of the best.
 */
export const polish = (problem: BalanceProblem, at: Int32Array): Found => {
  const n = problem.plugs.length;
  const first = new BalanceState(problem, at);
  const goal = first.worstLegA();
  // A leg below the goal wins nothing here: it was proved or searched for before.
  const rank = (s: BalanceState): Score => {
    const score = s.score();
    return score.worstLegA < goal ? { ...score, worstLegA: goal } : score;
  };
  const isBetter = (a: Score, b: Score): boolean => compareScores(a, b) < 0;
  const how = { pairs: n <= 150 };
  descend(first, () => rank(first), isBetter, how);
  let best = Int32Array.from(first.at);
  let bestRank = rank(first);
  const roll = dice();
  for (let r = shakes(n); r > 0; r--) {
    const s = new BalanceState(problem, best);
    for (let k = 0; k < 2 + (r % Math.max(3, n >> 1)); k++) {
      const i = Math.floor(roll() * n);
      const open = (problem.plugs[i]?.slots ?? []).filter((x) => s.free(x));
      const slot = open[Math.floor(roll() * open.length)];
      if (slot !== undefined) s.put(i, slot);
    }
    descend(s, () => rank(s), isBetter, how);
    const now = rank(s);
    if (!isBetter(now, bestRank)) continue;
    best = Int32Array.from(s.at);
    bestRank = now;
  }
  return { at: best, score: scoreOf(problem, best) };
};

/** States kept at each number of moves while the trade-off is searched. */
const MOST_KEPT = 24;
/** Plugs above which swaps are left out of the trade-off. */
const SWAP_PLUGS = 100;

/**
 * The best found with at most 0, 1, 2, … moves: from the best few with one move less by one more move, and from those with
 * two less by a swap. Row k of the answer has k moves or fewer.
 */
export const tradeOff = (problem: BalanceProblem, most: number): readonly Found[] => {
  const start = Int32Array.from(problem.plugs, (p) => p.at);
  const rows: Found[] = [{ at: start, score: scoreOf(problem, start) }];
  const levels: Int32Array[][] = [[start]];
  const kept = Math.max(2, Math.min(MOST_KEPT, Math.floor(1200 / Math.max(1, problem.plugs.length))));
  for (let k = 1; k <= most; k++) {
    const next = new Map<string, { at: Int32Array; rank: Rank }>();
    const offer = (s: BalanceState): void => {
      if (s.moves !== k) return;
      const rank = rankOf(s);
      const key = `${rank.map((x) => x.toFixed(6)).join()}`;
      if (!next.has(key)) next.set(key, { at: Int32Array.from(s.at), rank });
    };
    for (const at of levels[k - 1] ?? []) oneMove(problem, at, offer);
    if (problem.plugs.length <= SWAP_PLUGS) for (const at of levels[k - 2] ?? []) oneSwap(problem, at, offer);
    const sorted = [...next.values()].sort((a, b) =>
      better(a.rank, b.rank) ? -1 : better(b.rank, a.rank) ? 1 : 0,
    );
    levels.push(sorted.slice(0, kept).map((x) => x.at));
    const before = rows[k - 1] as Found;
    const won = (levels[k] ?? [])
      .map((at) => ({ at, score: scoreOf(problem, at) }))
      .reduce<Found>((a, b) => (compareScores(b.score, a.score) < 0 ? b : a), before);
    rows.push(won);
  }
  return rows;
};

const oneMove = (problem: BalanceProblem, at: Int32Array, offer: (s: BalanceState) => void): void => {
  const s = new BalanceState(problem, at);
  problem.plugs.forEach((p, i) => {
    const was = at[i] as number;
    if (was !== p.at) return;
    for (const slot of p.slots) {
      if (slot === was || !s.free(slot)) continue;
      s.put(i, slot);
      offer(s);
    }
    s.put(i, was);
  });
};

const oneSwap = (problem: BalanceProblem, at: Int32Array, offer: (s: BalanceState) => void): void => {
  const s = new BalanceState(problem, at);
  const { plugs, slots } = problem;
  for (let i = 0; i < plugs.length; i++)
    for (let j = i + 1; j < plugs.length; j++) {
      const [a, b] = [at[i] as number, at[j] as number];
      if (a !== plugs[i]?.at || b !== plugs[j]?.at || slots[a]?.way === slots[b]?.way) continue;
      if (!s.takes(i, b) || !s.takes(j, a)) continue;
      s.put(i, -1);
      s.put(j, a);
      s.put(i, b);
      offer(s);
      s.put(i, -1);
      s.put(j, b);
      s.put(i, a);
    }
};
