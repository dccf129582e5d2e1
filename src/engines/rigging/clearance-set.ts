import { add, distanceMm, nearestOnSegment, type Point, point, rotate } from '../../kernel/geometry.ts';
import { type Plan, recordsOf } from '../../plan/plan.ts';
import type { SetPiece } from '../../plan/records/index.ts';
import { legsFit, type Solid } from './clearance.ts';
import type { StandUse } from './model.ts';

/** Furniture and scenery that stands on the floor, by its corners. */
export interface Obstacle {
  readonly piece: SetPiece;
  readonly corners: readonly Point[];
}

const ROUND_CORNERS = 16;
/** Room kept to a side, so that a leg that crosses it is one that meets it. */
const EDGE_MM = 1;

const cornersOf = (s: SetPiece): readonly Point[] => {
  const o = s.outline;
  const own: readonly Point[] =
    o.shape === 'polygon'
      ? o.points
      : o.shape === 'rect'
        ? [
            point(-o.lengthMm / 2, -o.widthMm / 2),
            point(o.lengthMm / 2, -o.widthMm / 2),
            point(o.lengthMm / 2, o.widthMm / 2),
            point(-o.lengthMm / 2, o.widthMm / 2),
          ]
        : Array.from({ length: ROUND_CORNERS }, (_, i) => {
            const a = (2 * Math.PI * i) / ROUND_CORNERS;
            return point((o.lengthMm / 2) * Math.cos(a), (o.widthMm / 2) * Math.sin(a));
          });
  return own.map((p) => add(s.at, rotate(p, s.rotationDeg)));
};

/** Set pieces that legs cannot lie over: not drawn as hidden or on the ground, and not lower than `leastMm`. */
export const obstaclesOf = (plan: Plan, leastMm: number): ReadonlyMap<string, readonly Obstacle[]> => {
  const out = new Map<string, Obstacle[]>();
  for (const piece of recordsOf(plan, 'setPiece')) {
    if (piece.line !== 'solid' || (piece.heightMm > 0 && piece.heightMm < leastMm)) continue;
    out.set(piece.floorId, [...(out.get(piece.floorId) ?? []), { piece, corners: cornersOf(piece) }]);
  }
  return out;
};

const inside = (p: Point, corners: readonly Point[]): boolean => {
  let odd = false;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length] ?? a;
    if (
      a.yMm > p.yMm !== b.yMm > p.yMm &&
      p.xMm < a.xMm + ((p.yMm - a.yMm) / (b.yMm - a.yMm)) * (b.xMm - a.xMm)
    )
      odd = !odd;
  });
  return odd;
};

const sidesOf = (o: Obstacle): readonly Solid[] =>
  o.corners.map((a, i) => ({ a, b: o.corners[(i + 1) % o.corners.length] ?? a, halfMm: EDGE_MM }));

/**
 * Set pieces that a stand's column is in, and those its legs meet however it is turned between them and the walls. A
 * piece that the walls alone leave no room for says nothing more.
 */
export const piecesMet = (
  use: StandUse,
  obstacles: readonly Obstacle[],
  walls: readonly Solid[],
): readonly { readonly piece: SetPiece; readonly how: 'in' | 'legs' }[] => {
  const { at } = use.stand;
  const reach = use.kind.legCircleMm / 2;
  const within = obstacles.filter((o) => inside(at, o.corners));
  const out = within.map((o) => ({ piece: o.piece, how: 'in' as const }));
  const near = obstacles.filter(
    (o) =>
      !within.includes(o) &&
      sidesOf(o).some((s) => distanceMm(at, nearestOnSegment(at, s.a, s.b).at) < reach),
  );
  const [first] = near;
  if (!first || !legsFit(use, walls) || legsFit(use, [...walls, ...near.flatMap(sidesOf)])) return out;
  return [...out, { piece: first.piece, how: 'legs' as const }];
};
