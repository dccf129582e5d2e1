import { type Box, distanceMm, emptyBox, type Point, point, unionBox } from '../kernel/geometry.ts';
import { formatLength } from '../kernel/units.ts';
import type { Opening, Wall } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { groundedText, itemOf, linePrim, pen, WEIGHT } from './prims.ts';
import { textWidthMm } from './text.ts';
import { touching, wallSolid } from './walls.ts';

const CAP_MM = 1.8;
/** Distance of the first row of dimensions from the wall, and between rows, on paper. */
const FIRST_MM = 5;
const ROW_MM = 4.6;

/** Walls that hang together, when all of them run along the axes. */
const squareGroups = (walls: readonly Wall[]): readonly (readonly Wall[])[] => {
  const left = new Set(walls);
  const groups: Wall[][] = [];
  while (left.size > 0) {
    const [first] = left;
    if (!first) break;
    const group: Wall[] = [];
    const queue = [first];
    left.delete(first);
    for (let w = queue.pop(); w; w = queue.pop()) {
      group.push(w);
      for (const o of touching(w, walls)) if (left.delete(o)) queue.push(o);
    }
    groups.push(group);
  }
  const square = (w: Wall): boolean =>
    Math.abs(w.from.xMm - w.to.xMm) < 1 || Math.abs(w.from.yMm - w.to.yMm) < 1;
  return groups.filter((g) => g.length >= 3 && g.every(square));
};

type Side = 'top' | 'bottom' | 'left' | 'right';

/** A row of dimensions along one side: places along the axis, and how far out it stands. */
const row = (
  side: Side,
  stops: readonly number[],
  base: number,
  out: number,
  ctx: DrawContext,
): Primitive[] => {
  const n = ctx.nominalScale;
  const flat = side === 'top' || side === 'bottom';
  const sign = side === 'top' || side === 'left' ? -1 : 1;
  const at = base + sign * out * n;
  const p = (along: number, across: number): Point => (flat ? point(along, across) : point(across, along));
  const prims: Primitive[] = [];
  const first = stops[0] ?? 0;
  const last = stops.at(-1) ?? 0;
  prims.push(linePrim(p(first - n, at), p(last + n, at), pen('dimension', WEIGHT.thin)));
  for (const s of stops) {
    prims.push(linePrim(p(s, base + sign * 1 * n), p(s, at + sign * 1 * n), pen('dimension', WEIGHT.thin)));
    prims.push(
      linePrim(
        point(p(s, at).xMm - 0.8 * n, p(s, at).yMm + 0.8 * n),
        point(p(s, at).xMm + 0.8 * n, p(s, at).yMm - 0.8 * n),
        pen('dimension', WEIGHT.tick),
      ),
    );
  }
  stops.slice(1).forEach((s, i) => {
    const from = stops[i] ?? s;
    const text = formatLength(s - from, ctx.settings.lengthUnits);
    // A stretch too short for its figure keeps its ticks only.
    if (textWidthMm(text, CAP_MM) + 0.8 > (s - from) / n) return;
    const mid = p((s + from) / 2, at);
    const look = { capMm: CAP_MM, align: 'center', role: 'dimension' } as const;
    prims.push(
      ...(flat
        ? groundedText(mid, 0, -0.9, text, look, n)
        : groundedText(mid, -0.9, 0, text, { ...look, rotationDeg: -90 }, n)),
    );
  });
  return prims;
};

interface Room {
  readonly outer: Box;
  /** Between the inner faces of the outermost walls. */
  readonly inner: Box;
}

