import { add, type Point, point, rotate } from '../kernel/geometry.ts';
import { partCount, partGrid, partsOf } from '../plan/part-levels.ts';
import { kindOf } from '../plan/plan.ts';
import type { Fixture, PartLevel } from '../plan/records/index.ts';
import type { DrawContext } from './context.ts';
import type { Primitive } from './display-list.ts';
import { pen, polyPath, WEIGHT } from './prims.ts';

/** Colour of a part that lights without a colour of its own. */
const PLAIN = '#ffd9a0';
/** Share of the symbol the parts take up across and along the throw; its outline stays to be seen. */
const ACROSS = 0.94;
const ALONG = 0.62;

/** One column of parts as it is seen from above: the brightest colour counts, the levels in the mean. */
export interface PartColumn {
  readonly levelPct: number;
  readonly color: string;
}

/** The parts of a unit by column, as a plan from above shows them; undefined without parts of its own in the setup. */
export const partColumns = (ctx: DrawContext, f: Fixture): readonly PartColumn[] | undefined => {
  const parts = ctx.setupId === undefined ? undefined : partsOf(ctx.plan, ctx.setupId, f.id);
  if (!parts) return undefined;
  const grid = partGrid(
    kindOf(ctx.plan, f.kindId, 'fixture'),
    Math.max(parts.length, partCount(ctx.plan, f)),
  );
  return Array.from({ length: grid.columns }, (_, c) => {
    const column = Array.from({ length: grid.rows }, (_x, r) => parts[r * grid.columns + c]).filter(
      (p): p is PartLevel => p !== undefined,
    );
    const bright = [...column].sort((a, b) => b.levelPct - a.levelPct)[0];
    return {
      levelPct: column.reduce((s, p) => s + p.levelPct, 0) / Math.max(1, column.length),
      color: bright?.color ?? PLAIN,
    };
  });
};

/** Small fields over a unit's symbol, one for each column of parts: its colour, as strong as its level; off is left empty. */
export const partPrims = (
  columns: readonly PartColumn[],
  at: Point,
  facingDeg: number,
  size: { readonly lengthMm: number; readonly widthMm: number },
): readonly Primitive[] => {
  const w = (size.widthMm * ACROSS) / columns.length;
  const half = (size.lengthMm * ALONG) / 2;
  const corner = (x: number, y: number): Point => add(at, rotate(point(x, y), facingDeg));
  const box = (from: number, to: number) =>
    polyPath([corner(-half, from), corner(half, from), corner(half, to), corner(-half, to)], true);
  const left = -(size.widthMm * ACROSS) / 2;
  const ground: Primitive = {
    kind: 'path',
    d: box(left, left + w * columns.length),
    fill: { role: 'gear-fill' },
    stroke: pen('gear', WEIGHT.hair),
  };
  const fields = columns.flatMap((c, i): Primitive[] =>
    c.levelPct <= 0
      ? []
      : [
          {
            kind: 'path',
            d: box(left + w * i, left + w * (i + 1)),
            fill: { role: 'gear-fill', color: c.color, opacity: 0.25 + 0.75 * Math.min(1, c.levelPct / 100) },
          },
        ],
  );
  return [ground, ...fields];
};
