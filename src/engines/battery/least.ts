import { leastPacksBound } from './bound.ts';
import { FIT_STYLES, fitDay } from './fit.ts';
import { rotate, rotateEarly } from './rotate.ts';
import { supplyOf } from './rotation.ts';
import type { FirstDark, FirstShort, Rotation, RotationPool, RotationResult } from './rotation-types.ts';
import { searchSchedule } from './search.ts';
import type { PoolId } from './types.ts';

/** Days no larger than this are searched through; larger ones have the plain rule and the bound. */
const SMALL = { units: 5, packs: 12, bays: 3 } as const;

/** The fewest packs of one pool that get through the day. */
export interface LeastPacks {
  readonly pool: PoolId;
  readonly packs: number;
  /** No rotation does with fewer than this. Where it is less than `packs`, it is not known what lies between. */
  readonly bound: number;
  /** Found by the plain rule, with changes ahead of time, by fitting packs to what is left to burn, or by looking through all schedules. */
  readonly by: 'rule' | 'early' | 'fitted' | 'search';
  readonly day: RotationResult;
  /** With one pack fewer, by the plain rule: the first unit without a charged pack. Undefined where that is not possible. */
  readonly fewer:
    | { readonly packs: number; readonly short: FirstShort; readonly dark: FirstDark | undefined }
    | undefined;
}

/** The rotation with only the units of one pool. Bays they share stay; what other pools charge there is left out. */
const only = (r: Rotation, pool: PoolId): Rotation => ({
  ...r,
  units: r.units.map((u) => (u.pool === pool ? u : { ...u, stretches: [] })),
});

/** Whether another pool that has something to do charges in this one's bays. */
const sharesBays = (r: Rotation, pool: RotationPool): boolean => {
  const bays = r.bays.filter((b) => b.pools.has(pool.id));
  return r.units.some(
    (u) => u.stretches.length > 0 && u.pool !== pool.id && bays.some((b) => b.pools.has(u.pool)),
  );
};

/** Whether a pool is small enough to look through all its schedules. */
const isSmall = (r: Rotation, pool: RotationPool, packs: number): boolean => {
  const own = r.units.filter((u) => u.stretches.length > 0 && u.pool === pool.id);
  return (
    own.length <= SMALL.units &&
    own.every((u) => u.count === 1) &&
    packs <= SMALL.packs &&
    r.bays.filter((b) => b.pools.has(pool.id)).length <= SMALL.bays
  );
};

/** Packs of every pool with which the plain rule gets through the day. */
export const packsByRule = (r: Rotation): ReadonlyMap<PoolId, number> =>
  rotate(r, () => Number.POSITIVE_INFINITY).used;

/** How low packs may be for a change ahead of time, and whether the fullest are charged first: each is tried. */
const EARLY = [
  [0.3, false],
  [0.5, false],
  [0.8, true],
  [0.7, false],
  [0.9, false],
] as const;

const early = (r: Rotation, packs: number): RotationResult | undefined => {
  for (const [below, shortFirst] of EARLY) {
    const day = rotateEarly(r, () => packs, below, shortFirst);
    if (!day.firstShort) return day;
  }
  return undefined;
};

interface Found {
  readonly packs: number;
  readonly bound: number;
  readonly by: LeastPacks['by'];
  readonly day: RotationResult | undefined;
}

/** Whether halving goes on: not where it is only asked whether so many do, and that is known. */
const open = (low: number, high: number, asked: number | undefined): boolean =>
  low < high && (asked === undefined || (low <= asked && high > asked));

/** The fewest packs by changes ahead of time, halving the way between what cannot do and what does. */
const fewestEarly = (r: Rotation, bound: number, most: number, asked?: number): Found => {
  let found: Found = { packs: most, bound, by: 'rule', day: undefined };
  let [low, high] = [bound, most];
  while (open(low, high, asked)) {
    const mid = Math.floor((low + high) / 2);
    const day = early(r, mid);
    if (day) {
      found = { packs: mid, bound, by: 'early', day };
      high = mid;
    } else low = mid + 1;
  }
  return found;
};