const roomOf = (group: readonly Wall[], walls: readonly Wall[]): Room => {
  const outer = group.reduce((b, w) => unionBox(b, wallSolid(w, touching(w, walls)).box), emptyBox);
  const half = (side: 'minX' | 'maxX' | 'minY' | 'maxY'): number => {
    const upright = side.endsWith('X');
    const edge = outer[side];
    const near = group.filter((w) => {
      const runs = Math.abs(w.from.xMm - w.to.xMm) < 1;
      const at = upright ? w.from.xMm : w.from.yMm;
      return runs === upright && Math.abs(at - edge) <= w.thicknessMm / 2 + 1;
    });
    return near[0]?.thicknessMm ?? 0;
  };
  return {
    outer,
    inner: {
      minX: outer.minX + half('minX'),
      maxX: outer.maxX - half('maxX'),
      minY: outer.minY + half('minY'),
      maxY: outer.maxY - half('maxY'),
    },
  };
};

/** Places of openings on one side of a room, as stops along the axis, the inner faces at both ends. */
const chain = (ctx: DrawContext, room: Room, group: readonly Wall[], side: Side): readonly number[] => {
  const flat = side === 'top' || side === 'bottom';
  const edge =
    side === 'top'
      ? room.outer.minY
      : side === 'bottom'
        ? room.outer.maxY
        : side === 'left'
          ? room.outer.minX
          : room.outer.maxX;
  const stops: number[] = [];
  for (const w of group) {
    const onSide = flat
      ? Math.abs(w.from.yMm - w.to.yMm) < 1 && Math.abs(w.from.yMm - edge) <= w.thicknessMm
      : Math.abs(w.from.xMm - w.to.xMm) < 1 && Math.abs(w.from.xMm - edge) <= w.thicknessMm;
    if (!onSide) continue;
    for (const o of ctx.index.architecture.openings.get(w.id) ?? []) stops.push(...openingStops(w, o, flat));
  }
  if (stops.length === 0) return [];
  const ends = flat ? [room.inner.minX, room.inner.maxX] : [room.inner.minY, room.inner.maxY];
  return [...new Set([...ends, ...stops].map((s) => Math.round(s)))].sort((a, b) => a - b);
};

const openingStops = (w: Wall, o: Opening, flat: boolean): number[] => {
  const l = distanceMm(w.from, w.to) || 1;
  const at = (t: number): number => {
    const k = Math.min(l, t) / l;
    return flat ? w.from.xMm + (w.to.xMm - w.from.xMm) * k : w.from.yMm + (w.to.yMm - w.from.yMm) * k;
  };
  return [at(o.offsetMm), at(o.offsetMm + o.widthMm)];
};

/** Inside length and width of each square-cornered group of walls, and where its outer openings are. */
export const dimensionItems = (ctx: DrawContext): readonly DisplayItem[] => {
  const { walls } = ctx.index.architecture;
  return squareGroups(walls).flatMap((group) => {
    const owner = group[0];
    if (!owner) return [];
    const item = memoItem(
      owner,
      `dims|${ctx.nominalScale}|${ctx.settings.lengthUnits}`,
      [ctx.index.architecture],
      () => {
        const room = roomOf(group, walls);
        const prims: Primitive[] = [];
        const bases: Record<Side, number> = {
          top: room.outer.minY,
          bottom: room.outer.maxY,
          left: room.outer.minX,
          right: room.outer.maxX,
        };
        const rows: Record<Side, number> = { top: 0, bottom: 0, left: 0, right: 0 };
        for (const side of ['top', 'bottom', 'left', 'right'] as const) {
          const stops = chain(ctx, room, group, side);
          if (stops.length === 0) continue;
          prims.push(...row(side, stops, bases[side], FIRST_MM, ctx));
          rows[side] = 1;
        }
        const beside: Side = rows.left > 0 && rows.right === 0 ? 'left' : 'right';
        prims.push(
          ...row('top', [room.inner.minX, room.inner.maxX], bases.top, FIRST_MM + rows.top * ROW_MM, ctx),
        );
        prims.push(
          ...row(
            beside,
            [room.inner.minY, room.inner.maxY],
            bases[beside],
            FIRST_MM + rows[beside] * ROW_MM,
            ctx,
          ),
        );
        return itemOf(`dimensions:${owner.id}`, owner.id, 'dimensions', ctx.nominalScale, prims);
      },
    );
    return item ? [item] : [];
  });
};
