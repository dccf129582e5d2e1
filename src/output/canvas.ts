import type { Fill, PathCommand, Stroke } from '../drawing/display-list.ts';
import { hatchLines } from '../drawing/hatch.ts';
import { fillColor } from '../drawing/scale-color.ts';
import { scaledSymbol } from '../drawing/symbols.ts';
import { emMm } from '../drawing/text.ts';
import type { PageItem } from '../papers/page.ts';
import { type ColorScheme, PAPER_COLORS } from './colors.ts';

/** What is needed of a two-dimensional drawing context of a browser. */
export interface Pen {
  save(): void;
  restore(): void;
  scale(x: number, y: number): void;
  translate(x: number, y: number): void;
  rotate(angle: number): void;
  beginPath(): void;
  moveTo(x: number, y: number): void;
  lineTo(x: number, y: number): void;
  bezierCurveTo(ax: number, ay: number, bx: number, by: number, x: number, y: number): void;
  arc(x: number, y: number, r: number, from: number, to: number): void;
  closePath(): void;
  rect(x: number, y: number, w: number, h: number): void;
  clip(): void;
  stroke(): void;
  fill(): void;
  setLineDash(segments: number[]): void;
  fillText(text: string, x: number, y: number): void;
  fillRect(x: number, y: number, w: number, h: number): void;
  globalAlpha: number;
  lineWidth: number;
  lineJoin: string;
  strokeStyle: unknown;
  fillStyle: unknown;
  font: string;
  textAlign: string;
  textBaseline: string;
}

/** Draws a stored picture over the rectangle from the origin; what cannot be drawn is left out. */
export type DrawPicture = (image: Extract<PageItem, { kind: 'image' }>) => void;

const trace = (pen: Pen, d: readonly PathCommand[]): void => {
  pen.beginPath();
  for (const c of d) {
    if (c[0] === 'M') pen.moveTo(c[1], c[2]);
    else if (c[0] === 'L') pen.lineTo(c[1], c[2]);
    else if (c[0] === 'C') pen.bezierCurveTo(c[1], c[2], c[3], c[4], c[5], c[6]);
    else pen.closePath();
  }
};

const strokeWith = (pen: Pen, s: Stroke, colors: ColorScheme): void => {
  pen.strokeStyle = colors[s.role];
  pen.lineWidth = s.weightMm;
  pen.setLineDash([...(s.dashMm ?? [])]);
  pen.stroke();
};

const paint = (pen: Pen, stroke: Stroke | undefined, fill: Fill | undefined, colors: ColorScheme): void => {
  if (fill && !fill.hatch) {
    pen.globalAlpha = fill.opacity ?? 1;
    pen.fillStyle = fillColor(fill, colors);
    pen.fill();
    pen.globalAlpha = 1;
  }
  if (stroke) strokeWith(pen, stroke, colors);
};

const hatch = (pen: Pen, d: readonly PathCommand[], fill: Fill, colors: ColorScheme): void => {
  if (!fill.hatch) return;
  pen.beginPath();
  for (const [a, b] of hatchLines(d, fill.hatch.angleDeg, fill.hatch.spacingMm)) {
    pen.moveTo(a.xMm, a.yMm);
    pen.lineTo(b.xMm, b.yMm);
  }
  strokeWith(pen, { role: fill.role, weightMm: fill.hatch.weightMm }, colors);
};

const symbol = (pen: Pen, s: Extract<PageItem, { kind: 'symbol' }>, colors: ColorScheme): void => {
  pen.save();
  pen.translate(s.xMm, s.yMm);
  pen.rotate((s.rotationDeg * Math.PI) / 180);
  for (const { line, d } of scaledSymbol(s.symbolId, s.lengthMm, s.widthMm)) {
    trace(pen, d);
    if (line === 'solid') paint(pen, undefined, { role: s.role }, colors);
    else if (line === 'detail') paint(pen, { role: s.role, weightMm: 0.25 }, undefined, colors);
    else
      paint(
        pen,
        { role: s.role, weightMm: 0.5, ...(s.broken ? { dashMm: [1.2, 0.8] } : {}) },
        { role: 'gear-fill' },
        colors,
      );
  }
  pen.restore();
};

/**
 * Paints page items in page millimetres; the caller has scaled the context. Texts are set in `fontFamily`, which must be
 * loaded with its regular and its semibold weight.
 */
export const paintItems = (
  pen: Pen,
  items: readonly PageItem[],
  fontFamily: string,
  picture: DrawPicture,
  colors: ColorScheme = PAPER_COLORS,
): void => {
  pen.lineJoin = 'round';
  for (const i of items) {
    if (i.kind === 'path') {
      if (i.fill) hatch(pen, i.d, i.fill, colors);
      trace(pen, i.d);
      paint(pen, i.stroke, i.fill, colors);
    } else if (i.kind === 'circle') {
      pen.beginPath();
      pen.arc(i.xMm, i.yMm, i.rMm, 0, 2 * Math.PI);
      paint(pen, i.stroke, i.fill, colors);
    } else if (i.kind === 'text') {
      pen.save();
      pen.translate(i.xMm, i.yMm);
      if (i.rotationDeg) pen.rotate((i.rotationDeg * Math.PI) / 180);
      // Fonts of a few pixels are hinted by some browsers: set large, then scaled down.
      const em = emMm(i.capMm);
      pen.scale(em / 100, em / 100);
      pen.font = `${i.weight === 'semibold' ? 600 : 400} 100px "${fontFamily}"`;
      pen.textAlign = i.align;
      pen.textBaseline = 'alphabetic';
      pen.fillStyle = colors[i.role];
      pen.fillText(i.text, 0, 0);
      pen.restore();
    } else if (i.kind === 'symbol') symbol(pen, i, colors);
    else if (i.kind === 'image') {
      pen.save();
      pen.translate(i.xMm, i.yMm);
      pen.rotate((i.rotationDeg * Math.PI) / 180);
      pen.globalAlpha = i.opacity;
      picture(i);
      pen.restore();
    } else if (i.kind === 'clip') {
      pen.save();
      pen.beginPath();
      pen.rect(i.xMm, i.yMm, i.widthMm, i.heightMm);
      pen.clip();
      paintItems(pen, i.items, fontFamily, picture, colors);
      pen.restore();
    }
  }
};
