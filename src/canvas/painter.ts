import type { ColorRole, DisplayItem, Fill, Primitive, Stroke } from '../drawing/display-list.ts';
import { fillColor } from '../drawing/scale-color.ts';
import { CAP_PER_EM } from '../drawing/text.ts';
import type { Palette } from './palette.ts';
import { hatchOf, pathOf, symbolPaths } from './paths.ts';
import { pictureOf } from './pictures.ts';

/** How items are painted now. */
export interface Look {
  readonly palette: Palette;
  /** The display list's nominal scale: 48 for 1:48. */
  readonly scale: number;
  readonly pxPerMm: number;
  readonly selected: boolean;
  /** 1 for full ink, less for a faded layer. */
  readonly alpha?: number;
}

export const FONT_FAMILY = '"Lampwright Sans", "Source Sans 3", sans-serif';

/** Lines on a screen look heavier than on paper; and none may become thinner than can be seen. */
const SCREEN_WEIGHT = 0.75;
const LEAST_PX = 0.7;

const ACCENTED: readonly ColorRole[] = [
  'gear',
  'ink',
  'cable',
  'feeder',
  'data',
  'wall',
  'set-piece',
  'stand',
];

const colorOf = (look: Look, role: ColorRole): string =>
  look.palette.roles[look.selected && ACCENTED.includes(role) ? 'accent' : role];

const widthMm = (look: Look, weightMm: number): number =>
  Math.max(weightMm * look.scale * SCREEN_WEIGHT, LEAST_PX / look.pxPerMm);

const setStroke = (c: CanvasRenderingContext2D, look: Look, s: Stroke): void => {
  c.strokeStyle = colorOf(look, s.role);
  c.lineWidth = widthMm(look, s.weightMm);
  c.setLineDash(s.dashMm ? s.dashMm.map((d) => d * look.scale) : []);
};

const paintFill = (
  c: CanvasRenderingContext2D,
  look: Look,
  q: Extract<Primitive, { kind: 'path' }>,
  path: Path2D,
  fill: Fill,
): void => {
  c.globalAlpha = (fill.opacity ?? 1) * (look.alpha ?? 1);
  if (fill.hatch) {
    c.save();
    c.clip(path);
    setStroke(c, look, { role: fill.role, weightMm: fill.hatch.weightMm });
    c.stroke(hatchOf(q, fill.hatch, look.scale));
    c.restore();
  } else {
    c.fillStyle = fillColor(fill, look.palette.roles);
    c.fill(path);
  }
  c.globalAlpha = look.alpha ?? 1;
};

const SYMBOL_WEIGHT = { outline: 0.5, detail: 0.18 } as const;
const BROKEN_DASH = [1.1, 0.8] as const;

const paintSymbol = (
  c: CanvasRenderingContext2D,
  look: Look,
  q: Extract<Primitive, { kind: 'symbol' }>,
): void => {
  c.save();
  c.translate(q.xMm, q.yMm);
  c.rotate((q.rotationDeg * Math.PI) / 180);
  const color = colorOf(look, q.role);
  c.strokeStyle = color;
  for (const { line, path } of symbolPaths(q.symbolId, q.lengthMm, q.widthMm)) {
    if (line === 'solid') {
      c.fillStyle = color;
      c.fill(path);
      continue;
    }
    if (line === 'outline') {
      c.fillStyle = look.palette.roles['gear-fill'];
      c.fill(path);
    }
    c.lineWidth = widthMm(look, SYMBOL_WEIGHT[line]);
    c.setLineDash(q.broken ? BROKEN_DASH.map((d) => d * look.scale) : []);
    c.stroke(path);
  }
  c.restore();
};

const paintText = (
  c: CanvasRenderingContext2D,
  look: Look,
  q: Extract<Primitive, { kind: 'text' }>,
): void => {
  const px = ((q.capMm * look.scale) / CAP_PER_EM) * look.pxPerMm;
  c.save();
  c.translate(q.xMm + q.dxPaperMm * look.scale, q.yMm + q.dyPaperMm * look.scale);
  if (q.rotationDeg) c.rotate((q.rotationDeg * Math.PI) / 180);
  c.scale(1 / look.pxPerMm, 1 / look.pxPerMm);
  c.font = `${q.weight === 'semibold' ? 600 : 400} ${px.toFixed(2)}px ${FONT_FAMILY}`;
  c.fontKerning = 'none';
  c.textAlign = q.align;
  c.textBaseline = 'alphabetic';
  c.fillStyle = look.palette.roles[q.role];
  c.fillText(q.text, 0, 0);
  c.restore();
};

const paintImage = (
  c: CanvasRenderingContext2D,
  look: Look,
  q: Extract<Primitive, { kind: 'image' }>,
): void => {
  const picture = pictureOf(q.blobId, q.mediaType, q.base64);
  if (!picture) return;
  c.save();
  c.translate(q.xMm, q.yMm);
  c.rotate((q.rotationDeg * Math.PI) / 180);
  c.globalAlpha = q.opacity * (look.alpha ?? 1);
  c.drawImage(picture, 0, 0, q.widthMm, q.heightMm);
  c.restore();
};

const paintPrimitive = (c: CanvasRenderingContext2D, look: Look, q: Primitive): void => {
  switch (q.kind) {
    case 'path': {
      const path = pathOf(q.d);
      if (q.fill) paintFill(c, look, q, path, q.fill);
      if (q.stroke) {
        setStroke(c, look, q.stroke);
        c.stroke(path);
      }
      break;
    }
    case 'circle': {
      c.beginPath();
      c.arc(q.xMm, q.yMm, q.space === 'paper' ? q.rMm * look.scale : q.rMm, 0, Math.PI * 2);
      if (q.fill) {
        c.globalAlpha = (q.fill.opacity ?? 1) * (look.alpha ?? 1);
        c.fillStyle = look.palette.roles[q.fill.role];
        c.fill();
        c.globalAlpha = look.alpha ?? 1;
      }
      if (q.stroke) {
        setStroke(c, look, q.stroke);
        c.stroke();
      }
      break;
    }
    case 'symbol':
      paintSymbol(c, look, q);
      break;
    case 'text':
      paintText(c, look, q);
      break;
    case 'image':
      paintImage(c, look, q);
      break;
  }
};

/** Paints one item of the display list onto a canvas whose units are floor millimetres. */
export const paintItem = (c: CanvasRenderingContext2D, look: Look, item: DisplayItem): void => {
  c.lineJoin = 'round';
  c.lineCap = 'round';
  c.globalAlpha = look.alpha ?? 1;
  for (const q of item.primitives) paintPrimitive(c, look, q);
  c.setLineDash([]);
  c.globalAlpha = 1;
};
