import type { Point } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Draft } from '../change-set.ts';
import { type Plan, recordsOf } from '../plan.ts';
import { placeOf } from '../ports.ts';

/** A corner this near to the level or the upright of an end was drawn square to it. */
const SQUARE_MM = 20;
/** Ends that went this much alike went together. */
const ALIKE_MM = 1;

interface Ends {
  readonly from: Point;
  readonly to: Point;
}

const by = (a: Point, b: Point): Point => ({ xMm: b.xMm - a.xMm, yMm: b.yMm - a.yMm });
const moved = (p: Point, d: Point): Point => ({ xMm: p.xMm + d.xMm, yMm: p.yMm + d.yMm });
const still = (d: Point): boolean => d.xMm === 0 && d.yMm === 0;

/** The corner next to an end that went by `d`: what lay square to it is square to it again. */
const squared = (corner: Point, end: Point, d: Point): Point => {
  const level = Math.abs(corner.yMm - end.yMm) <= SQUARE_MM;
  const upright = Math.abs(corner.xMm - end.xMm) <= SQUARE_MM;
  if (level === upright) return corner;
  return level ? { ...corner, yMm: corner.yMm + d.yMm } : { ...corner, xMm: corner.xMm + d.xMm };
};

/**
 * Corners of a way laid by hand after its ends went elsewhere, in mm. Where both ends went the same way, all corners go
 * along; where one did, the corner beside it slides so that the way leaves the end as it did.
 */
export const cornersAfter = (points: readonly Point[], was: Ends, now: Ends): readonly Point[] => {
  const [a, z] = [by(was.from, now.from), by(was.to, now.to)];
  if ((still(a) && still(z)) || points.length === 0) return points;
  if (Math.hypot(a.xMm - z.xMm, a.yMm - z.yMm) < ALIKE_MM) return points.map((p) => moved(p, a));
  const next = [...points];
  const first = next[0];
  if (first && !still(a)) next[0] = squared(first, was.from, a);
  const last = next.at(-1);
  const old = points.at(-1);
  if (last && old && !still(z)) {
    // A single corner may be beside both ends: each moves what is square to it.
    const slid = squared(old, was.to, z);
    next[next.length - 1] = moved(last, by(old, slid));
  }
  return next;
};

/** Lets the ways laid by hand of cables and data lines follow what went elsewhere. `after` is the plan with it there. */
export const handLaidFollow = (draft: Draft, after: Plan, went: ReadonlySet<Id>): void => {
  const before = draft.base;
  const ends = (plan: Plan, fromId: Id, toId: Id): Ends | undefined => {
    const [from, to] = [placeOf(plan, fromId), placeOf(plan, toId)];
    return from && to ? { from: from.at, to: to.at } : undefined;
  };
  const follow = (points: readonly Point[], fromId: Id, toId: Id): readonly Point[] => {
    if (!went.has(fromId) && !went.has(toId)) return points;
    const [was, now] = [ends(before, fromId, toId), ends(after, fromId, toId)];
    return was && now ? cornersAfter(points, was, now) : points;
  };
  for (const c of recordsOf(after, 'cable')) {
    // A cable that is moved as such has gone already.
    if (c.route.auto || c.locked || draft.get(c.id) !== before.records.get(c.id)) continue;
    const points = follow(c.route.points, c.from.recordId, c.to.recordId);
    if (points !== c.route.points) draft.put({ ...c, route: { ...c.route, points: [...points] } });
  }
  for (const l of recordsOf(after, 'line')) {
    if (l.routes.length === 0 || l.locked) continue;
    const routes = l.routes.map((r) => {
      const fromId = r.hop === 0 ? l.from.recordId : (l.stops[r.hop - 1] ?? '');
      const points = follow(r.points, fromId, l.stops[r.hop] ?? '');
      return points === r.points ? r : { ...r, points: [...points] };
    });
    if (routes.some((r, i) => r !== l.routes[i])) draft.put({ ...l, routes });
  }
};