/** Whether a pool's days are too large to look through and each of its units takes one pack: then days are fitted together. */
const canFit = (r: Rotation, pool: RotationPool, bound: number): boolean =>
  !isSmall(r, pool, bound) && r.units.every((u) => u.pool !== pool.id || u.count === 1);

/** The fewest packs with days fitted together, by halving. */
const fewestFitted = (r: Rotation, pool: RotationPool, known: Found, asked?: number): Found => {
  let found = known;
  let [low, high] = [known.bound, known.packs];
  while (open(low, high, asked)) {
    const mid = Math.floor((low + high) / 2);
    let day: RotationResult | undefined;
    for (const style of FIT_STYLES) {
      day = fitDay(r, pool, mid, style);
      if (day) break;
    }
    if (day) {
      found = { packs: mid, bound: known.bound, by: 'fitted', day };
      high = mid;
    } else low = mid + 1;
  }
  return found;
};

/** Looks through all schedules with fewer packs than are known to do. */
const fewestSearched = (r: Rotation, pool: RotationPool, known: Found, asked?: number): Found => {
  let bound = known.bound;
  if (asked !== undefined && known.packs <= asked) return known;
  for (let n = bound; n < known.packs && n <= (asked ?? n) && isSmall(r, pool, n); n++) {
    const answer = searchSchedule(r, pool, n);
    if (answer === 'none') bound = bound === n ? n + 1 : bound;
    else if (answer !== 'given-up') return { packs: n, bound, by: 'search', day: answer };
  }
  return { ...known, bound };
};

const memo = new WeakMap<Rotation, readonly LeastPacks[]>();
/** The last answer: most edits of a plan leave its days on packs as they are. */
let last: { readonly key: string; readonly made: readonly LeastPacks[] } | undefined;

/** All of a rotation that the answer depends on. How many packs there are does not come into it. */
const contentOf = (r: Rotation): string =>
  JSON.stringify([
    r.units.map((u) => [u.pool, u.count, u.hotSwap, u.swapMin, u.stretches]),
    r.pools.map((p) => [p.id, p.chargeMin, p.exchange]),
    r.bays.map((b) => [[...b.pools], [...b.slower]]),
    [r.swapAt, r.changeOver, r.changeOverTime, r.taper],
  ]);

/** The fewest packs of every pool that has something to do; each is told when its turn comes. */
export const leastPacks = (r: Rotation, tell?: (pool: RotationPool) => void): readonly LeastPacks[] => {
  const known = memo.get(r);
  if (known) return known;
  const key = contentOf(r);
  const made = last?.key === key ? last.made : findLeast(r, tell);
  last = { key, made };
  memo.set(r, made);
  return made;
};

/** The fewest packs of a pool between its bound and what the plain rule takes. With `asked`, only so far that this many are judged. */
const fewestOf = (r: Rotation, pool: RotationPool, bound: number, most: number, asked?: number): Found => {
  const plain: Found = { packs: most, bound, by: 'rule', day: undefined };
  if (bound === most || pool.exchange || sharesBays(r, pool)) return plain;
  const alone = only(r, pool.id);
  return canFit(r, pool, bound)
    ? fewestFitted(alone, pool, plain, asked)
    : fewestSearched(alone, pool, fewestEarly(alone, bound, most, asked), asked);
};

const findLeast = (r: Rotation, tell?: (pool: RotationPool) => void): readonly LeastPacks[] => {
  const unbounded = rotate(r, () => Number.POSITIVE_INFINITY);
  return r.pools.flatMap((pool): LeastPacks[] => {
    const most = unbounded.used.get(pool.id) ?? 0;
    if (most === 0) return [];
    tell?.(pool);
    const bound = Math.min(most, leastPacksBound(r, pool));
    const f = fewestOf(r, pool, bound, most);
    const all = (id: PoolId, n: number): number => (id === pool.id ? n : Number.POSITIVE_INFINITY);
    const fewer = rotate(r, (id) => all(id, f.packs - 1));
    return [
      {
        pool: pool.id,
        packs: f.packs,
        bound: Math.min(f.bound, f.packs),
        by: f.by,
        day: f.day ?? rotate(r, (id) => all(id, f.packs)),
        fewer: fewer.firstShort && { packs: f.packs - 1, short: fewer.firstShort, dark: fewer.firstDark },
      },
    ];
  });
};

