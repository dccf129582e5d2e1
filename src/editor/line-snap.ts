import RBush from 'rbush';
import { lineEnds } from '../drawing/underlay.ts';
import { type Box, distanceMm, type Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { underlaysOn } from '../plan/edits/underlays.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { Underlay } from '../plan/records/index.ts';
import type { SnapTargets } from './snap-targets.ts';

interface Entry extends Box {
  readonly at: Point;
}

const trees = new WeakMap<Underlay, RBush<Entry>>();

/** Ends of an underlay's lines by place; made when they are first asked for. */
const treeOf = (plan: Plan, u: Underlay): RBush<Entry> | undefined => {
  const known = trees.get(u);
  if (known) return known;
  const blob = recordOf(plan, 'blob', u.blobId);
  if (!blob) return undefined;
  const tree = new RBush<Entry>();
  tree.load(lineEnds(u, blob).map((at) => ({ minX: at.xMm, maxX: at.xMm, minY: at.yMm, maxY: at.yMm, at })));
  trees.set(u, tree);
  return tree;
};

/** The end of a line laid under the floor that is nearest to a spot, within reach. */
export const lineEndNear = (plan: Plan, floorId: Id, at: Point, reachMm: number): Point | undefined => {
  let found: Point | undefined;
  let off = reachMm;
  for (const u of underlaysOn(plan, floorId)) {
    if (u.what !== 'lines' || u.hidden) continue;
    const near = treeOf(plan, u)?.search({
      minX: at.xMm - reachMm,
      minY: at.yMm - reachMm,
      maxX: at.xMm + reachMm,
      maxY: at.yMm + reachMm,
    });
    for (const e of near ?? []) {
      const d = distanceMm(e.at, at);
      if (d <= off) {
        off = d;
        found = e.at;
      }
    }
  }
  return found;
};

/** What can be snapped to, with the nearest end of a line laid under the floor. */
export const withLineEnd = (
  targets: SnapTargets,
  plan: Plan,
  floorId: Id,
  at: Point,
  reachMm: number,
): SnapTargets => {
  const end = lineEndNear(plan, floorId, at, reachMm);
  return end ? { ...targets, points: [...targets.points, end] } : targets;
};
