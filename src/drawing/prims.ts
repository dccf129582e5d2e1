import {
  add,
  type Box,
  boxOf,
  direction,
  emptyBox,
  growBox,
  isEmptyBox,
  type Point,
  point,
  rotate,
  scale,
  sub,
  unionBox,
} from '../kernel/geometry.ts';
import type { ColorRole, DisplayItem, DrawingLayer, PathCommand, Primitive, Stroke } from './display-list.ts';
import { symbolShape } from './symbols.ts';
import { textWidthMm } from './text.ts';

/** Line weights in paper millimetres, from the standard series (ISO 128-2: 0.13 … 1.0, step √2). */
export const WEIGHT = {
  wall: 0.5,
  gear: 0.5,
  feeder: 0.5,
  cable: 0.35,
  tick: 0.35,
  furniture: 0.25,
  thin: 0.18,
  hair: 0.13,
} as const;

export const pen = (role: ColorRole, weightMm: number, dashMm?: readonly number[]): Stroke =>
  dashMm ? { role, weightMm, dashMm } : { role, weightMm };

export const polyPath = (points: readonly Point[], closed: boolean): PathCommand[] => {
  const d: PathCommand[] = points.map((p, i) => [i === 0 ? 'M' : 'L', p.xMm, p.yMm] as const);
  if (closed) d.push(['Z']);
  return d;
};

export const linePrim = (a: Point, b: Point, stroke: Stroke): Primitive => ({
  kind: 'path',
  d: polyPath([a, b], false),
  stroke,
});

const KAPPA = 0.5522847498307936;

export const ellipsePath = (c: Point, rx: number, ry: number, rotationDeg = 0): PathCommand[] => {
  const at = (x: number, y: number): Point => add(c, rotate(point(x * rx, y * ry), rotationDeg));
  const q: readonly (readonly [number, number])[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ];
  const start = at(1, 0);
  const d: PathCommand[] = [['M', start.xMm, start.yMm]];
  for (let i = 0; i < 4; i++) {
    const [ax, ay] = q[i] ?? [1, 0];
    const [bx, by] = q[(i + 1) % 4] ?? [1, 0];
    const p = at(ax + KAPPA * bx, ay + KAPPA * by);
    const r = at(bx + KAPPA * ax, by + KAPPA * ay);
    const e = at(bx, by);
    d.push(['C', p.xMm, p.yMm, r.xMm, r.yMm, e.xMm, e.yMm]);
  }
  d.push(['Z']);
  return d;
};

/** A circular arc of at most 90 degrees about c, from angle a to angle b. */
export const arcPath = (c: Point, rMm: number, aDeg: number, bDeg: number): PathCommand[] => {
  const h = (4 / 3) * Math.tan(((bDeg - aDeg) * Math.PI) / 720) * rMm;
  const s = add(c, scale(direction(aDeg), rMm));
  const e = add(c, scale(direction(bDeg), rMm));
  const p = add(s, scale(direction(aDeg + 90), h));
  const q = sub(e, scale(direction(bDeg + 90), h));
  return [
    ['M', s.xMm, s.yMm],
    ['C', p.xMm, p.yMm, q.xMm, q.yMm, e.xMm, e.yMm],
  ];
};

export interface TextLook {
  readonly capMm: number;
  readonly weight?: 'regular' | 'semibold';
  readonly align?: 'left' | 'center' | 'right';
  readonly role?: ColorRole;
  readonly rotationDeg?: number;
}

export const textPrim = (at: Point, dx: number, dy: number, text: string, look: TextLook): Primitive => ({
  kind: 'text',
  xMm: at.xMm,
  yMm: at.yMm,
  dxPaperMm: dx,
  dyPaperMm: dy,
  text,
  capMm: look.capMm,
  weight: look.weight ?? 'regular',
  align: look.align ?? 'left',
  role: look.role ?? 'ink',
  ...(look.rotationDeg === undefined ? {} : { rotationDeg: look.rotationDeg }),
});

