import { add, point, rotate } from '../kernel/geometry.ts';
import { kindOf, recordsOf } from '../plan/plan.ts';
import type { Mark, SetPiece } from '../plan/records/index.ts';
import { framePrims } from './camera-frame.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, PathCommand, Primitive } from './display-list.ts';
import { ellipsePath, itemOf, pen, polyPath, WEIGHT } from './prims.ts';
import { shadesOf } from './shades.ts';
import { symbolLines } from './symbol-paths.ts';

const piecePath = (s: SetPiece): PathCommand[] => {
  const o = s.outline;
  if (o.shape === 'ellipse') return ellipsePath(s.at, o.lengthMm / 2, o.widthMm / 2, s.rotationDeg);
  const points =
    o.shape === 'rect'
      ? [
          point(-o.lengthMm / 2, -o.widthMm / 2),
          point(o.lengthMm / 2, -o.widthMm / 2),
          point(o.lengthMm / 2, o.widthMm / 2),
          point(-o.lengthMm / 2, o.widthMm / 2),
        ]
      : o.points;
  return polyPath(
    points.map((p) => add(s.at, rotate(p, s.rotationDeg))),
    true,
  );
};

/** Furniture and vehicles of the gear book are drawn by their symbols, everything else by its outline. */
export const setPieceItem = (ctx: DrawContext, s: SetPiece): DisplayItem | undefined => {
  const kind = s.kindId === undefined ? undefined : kindOf(ctx.plan, s.kindId);
  return memoItem(s, `piece|${ctx.nominalScale}`, [kind], () => {
    const stroke =
      s.line === 'hidden'
        ? pen('set-piece', WEIGHT.furniture, [2, 1])
        : s.line === 'ground'
          ? pen('ink-faint', WEIGHT.thin)
          : pen('set-piece', WEIGHT.furniture);
    if (kind && s.outline.shape === 'rect') {
      const pens = { outline: stroke, detail: { ...stroke, weightMm: WEIGHT.hair } };
      const lines = symbolLines(kind.symbol, s.outline, s.at, s.rotationDeg, pens);
      return itemOf(`piece:${s.id}`, s.id, 'set', ctx.nominalScale, lines);
    }
    return itemOf(`piece:${s.id}`, s.id, 'set', ctx.nominalScale, [
      { kind: 'path', d: piecePath(s), stroke },
    ]);
  });
};

const MARK_SYMBOL = {
  camera: { id: 'camera', lengthMm: 620, widthMm: 260 },
  talent: { id: 'talent-mark', lengthMm: 330, widthMm: 330 },
  note: { id: 'note-mark', lengthMm: 260, widthMm: 260 },
} as const;

/** A camera as its outline with frame lines, an actor's mark, a note. */
export const markItem = (ctx: DrawContext, m: Mark): DisplayItem | undefined => {
  const kind = m.kindId === undefined ? undefined : kindOf(ctx.plan, m.kindId);
  const seen =
    m.what === 'camera' ? [shadesOf(ctx), recordsOf(ctx.plan, 'mark'), ctx.settings.lengthUnits] : [];
  return memoItem(m, `mark|${ctx.nominalScale}`, [kind, ...seen], () => {
    const look = kind ? { id: kind.symbol, ...kind.sizeMm } : MARK_SYMBOL[m.what];
    // A note is a sign, not a thing: it keeps its size on paper.
    const k = m.what === 'note' ? Math.max(1, (3 * ctx.nominalScale) / look.lengthMm) : 1;
    const prims: Primitive[] = [];
    if (m.what === 'camera' && m.viewDeg !== undefined) prims.push(...framePrims(ctx, m, m.viewDeg));
    prims.push({
      kind: 'symbol',
      symbolId: look.id,
      xMm: m.at.xMm,
      yMm: m.at.yMm,
      rotationDeg: m.what === 'note' ? 0 : m.facingDeg,
      lengthMm: look.lengthMm * k,
      widthMm: look.widthMm * k,
      broken: false,
      role: m.what === 'note' ? 'note' : 'ink',
    });
    return itemOf(`mark:${m.id}`, m.id, 'set', ctx.nominalScale, prims);
  });
};
