import { symbolShape } from '../drawing/symbols.ts';
import { wrapText } from '../drawing/text.ts';
import { besideSign, CAP, type Ink, PITCH_MM, widthOf } from './ink.ts';
import { type KeyRow, keyRows } from './key-rows.ts';
import type { SetInfo } from './sheet-info.ts';

/** A symbol at most `boxMm` wide and high with its middle at (x, y). */
export const iconAt = (
  ink: Ink,
  symbolId: string,
  look: { lengthMm: number; widthMm: number },
  x: number,
  y: number,
  wMm: number,
  hMm: number,
  scale: number,
  turnDeg = 0,
): void => {
  const turned = turnDeg % 180 !== 0;
  const across = turned ? look.widthMm : look.lengthMm;
  const down = turned ? look.lengthMm : look.widthMm;
  const k = Math.min(1 / scale, wMm / across, hMm / down);
  const shape = symbolShape(symbolId);
  const lengthMm = Math.max(1.2, look.lengthMm * k);
  const widthMm = Math.max(1.2, look.widthMm * k);
  const mx = ((shape.box[0] + shape.box[2]) / 2) * (lengthMm / shape.lengthMm);
  const my = ((shape.box[1] + shape.box[3]) / 2) * (widthMm / shape.widthMm);
  ink.add([
    {
      kind: 'symbol',
      symbolId,
      xMm: turned ? x - my : x - mx,
      yMm: turned ? y + mx : y - my,
      rotationDeg: turned ? -90 : 0,
      lengthMm,
      widthMm,
      broken: false,
      role: 'gear',
    },
  ]);
};

/** A stand as it is drawn: the circle its legs take up, with the ends of three of them. */
const legCircle = (ink: Ink, cx: number, cy: number, r: number): void => {
  ink.add([
    {
      kind: 'circle',
      xMm: cx,
      yMm: cy,
      rMm: r,
      stroke: { role: 'stand', weightMm: 0.18, dashMm: [1.2, 0.8] },
    },
  ]);
  for (const deg of [0, 120, 240]) {
    const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)];
    ink.line(cx + 0.6 * r * c, cy + 0.6 * r * s, cx + r * c, cy + r * s, 0.18, 'stand');
  }
};

const watts = (w: number): string => String(Math.round(w));

/**
 * Key to the symbols with mount, count and input watts in a column; gives the y below it and how many kinds had no room.
 */
export const drawKey = (
  ink: Ink,
  info: SetInfo,
  x: number,
  y0: number,
  w: number,
  maxH: number,
  scale: number,
  floorId: string | undefined,
): { readonly y: number; readonly left: number } => {
  const rows = keyRows(info.plan, floorId, info.units);
  // A narrow column has no room for the mount beside the name.
  const narrow = w < 85;
  const right = [x + w - 29, x + w - 20, x + w - 10.5, x + w] as const;
  ink.text(x, y0 + 4, 'Key to symbols', { capMm: CAP.value, weight: 'semibold' });
  if (!narrow) ink.text(right[0], y0 + 4, 'Mount', { role: 'ink-soft', align: 'right' });
  ink.text(right[1], y0 + 4, 'Count', { role: 'ink-soft', align: 'right' });
  ink.text(right[2], y0 + 4, 'W each', { role: 'ink-soft', align: 'right' });
  ink.text(right[3], y0 + 4, 'W', { role: 'ink-soft', align: 'right' });
  ink.line(x, y0 + 5.6, x + w, y0 + 5.6, 0.25);
  const top = y0 + 5.6;
  const room = maxH - 5.6 - 6;
  const mountW = narrow ? 0 : Math.max(0, ...rows.map((r) => widthOf(r.mount))) + 2;
  const nameX = x + 17;
  const nameW = (r: KeyRow): number => (narrow || r.mount === '' ? right[1] - 7 : right[0] - mountW) - nameX;
  // A name too long for one line takes more, which asks for a higher row.
  const linesOf = (r: KeyRow): number => wrapText(r.name, CAP.note, 'regular', nameW(r), 3).length;
  const least = rows.map((r) => 4.4 + (linesOf(r) - 1) * PITCH_MM);
  const spare = Math.max(0, room - least.reduce((n, h) => n + h, 0)) / Math.max(1, rows.length);
  const heights = least.map((h) => Math.max(h, Math.min(8.4, h + spare)));
  let fit = 0;
  for (let used = 0; fit < rows.length && used + (heights[fit] ?? 0) <= room + 0.01; fit++)
    used += heights[fit] ?? 0;
  const shown = rows.slice(0, fit);
  let y = top;
  shown.forEach((r, i) => {
    const rowH = heights[i] ?? 4.4;
    const turn = r.look.widthMm > r.look.lengthMm * 2 ? 90 : 0;
    if (r.circle) legCircle(ink, x + 8, y + rowH / 2, (Math.min(rowH, 7) - 1.6) / 2);
    else iconAt(ink, r.symbolId, r.look, x + 8, y + rowH / 2, 15, rowH - 1.2, scale, turn);
    const base = y + rowH / 2 + CAP.note / 2;
    const lines = linesOf(r);
    ink.paragraph(nameX, base - ((lines - 1) * PITCH_MM) / 2, r.name, nameW(r), { maxLines: 3 });
    if (!narrow) ink.text(right[0], base, r.mount, { align: 'right', role: 'ink-soft' });
    ink.text(right[1], base, String(r.count), { align: 'right' });
    ink.text(right[2], base, r.eachW === undefined ? '–' : watts(r.eachW), { align: 'right' });
    ink.text(right[3], base, r.eachW === undefined ? '–' : watts(r.eachW * r.count), { align: 'right' });
    y += rowH;
    ink.line(x, y, x + w, y, 0.13, 'ink-faint');
  });
  const lights = rows.filter((r) => r.light);
  const count = lights.reduce((s, r) => s + r.count, 0);
  const total = lights.reduce((s, r) => s + (r.eachW ?? 0) * r.count, 0);
  const base = y + 4;
  ink.text(
    x,
    base,
    fit < rows.length
      ? `All units, ${rows.length - fit} more ${rows.length - fit === 1 ? 'kind' : 'kinds'} in the lists`
      : 'All units, rated input',
    {
      weight: 'semibold',
      maxMm: right[1] - 8 - x,
    },
  );
  ink.text(right[1], base, String(count), { align: 'right', weight: 'semibold' });
  ink.text(right[3], base, watts(total), { align: 'right', weight: 'semibold' });
  ink.line(x, base + 1.6, x + w, base + 1.6, 0.25);
  return { y: base + 1.6, left: rows.length - fit };
};

