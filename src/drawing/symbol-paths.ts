import { add, type Point, point, rotate } from '../kernel/geometry.ts';
import type { PathCommand, Primitive, Stroke } from './display-list.ts';
import { scaledSymbol, symbolShape } from './symbols.ts';

/** Path data stretched by `k`, turned about the origin and moved to a point. */
export const placedPath = (
  d: readonly PathCommand[],
  at: Point,
  rotationDeg: number,
  k = 1,
): readonly PathCommand[] => {
  const to = (x: number, y: number): readonly [number, number] => {
    const p = add(at, rotate(point(x * k, y * k), rotationDeg));
    return [p.xMm, p.yMm];
  };
  return d.map((c): PathCommand => {
    if (c[0] === 'Z') return c;
    if (c[0] === 'C') return ['C', ...to(c[1], c[2]), ...to(c[3], c[4]), ...to(c[5], c[6])];
    return [c[0], ...to(c[1], c[2])];
  });
};

/**
 * A symbol as plain lines in one pen, its outline's middle at `at`: for furniture and vehicles, which are drawn lighter
 * than gear and let what lies under them show.
 */
export const symbolLines = (
  symbolId: string,
  size: { readonly lengthMm: number; readonly widthMm: number },
  at: Point,
  rotationDeg: number,
  pens: { readonly outline: Stroke; readonly detail: Stroke },
): readonly Primitive[] => {
  const shape = symbolShape(symbolId);
  const mx = ((shape.box[0] + shape.box[2]) / 2) * (size.lengthMm / shape.lengthMm);
  const my = ((shape.box[1] + shape.box[3]) / 2) * (size.widthMm / shape.widthMm);
  const origin = add(at, rotate(point(-mx, -my), rotationDeg));
  return scaledSymbol(symbolId, size.lengthMm, size.widthMm).map((p): Primitive => {
    const d = placedPath(p.d, origin, rotationDeg);
    return p.line === 'solid'
      ? { kind: 'path', d, fill: { role: pens.outline.role } }
      : { kind: 'path', d, stroke: p.line === 'outline' ? pens.outline : pens.detail };
  });
};
