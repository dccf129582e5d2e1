import { add, type Box, distanceMm, type Point, point, scale, sub } from '../kernel/geometry.ts';
import { formatArea, formatLength } from '../kernel/units.ts';
import { anchorPoint } from '../plan/edits/dimensions.ts';
import { recordsOf } from '../plan/plan.ts';
import type { Dimension, Wall } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem } from './display-list.ts';
import { groundedText, itemOf, linePrim, pen, textPrim, WEIGHT } from './prims.ts';
import { insideMeasures, type RoomFace, roomFaces } from './room-faces.ts';
import { textWidthMm } from './text.ts';

const CAP_MM = 1.8;
const PITCH_MM = 3.2;

const faces = new WeakMap<object, readonly RoomFace[]>();

/** The rooms of the drawn floor. */
export const roomsOf = (ctx: Pick<DrawContext, 'index'>): readonly RoomFace[] => {
  const arch = ctx.index.architecture;
  let known = faces.get(arch);
  if (!known) {
    known = roomFaces(arch.walls);
    faces.set(arch, known);
  }
  return known;
};

/** A room's text, before it has a place: lines centred on a spot. */
export interface RoomText {
  readonly room: RoomFace;
  readonly owner: Wall;
  readonly key: string;
  readonly lines: readonly string[];
}

/** Area and, for a square-cornered room, inside length and width, for each room of the floor. */
export const roomTexts = (ctx: DrawContext): readonly RoomText[] => {
  const units = ctx.settings.lengthUnits;
  const walls = new Map(ctx.index.architecture.walls.map((w) => [w.id, w]));
  return roomsOf(ctx).flatMap((room, i) => {
    const owner = walls.get(room.wallIds[0] ?? '');
    if (!owner) return [];
    const size = insideMeasures(room);
    const lines = [
      formatArea(room.areaMm2, units),
      ...(size ? [`${formatLength(size.lengthMm, units)} × ${formatLength(size.widthMm, units)}`] : []),
    ];
    return [{ room, owner, key: `room:${owner.id}:${i}`, lines }];
  });
};

/** The box a room's text takes at a spot, in paper millimetres. */
export const roomTextBox = (t: RoomText, at: Point, nominal: number): Box => {
  const w = Math.max(...t.lines.map((l) => textWidthMm(l, CAP_MM))) / 2 + 1;
  const h = (CAP_MM + (t.lines.length - 1) * PITCH_MM) / 2 + 1;
  const c = scale(at, 1 / nominal);
  return { minX: c.xMm - w, minY: c.yMm - h, maxX: c.xMm + w, maxY: c.yMm + h };
};

export const roomTextItem = (ctx: DrawContext, t: RoomText, at: Point): DisplayItem | undefined => {
  const n = ctx.nominalScale;
  return memoItem(t.owner, `${t.key}|${n}`, [at.xMm, at.yMm, ...t.lines], () => {
    const look = { capMm: CAP_MM, align: 'center', role: 'dimension' } as const;
    const top = -((t.lines.length - 1) * PITCH_MM) / 2 + CAP_MM / 2;
    return itemOf(
      t.key,
      t.owner.id,
      'dimensions',
      n,
      t.lines.map((text, k) => textPrim(at, 0, top + k * PITCH_MM, text, look)),
    );
  });
};

/** A kept dimension line: where it stands, between its two ends, with its figure. */
export const dimensionLine = (
  ctx: Pick<DrawContext, 'plan'>,
  d: Dimension,
): { readonly from: Point; readonly to: Point; readonly ends: readonly [Point, Point] } => {
  const a = anchorPoint(ctx.plan, d.from);
  const b = anchorPoint(ctx.plan, d.to);
  const l = distanceMm(a, b) || 1;
  const out = scale(point((b.yMm - a.yMm) / l, -(b.xMm - a.xMm) / l), d.offsetMm);
  return { from: add(a, out), to: add(b, out), ends: [a, b] };
};

/** Kept dimension lines of the floor. */
export const keptDimensionItems = (ctx: DrawContext): readonly DisplayItem[] =>
  recordsOf(ctx.plan, 'dimension').flatMap((d) => {
    if (d.floorId !== ctx.floorId || d.hidden) return [];
    const { from, to, ends } = dimensionLine(ctx, d);
    const n = ctx.nominalScale;
    const units = ctx.settings.lengthUnits;
    const deps = [from.xMm, from.yMm, to.xMm, to.yMm, units];
    const item = memoItem(d, `dimension|${n}`, deps, () => {
      const l = distanceMm(from, to) || 1;
      const u = scale(sub(to, from), 1 / l);
      const thin = pen('dimension', WEIGHT.thin);
      let deg = (Math.atan2(u.yMm, u.xMm) * 180) / Math.PI;
      if (deg > 90) deg -= 180;
      if (deg <= -90) deg += 180;
      const rad = (deg * Math.PI) / 180;
      const tick = (p: Point) => {
        const v = scale(point(u.xMm - u.yMm, u.yMm + u.xMm), 0.6 * n);
        return linePrim(sub(p, v), add(p, v), pen('dimension', WEIGHT.tick));
      };
      const legs = [[ends[0], from] as const, [ends[1], to] as const].filter(
        ([p, q]) => distanceMm(p, q) > n,
      );
      return itemOf(`dimension:${d.id}`, d.id, 'dimensions', n, [
        linePrim(from, to, thin),
        ...legs.map(([p, q]) => linePrim(p, q, thin)),
        tick(from),
        tick(to),
        ...groundedText(
          scale(add(from, to), 0.5),
          0.9 * Math.sin(rad),
          -0.9 * Math.cos(rad),
          formatLength(l, units),
          { capMm: CAP_MM, align: 'center', role: 'dimension', rotationDeg: deg },
          n,
        ),
      ]);
    });
    return item ? [item] : [];
  });
