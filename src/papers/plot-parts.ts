import type { DisplayItem, DisplayList, PathCommand, Primitive } from '../drawing/display-list.ts';
import { textCover } from '../drawing/label-obstacles.ts';
import { groundedText } from '../drawing/prims.ts';
import { type Box, boxesMeet } from '../kernel/geometry.ts';
import type { Rect } from './frame.ts';
import type { Ink } from './ink.ts';
import { type PlotPart, type PlotView, partName } from './plot-layout.ts';
import { sheetName } from './sheet-info.ts';

const CROSS_MM = 4;
const STROKE = { role: 'accent', weightMm: 0.35, dashMm: [6, 1.5, 1, 1.5] } as const;

const lineOf = (x1: number, y1: number, x2: number, y2: number): readonly PathCommand[] => [
  ['M', x1, y1],
  ['L', x2, y2],
];

const cross = (x: number, y: number, ratio: number): Primitive => {
  const r = (CROSS_MM / 2) * ratio;
  return {
    kind: 'path',
    d: [...lineOf(x - r, y, x + r, y), ...lineOf(x, y - r, x, y + r)],
    stroke: { role: 'accent', weightMm: 0.35 },
  };
};

const item = (key: string, primitives: readonly Primitive[], box: Box): DisplayItem => ({
  key,
  recordId: key,
  layer: 'notes',
  primitives,
  box,
});

/**
 * Match lines of one part of a plot with what they lead to, and crosses at the same spots of the floor on both sheets, as
 * marks for the floor's display list.
 */
export const matchMarks = (view: PlotView, part: PlotPart, sheetNumber: number): readonly DisplayItem[] => {
  const { ratio, bounds: b } = view;
  const out: DisplayItem[] = [];
  const sheetAt = (column: number, row: number): string =>
    `part ${partName(column, row)}, sheet ${sheetName(sheetNumber + (row - part.row) * part.columns + (column - part.column))}`;
  /** Words beside a line on a patch of paper; `along` runs with the line, `off` to its side, both in floor millimetres. */
  const words = (along: number, off: number, text: string, upright: boolean): readonly Primitive[] => {
    const at = upright ? { xMm: off, yMm: along } : { xMm: along, yMm: off };
    const look = { capMm: 1.8, align: 'center', role: 'accent', rotationDeg: upright ? -90 : 0 } as const;
    return groundedText(at, 0, 0, text, look, ratio);
  };
  // Crosses at fixed spots of the floor, so that both sheets have the same ones; words stand between two.
  const between = (v: number): number => (Math.floor(v / (40 * ratio)) + 0.5) * 40 * ratio;
  const spots = (from: number, to: number): readonly number[] => {
    const step = 40 * ratio;
    const first = Math.ceil(from / step);
    return Array.from(
      { length: Math.max(0, Math.floor(to / step) - first + 1) },
      (_, i) => (first + i) * step,
    );
  };
  part.matchX.forEach((x, i) => {
    if (i !== part.column && i !== part.column - 1) return;
    const right = i === part.column;
    const to = sheetAt(part.column + (right ? 1 : -1), part.row);
    const mid = between((b.minY + b.maxY) / 2);
    out.push(
      item(
        `match:x${i}`,
        [
          { kind: 'path', d: lineOf(x, b.minY, x, b.maxY), stroke: STROKE },
          ...spots(b.minY, b.maxY).map((y) => cross(x, y, ratio)),
          ...words(mid, x + (right ? 3.4 : -1.6) * ratio, `Match line: ${to}`, true),
        ],
        { minX: x, maxX: x, minY: b.minY, maxY: b.maxY },
      ),
    );
  });
  part.matchY.forEach((y, i) => {
    if (i !== part.row && i !== part.row - 1) return;
    const below = i === part.row;
    const to = sheetAt(part.column, part.row + (below ? 1 : -1));
    const mid = between((b.minX + b.maxX) / 2);
    out.push(
      item(
        `match:y${i}`,
        [
          { kind: 'path', d: lineOf(b.minX, y, b.maxX, y), stroke: STROKE },
          ...spots(b.minX, b.maxX).map((x) => cross(x, y, ratio)),
          ...words(mid, y + (below ? 3.4 : -1.6) * ratio, `Match line: ${to}`, false),
        ],
        { minX: b.minX, maxX: b.maxX, minY: y, maxY: y },
      ),
    );
  });
  return out;
};

