import { type Entry, numberOf, pointsOf } from './pairs.ts';

/** x, y, x, y … in the drawing's own units, y up. */
export type Flat = number[];

/** Arcs are drawn with a straight piece for every so many degrees. */
const STEP_DEG = 5;
const RAD = Math.PI / 180;

/** Points of an elliptical arc; angles are parameters in degrees, counter-clockwise. */
export const arcPoints = (
  center: readonly [number, number],
  major: readonly [number, number],
  ratio: number,
  fromDeg: number,
  sweepDeg: number,
): Flat => {
  const steps = Math.max(2, Math.ceil(Math.abs(sweepDeg) / STEP_DEG));
  const out: Flat = [];
  for (let i = 0; i <= steps; i++) {
    const a = (fromDeg + (sweepDeg * i) / steps) * RAD;
    const [c, s] = [Math.cos(a), Math.sin(a)];
    // The minor axis stands a quarter turn counter-clockwise from the major one.
    out.push(
      center[0] + major[0] * c - major[1] * ratio * s,
      center[1] + major[1] * c + major[0] * ratio * s,
    );
  }
  return out;
};

/** Sweep from one angle on to another, counter-clockwise, more than nothing and at most a whole turn. */
const sweep = (from: number, to: number): number => {
  const s = (((to - from) % 360) + 360) % 360;
  return s < 1e-9 ? 360 : s;
};

export const arc = (e: Entry): Flat => {
  const r = numberOf(e, 40);
  const from = numberOf(e, 50);
  return arcPoints([numberOf(e, 10), numberOf(e, 20)], [r, 0], 1, from, sweep(from, numberOf(e, 51, 360)));
};

export const circle = (e: Entry): Flat =>
  arcPoints([numberOf(e, 10), numberOf(e, 20)], [numberOf(e, 40), 0], 1, 0, 360);

export const ellipse = (e: Entry): Flat => {
  const from = numberOf(e, 41, 0) / RAD;
  const to = numberOf(e, 42, 2 * Math.PI) / RAD;
  const major = [numberOf(e, 11), numberOf(e, 21)] as const;
  return arcPoints([numberOf(e, 10), numberOf(e, 20)], major, numberOf(e, 40, 1), from, sweep(from, to));
};

export const line = (e: Entry): Flat => [numberOf(e, 10), numberOf(e, 20), numberOf(e, 11), numberOf(e, 21)];

/** A corner of a polyline with the bulge of the piece after it: the tangent of a quarter of its arc's angle. */
export interface Corner {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
}

/** Straight and bulged pieces between corners. */
export const polyline = (corners: readonly Corner[], closed: boolean): Flat => {
  const out: Flat = [];
  const first = corners[0];
  if (!first) return out;
  out.push(first.x, first.y);
  const ends = closed ? [...corners.slice(1), first] : corners.slice(1);
  ends.forEach((to, i) => {
    const from = corners[i] ?? first;
    if (Math.abs(from.bulge) > 1e-9) {
      const sweepRad = 4 * Math.atan(from.bulge);
      const [dx, dy] = [to.x - from.x, to.y - from.y];
      // Centre: from the middle of the chord, across it.
      const off = (1 - from.bulge * from.bulge) / (4 * from.bulge);
      const c = [(from.x + to.x) / 2 - dy * off, (from.y + to.y) / 2 + dx * off] as const;
      const major = [from.x - c[0], from.y - c[1]] as const;
      out.push(...arcPoints(c, major, 1, 0, sweepRad / RAD).slice(2));
    } else out.push(to.x, to.y);
  });
  return out;
};

/** Corners of a light polyline: a bulge belongs to the corner before it. */
export const lightCorners = (e: Entry): readonly Corner[] => {
  const out: { x: number; y: number; bulge: number }[] = [];
  for (const p of e.pairs) {
    const n = Number(p.value);
    const v = Number.isFinite(n) ? n : 0;
    const last = out.at(-1);
    if (p.code === 10) out.push({ x: v, y: 0, bulge: 0 });
    else if (p.code === 20 && last) last.y = v;
    else if (p.code === 42 && last) last.bulge = v;
  }
  return out;
};

/** The four corners of a filled or flat face, as its outline; the third and fourth are written crosswise in a solid. */
export const face = (e: Entry, crosswise: boolean): Flat => {
  const at = (k: number): [number, number] => [numberOf(e, 10 + k), numberOf(e, 20 + k)];
  const [a, b, c, d] = [at(0), at(1), at(2), e.pairs.some((p) => p.code === 13) ? at(3) : at(2)];
  return (crosswise ? [a, b, d, c, a] : [a, b, c, d, a]).flat();
};

/** Points on a spline, by de Boor's rule over its knots; through its fit points where it has no others. */
export const spline = (e: Entry): Flat => {
  const control = pointsOf(e, 10, 20);
  const fit = pointsOf(e, 11, 21);
  const degree = Math.round(numberOf(e, 71, 3));
  const knots = e.pairs.filter((p) => p.code === 40).map((p) => Number(p.value));
  const weights = e.pairs.filter((p) => p.code === 41).map((p) => Number(p.value));
  if (control.length <= degree || degree < 1 || degree > 11 || knots.length < control.length + degree + 1)
    return (fit.length > 1 ? fit : control).flat();
  const [t0, t1] = [knots[degree] ?? 0, knots[control.length] ?? 0];
  if (!(t1 > t0) || knots.some((k) => !Number.isFinite(k))) return control.flat();
  const steps = Math.min(400, control.length * 8);
  const out: Flat = [];
  for (let i = 0; i <= steps; i++)
    out.push(...onSpline(control, weights, knots, degree, t0 + ((t1 - t0) * i) / steps));
  return out;
};

const NONE: readonly [number, number, number] = [0, 0, 1];

const onSpline = (
  control: readonly (readonly [number, number])[],
  weights: readonly number[],
  knots: readonly number[],
  degree: number,
  t: number,
): [number, number] => {
  let span = degree;
  while (span < control.length - 1 && t >= (knots[span + 1] ?? 0)) span++;
  const d = Array.from({ length: degree + 1 }, (_, j) => {
    const [x, y] = control[span - degree + j] ?? [0, 0];
    const w = weights[span - degree + j] ?? 1;
    return [x * w, y * w, w] as [number, number, number];
  });
  for (let r = 1; r <= degree; r++)
    for (let j = degree; j >= r; j--) {
      const k = span - degree + j;
      const [lo, hi] = [knots[k] ?? 0, knots[k + degree - r + 1] ?? 0];
      const a = hi > lo ? (t - lo) / (hi - lo) : 0;
      const p = d[j - 1] ?? NONE;
      const q = d[j] ?? NONE;
      d[j] = [p[0] + (q[0] - p[0]) * a, p[1] + (q[1] - p[1]) * a, p[2] + (q[2] - p[2]) * a];
    }
  const [x, y, w] = d[degree] ?? NONE;
  return [x / (w || 1), y / (w || 1)];
};
