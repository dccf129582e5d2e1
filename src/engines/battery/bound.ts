import { mostOfOne, restoredMost } from './bound-charges.ts';
import type { Rotation, RotationPool, RotationUnit } from './rotation-types.ts';
import type { PoolId } from './types.ts';

/** Times at which what is drawn changes, and what has been drawn by then. */
interface Mark {
  readonly atMin: number;
  readonly drawn: number;
  readonly atOnce: number;
}

const marksOf = (units: readonly RotationUnit[]): readonly Mark[] => {
  const edges = [...new Set(units.flatMap((u) => u.stretches.flatMap((s) => [s.startMin, s.endMin])))].sort(
    (a, b) => a - b,
  );
  let drawn = 0;
  return edges.map((atMin, i) => {
    const from = edges[i - 1];
    let atOnce = 0;
    for (const u of units)
      for (const s of u.stretches) {
        if (from !== undefined && s.startMin <= from && s.endMin >= atMin)
          drawn += u.count * s.drain * (atMin - from);
        if (s.startMin <= atMin && s.endMin > atMin) atOnce += u.count;
      }
    return { atMin, drawn, atOnce };
  });
};

const EPS = 1e-9;

/**
 * Fewer packs than this never get a pool through the day, whatever the rotation: as many as are on units at once; and for
 * every moment, what has been drawn by then less the most that charges could have given back for use by then
 * (`restoredMost`), over what one pack gives down to the change point.
 */
export const leastPacksBound = (r: Rotation, pool: RotationPool): number => {
  let known = memo.get(r);
  if (!known) {
    known = new Map();
    memo.set(r, known);
  }
  const old = known.get(pool.id);
  if (old !== undefined) return old;
  const bound = boundOf(r, pool);
  known.set(pool.id, bound);
  return bound;
};

const memo = new WeakMap<Rotation, Map<PoolId, number>>();

const boundOf = (r: Rotation, pool: RotationPool): number => {
  const units = r.units.filter((u) => u.pool === pool.id);
  const marks = marksOf(units);
  const gives = 1 - r.swapAt;
  let least = 0;
  for (const m of marks) least = Math.max(least, m.atOnce);
  if (pool.exchange) {
    // Units that are exchanged charge each on its own lead.
    for (const m of marks)
      if (m.drawn > least * gives)
        least = Math.max(least, Math.ceil(m.drawn / mostOfOne(r, pool, units, m.atMin) - EPS));
    return least;
  }
  for (const m of marks) {
    // Where even without any charging no more packs are asked for, there is nothing to look into.
    if (Math.ceil(m.drawn / gives - EPS) <= least) continue;
    least = Math.max(least, Math.ceil((m.drawn - restoredMost(r, pool, units, m.atMin)) / gives - EPS));
  }
  return least;
};
