import { distanceMm, dot, nearestOnSegment, type Point, scale, sub } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import type { Feature, FeatureWhat } from '../plan/records/index.ts';

/** What is kept clear around an exit that is drawn as a spot. */
export const EXIT_RADIUS_MM = 1200;

/** Features that are a spot, a line or an area by their sort; a drawn one may still be open or have too few points. */
export const FEATURE_SHAPE: Readonly<Record<FeatureWhat, 'spot' | 'line' | 'area'>> = {
  ground: 'area',
  kerb: 'line',
  road: 'area',
  tree: 'spot',
  facade: 'line',
  pole: 'spot',
  water: 'area',
  'wet-area': 'area',
  exit: 'spot',
  'fire-lane': 'area',
  'power-line': 'line',
};

export const isArea = (f: Feature): boolean => f.closed && f.points.length > 2;

/** Radius of a spot with a ground of its own. Millimetres. */
export const spotRadius = (f: Feature): number =>
  f.radiusMm ?? (f.what === 'exit' ? EXIT_RADIUS_MM : f.what === 'tree' ? 1500 : 150);

/** Whether a spot of the floor is inside a polygon, by the number of edges a ray meets. */
export const insidePolygon = (points: readonly Point[], p: Point): boolean => {
  let inside = false;
  points.forEach((a, i) => {
    const b = points[(i + 1) % points.length] ?? a;
    if (a.yMm > p.yMm !== b.yMm > p.yMm) {
      const x = a.xMm + ((p.yMm - a.yMm) * (b.xMm - a.xMm)) / (b.yMm - a.yMm);
      if (x > p.xMm) inside = !inside;
    }
  });
  return inside;
};

const edges = (f: Feature): readonly (readonly [Point, Point])[] => {
  const ends = f.closed ? [...f.points.slice(1), ...f.points.slice(0, 1)] : f.points.slice(1);
  return ends.map((b, i) => [f.points[i] ?? b, b] as const);
};

/** How far a spot is from a feature's ground in millimetres; 0 on it. */
export const distanceTo = (f: Feature, p: Point): number => {
  const [first] = f.points;
  if (f.points.length === 1 && first) return Math.max(0, distanceMm(first, p) - spotRadius(f));
  if (isArea(f) && insidePolygon(f.points, p)) return 0;
  return edges(f).reduce((d, [a, b]) => Math.min(d, distanceMm(p, nearestOnSegment(p, a, b).at)), Infinity);
};

/** Shares of the way from a to b where it enters or leaves a feature's ground, sorted. */
const cuts = (f: Feature, a: Point, b: Point): readonly number[] => {
  const d = sub(b, a);
  const out: number[] = [];
  const [centre] = f.points;
  if (f.points.length === 1 && centre) {
    const r = spotRadius(f);
    const m = sub(a, centre);
    const [A, B, C] = [dot(d, d), dot(m, d), dot(m, m) - r * r];
    const root = B * B - A * C;
    if (A > 0 && root > 0) out.push((-B - Math.sqrt(root)) / A, (-B + Math.sqrt(root)) / A);
  } else
    for (const [p, q] of edges(f)) {
      const e = sub(q, p);
      const den = d.xMm * e.yMm - d.yMm * e.xMm;
      if (Math.abs(den) < 1e-9) continue;
      const w = sub(p, a);
      const t = (w.xMm * e.yMm - w.yMm * e.xMm) / den;
      const u = (w.xMm * d.yMm - w.yMm * d.xMm) / den;
      if (u >= 0 && u <= 1) out.push(t);
    }
  return out.filter((t) => t > 0 && t < 1).sort((x, y) => x - y);
};

/** A stretch of a line that lies on a feature's ground. */
export interface Stretch {
  readonly middle: Point;
  readonly lengthMm: number;
  /** Direction of the line there, degrees clockwise from +x. */
  readonly deg: number;
}

/** Stretches of a polyline that lie on a feature's ground; those of one piece are told apart, corners do not join them. */
export const stretchesOn = (f: Feature, line: readonly Point[]): readonly Stretch[] => {
  const out: Stretch[] = [];
  line.slice(1).forEach((b, i) => {
    const a = line[i] ?? b;
    const l = distanceMm(a, b);
    if (l < 1) return;
    const at = (t: number): Point => ({ xMm: a.xMm + (b.xMm - a.xMm) * t, yMm: a.yMm + (b.yMm - a.yMm) * t });
    const stops = [0, ...cuts(f, a, b), 1];
    stops.slice(1).forEach((t1, k) => {
      const t0 = stops[k] ?? 0;
      const middle = at((t0 + t1) / 2);
      if ((t1 - t0) * l < 1 || distanceTo(f, middle) > 0) return;
      const deg = (Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm) * 180) / Math.PI;
      out.push({ middle, lengthMm: (t1 - t0) * l, deg });
    });
  });
  return out;
};

/** Features of one floor of some sorts. */
export const featuresOn = (plan: Plan, floorId: Id, whats: readonly FeatureWhat[]): readonly Feature[] =>
  recordsOf(plan, 'feature').filter((f) => f.floorId === floorId && whats.includes(f.what));

/** Whether a spot is in a wet area or in water, as drawn. */
export const isWetSpot = (plan: Plan, floorId: Id, at: Point): boolean =>
  featuresOn(plan, floorId, ['wet-area', 'water']).some((f) => isArea(f) && insidePolygon(f.points, at));

/** A point so far along a direction. */
export const onward = (at: Point, deg: number, mm: number): Point => {
  const rad = (deg * Math.PI) / 180;
  return { xMm: at.xMm + Math.cos(rad) * mm, yMm: at.yMm + Math.sin(rad) * mm };
};

/** Unit vector across a stretch, to its left. */
export const acrossOf = (a: Point, b: Point): Point => {
  const l = distanceMm(a, b) || 1;
  return scale({ xMm: b.yMm - a.yMm, yMm: -(b.xMm - a.xMm) }, 1 / l);
};
