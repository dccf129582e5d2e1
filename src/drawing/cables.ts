import { add, distanceMm, type Point, point, scale, sub } from '../kernel/geometry.ts';
import { kindOf, recordsOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { Cable } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, PathCommand } from './display-list.ts';
import { itemOf, pen, WEIGHT } from './prims.ts';

/** Distance between cables that run beside one another, and the radius of a bend, in paper millimetres. */
const LANE_MM = 0.9;
const BEND_MM = 1.2;

interface Run {
  readonly cable: Cable;
  readonly points: readonly Point[];
  /** Lane of each stretch, in steps to the side. */
  readonly lanes: number[];
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

interface Stretch {
  readonly run: Run;
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

/** Gives stretches on the same line that overlap lanes of their own: 0, +1, −1, +2 … by cable id. */
const assignLanes = (runs: readonly Run[], nominal: number): void => {
  const buckets = new Map<string, Stretch[]>();
  for (const run of runs) {
    run.points.slice(1).forEach((b, index) => {
      const a = run.points[index] ?? b;
      let deg = Math.round((Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm) * 180) / Math.PI);
      if (deg < 0) deg += 180;
      if (deg >= 180) deg -= 180;
      const rad = (deg * Math.PI) / 180;
      const along = (p: Point): number => p.xMm * Math.cos(rad) + p.yMm * Math.sin(rad);
      const side = -a.xMm * Math.sin(rad) + a.yMm * Math.cos(rad);
      const key = `${deg}|${Math.round(side / (0.8 * nominal))}`;
      const s = { run, index, from: Math.min(along(a), along(b)), to: Math.max(along(a), along(b)) };
      const list = buckets.get(key);
      if (list) list.push(s);
      else buckets.set(key, [s]);
    });
  }
  for (const list of buckets.values()) {
    if (list.length < 2) continue;
    list.sort((p, q) => p.from - q.from || q.to - p.to);
    const ends: number[] = [];
    for (const s of list) {
      let lane = ends.findIndex((end) => end < s.from - 1);
      if (lane < 0) lane = ends.length;
      ends[lane] = s.to;
      s.run.lanes[s.index] = lane % 2 === 1 ? (lane + 1) / 2 : -lane / 2;
    }
  }
};

/** Where two shifted stretches meet; the shared corner where they are parallel. */
const corner = (p: Point, d: Point, q: Point, e: Point): Point => {
  const den = d.xMm * e.yMm - d.yMm * e.xMm;
  if (Math.abs(den) < 0.05) return q;
  const t = ((q.xMm - p.xMm) * e.yMm - (q.yMm - p.yMm) * e.xMm) / den;
  return add(p, scale(d, t));
};

const shifted = (run: Run, nominal: number): readonly Point[] => {
  const lines = run.points.slice(1).map((b, i) => {
    const a = run.points[i] ?? b;
    const l = distanceMm(a, b) || 1;
    const d = scale(sub(b, a), 1 / l);
    const by = (run.lanes[i] ?? 0) * LANE_MM * nominal;
    // Lanes go to one side whichever way the cable runs.
    const flip = d.xMm < -1e-6 || (Math.abs(d.xMm) <= 1e-6 && d.yMm < 0) ? -1 : 1;
    const n = point(-d.yMm * flip, d.xMm * flip);
    return { a: add(a, scale(n, by)), b: add(b, scale(n, by)), d };
  });
  const out: Point[] = [];
  lines.forEach((line, i) => {
    const before = lines[i - 1];
    out.push(before ? corner(before.a, before.d, line.a, line.d) : line.a);
  });
  const last = lines.at(-1);
  if (last) out.push(last.b);
  return out;
};

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