/** A small picture of all parts with this one filled; its lower right corner at (x, y). */
export const drawPartKey = (ink: Ink, part: PlotPart, x: number, y: number, room: Rect): void => {
  const cell = Math.min(7, room.w / part.columns, room.h / part.rows / 0.7);
  const [w, h] = [cell, cell * 0.7];
  const x0 = x - part.columns * w;
  const y0 = y - part.rows * h;
  for (let row = 0; row < part.rows; row++)
    for (let column = 0; column < part.columns; column++) {
      const own = row === part.row && column === part.column;
      ink.rect(x0 + column * w, y0 + row * h, w, h, {
        weightMm: 0.18,
        ...(own ? { fill: 'ink-soft' as const } : {}),
      });
    }
};

/** A list without the texts that the edge of its window would cut through, or that a match line's words lie over. */
export const wholeTexts = (list: DisplayList, window: Box): DisplayList => {
  const n = list.nominalScale;
  const words = list.items
    .filter((i) => i.key.startsWith('match:'))
    .flatMap((i) => i.primitives.flatMap((p) => (p.kind === 'text' ? textCover(p, n, 0.3) : [])));
  return {
    ...list,
    items: list.items.map((i) => {
      const own = i.key.startsWith('match:');
      const kept = i.primitives.filter(
        (p) =>
          p.kind !== 'text' ||
          textCover(p, n, 0).every(
            (b) =>
              b.minX * n >= window.minX &&
              b.maxX * n <= window.maxX &&
              b.minY * n >= window.minY &&
              b.maxY * n <= window.maxY &&
              (own || !words.some((w) => boxesMeet(w, b))),
          ),
      );
      return kept.length === i.primitives.length ? i : { ...i, primitives: kept };
    }),
  };
};

/** The circle round a unit's number. */
const isBubble = (p: Primitive | undefined): boolean => p?.kind === 'circle' && p.stroke !== undefined;

type TextPrim = Extract<Primitive, { kind: 'text' }>;

/** A text on a patch of paper, so that no line goes through it. */
const grounded = (p: TextPrim, nominal: number): readonly Primitive[] =>
  groundedText(
    { xMm: p.xMm, yMm: p.yMm },
    p.dxPaperMm,
    p.dyPaperMm,
    p.text,
    {
      capMm: p.capMm,
      weight: p.weight,
      align: p.align,
      role: p.role,
      ...(p.rotationDeg === undefined ? {} : { rotationDeg: p.rotationDeg }),
    },
    nominal,
  );

/** A shape that hides what is under it, drawn for the text after it and so with the text's middle in it. */
const isGround = (p: Primitive | undefined, text: TextPrim, nominal: number): boolean => {
  if (p?.kind !== 'path' || p.fill?.role !== 'paper') return false;
  const points = p.d.flatMap((c) => (c[0] === 'Z' ? [] : [[Number(c.at(-2)), Number(c.at(-1))] as const]));
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const cover = textCover(text, nominal, 0);
  return cover.every((b) => {
    const [x, y] = [((b.minX + b.maxX) / 2) * nominal, ((b.minY + b.maxY) / 2) * nominal];
    return x >= Math.min(...xs) && x <= Math.max(...xs) && y >= Math.min(...ys) && y <= Math.max(...ys);
  });
};

/**
 * A list in which no stroke goes through a text: after all strokes come the numbers in their circles, then all other texts,
 * each on a patch of paper or on the shape drawn for it.
 */
export const clearTexts = (list: DisplayList): DisplayList => {
  const n = list.nominalScale;
  const bubbles: Primitive[] = [];
  const texts: Primitive[] = [];
  const items = list.items.map((i) => {
    const taken = new Set<number>();
    i.primitives.forEach((p, k) => {
      if (p.kind !== 'text') return;
      taken.add(k);
      const before = i.primitives[k - 1];
      const bubble = isBubble(before);
      if (before && (bubble || isGround(before, p, n))) {
        taken.add(k - 1);
        (bubble ? bubbles : texts).push(before, p);
      } else texts.push(...grounded(p, n));
    });
    return taken.size === 0 ? i : { ...i, primitives: i.primitives.filter((_, k) => !taken.has(k)) };
  });
  if (bubbles.length + texts.length === 0) return { ...list, items };
  const last = item('texts', [...bubbles, ...texts], { minX: 0, minY: 0, maxX: 0, maxY: 0 });
  return { ...list, items: [...items, last] };
};
