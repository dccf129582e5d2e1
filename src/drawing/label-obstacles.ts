import { add, type Point, point, rotate, scale } from '../kernel/geometry.ts';
import type { DisplayItem, PathCommand, Primitive } from './display-list.ts';
import { hatchLines } from './hatch.ts';
import { boxAt, cubicPoints, type LabelGrid } from './label-grid.ts';
import { symbolCorners } from './prims.ts';
import { textWidthMm } from './text.ts';

const walk = (d: readonly PathCommand[], visit: (a: Point, b: Point) => void): void => {
  let at = point(0, 0);
  let start = at;
  for (const c of d) {
    if (c[0] === 'M') {
      at = point(c[1], c[2]);
      start = at;
    } else if (c[0] === 'L') {
      const to = point(c[1], c[2]);
      visit(at, to);
      at = to;
    } else if (c[0] === 'C') {
      for (const to of cubicPoints(at, [c[1], c[2], c[3], c[4], c[5], c[6]], 6)) {
        visit(at, to);
        at = to;
      }
    } else {
      visit(at, start);
      at = start;
    }
  }
};

/** Small boxes that together cover a text, turned or not, in paper millimetres. */
export const textCover = (t: Extract<Primitive, { kind: 'text' }>, nominal: number, pad: number) => {
  const w = textWidthMm(t.text, t.capMm, t.weight);
  const x0 = t.align === 'left' ? 0 : t.align === 'center' ? -w / 2 : -w;
  const anchor = point(t.xMm / nominal + t.dxPaperMm, t.yMm / nominal + t.dyPaperMm);
  const mid = -t.capMm * 0.35;
  const half = t.capMm * 0.65 + pad;
  const deg = t.rotationDeg ?? 0;
  if (deg % 180 === 0) return [boxAt(add(anchor, point(x0 + w / 2, mid)), w / 2 + pad, half)];
  const n = Math.max(1, Math.ceil(w / t.capMm));
  return Array.from({ length: n }, (_, i) => {
    const c = add(anchor, rotate(point(x0 + (w * (i + 0.5)) / n, mid), deg));
    return boxAt(c, half, half);
  });
};

/** Puts what an item draws in the way of labels. Beams, stands' circles and hatches are soft, all else is hard. */
export const addObstacles = (grid: LabelGrid, item: DisplayItem, nominal: number): void => {
  const hard = item.layer !== 'beams' && item.layer !== 'stands';
  const owner = item.recordId;
  const onPaper = (p: Point): Point => scale(p, 1 / nominal);
  for (const p of item.primitives) {
    if (p.kind === 'path') {
      if (p.fill?.hatch && item.layer === 'beams') {
        // Every third line is enough to draw labels off the hatch where there is room.
        const spacing = p.fill.hatch.spacingMm * nominal * 3;
        for (const [a, b] of hatchLines(p.d, p.fill.hatch.angleDeg, spacing))
          grid.addSegment(onPaper(a), onPaper(b), false, owner);
      }
      if (p.stroke)
        walk(p.d, (a, b) => grid.addSegment(onPaper(a), onPaper(b), hard || p.stroke?.role === 'aim', owner));
    } else if (p.kind === 'symbol') {
      const corners = symbolCorners(p).map(onPaper);
      const centre = scale(
        corners.reduce((a, b) => add(a, b), point(0, 0)),
        1 / 4,
      );
      corners.forEach((a, i) => {
        grid.addSegment(a, corners[(i + 1) % 4] ?? a, true, owner);
      });
      for (const k of [0.25, 0.6]) {
        corners.forEach((a, i) => {
          const b = corners[(i + 1) % 4] ?? a;
          for (const t of [0, 0.5]) {
            const edge = point(a.xMm + (b.xMm - a.xMm) * t, a.yMm + (b.yMm - a.yMm) * t);
            const at = point(
              centre.xMm + (edge.xMm - centre.xMm) * k,
              centre.yMm + (edge.yMm - centre.yMm) * k,
            );
            grid.addBox(boxAt(at, 0.4, 0.4), owner);
          }
        });
      }
    } else if (p.kind === 'circle') {
      const r = p.space === 'floor' ? p.rMm / nominal : p.rMm;
      const c = onPaper(point(p.xMm, p.yMm));
      const n = 16;
      for (let i = 0; i < n; i++) {
        const at = (k: number): Point =>
          add(c, point(r * Math.cos((2 * Math.PI * k) / n), r * Math.sin((2 * Math.PI * k) / n)));
        grid.addSegment(at(i), at(i + 1), hard, owner);
      }
    } else if (p.kind === 'text') {
      for (const box of textCover(p, nominal, 0.3)) grid.addBox(box, owner);
    }
  }
};
