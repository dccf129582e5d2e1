import type { Point } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Draft } from '../change-set.ts';
import type { Kind } from '../kinds/kinds.ts';
import { type Plan, recordsOf } from '../plan.ts';
import { placeOf } from '../ports.ts';
import type { AnyRecord } from '../records/index.ts';
import { routeBetween } from '../route.ts';
import { handLaidFollow } from './corners.ts';

/** Puts a kind into the plan unless it is there already. */
export const ensureKind = (draft: Draft, kind: Kind): void => {
  if (!draft.get(kind.id)) draft.put(kind);
};

/** Re-routes automatic cables that end at any of these records; ways laid by hand follow. `after` is the plan with them moved. */
export const rerouteCables = (draft: Draft, after: Plan, moved: ReadonlySet<Id>): void => {
  for (const r of recordsOf(after, 'cable')) {
    if (!r.route.auto) continue;
    if (!moved.has(r.from.recordId) && !moved.has(r.to.recordId)) continue;
    const from = placeOf(after, r.from.recordId);
    const to = placeOf(after, r.to.recordId);
    if (from && to) draft.put({ ...r, route: { ...r.route, points: [...routeBetween(after, from, to)] } });
  }
  handLaidFollow(draft, after, moved);
};

/** A record moved by a distance; records without a place of their own come back as they are. */
export const shifted = <R extends AnyRecord>(r: R, by: Point): R => {
  const move = (p: Point): Point => ({ ...p, xMm: p.xMm + by.xMm, yMm: p.yMm + by.yMm });
  if ('at' in r && typeof r.at === 'object') return { ...r, at: move(r.at as Point) };
  if (r.type === 'wall') return { ...r, from: move(r.from), to: move(r.to) };
  if (r.type === 'feature') return { ...r, points: r.points.map(move) };
  if (r.type === 'cable') return { ...r, route: { auto: false, points: r.route.points.map(move) } };
  return r;
};
