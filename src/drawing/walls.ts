import {
  add,
  type Box,
  boxesMeet,
  boxOf,
  distanceMm,
  dot,
  growBox,
  lerp,
  nearestOnSegment,
  type Point,
  point,
  scale,
  sub,
} from '../kernel/geometry.ts';
import type { Opening, Wall } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { itemOf, pen, polyPath, WEIGHT } from './prims.ts';

/** A wall as a solid: corners left and right of its line at both ends, and whether an end is free. */
export interface WallSolid {
  readonly wall: Wall;
  readonly along: Point;
  readonly lengthMm: number;
  readonly startLeft: Point;
  readonly startRight: Point;
  readonly endLeft: Point;
  readonly endRight: Point;
  readonly startFree: boolean;
  readonly endFree: boolean;
  readonly box: Box;
}

const unit = (a: Point, b: Point): Point => {
  const l = distanceMm(a, b);
  return l === 0 ? point(1, 0) : scale(sub(b, a), 1 / l);
};

/** Left of a direction as seen on the drawing, y running down. */
export const leftOf = (d: Point): Point => point(d.yMm, -d.xMm);

const meet = (p: Point, d: Point, q: Point, e: Point): Point | undefined => {
  const den = d.xMm * e.yMm - d.yMm * e.xMm;
  if (Math.abs(den) < 1e-6) return undefined;
  const t = ((q.xMm - p.xMm) * e.yMm - (q.yMm - p.yMm) * e.xMm) / den;
  return add(p, scale(d, t));
};

interface End {
  readonly left: Point;
  readonly right: Point;
  readonly free: boolean;
}

/** The end of a wall, looking outwards along `out`: mitred with one neighbour, run on under several, square when free. */
const endOf = (wall: Wall, at: Point, out: Point, others: readonly Wall[]): End => {
  const half = wall.thicknessMm / 2;
  const n = leftOf(out);
  const square = (by: number, free: boolean): End => ({
    left: add(add(at, scale(out, by)), scale(n, half)),
    right: sub(add(at, scale(out, by)), scale(n, half)),
    free,
  });
  const joined = others.flatMap((o) => {
    const reach = Math.max(o.thicknessMm, wall.thicknessMm) / 2 + 1;
    if (distanceMm(o.from, at) <= reach) return [{ o, away: unit(o.from, o.to), at: o.from }];
    if (distanceMm(o.to, at) <= reach) return [{ o, away: unit(o.to, o.from), at: o.to }];
    return [];
  });
  const [first, second] = joined;
  if (!first) {
    const inside = others.some(
      (o) => distanceMm(nearestOnSegment(at, o.from, o.to).at, at) < o.thicknessMm / 2,
    );
    return square(0, !inside);
  }
  if (second) return square(half, false);
  const turn = dot(first.away, out);
  if (Math.abs(turn) > 0.985) return square(turn > 0 ? 0 : half, false);
  const m = leftOf(first.away);
  const other = first.o.thicknessMm / 2;
  // Looking along `out` and then on along `away`, left stays left.
  const left = meet(add(at, scale(n, half)), out, add(first.at, scale(m, other)), first.away);
  const right = meet(sub(at, scale(n, half)), out, sub(first.at, scale(m, other)), first.away);
  return left && right ? { left, right, free: false } : square(0, false);
};

export const wallSolid = (wall: Wall, others: readonly Wall[]): WallSolid => {
  const along = unit(wall.from, wall.to);
  const back = endOf(wall, wall.from, scale(along, -1), others);
  const fore = endOf(wall, wall.to, along, others);
  return {
    wall,
    along,
    lengthMm: distanceMm(wall.from, wall.to),
    // Looking backwards left and right change sides.
    startLeft: back.right,
    startRight: back.left,
    endLeft: fore.left,
    endRight: fore.right,
    startFree: back.free,
    endFree: fore.free,
    box: boxOf([back.left, back.right, fore.left, fore.right]),
  };
};

const wallBox = (w: Wall): Box => growBox(boxOf([w.from, w.to]), w.thicknessMm);

/** Walls that touch this one. */
export const touching = (wall: Wall, walls: readonly Wall[]): readonly Wall[] => {
  const box = wallBox(wall);
  return walls.filter((o) => o !== wall && boxesMeet(box, wallBox(o)));
};

/** Stretches of a wall that are solid, as distances from its start. */
export const solidStretches = (
  lengthMm: number,
  openings: readonly Opening[],
): readonly (readonly [number, number])[] => {
  const out: [number, number][] = [];
  let from = 0;
  for (const o of openings) {
    const start = Math.max(from, Math.min(lengthMm, o.offsetMm));
    if (start - from > 0.5) out.push([from, start]);
    from = Math.max(from, Math.min(lengthMm, o.offsetMm + o.widthMm));
  }
  if (lengthMm - from > 0.5) out.push([from, lengthMm]);
  return out;
};

