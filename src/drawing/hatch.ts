import { type Point, point, rotate } from '../kernel/geometry.ts';
import type { PathCommand } from './display-list.ts';
import { cubicPoints } from './label-grid.ts';

/** Closed outlines of a path, curves as short straight lines. */
export const flatten = (d: readonly PathCommand[]): readonly (readonly Point[])[] => {
  const out: Point[][] = [];
  let at = point(0, 0);
  for (const c of d) {
    if (c[0] === 'M') {
      at = point(c[1], c[2]);
      out.push([at]);
    } else if (c[0] === 'L') {
      at = point(c[1], c[2]);
      out.at(-1)?.push(at);
    } else if (c[0] === 'C') {
      const points = cubicPoints(at, [c[1], c[2], c[3], c[4], c[5], c[6]], 8);
      out.at(-1)?.push(...points);
      at = points.at(-1) ?? at;
    }
  }
  return out;
};

/**
 * Hatch lines that fill a path (even-odd), at an angle and spacing in the path's own units. Lines keep one phase over
 * the whole drawing, so that the hatches of shapes that touch run through.
 */
export const hatchLines = (
  d: readonly PathCommand[],
  angleDeg: number,
  spacing: number,
): readonly (readonly [Point, Point])[] => {
  const rings = flatten(d).map((ring) => ring.map((p) => rotate(p, -angleDeg)));
  let minY = Number.POSITIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const ring of rings)
    for (const p of ring) {
      minY = Math.min(minY, p.yMm);
      maxY = Math.max(maxY, p.yMm);
    }
  const out: (readonly [Point, Point])[] = [];
  const first = Math.ceil(minY / spacing);
  const last = Math.floor(maxY / spacing);
  if (!Number.isFinite(first) || last - first > 20000) return out;
  for (let k = first; k <= last; k++) {
    const y = k * spacing + spacing * 1e-4;
    const xs: number[] = [];
    for (const ring of rings) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length] ?? a;
        if (a.yMm > y === b.yMm > y) return;
        xs.push(a.xMm + ((y - a.yMm) * (b.xMm - a.xMm)) / (b.yMm - a.yMm));
      });
    }
    xs.sort((p, q) => p - q);
    for (let i = 0; i + 1 < xs.length; i += 2) {
      const x0 = xs[i] ?? 0;
      const x1 = xs[i + 1] ?? 0;
      if (x1 - x0 < spacing * 0.05) continue;
      out.push([rotate(point(x0, y), angleDeg), rotate(point(x1, y), angleDeg)]);
    }
  }
  return out;
};
