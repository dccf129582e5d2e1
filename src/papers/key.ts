import { symbolShape } from '../drawing/symbols.ts';
import type { FixtureKind, Kind } from '../plan/kinds/kinds.ts';
import { recordsOf } from '../plan/plan.ts';
import { CAP, type Ink } from './ink.ts';
import type { SetInfo } from './sheet-info.ts';

export interface KeyRow {
  readonly kind: FixtureKind;
  readonly count: number;
  /** Input watts of one, ballast included; undefined where the plan does not give them. */
  readonly eachW: number | undefined;
}

const MOUNT: Readonly<Record<string, string>> = {
  'pin-16': '16 mm pin',
  'spigot-28': '28 mm spigot',
  clamp: 'clamp',
  clip: 'clips',
  socket: 'socket',
  hung: 'hung',
  floor: 'floor',
  held: 'by hand',
};
const MOUNT_INCH: Readonly<Record<string, string>> = { 'pin-16': '5/8 in', 'spigot-28': '1-1/8 in' };

export const mountText = (k: FixtureKind, imperial: boolean): string => {
  const first = k.mount.fits[0];
  return first === undefined ? '' : ((imperial ? MOUNT_INCH[first] : undefined) ?? MOUNT[first] ?? first);
};

/** Fixture kinds on a floor with their counts, the most power first. */
export const keyRows = (info: SetInfo, floorId: string | undefined): readonly KeyRow[] => {
  const kinds = new Map<string, { kind: FixtureKind; count: number; eachW: number | undefined }>();
  const ballastWatts = new Map<string, number>();
  for (const b of recordsOf(info.plan, 'ballast')) {
    const k = info.plan.records.get(b.kindId) as Kind | undefined;
    if (k?.family === 'ballast') ballastWatts.set(b.fixtureId, k.load.wattsW);
  }
  for (const f of recordsOf(info.plan, 'fixture')) {
    if (floorId !== undefined && f.floorId !== floorId) continue;
    const kind = info.plan.records.get(f.kindId) as Kind | undefined;
    if (kind?.family !== 'fixture') continue;
    const row = kinds.get(kind.id) ?? { kind, count: 0, eachW: kind.load?.wattsW ?? ballastWatts.get(f.id) };
    row.count += 1;
    kinds.set(kind.id, row);
  }
  return [...kinds.values()].sort(
    (a, b) => (b.eachW ?? 0) * b.count - (a.eachW ?? 0) * a.count || (a.kind.name < b.kind.name ? -1 : 1),
  );
};

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
  const rows = keyRows(info, floorId);
  const imperial = info.units === 'imperial';
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
  const rowH = Math.min(6.6, Math.max(4.4, room / Math.max(1, rows.length)));
  const fit = Math.max(0, Math.min(rows.length, Math.floor(room / rowH)));
  const shown = rows.slice(0, fit);
  let y = top;
  for (const r of shown) {
    const turn = r.kind.sizeMm.widthMm > r.kind.sizeMm.lengthMm * 2 ? 90 : 0;
    iconAt(ink, r.kind.symbol, r.kind.sizeMm, x + 8, y + rowH / 2, 15, rowH - 1.2, scale, turn);
    const base = y + rowH / 2 + CAP.note / 2;
    ink.text(x + 17, base, r.kind.name, { maxMm: right[0] - (narrow ? 0 : imperial ? 12 : 16.5) - (x + 17) });
    if (!narrow) ink.text(right[0], base, mountText(r.kind, imperial), { align: 'right', role: 'ink-soft' });
    ink.text(right[1], base, String(r.count), { align: 'right' });
    ink.text(right[2], base, r.eachW === undefined ? '–' : watts(r.eachW), { align: 'right' });
    ink.text(right[3], base, r.eachW === undefined ? '–' : watts(r.eachW * r.count), { align: 'right' });
    y += rowH;
    ink.line(x, y, x + w, y, 0.13, 'ink-faint');
  }
  const count = rows.reduce((s, r) => s + r.count, 0);
  const total = rows.reduce((s, r) => s + (r.eachW ?? 0) * r.count, 0);
  const base = y + 4;
  ink.text(
    x,
    base,
    fit < rows.length
      ? `All units, ${rows.length - fit} more kinds in the unit list`
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

/** What the other signs on the plot mean, two to a row; gives the y below. */
export const drawSigns = (ink: Ink, x: number, y0: number, w: number): number => {
  const half = w / 2;
  const signs: readonly (readonly [string, (cx: number, cy: number) => void])[] = [
    [
      'Distribution box',
      (cx, cy) => iconAt(ink, 'box-small', { lengthMm: 250, widthMm: 350 }, cx, cy, 7, 4.2, 48, 90),
    ],
    [
      'Stand, legs’ circle',
      (cx, cy) =>
        ink.add([
          {
            kind: 'circle',
            xMm: cx,
            yMm: cy,
            rMm: 2.1,
            stroke: { role: 'stand', weightMm: 0.18, dashMm: [1.2, 0.8] },
          },
        ]),
    ],
    [
      'Wall outlet',
      (cx, cy) => iconAt(ink, 'wall-outlet', { lengthMm: 135, widthMm: 200 }, cx, cy, 4, 3.6, 48),
    ],
    ['Ballast', (cx, cy) => iconAt(ink, 'ballast', { lengthMm: 400, widthMm: 220 }, cx, cy, 7, 3.4, 48)],
    ['Cable', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.35, 'cable')],
    ['Feeder', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.5, 'feeder')],
    [
      'Camera, frame lines',
      (cx, cy) => iconAt(ink, 'camera', { lengthMm: 620, widthMm: 260 }, cx, cy, 9, 4, 60),
    ],
    [
      'Actor’s mark',
      (cx, cy) => iconAt(ink, 'talent-mark', { lengthMm: 330, widthMm: 330 }, cx, cy, 4, 4, 48),
    ],
    ['Aim line, true throw', (cx, cy) => ink.line(cx - 6, cy, cx + 6, cy, 0.18, 'aim', [4, 1, 0.6, 1])],
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
    ink.text(cx + 14, cy + CAP.note / 2, word, { maxMm: half - 15 });
  });
  return y0 + 1 + rowH * Math.ceil(signs.length / 2);
};
