import { roomFaces } from '../drawing/room-faces.ts';
import { add, boxOf, direction, type Point, point, scale } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { facingOf } from '../plan/edits/arrange.ts';
import { hangLine } from '../plan/edits/hang.ts';
import { fixturePlace, type Plan, recordsOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { Wall } from '../plan/records/index.ts';

/** What a drag can snap to on one floor. */
export interface SnapTargets {
  /** Wall corners and other units' centres: a dragged centre can land on them. */
  readonly points: readonly Point[];
  /** Faces of walls. */
  readonly faces: readonly { readonly from: Point; readonly to: Point }[];
  /** Centres that a dragged centre can line up with, straight across or straight down. */
  readonly centers: readonly Point[];
  /** Centre lines: of walls, of tubes and truss, through the middles of rooms. */
  readonly lines?: readonly { readonly from: Point; readonly to: Point }[];
  /** Lines that units point along. */
  readonly rays?: readonly { readonly from: Point; readonly deg: number }[];
}

/** The two long faces of a wall. */
export const wallFaces = (w: Wall): readonly { readonly from: Point; readonly to: Point }[] => {
  const long = Math.hypot(w.to.xMm - w.from.xMm, w.to.yMm - w.from.yMm);
  if (long < 1) return [];
  const nx = (-(w.to.yMm - w.from.yMm) / long) * (w.thicknessMm / 2);
  const ny = ((w.to.xMm - w.from.xMm) / long) * (w.thicknessMm / 2);
  return [1, -1].map((side) => ({
    from: point(w.from.xMm + nx * side, w.from.yMm + ny * side),
    to: point(w.to.xMm + nx * side, w.to.yMm + ny * side),
  }));
};

/** Where the faces of two walls meet, when they are not near parallel and the spot is at the end of both. */
const corner = (
  a: { from: Point; to: Point },
  b: { from: Point; to: Point },
  reach: number,
): Point | undefined => {
  const ax = a.to.xMm - a.from.xMm;
  const ay = a.to.yMm - a.from.yMm;
  const bx = b.to.xMm - b.from.xMm;
  const by = b.to.yMm - b.from.yMm;
  const det = ax * by - ay * bx;
  if (Math.abs(det) < 0.1 * Math.hypot(ax, ay) * Math.hypot(bx, by)) return undefined;
  const t = ((b.from.xMm - a.from.xMm) * by - (b.from.yMm - a.from.yMm) * bx) / det;
  const p = point(a.from.xMm + ax * t, a.from.yMm + ay * t);
  const near = (q: Point): boolean => Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm) <= reach;
  return (near(a.from) || near(a.to)) && (near(b.from) || near(b.to)) ? p : undefined;
};

const known = new WeakMap<Plan, Map<string, SnapTargets>>();

/** Everything on a floor to snap to, the records that move left out. The same while the plan is the same. */
export const snapTargets = (plan: Plan, floorId: Id, moving: ReadonlySet<Id>): SnapTargets => {
  const key = `${floorId}|${[...moving].join()}`;
  const byKey = known.get(plan) ?? new Map<string, SnapTargets>();
  known.set(plan, byKey);
  const made = byKey.get(key) ?? findTargets(plan, floorId, moving);
  byKey.set(key, made);
  return made;
};

/** Lines through the middle of a room, across and down, as long as it is. */
const roomMiddles = (walls: readonly Wall[]): NonNullable<SnapTargets['lines']> =>
  roomFaces(walls).flatMap(({ inside }) => {
    const b = boxOf(inside);
    const [x, y] = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
    return [
      { from: point(b.minX, y), to: point(b.maxX, y) },
      { from: point(x, b.minY), to: point(x, b.maxY) },
    ];
  });

/** A facing along the page's own axes is met by its centre already. */
const isSlanted = (deg: number): boolean => Math.abs((((deg % 90) + 135) % 90) - 45) > 0.5;

const findTargets = (plan: Plan, floorId: Id, moving: ReadonlySet<Id>): SnapTargets => {
  const walls = recordsOf(plan, 'wall').filter((w) => w.floorId === floorId && !moving.has(w.id));
  const faces = walls.flatMap(wallFaces);
  const points: Point[] = [];
  walls.forEach((w, i) => {
    for (const v of walls.slice(i + 1)) {
      for (const a of wallFaces(w)) {
        for (const b of wallFaces(v)) {
          const p = corner(a, b, w.thicknessMm + v.thicknessMm);
          if (p) points.push(p);
        }
      }
    }
  });
  const centers: Point[] = [];
  for (const r of plan.records.values()) {
    if (moving.has(r.id) || r.hidden) continue;
    if (r.type === 'mark' || r.type === 'setPiece') {
      if (r.floorId === floorId) centers.push(r.at);
    } else {
      const place = placeOf(plan, r.id);
      if (place?.floorId === floorId) centers.push(place.at);
    }
  }
  const lines = [
    ...walls.map(({ from, to }) => ({ from, to })),
    ...roomMiddles(walls),
    ...recordsOf(plan, 'rigging').flatMap((r) => {
      const line = r.floorId === floorId && !moving.has(r.id) ? hangLine(plan, r) : undefined;
      return line ? [{ from: line.start, to: add(line.start, scale(line.along, line.lengthMm)) }] : [];
    }),
  ];
  const rays = recordsOf(plan, 'fixture').flatMap((f) => {
    const deg = f.floorId === floorId && !moving.has(f.id) ? facingOf(plan, f) : 0;
    return isSlanted(deg) ? [{ from: fixturePlace(plan, f).at, deg }] : [];
  });
  return { points, faces, centers, lines, rays };
};

/** A point so far along a direction in degrees. */
export const along = (from: Point, deg: number, mm: number): Point => {
  const d = direction(deg);
  return point(from.xMm + d.xMm * mm, from.yMm + d.yMm * mm);
};
