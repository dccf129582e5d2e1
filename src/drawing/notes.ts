import { add, direction, scale } from '../kernel/geometry.ts';
import type { Photo } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { itemOf, pen, polyPath, textPrim, WEIGHT } from './prims.ts';

/** Radius of a photo's pin on paper, and how far its arrow reaches. */
const PIN_MM = 3.3;
const ARROW_MM = 5.2;
const HALF_ARROW_DEG = 34;

/** A pinned photo: a ring with its label, and an arrowhead on the side it looks to. A sign, so it keeps its size on paper. */
export const photoItem = (ctx: DrawContext, p: Photo): DisplayItem | undefined =>
  memoItem(p, `photo|${ctx.nominalScale}`, [], () => {
    const k = ctx.nominalScale;
    const prims: Primitive[] = [];
    if (p.facingDeg !== undefined) {
      const facing = p.facingDeg;
      const on = (deg: number, mm: number) => add(p.at, scale(direction(facing + deg), mm * k));
      prims.push({
        kind: 'path',
        d: polyPath([on(-HALF_ARROW_DEG, PIN_MM), on(0, ARROW_MM), on(HALF_ARROW_DEG, PIN_MM)], true),
        fill: { role: 'note' },
      });
    }
    prims.push(
      {
        kind: 'circle',
        xMm: p.at.xMm,
        yMm: p.at.yMm,
        rMm: PIN_MM,
        space: 'paper',
        fill: { role: 'paper' },
        stroke: pen('note', WEIGHT.tick),
      },
      textPrim(p.at, 0, 0.85, p.label, { capMm: 1.8, weight: 'semibold', align: 'center', role: 'note' }),
    );
    return itemOf(`photo:${p.id}`, p.id, 'notes', k, prims);
  });
