import { fastestCharge } from './charge.ts';
import type { Rotation, RotationPool } from './rotation-types.ts';

/** Times at which what is drawn changes, and what has been drawn by then. */
interface Mark {
  readonly atMin: number;
  readonly drawn: number;
  readonly atOnce: number;
}

const marksOf = (r: Rotation, pool: RotationPool): readonly Mark[] => {
  const units = r.units.filter((u) => u.pool === pool.id);
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

/**
 * Fewer packs than this never get a pool through the day, whatever the rotation: as many as are on units at once; and at every
 * moment, what has been drawn by then less the most that whole charges in all bays could have given back since the first minute,
 * over what one pack gives down to the change point.
 */
export const leastPacksBound = (r: Rotation, pool: RotationPool): number => {
  const marks = marksOf(r, pool);
  const first = marks[0]?.atMin ?? 0;
  // Units that are exchanged charge each on its own lead, so that every one of them brings its bay along.
  const each = pool.exchange ? fastestCharge(r, pool.chargeMin) : 0;
  const perMin = pool.exchange
    ? 0
    : r.bays
        .filter((b) => b.pools.has(pool.id))
        .reduce((sum, b) => sum + fastestCharge(r, pool.chargeMin * (b.slower.get(pool.id) ?? 1)), 0);
  let least = 0;
  for (const m of marks) {
    const charged = m.atMin > first ? perMin * (m.atMin - first) : 0;
    least = Math.max(
      least,
      m.atOnce,
      Math.ceil((m.drawn - charged) / (1 - r.swapAt + each * (m.atMin - first)) - 1e-9),
    );
  }
  return least;
};