/** A text on a patch of the ground, so that lines under it break off. */
export const groundedText = (
  at: Point,
  dx: number,
  dy: number,
  text: string,
  look: TextLook,
  nominal: number,
): Primitive[] => {
  const w = textWidthMm(text, look.capMm, look.weight ?? 'regular');
  const x0 = (look.align ?? 'left') === 'left' ? 0 : look.align === 'center' ? -w / 2 : -w;
  const anchor = add(at, scale(point(dx, dy), nominal));
  const corner = (x: number, y: number): Point =>
    add(anchor, scale(rotate(point(x, y), look.rotationDeg ?? 0), nominal));
  const patch = [
    corner(x0 - 0.4, -look.capMm - 0.35),
    corner(x0 + w + 0.4, -look.capMm - 0.35),
    corner(x0 + w + 0.4, 0.35),
    corner(x0 - 0.4, 0.35),
  ];
  return [
    { kind: 'path', d: polyPath(patch, true), fill: { role: 'paper' } },
    textPrim(at, dx, dy, text, look),
  ];
};

const pathPoints = (d: readonly PathCommand[]): Point[] => {
  const out: Point[] = [];
  for (const c of d) {
    if (c[0] === 'C') out.push(point(c[1], c[2]), point(c[3], c[4]), point(c[5], c[6]));
    else if (c[0] !== 'Z') out.push(point(c[1], c[2]));
  }
  return out;
};

/** Corners of a placed symbol's box on the floor. */
export const symbolCorners = (s: Extract<Primitive, { kind: 'symbol' }>): readonly Point[] => {
  const shape = symbolShape(s.symbolId);
  const kx = s.lengthMm / shape.lengthMm;
  const ky = s.widthMm / shape.widthMm;
  const [x0, y0, x1, y1] = shape.box;
  const at = (x: number, y: number): Point =>
    add(point(s.xMm, s.yMm), rotate(point(x * kx, y * ky), s.rotationDeg));
  return [at(x0, y0), at(x1, y0), at(x1, y1), at(x0, y1)];
};

/** Box of a text primitive in floor millimetres at a nominal scale. */
export const textBox = (t: Extract<Primitive, { kind: 'text' }>, nominal: number): Box => {
  const w = textWidthMm(t.text, t.capMm, t.weight);
  const x0 = t.align === 'left' ? 0 : t.align === 'center' ? -w / 2 : -w;
  const corners = [
    point(x0, -t.capMm),
    point(x0 + w, -t.capMm),
    point(x0 + w, 0.3 * t.capMm),
    point(x0, 0.3 * t.capMm),
  ];
  const anchor = point(t.xMm + t.dxPaperMm * nominal, t.yMm + t.dyPaperMm * nominal);
  return boxOf(corners.map((p) => add(anchor, scale(rotate(p, t.rotationDeg ?? 0), nominal))));
};

/** Box around a primitive in floor millimetres, line weight and text included. */
export const primitiveBox = (p: Primitive, nominal: number): Box => {
  if (p.kind === 'path') return growBox(boxOf(pathPoints(p.d)), ((p.stroke?.weightMm ?? 0) / 2) * nominal);
  if (p.kind === 'symbol') return growBox(boxOf(symbolCorners(p)), 0.25 * nominal);
  if (p.kind === 'text') return textBox(p, nominal);
  if (p.kind === 'image') {
    const corner = (x: number, y: number): Point =>
      add(point(p.xMm, p.yMm), rotate(point(x, y), p.rotationDeg));
    return boxOf([corner(0, 0), corner(p.widthMm, 0), corner(p.widthMm, p.heightMm), corner(0, p.heightMm)]);
  }
  const r = p.space === 'floor' ? p.rMm : p.rMm * nominal;
  return { minX: p.xMm - r, minY: p.yMm - r, maxX: p.xMm + r, maxY: p.yMm + r };
};

export const itemOf = (
  key: string,
  recordId: string,
  layer: DrawingLayer,
  nominal: number,
  primitives: readonly Primitive[],
): DisplayItem | undefined => {
  if (primitives.length === 0) return undefined;
  const box = primitives.reduce((b, p) => unionBox(b, primitiveBox(p, nominal)), emptyBox);
  return {
    key,
    recordId,
    layer,
    primitives,
    box: isEmptyBox(box) ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : box,
  };
};
