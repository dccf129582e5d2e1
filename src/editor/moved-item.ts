import type { DisplayItem, PathCommand, Primitive } from '../drawing/display-list.ts';
import type { Point } from '../kernel/geometry.ts';

const movedCommand = (c: PathCommand, x: number, y: number): PathCommand => {
  switch (c[0]) {
    case 'M':
    case 'L':
      return [c[0], c[1] + x, c[2] + y];
    case 'C':
      return ['C', c[1] + x, c[2] + y, c[3] + x, c[4] + y, c[5] + x, c[6] + y];
    case 'Z':
      return c;
  }
};

const movedPrimitive = (p: Primitive, x: number, y: number): Primitive =>
  p.kind === 'path'
    ? { ...p, d: p.d.map((c) => movedCommand(c, x, y)) }
    : { ...p, xMm: p.xMm + x, yMm: p.yMm + y };

/** A drawn item somewhere else on the floor. */
export const movedItem = (item: DisplayItem, by: Point): DisplayItem =>
  by.xMm === 0 && by.yMm === 0
    ? item
    : {
        ...item,
        ...(item.anchor ? { anchor: { xMm: item.anchor.xMm + by.xMm, yMm: item.anchor.yMm + by.yMm } } : {}),
        primitives: item.primitives.map((p) => movedPrimitive(p, by.xMm, by.yMm)),
        box: {
          minX: item.box.minX + by.xMm,
          minY: item.box.minY + by.yMm,
          maxX: item.box.maxX + by.xMm,
          maxY: item.box.maxY + by.yMm,
        },
      };
