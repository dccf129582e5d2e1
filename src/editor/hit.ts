import type { DisplayItem, PathCommand, Primitive } from '../drawing/display-list.ts';
import { symbolShape } from '../drawing/symbols.ts';
import { textWidthMm } from '../drawing/text.ts';
import { distanceMm, nearestOnSegment, type Point, point, rotate, sub } from '../kernel/geometry.ts';

/** Whether a press at a point is on an item: on a filled shape, or within `tolMm` of a line. */
export interface Hit {
  readonly solid: boolean;
  readonly distanceMm: number;
}

const CURVE_STEPS = 8;

/** The straight pieces of a path, curves in eight. */
const polylines = (d: readonly PathCommand[]): Point[][] => {
  const all: Point[][] = [];
  let at = point(0, 0);
  let line: Point[] = [];
  for (const c of d) {
    if (c[0] === 'M') {
      line = [point(c[1], c[2])];
      all.push(line);
      at = point(c[1], c[2]);
    } else if (c[0] === 'L') {
      at = point(c[1], c[2]);
      line.push(at);
    } else if (c[0] === 'C') {
      const from = at;
      const [, x1, y1, x2, y2, x, y] = c;
      for (let i = 1; i <= CURVE_STEPS; i++) {
        const t = i / CURVE_STEPS;
        const u = 1 - t;
        line.push(
          point(
            u * u * u * from.xMm + 3 * u * u * t * x1 + 3 * u * t * t * x2 + t * t * t * x,
            u * u * u * from.yMm + 3 * u * u * t * y1 + 3 * u * t * t * y2 + t * t * t * y,
          ),
        );
      }
      at = point(x, y);
    } else {
      const first = line[0];
      if (first) line.push(first);
    }
  }
  return all;
};

const shapes = new WeakMap<readonly PathCommand[], Point[][]>();

const linesOf = (d: readonly PathCommand[]): Point[][] => {
  let lines = shapes.get(d);
  if (!lines) {
    lines = polylines(d);
    shapes.set(d, lines);
  }
  return lines;
};

const insideOf = (lines: readonly Point[][], p: Point): boolean => {
  let inside = false;
  for (const line of lines) {
    for (let i = 0, j = line.length - 1; i < line.length; j = i++) {
      const a = line[i];
      const b = line[j];
      if (!a || !b) continue;
      const crosses = a.yMm > p.yMm !== b.yMm > p.yMm;
      if (crosses && p.xMm < ((b.xMm - a.xMm) * (p.yMm - a.yMm)) / (b.yMm - a.yMm) + a.xMm) inside = !inside;
    }
  }
  return inside;
};

const lineDistance = (lines: readonly Point[][], p: Point): number => {
  let best = Infinity;
  for (const line of lines) {
    for (let i = 1; i < line.length; i++) {
      const a = line[i - 1];
      const b = line[i];
      if (a && b) best = Math.min(best, distanceMm(p, nearestOnSegment(p, a, b).at));
    }
  }
  return best;
};

const primitiveHit = (q: Primitive, p: Point, scale: number): Hit => {
  switch (q.kind) {
    case 'path': {
      const lines = linesOf(q.d);
      const solid = q.fill !== undefined && insideOf(lines, p);
      return { solid, distanceMm: solid ? 0 : lineDistance(lines, p) };
    }
    case 'circle': {
      const r = q.space === 'paper' ? q.rMm * scale : q.rMm;
      const d = Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm);
      const solid = (q.fill !== undefined || q.space === 'paper') && d <= r;
      return { solid, distanceMm: solid ? 0 : Math.abs(d - r) };
    }
    case 'symbol': {
      const local = rotate(sub(p, point(q.xMm, q.yMm)), -q.rotationDeg);
      const s = symbolShape(q.symbolId);
      const kx = q.lengthMm / s.lengthMm;
      const ky = q.widthMm / s.widthMm;
      const [minX, minY, maxX, maxY] = s.box;
      const dx = Math.max(0, minX * kx - local.xMm, local.xMm - maxX * kx);
      const dy = Math.max(0, minY * ky - local.yMm, local.yMm - maxY * ky);
      return { solid: dx === 0 && dy === 0, distanceMm: Math.hypot(dx, dy) };
    }
    case 'image': {
      const local = rotate(sub(p, point(q.xMm, q.yMm)), -q.rotationDeg);
      const dx = Math.max(0, -local.xMm, local.xMm - q.widthMm);
      const dy = Math.max(0, -local.yMm, local.yMm - q.heightMm);
      return { solid: dx === 0 && dy === 0, distanceMm: Math.hypot(dx, dy) };
    }
    case 'text': {
      const cap = q.capMm * scale;
      const w = textWidthMm(q.text, q.capMm, q.weight) * scale;
      const anchor = point(q.xMm + q.dxPaperMm * scale, q.yMm + q.dyPaperMm * scale);
      const local = rotate(sub(p, anchor), -(q.rotationDeg ?? 0));
      const x = q.align === 'left' ? 0 : q.align === 'right' ? -w : -w / 2;
      const dx = Math.max(0, x - local.xMm, local.xMm - x - w);
      const dy = Math.max(0, -cap - local.yMm, local.yMm);
      return { solid: dx === 0 && dy === 0, distanceMm: Math.hypot(dx, dy) };
    }
  }
};

/** Whether a point is on a label: its bubble or its text, not its leader. */
export const hitLabel = (item: DisplayItem, p: Point, scale: number, tolMm: number): boolean =>
  item.primitives.some(
    (q) =>
      (q.kind === 'text' || (q.kind === 'circle' && q.rMm > 1)) &&
      primitiveHit(q, p, scale).distanceMm <= tolMm,
  );

/** How a point lies to a drawn item. `scale` is the display list's nominal scale. Millimetres on the floor. */
export const hitItem = (item: DisplayItem, p: Point, scale: number): Hit => {
  let best: Hit = { solid: false, distanceMm: Infinity };
  for (const q of item.primitives) {
    const h = primitiveHit(q, p, scale);
    if (h.solid) return h;
    if (h.distanceMm < best.distanceMm) best = h;
  }
  return best;
};
