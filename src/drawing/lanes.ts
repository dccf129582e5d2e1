import { add, distanceMm, type Point, point, scale, sub } from '../kernel/geometry.ts';

/** Distance between runs that go beside one another, in paper millimetres. */
const LANE_MM = 0.9;

/** A run of cable on the floor as points, with the lane of each stretch in steps to the side. */
export interface Laned {
  readonly points: readonly Point[];
  readonly lanes: number[];
}

interface Stretch {
  readonly run: Laned;
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

/** Gives stretches on the same line that overlap lanes of their own: 0, +1, −1, +2 … in the order given. */
export const assignLanes = (runs: readonly Laned[], nominal: number): void => {
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

/** The points of a run moved into its lanes, all of it `beside` further to the side, in steps of a lane. */
export const shifted = (run: Laned, nominal: number, beside = 0): readonly Point[] => {
  const lines = run.points.slice(1).map((b, i) => {
    const a = run.points[i] ?? b;
    const l = distanceMm(a, b) || 1;
    const d = scale(sub(b, a), 1 / l);
    const by = ((run.lanes[i] ?? 0) + beside) * LANE_MM * nominal;
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