/** Height of the signs. */
export const SIGNS_MM = 28.5;

/** What the other signs on the plot mean, two to a row; gives the y below. */
export const drawSigns = (ink: Ink, x: number, y0: number, w: number): number => {
  const half = w / 2;
  const signs: readonly (readonly [string, (cx: number, cy: number) => void])[] = [
    ['Cable', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.35, 'cable')],
    ['Feeder', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.5, 'feeder')],
    ['Data line', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.35, 'data', [3.2, 0.8])],
    ['Network', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.35, 'data', [3.2, 0.8, 0.5, 0.8])],
    [
      'Camera, frame lines',
      (cx, cy) => iconAt(ink, 'camera', { lengthMm: 620, widthMm: 260 }, cx, cy, 9, 4, 60),
    ],
    [
      'Actor’s mark',
      (cx, cy) => iconAt(ink, 'talent-mark', { lengthMm: 330, widthMm: 330 }, cx, cy, 4, 4, 48),
    ],
    ['Aim, true throw', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.18, 'aim', [4, 1, 0.6, 1])],
    [
      'Beam',
      (cx, cy) =>
        ink.path([['M', cx - 5, cy], ['L', cx + 5, cy - 2], ['L', cx + 5, cy + 2], ['Z']], {
          hatch: { role: 'beam', angleDeg: 45, spacingMm: 1.2 },
        }),
    ],
    [
      'Off in this setup',
      (cx, cy) =>
        ink.add([
          {
            kind: 'symbol',
            symbolId: 'unit-plain',
            xMm: cx,
            yMm: cy,
            rotationDeg: 0,
            lengthMm: 4,
            widthMm: 3.4,
            broken: true,
            role: 'gear',
          },
        ]),
    ],
    [
      'Unit number',
      (cx, cy) => {
        ink.add([
          {
            kind: 'circle',
            xMm: cx,
            yMm: cy,
            rMm: 2.1,
            stroke: { role: 'ink', weightMm: 0.25 },
            fill: { role: 'paper' },
          },
        ]);
        ink.text(cx, cy + 0.9, '7', { align: 'center' });
      },
    ],
  ];
  const rowH = 5;
  signs.forEach(([word, draw], i) => {
    const cx = x + (i % 2) * half;
    const cy = y0 + 1 + rowH * (Math.floor(i / 2) + 0.5);
    draw(cx + 6.5, cy);
    besideSign(ink, cx + 14, cy, word, half - 15);
  });
  return y0 + 1 + rowH * Math.ceil(signs.length / 2);
};
