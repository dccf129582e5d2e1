import type { Ink } from './ink.ts';
import type { Sheet } from './sheets.ts';

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Margins after ISO 5457:1999: 20 mm at the filing edge on the left, 10 mm elsewhere. */
const LEFT_MM = 20;
const OTHER_MM = 10;
const BORDER_MM = 5;
const FIELD_MM = 50;
/** How far centring marks reach into the drawing space. */
const MARK_MM = 3.5;
/** Widest title block, lower right. */
export const TITLE_WIDTH_MM = 180;
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ';

/** The drawing space inside the frame line. */
export const frameOf = (sheet: Sheet): Rect => ({
  x: LEFT_MM,
  y: OTHER_MM,
  w: sheet.widthMm - LEFT_MM - OTHER_MM,
  h: sheet.heightMm - 2 * OTHER_MM,
});

/** Field edges along an axis, 50 mm from the centre line outwards, the last one running to the end. */
const fields = (from: number, to: number, centre: number): number[] => {
  const out: number[] = [];
  for (let p = centre; p > from + FIELD_MM * 0.4; p -= FIELD_MM) out.unshift(p);
  for (let p = centre + FIELD_MM; p < to - FIELD_MM * 0.4; p += FIELD_MM) out.push(p);
  return [from, ...out, to];
};

/** Zone of a point of the sheet by the letters and numerals of its border, like `C2`. */
export const zoneOf = (sheet: Sheet, xMm: number, yMm: number): string => {
  const f = frameOf(sheet);
  const index = (edges: readonly number[], v: number): number =>
    Math.max(0, Math.min(edges.length - 2, edges.findIndex((e) => v < e) - 1));
  const xs = fields(f.x, f.x + f.w, f.x + f.w / 2);
  const ys = fields(f.y, f.y + f.h, f.y + f.h / 2);
  const col = xMm >= (xs.at(-1) ?? 0) ? xs.length - 2 : index(xs, xMm);
  const row = yMm >= (ys.at(-1) ?? 0) ? ys.length - 2 : index(ys, yMm);
  return `${LETTERS[row % LETTERS.length] ?? ''}${col + 1}`;
};

/** Frame line, border of zones with letters and numerals, and centring marks; the lower one stops short of a title along the foot. */
export const drawFrame = (ink: Ink, sheet: Sheet, titleAtFoot = false): Rect => {
  const f = frameOf(sheet);
  const o = { x: f.x - BORDER_MM, y: f.y - BORDER_MM, w: f.w + 2 * BORDER_MM, h: f.h + 2 * BORDER_MM };
  const cx = f.x + f.w / 2;
  const cy = f.y + f.h / 2;
  ink.rect(o.x, o.y, o.w, o.h, { weightMm: 0.35 });
  ink.rect(f.x, f.y, f.w, f.h, { weightMm: 0.7 });
  const xs = fields(f.x, f.x + f.w, cx);
  xs.slice(1).forEach((x, i) => {
    const left = xs[i] ?? x;
    const name = String(i + 1);
    for (const y of [o.y, f.y + f.h]) {
      if (x < f.x + f.w && Math.abs(x - cx) > 0.01) ink.line(x, y, x, y + BORDER_MM, 0.35);
      ink.text((left + x) / 2, y + BORDER_MM / 2 + 1.25, name, { capMm: 2.5, align: 'center' });
    }
  });
  const ys = fields(f.y, f.y + f.h, cy);
  ys.slice(1).forEach((y, i) => {
    const top = ys[i] ?? y;
    const name = LETTERS[i % LETTERS.length] ?? '';
    for (const x of [o.x, f.x + f.w]) {
      if (y < f.y + f.h && Math.abs(y - cy) > 0.01) ink.line(x, y, x + BORDER_MM, y, 0.35);
      ink.text(x + BORDER_MM / 2, (top + y) / 2 + 1.25, name, { capMm: 2.5, align: 'center' });
    }
  });
  // Where the title block lies over the lower mark, the mark ends at the frame.
  const lower = titleAtFoot || cx > f.x + f.w - TITLE_WIDTH_MM ? 0 : MARK_MM;
  ink.line(cx, o.y, cx, f.y + MARK_MM, 0.7);
  ink.line(cx, o.y + o.h, cx, f.y + f.h - lower, 0.7);
  ink.line(o.x, cy, f.x + MARK_MM, cy, 0.7);
  ink.line(o.x + o.w, cy, f.x + f.w - MARK_MM, cy, 0.7);
  return f;
};