/** Solid pieces of a wall as quads: start left, end left, end right, start right. */
export const wallPieces = (
  s: WallSolid,
  openings: readonly Opening[],
): readonly {
  readonly quad: readonly [Point, Point, Point, Point];
  readonly caps: readonly [boolean, boolean];
}[] => {
  const n = scale(leftOf(s.along), s.wall.thicknessMm / 2);
  const at = (t: number): Point => add(s.wall.from, scale(s.along, t));
  return solidStretches(s.lengthMm, openings).map(([a, b]) => {
    const first = a === 0;
    const last = b === s.lengthMm;
    return {
      quad: [
        first ? s.startLeft : add(at(a), n),
        last ? s.endLeft : add(at(b), n),
        last ? s.endRight : sub(at(b), n),
        first ? s.startRight : sub(at(a), n),
      ],
      caps: [first ? s.startFree : true, last ? s.endFree : true],
    };
  });
};

/** What is left of segment ab outside a convex quad, as parameter ranges. */
const outside = (
  a: Point,
  b: Point,
  quad: readonly Point[],
  ranges: readonly (readonly [number, number])[],
): readonly (readonly [number, number])[] => {
  let t0 = 0;
  let t1 = 1;
  const d = sub(b, a);
  const c = boxOf(quad);
  const centre = point((c.minX + c.maxX) / 2, (c.minY + c.maxY) / 2);
  for (let i = 0; i < quad.length; i++) {
    const p = quad[i] ?? a;
    const q = quad[(i + 1) % quad.length] ?? a;
    const e = sub(q, p);
    let n = point(e.yMm, -e.xMm);
    if (dot(n, sub(centre, p)) > 0) n = scale(n, -1);
    const size = Math.hypot(n.xMm, n.yMm) || 1;
    // A millimetre of play keeps lines that only touch.
    const over = dot(n, sub(a, p)) / size + 1;
    const slope = dot(n, d) / size;
    if (Math.abs(slope) < 1e-9) {
      if (over > 0) return ranges;
    } else if (slope > 0) t1 = Math.min(t1, -over / slope);
    else t0 = Math.max(t0, -over / slope);
  }
  if (t1 <= t0) return ranges;
  return ranges.flatMap(([x, y]) =>
    [[x, Math.min(y, t0)] as const, [Math.max(x, t1), y] as const].filter(([p, q]) => q - p > 1e-6),
  );
};

export const wallItem = (ctx: DrawContext, wall: Wall): DisplayItem | undefined => {
  const { walls, openings: allOpenings } = ctx.index.architecture;
  const near = touching(wall, walls);
  const far = [...new Set(near.flatMap((w) => touching(w, walls)))].filter((w) => w !== wall);
  const openings = allOpenings.get(wall.id) ?? [];
  const nearOpenings = near.map((w) => allOpenings.get(w.id) ?? []);
  const deps = [...near, null, ...far, null, ...openings, ...nearOpenings.flat()];
  return memoItem(wall, `wall|${ctx.nominalScale}`, deps, () => {
    const solid = wallSolid(wall, near);
    const quads = near.flatMap((w, i) =>
      wallPieces(wallSolid(w, touching(w, walls)), nearOpenings[i] ?? []).map((p) => p.quad),
    );
    const primitives: Primitive[] = [];
    for (const { quad, caps } of wallPieces(solid, openings)) {
      primitives.push({
        kind: 'path',
        d: polyPath(quad, true),
        fill: { role: 'wall', hatch: { angleDeg: -45, spacingMm: 1, weightMm: WEIGHT.thin } },
      });
      const [a, b, c, d] = quad;
      const edges: (readonly [Point, Point])[] = [
        [a, b],
        [d, c],
      ];
      if (caps[0]) edges.push([a, d]);
      if (caps[1]) edges.push([b, c]);
      for (const [p, q] of edges) {
        let ranges: readonly (readonly [number, number])[] = [[0, 1]];
        for (const other of quads) ranges = outside(p, q, other, ranges);
        for (const [x, y] of ranges) {
          primitives.push({
            kind: 'path',
            d: polyPath([lerp(p, q, x), lerp(p, q, y)], false),
            stroke: pen('wall', WEIGHT.wall),
          });
        }
      }
    }
    return itemOf(`wall:${wall.id}`, wall.id, 'architecture', ctx.nominalScale, primitives);
  });
};
