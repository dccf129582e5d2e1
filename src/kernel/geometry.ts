/** A point on a floor. x runs right, y runs down, both in millimetres. */
export interface Point {
  readonly xMm: number;
  readonly yMm: number;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export const point = (xMm: number, yMm: number): Point => ({ xMm, yMm });
export const add = (a: Point, b: Point): Point => point(a.xMm + b.xMm, a.yMm + b.yMm);
export const sub = (a: Point, b: Point): Point => point(a.xMm - b.xMm, a.yMm - b.yMm);
export const scale = (a: Point, k: number): Point => point(a.xMm * k, a.yMm * k);
export const dot = (a: Point, b: Point): number => a.xMm * b.xMm + a.yMm * b.yMm;
export const distanceMm = (a: Point, b: Point): number => Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm);
export const lerp = (a: Point, b: Point, t: number): Point =>
  point(a.xMm + (b.xMm - a.xMm) * t, a.yMm + (b.yMm - a.yMm) * t);

const RAD = Math.PI / 180;

/** Unit vector for an angle in degrees, clockwise from +x (y runs down). */
export const direction = (deg: number): Point => point(Math.cos(deg * RAD), Math.sin(deg * RAD));

/** Angle from a to b in degrees, clockwise from +x, in [0, 360). */
export const angleDeg = (a: Point, b: Point): number =>
  normaliseDeg(Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm) / RAD);

/** Any angle in degrees brought into [0, 360). */
export const normaliseDeg = (deg: number): number => ((deg % 360) + 360) % 360;

/** p turned about the origin by deg, clockwise. */
export const rotate = (p: Point, deg: number): Point => {
  const c = Math.cos(deg * RAD);
  const s = Math.sin(deg * RAD);
  return point(p.xMm * c - p.yMm * s, p.xMm * s + p.yMm * c);
};

/** Length in mm of a polyline through the points. */
export const polylineLengthMm = (points: readonly Point[]): number => {
  let sum = 0;
  let last: Point | undefined;
  for (const p of points) {
    if (last) sum += distanceMm(last, p);
    last = p;
  }
  return sum;
};

/** The point of segment ab nearest to p, and its parameter t in [0, 1]. */
export const nearestOnSegment = (p: Point, a: Point, b: Point): { at: Point; t: number } => {
  const d = sub(b, a);
  const len2 = dot(d, d);
  const t = len2 === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(p, a), d) / len2));
  return { at: lerp(a, b, t), t };
};

export const emptyBox: Box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };

/** The smallest box around points; emptyBox when there are none. */
export const boxOf = (points: Iterable<Point>): Box => {
  let { minX, minY, maxX, maxY } = emptyBox;
  for (const p of points) {
    minX = Math.min(minX, p.xMm);
    minY = Math.min(minY, p.yMm);
    maxX = Math.max(maxX, p.xMm);
    maxY = Math.max(maxY, p.yMm);
  }
  return { minX, minY, maxX, maxY };
};

export const unionBox = (a: Box, b: Box): Box => ({
  minX: Math.min(a.minX, b.minX),
  minY: Math.min(a.minY, b.minY),
  maxX: Math.max(a.maxX, b.maxX),
  maxY: Math.max(a.maxY, b.maxY),
});

export const growBox = (b: Box, by: number): Box => ({
  minX: b.minX - by,
  minY: b.minY - by,
  maxX: b.maxX + by,
  maxY: b.maxY + by,
});

export const isEmptyBox = (b: Box): boolean => b.minX > b.maxX || b.minY > b.maxY;

export const boxesMeet = (a: Box, b: Box): boolean =>
  a.minX <= b.maxX && b.minX <= a.maxX && a.minY <= b.maxY && b.minY <= a.maxY;

export const boxHolds = (b: Box, p: Point): boolean =>
  p.xMm >= b.minX && p.xMm <= b.maxX && p.yMm >= b.minY && p.yMm <= b.maxY;
