import type { DisplayList, PathCommand, Primitive } from '../drawing/display-list.ts';
import type { PageItem } from './page.ts';

/** Where a floor lands on a page: the floor point that lies at a page point. */
export interface Placing {
  readonly floorXMm: number;
  readonly floorYMm: number;
  readonly pageXMm: number;
  readonly pageYMm: number;
}

/** A display list at its nominal scale as page items. */
export const placeList = (list: DisplayList, at: Placing): readonly PageItem[] => {
  const k = 1 / list.nominalScale;
  const x = (v: number): number => at.pageXMm + (v - at.floorXMm) * k;
  const y = (v: number): number => at.pageYMm + (v - at.floorYMm) * k;
  const command = (c: PathCommand): PathCommand => {
    if (c[0] === 'C') return ['C', x(c[1]), y(c[2]), x(c[3]), y(c[4]), x(c[5]), y(c[6])];
    return c[0] === 'Z' ? c : [c[0], x(c[1]), y(c[2])];
  };
  const item = (p: Primitive): PageItem => {
    if (p.kind === 'path') return { ...p, d: p.d.map(command) };
    if (p.kind === 'circle') {
      const { space, ...rest } = p;
      return { ...rest, xMm: x(p.xMm), yMm: y(p.yMm), rMm: space === 'floor' ? p.rMm * k : p.rMm };
    }
    if (p.kind === 'symbol') {
      return { ...p, xMm: x(p.xMm), yMm: y(p.yMm), lengthMm: p.lengthMm * k, widthMm: p.widthMm * k };
    }
    if (p.kind === 'image')
      return { ...p, xMm: x(p.xMm), yMm: y(p.yMm), widthMm: p.widthMm * k, heightMm: p.heightMm * k };
    const { dxPaperMm, dyPaperMm, ...rest } = p;
    return { ...rest, xMm: x(p.xMm) + dxPaperMm, yMm: y(p.yMm) + dyPaperMm };
  };
  return list.items.flatMap((i) => i.primitives.map(item));
};
