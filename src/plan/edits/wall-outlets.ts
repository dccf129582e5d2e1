import {
  add,
  angleDeg,
  distanceMm,
  dot,
  nearestOnSegment,
  normaliseDeg,
  type Point,
  point,
  scale,
  sub,
} from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Draft } from '../change-set.ts';
import { peekChanges } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Outlet, Wall } from '../records/index.ts';
import { alongWall, faceNear } from './openings.ts';
import { rerouteCables } from './shared.ts';

/** An outlet dragged this near to a wall's face stays on it, or goes onto it. */
const HOLD_MM = 400;

/** An outlet farther from its place on the wall is not on it. */
const OFF_WALL_MM = 20;

/** A spot on a wall's face: so far along it, on its left (1) or right (−1) seen from its start with y running down. */
const onFace = (w: Wall, offsetMm: number, side: 1 | -1): Point => {
  const l = distanceMm(w.from, w.to) || 1;
  const d = scale(sub(w.to, w.from), 1 / l);
  const t = Math.max(0, Math.min(l, offsetMm));
  return add(add(w.from, scale(d, t)), scale(point(d.yMm, -d.xMm), (side * w.thicknessMm) / 2));
};

const sideOf = (w: Wall, at: Point): 1 | -1 => {
  const d = sub(w.to, w.from);
  return dot(sub(at, w.from), point(d.yMm, -d.xMm)) >= 0 ? 1 : -1;
};

/** Ties an outlet to the wall it is on: it then goes where the wall goes. */
export const tiedTo = (o: Outlet, wall: Wall, at: Point): Outlet => {
  const face = faceNear(wall, at);
  const l = distanceMm(wall.from, wall.to);
  const offsetMm = Math.max(0, Math.min(l, alongWall(wall, at)));
  return { ...o, at: face.at, rotationDeg: face.outDeg, wallId: wall.id, offsetMm };
};

/** An outlet that stands by itself at a spot. */
const freed = (o: Outlet, at: Point): Outlet => {
  const { wallId: _wall, offsetMm: _offset, ...bare } = o;
  return { ...bare, at };
};

/** An outlet on a wall after it was dragged: it slides along its wall, changes to another one near, or lets go. */
export const slideOutlet = (plan: Plan, o: Outlet, by: Point): Outlet => {
  const to = add(o.at, by);
  const off = (w: Wall): number => distanceMm(to, nearestOnSegment(to, w.from, w.to).at) - w.thicknessMm / 2;
  const own = o.wallId === undefined ? undefined : recordOf(plan, 'wall', o.wallId);
  if (own && off(own) <= HOLD_MM / 2) return tiedTo(o, own, to);
  const [near] = recordsOf(plan, 'wall')
    .filter((w) => w.floorId === o.floorId && off(w) <= HOLD_MM)
    .sort((a, b) => off(a) - off(b));
  return near ? tiedTo(o, near, to) : freed(o, to);
};

/**
 * Brings outlets to where their walls are in the draft; those whose wall goes let go of it. Their automatic cables
 * follow. Gives the outlets that moved.
 */
export const outletsFollow = (draft: Draft, plan: Plan): ReadonlySet<Id> => {
  const moved = new Set<Id>();
  for (const o of recordsOf(plan, 'outlet')) {
    const now = draft.get(o.id);
    if (o.wallId === undefined || now?.type !== 'outlet' || now.wallId !== o.wallId) continue;
    const before = recordOf(plan, 'wall', o.wallId);
    const after = draft.get(o.wallId);
    if (after?.type !== 'wall') {
      draft.put(freed(now, now.at));
      continue;
    }
    if (!before || after === before) continue;
    // One that was put elsewhere by other means is no longer on its wall.
    if (
      distanceMm(onFace(before, o.offsetMm ?? alongWall(before, o.at), sideOf(before, o.at)), o.at) >
      OFF_WALL_MM
    ) {
      draft.put(freed(now, now.at));
      continue;
    }
    const offsetMm = Math.min(o.offsetMm ?? alongWall(before, o.at), distanceMm(after.from, after.to));
    const turn = angleDeg(after.from, after.to) - angleDeg(before.from, before.to);
    draft.put({
      ...now,
      at: onFace(after, offsetMm, sideOf(before, o.at)),
      offsetMm,
      rotationDeg: normaliseDeg(o.rotationDeg + turn),
    });
    moved.add(o.id);
  }
  return moved;
};

/** As `outletsFollow`, with the automatic cables of those outlets laid anew. */
export const outletsFollowWithCables = (draft: Draft, plan: Plan): void => {
  const moved = outletsFollow(draft, plan);
  if (moved.size > 0) rerouteCables(draft, peekChanges(plan, draft.changes()), moved);
};
