import type { ColorRole, PathCommand, Primitive } from './display-list.ts';
import { type FontWeight, fitText, textWidthMm, wrapText } from './text.ts';

/** Capital heights on paper, ISO 3098 steps. Nothing is smaller than the first. */
export const CAP = { note: 1.8, value: 2.5, head: 3.5, title: 5 } as const;

export interface TextStyle {
  readonly capMm?: number;
  readonly weight?: FontWeight;
  readonly align?: 'left' | 'center' | 'right';
  readonly role?: ColorRole;
  /** Wider texts are cut with an ellipsis. */
  readonly maxMm?: number;
  readonly rotationDeg?: number;
}

export interface RectStyle {
  readonly weightMm?: number;
  readonly role?: ColorRole;
  readonly fill?: ColorRole;
  readonly hatch?: { readonly role: ColorRole; readonly angleDeg: number; readonly spacingMm: number };
  readonly dashMm?: readonly number[];
}

/** What marks and diagrams are drawn with, in paper millimetres: a page's ink, or a sketch of primitives. */
export interface Sketch {
  text(xMm: number, yMm: number, text: string, style?: TextStyle): void;
  line(
    x1: number,
    y1: number,
    x2: number,
    y2: number,
    weightMm: number,
    role?: ColorRole,
    dashMm?: readonly number[],
  ): void;
  rect(x: number, y: number, w: number, h: number, how: RectStyle): void;
  path(d: readonly PathCommand[], how: RectStyle): void;
  circle(xMm: number, yMm: number, rMm: number, how: RectStyle): void;
  /** A plot symbol stretched to a size on paper, about its mounting point. */
  symbol(
    symbolId: string,
    xMm: number,
    yMm: number,
    size: { readonly lengthMm: number; readonly widthMm: number },
    rotationDeg: number,
    broken: boolean,
  ): void;
}

export const widthOf = (text: string, s: TextStyle = {}): number =>
  textWidthMm(text, s.capMm ?? CAP.note, s.weight ?? 'regular');

export const linesOf = (text: string, widthMm: number, s: TextStyle = {}, maxLines = 99): readonly string[] =>
  wrapText(text, s.capMm ?? CAP.note, s.weight ?? 'regular', widthMm, maxLines);

/** Shapes of a path: its hatch first, then its outline and fill. */
export const shapesOf = (
  d: readonly PathCommand[],
  how: RectStyle,
): readonly Extract<Primitive, { kind: 'path' }>[] => {
  const out: Extract<Primitive, { kind: 'path' }>[] = [];
  if (how.hatch) {
    const { role, angleDeg, spacingMm } = how.hatch;
    out.push({ kind: 'path', d, fill: { role, hatch: { angleDeg, spacingMm, weightMm: 0.18 } } });
  }
  if (how.weightMm !== undefined || how.fill) out.push({ kind: 'path', d, ...inkOf(how) });
  return out;
};

/** Stroke and fill of a style. */
export const inkOf = (how: RectStyle) => ({
  ...(how.weightMm === undefined
    ? {}
    : {
        stroke: {
          role: how.role ?? ('ink' as const),
          weightMm: how.weightMm,
          ...(how.dashMm ? { dashMm: how.dashMm } : {}),
        },
      }),
  ...(how.fill ? { fill: { role: how.fill } } : {}),
});

export const rectPath = (x: number, y: number, w: number, h: number): readonly PathCommand[] => [
  ['M', x, y],
  ['L', x + w, y],
  ['L', x + w, y + h],
  ['L', x, y + h],
  ['Z'],
];

/** A sketch that gathers primitives at a nominal scale of 1: floor and paper millimetres are the same. */
export const makeSketch = (): Sketch & { readonly primitives: Primitive[] } => {
  const primitives: Primitive[] = [];
  return {
    primitives,
    text: (xMm, yMm, raw, s = {}) => {
      const cap = s.capMm ?? CAP.note;
      const text = s.maxMm === undefined ? raw : fitText(raw, cap, s.weight ?? 'regular', s.maxMm);
      if (text === '') return;
      primitives.push({
        kind: 'text',
        xMm,
        yMm,
        dxPaperMm: 0,
        dyPaperMm: 0,
        text,
        capMm: cap,
        weight: s.weight ?? 'regular',
        align: s.align ?? 'left',
        role: s.role ?? 'ink',
        ...(s.rotationDeg === undefined ? {} : { rotationDeg: s.rotationDeg }),
      });
    },
    line: (x1, y1, x2, y2, weightMm, role = 'ink', dashMm) => {
      primitives.push({
        kind: 'path',
        d: [
          ['M', x1, y1],
          ['L', x2, y2],
        ],
        stroke: dashMm ? { role, weightMm, dashMm } : { role, weightMm },
      });
    },
    rect: (x, y, w, h, how) => primitives.push(...shapesOf(rectPath(x, y, w, h), how)),
    path: (d, how) => primitives.push(...shapesOf(d, how)),
    circle: (xMm, yMm, rMm, how) =>
      primitives.push({ kind: 'circle', xMm, yMm, rMm, space: 'paper', ...inkOf(how) }),
    symbol: (symbolId, xMm, yMm, size, rotationDeg, broken) =>
      primitives.push({ kind: 'symbol', symbolId, xMm, yMm, rotationDeg, ...size, broken, role: 'gear' }),
  };
};
