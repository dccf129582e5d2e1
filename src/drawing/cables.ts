import { add, distanceMm, type Point, scale, sub } from '../kernel/geometry.ts';
import { kindOf, recordsOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { Cable } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, PathCommand } from './display-list.ts';
import { assignLanes, type Laned, shifted } from './lanes.ts';
import { itemOf, pen, WEIGHT } from './prims.ts';

/** Radius of a bend, in paper millimetres. */
export const BEND_MM = 1.2;

interface Run extends Laned {
  readonly cable: Cable;
}

/** Cables with an end on this floor, as points from outlet to inlet. */
const runsOf = (ctx: DrawContext): Run[] =>
  recordsOf(ctx.plan, 'cable').flatMap((cable) => {
    if (cable.hidden || (ctx.only && !ctx.only.has(cable.id))) return [];
    const from = placeOf(ctx.plan, cable.from.recordId);
    const to = placeOf(ctx.plan, cable.to.recordId);
    if (!from || !to || from.floorId !== ctx.floorId || to.floorId !== ctx.floorId) return [];
    const points = [from.at, ...cable.route.points, to.at].filter(
      (p, i, all) => i === 0 || distanceMm(p, all[i - 1] ?? p) > 1,
    );
    return points.length < 2 ? [] : [{ cable, points, lanes: points.slice(1).map(() => 0) }];
  });

/** A polyline with its corners rounded. */
export const roundedPath = (points: readonly Point[], radiusMm: number): PathCommand[] => {
  const d: PathCommand[] = [];
  points.forEach((p, i) => {
    const a = points[i - 1];
    const b = points[i + 1];
    if (!a) d.push(['M', p.xMm, p.yMm]);
    else if (!b) d.push(['L', p.xMm, p.yMm]);
    else {
      const la = distanceMm(a, p);
      const lb = distanceMm(p, b);
      const r = Math.min(radiusMm, la / 2, lb / 2);
      const s = add(p, scale(sub(a, p), r / (la || 1)));
      const e = add(p, scale(sub(b, p), r / (lb || 1)));
      const k = 0.45;
      d.push(['L', s.xMm, s.yMm]);
      d.push([
        'C',
        s.xMm + (p.xMm - s.xMm) * (1 - k),
        s.yMm + (p.yMm - s.yMm) * (1 - k),
        e.xMm + (p.xMm - e.xMm) * (1 - k),
        e.yMm + (p.yMm - e.yMm) * (1 - k),
        e.xMm,
        e.yMm,
      ]);
    }
  });
  return d;
};

/** All cable runs of the floor; feeders heavier. */
export const cableItems = (ctx: DrawContext): readonly DisplayItem[] => {
  const runs = runsOf(ctx);
  assignLanes(runs, ctx.nominalScale);
  return runs.flatMap((run) => {
    const kind = kindOf(ctx.plan, run.cable.kindId, 'cable');
    const deps = [kind, ...run.points.flatMap((p) => [p.xMm, p.yMm]), ...run.lanes];
    const item = memoItem(run.cable, `cable|${ctx.nominalScale}`, deps, () => {
      const feeder = kind?.construction === 'single-conductors' || (kind?.legs ?? 1) > 1;
      return itemOf(`cable:${run.cable.id}`, run.cable.id, 'cables', ctx.nominalScale, [
        {
          kind: 'path',
          d: roundedPath(shifted(run, ctx.nominalScale), BEND_MM * ctx.nominalScale),
          stroke: feeder ? pen('feeder', WEIGHT.feeder) : pen('cable', WEIGHT.cable),
        },
      ]);
    });
    return item ? [item] : [];
  });
};
