import { leastPacksBound } from './bound.ts';
import { rotate } from './rotate.ts';
import type { FirstDark, FirstShort, Rotation, RotationPool, RotationResult } from './rotation-types.ts';
import { searchSchedule } from './search.ts';
import type { PoolId } from './types.ts';

/** Days no larger than this are searched through; larger ones have the plain rule and the bound. */
const SMALL = { units: 5, packs: 7, bays: 3 } as const;

/** The fewest packs of one pool that get through the day. */
export interface LeastPacks {
  readonly pool: PoolId;
  readonly packs: number;
  /** No rotation does with fewer than this. Where it is less than `packs`, it is not known what lies between. */
  readonly bound: number;
  /** Found by the plain rule, or by looking through all schedules. */
  readonly by: 'rule' | 'search';
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

/** Whether a pool is small enough to look through all its schedules, and has its bays to itself. */
const isSmall = (r: Rotation, pool: RotationPool, packs: number): boolean => {
  const active = r.units.filter((u) => u.stretches.length > 0);
  const own = active.filter((u) => u.pool === pool.id);
  const bays = r.bays.filter((b) => b.pools.has(pool.id));
  const shared = active.some((u) => u.pool !== pool.id && bays.some((b) => b.pools.has(u.pool)));
  return (
    !pool.exchange &&
    !shared &&
    own.length <= SMALL.units &&
    own.every((u) => u.count === 1) &&
    packs <= SMALL.packs &&
    bays.length <= SMALL.bays
  );
};

/**
 * The day with so many packs in each pool: by the plain rule, and where that leaves a unit dark and the day is small, by a
 * schedule that does not, if there is one.
 */
export const dayOf = (r: Rotation, supply: (pool: PoolId) => number): RotationResult => {
  const plain = rotate(r, supply);
  if (!plain.firstShort) return plain;
  const pools = r.pools.filter((p) => r.units.some((u) => u.pool === p.id && u.stretches.length > 0));
  const [pool] = pools;
  const packs = pool ? supply(pool.id) : 0;
  if (!pool || pools.length > 1 || !isSmall(r, pool, packs)) return plain;
  const found = searchSchedule(r, pool, packs);
  return typeof found === 'string' ? plain : found;
};

/** Packs of every pool with which the plain rule gets through the day. */
export const packsByRule = (r: Rotation): ReadonlyMap<PoolId, number> =>
  rotate(r, () => Number.POSITIVE_INFINITY).used;

/** The fewest packs of every pool that has something to do. */
export const leastPacks = (r: Rotation): readonly LeastPacks[] => {
  const unbounded = rotate(r, () => Number.POSITIVE_INFINITY);
  return r.pools.flatMap((pool) => {
    const most = unbounded.used.get(pool.id) ?? 0;
    if (most === 0) return [];
    let bound = leastPacksBound(r, pool);
    let found: RotationResult | undefined;
    let packs = most;
    for (let n = bound; n < most && isSmall(r, pool, n); n++) {
      const answer = searchSchedule(only(r, pool.id), pool, n);
      if (answer === 'given-up') continue;
      if (answer === 'none') {
        if (bound === n) bound = n + 1;
        continue;
      }
      found = answer;
      packs = n;
      break;
    }
    const all = (id: PoolId, n: number): number => (id === pool.id ? n : Number.POSITIVE_INFINITY);
    const fewer = packs > 0 ? rotate(r, (id) => all(id, packs - 1)) : undefined;
    return [
      {
        pool: pool.id,
        packs,
        bound: Math.min(bound, packs),
        by: found ? 'search' : 'rule',
        day: found ?? rotate(r, (id) => all(id, packs)),
        fewer: fewer?.firstShort && { packs: packs - 1, short: fewer.firstShort, dark: fewer.firstDark },
      } satisfies LeastPacks,
    ];
  });
};

/** The fewest bays, the first ones of the rotation, with which the packs at hand get through the day; undefined where all do not. */
export const leastBays = (r: Rotation, supply: (pool: PoolId) => number): number | undefined => {
  const through = (bays: number): boolean =>
    dayOf({ ...r, bays: r.bays.slice(0, bays) }, supply).firstShort === undefined;
  if (!through(r.bays.length)) return undefined;
  let [low, high] = [0, r.bays.length];
  while (low < high) {
    const mid = Math.floor((low + high) / 2);
    if (through(mid)) high = mid;
    else low = mid + 1;
  }
  return low;
};
