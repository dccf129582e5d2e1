import { add, direction, type Point, rotate, scale } from '../kernel/geometry.ts';
import { barKind, barSize } from '../plan/edits/hang.ts';
import { kindOf, recordsOf } from '../plan/plan.ts';
import type { Grip, Rigging } from '../plan/records/index.ts';
import { type DrawContext, kindLook, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import type { LabelLine } from './label-place.ts';
import { line } from './label-text.ts';
import { itemOf, linePrim, pen, polyPath, WEIGHT } from './prims.ts';

/** Least thickness of a frame or a tube on paper, and least size of the rest, in millimetres. */
const LEAST_MM = 1.1;

/** Size on the floor: true, but a frame, a tube or a clamp stays large enough to be read. */
const drawnMm = (mm: number, nominal: number): number => Math.max(mm, LEAST_MM * nominal);

const sizeOf = (
  ctx: DrawContext,
  r: Grip | Rigging,
): { readonly lengthMm: number; readonly widthMm: number; readonly deg: number } => {
  const look = kindLook(ctx.plan, r.kindId);
  const bar = r.type === 'rigging' ? barKind(ctx.plan, r) : undefined;
  const size =
    bar && r.type === 'rigging' ? barSize(bar, r) : { ...look, thickMm: look.widthMm, deg: r.rotationDeg };
  // A leaning frame is as deep, seen from above, as its height lies over.
  const tall = r.type === 'grip' ? (kindOf(ctx.plan, r.kindId)?.sizeMm.heightMm ?? 0) : 0;
  const deepMm = r.type === 'grip' ? tall * Math.sin(((r.tiltDeg ?? 0) * Math.PI) / 180) : 0;
  return {
    lengthMm: drawnMm(Math.max(size.lengthMm, deepMm), ctx.nominalScale),
    widthMm: drawnMm(size.thickMm, ctx.nominalScale),
    deg: size.deg,
  };
};

/** How far a lift's platform or a crane's hook is to the side, as a line and a ring where it is. */
const reachPrims = (ctx: DrawContext, r: Rigging): readonly Primitive[] => {
  const out = r.reachMm ?? 0;
  if (out <= 0) return [];
  const end: Point = add(r.at, scale(direction(r.rotationDeg), out));
  return [
    linePrim(r.at, end, pen('gear', WEIGHT.thin, [2, 1])),
    {
      kind: 'circle',
      xMm: end.xMm,
      yMm: end.yMm,
      rMm: Math.max(400, LEAST_MM * ctx.nominalScale),
      space: 'floor',
      stroke: pen('gear', WEIGHT.thin),
    },
  ];
};

/** From here on a frame is drawn as the face it turns up, not edge on. */
const LEANS_DEG = 10;

/** A frame that leans or lies overhead, as seen from above: its face broken, for it is above, with its diagonals. */
const leaningPrims = (
  at: Point,
  deg: number,
  size: { readonly lengthMm: number; readonly widthMm: number },
): readonly Primitive[] => {
  const corner = (x: number, y: number): Point =>
    add(at, rotate({ xMm: (x * size.lengthMm) / 2, yMm: (y * size.widthMm) / 2 }, deg));
  const corners = [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)] as const;
  return [
    { kind: 'path', d: polyPath(corners, true), stroke: pen('gear', WEIGHT.cable, [3, 1]) },
    linePrim(corners[0], corners[2], pen('gear', WEIGHT.hair)),
    linePrim(corners[1], corners[3], pen('gear', WEIGHT.hair)),
  ];
};

const item = (ctx: DrawContext, r: Grip | Rigging): DisplayItem | undefined => {
  const kind = kindOf(ctx.plan, r.kindId);
  return memoItem(r, `grip|${ctx.nominalScale}`, [kind], () => {
    const look = kindLook(ctx.plan, r.kindId);
    const { deg, ...size } = sizeOf(ctx, r);
    if (r.type === 'grip' && (r.tiltDeg ?? 0) >= LEANS_DEG)
      return itemOf(`grip:${r.id}`, r.id, 'gear', ctx.nominalScale, leaningPrims(r.at, deg, size));
    return itemOf(`${r.type}:${r.id}`, r.id, 'gear', ctx.nominalScale, [
      {
        kind: 'symbol',
        symbolId: look.symbolId,
        xMm: r.at.xMm,
        yMm: r.at.yMm,
        rotationDeg: deg,
        ...size,
        broken: false,
        role: 'gear',
      },
      ...(r.type === 'rigging' ? reachPrims(ctx, r) : []),
    ]);
  });
};

const onFloor = (ctx: DrawContext): readonly (Grip | Rigging)[] =>
  [...recordsOf(ctx.plan, 'rigging'), ...recordsOf(ctx.plan, 'grip')].filter(
    (r) => r.floorId === ctx.floorId && !r.hidden,
  );

/** Frames, flags, bounces, tube, lifts and the like, at true size. */
export const gripItems = (ctx: DrawContext): readonly (DisplayItem | undefined)[] =>
  onFloor(ctx).map((r) => item(ctx, r));

export interface GripName {
  readonly record: Grip | Rigging;
  readonly halfMm: readonly [number, number];
  readonly facingDeg: number;
  readonly lines: readonly LabelLine[];
}

/** What is written beside each: its label, its kind, and the cloth in a frame. */
export const gripNames = (ctx: DrawContext): readonly GripName[] =>
  onFloor(ctx).map((record) => {
    const size = sizeOf(ctx, record);
    const name = kindLook(ctx.plan, record.kindId).name;
    const cloth =
      record.type === 'grip' && record.clothId ? kindOf(ctx.plan, record.clothId)?.name : undefined;
    const label = record.type === 'rigging' ? record.label : '';
    return {
      record,
      halfMm: [size.lengthMm / 2, size.widthMm / 2],
      facingDeg: size.deg,
      lines: [...(label ? [line(label, 'semibold')] : []), line(name), ...(cloth ? [line(cloth)] : [])],
    };
  });