/** One pool's part of a day taken from another day. Only for pools that have their bays to themselves. */
const withPool = (r: Rotation, d: RotationResult, from: RotationResult, pool: PoolId): RotationResult => {
  const own = (x: { readonly unit: number }): boolean => r.units[x.unit]?.pool === pool;
  const shortPools = new Map([...d.shortPools].filter(([id]) => id !== pool));
  const left = [...shortPools.values()];
  return {
    spans: [...d.spans.filter((x) => !own(x)), ...from.spans.filter(own)],
    swaps: [...d.swaps.filter((x) => !own(x)), ...from.swaps.filter(own)],
    bays: [...d.bays.filter((b) => b.pool !== pool), ...from.bays.filter((b) => b.pool === pool)],
    used: new Map([...d.used, [pool, from.used.get(pool) ?? 0]]),
    firstShort: left[0]?.short,
    firstDark: left.find((x) => x.dark)?.dark,
    shortPools,
  };
};

/**
 * The day with so many packs in each pool: by the plain rule; where that leaves a unit waiting, by a schedule found for as few
 * packs or fewer, if there is one. So more packs never make it worse.
 */
export const dayOf = (r: Rotation, supply: (pool: PoolId) => number): RotationResult => {
  let day = rotate(r, supply);
  for (const pool of [...day.shortPools.keys()]) {
    const least = leastPacks(r).find((l) => l.pool === pool);
    if (least && least.by !== 'rule' && least.packs <= supply(pool)) day = withPool(r, day, least.day, pool);
  }
  return day;
};

const played = new WeakMap<Rotation, RotationResult>();

/** The day with the packs at hand. */
export const dayAtHand = (r: Rotation): RotationResult => {
  const known = played.get(r);
  if (known) return known;
  const day = dayOf(r, supplyOf(r));
  played.set(r, day);
  return day;
};

/**
 * Whether `dayOf` with so many packs leaves no unit waiting, found without looking for the fewest: first by the bound, then by a
 * schedule for each pool alone, last by the plain rule.
 */
const through = (r: Rotation, supply: (pool: PoolId) => number): boolean => {
  if (!mayDo(r, supply)) return false;
  const most = packsByRule(r);
  const unsure = r.pools.filter((p) => {
    const rule = most.get(p.id) ?? 0;
    if (rule === 0) return false;
    const n = supply(p.id);
    const f = fewestOf(r, p, Math.min(rule, leastPacksBound(r, p)), rule, n);
    return f.by === 'rule' || f.packs > n;
  });
  if (unsure.length === 0) return true;
  const { shortPools } = rotate(r, supply);
  return unsure.every((p) => !shortPools.has(p.id));
};

/** Whether the packs at hand could get through with a rotation's bays at all, by the bound alone. */
const mayDo = (r: Rotation, supply: (pool: PoolId) => number): boolean =>
  r.pools.every((p) => leastPacksBound(r, p) <= supply(p.id));

/** The fewest bays, the first ones of the rotation, with which the packs at hand get through the day; undefined where all do not. */
export const leastBays = (r: Rotation, supply: (pool: PoolId) => number): number | undefined => {
  const withBays = (bays: number): Rotation => ({ ...r, bays: r.bays.slice(0, bays) });
  const halve = (low: number, high: number, does: (bays: number) => boolean): number => {
    let [from, to] = [low, high];
    while (from < to) {
      const mid = Math.floor((from + to) / 2);
      if (does(mid)) to = mid;
      else from = mid + 1;
    }
    return from;
  };
  const all = r.bays.length;
  if (!through(r, supply)) return undefined;
  // With fewer bays than this the bound alone says no.
  const least = halve(0, all, (bays) => mayDo(withBays(bays), supply));
  return halve(least, all, (bays) => through(withBays(bays), supply));
};
