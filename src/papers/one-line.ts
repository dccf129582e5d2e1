import type { Primitive } from '../drawing/display-list.ts';
import { loadBar } from '../drawing/marks.ts';
import { type OneLineSheet, oneLineSteps } from '../drawing/one-line/index.ts';
import {
  breakerSign,
  flagSign,
  frameSign,
  nodeSign,
  outletSign,
  residualSign,
  sourceSign,
  wiresSign,
  writeInSign,
} from '../drawing/one-line/symbols.ts';
import { planRecord, recordOf } from '../plan/plan.ts';
import type { Practice } from '../plan/records/index.ts';
import { bondingWord } from '../report/cautions.ts';
import { frameOf, type Rect, TITLE_WIDTH_MM } from './frame.ts';
import { besideSign, CAP, type Ink, type Notices } from './ink.ts';
import { markFor, revisionTriangle } from './revision-marks.ts';
import { CAUTION, framedPage, type Making, type PageMaker, type SetInfo, sheetName } from './sheet-info.ts';
import { TITLE_HEIGHT_MM } from './title-block.ts';

const PAD_MM = 5;
const KEY_W_MM = 112;

/** The signs of the one-line diagram with their words, two to a row. */
const SIGNS: readonly (readonly [string, (s: Ink, x: number, y: number) => void])[] = [
  ['Generator', (s, x, y) => sourceSign(s, 'generator', x, y, 2.4)],
  ['Supply from outside', (s, x, y) => sourceSign(s, 'service', x, y, 2.4)],
  [
    'Breaker, amps',
    (s, x, y) => {
      breakerSign(s, 20, x, y - 3.75);
    },
  ],
  ['Bus', (s, x, y) => s.line(x - 6, y, x + 6, y, 1)],
  [
    'Feeder, five wires',
    (s, x, y) => {
      s.line(x - 6, y, x + 6, y, 0.5, 'feeder');
      wiresSign(s, 5, x, y);
    },
  ],
  ['Cable', (s, x, y) => s.line(x - 6, y, x + 6, y, 0.35, 'cable')],
  ['Outlet', (s, x, y) => outletSign(s, x, y + 1)],
  [
    'Residual-current device',
    (s, x, y) => {
      s.line(x, y - 2.4, x, y + 2.4, 0.5);
      residualSign(s, x, y);
    },
  ],
  ['Node: least volts, drop', (s, x, y) => nodeSign(s, x, y)],
  ['Write in, measured', (s, x, y) => writeInSign(s, x - 5, y + 1, 10)],
  ['Box or panel', (s, x, y) => frameSign(s, x - 6, y - 2, 12, 4)],
  ['Goes on on another sheet', (s, x, y) => flagSign(s, x, y - 3.2)],
  [
    'Worst, this setup, limit',
    (s, x, y) => loadBar(s, x - 6, y - 1, 12, 2, { here: 0.5, worst: 0.8, limit: 1 }),
  ],
  ['Off in this setup', (s, x, y) => s.symbol('unit-plain', x, y, { lengthMm: 4, widthMm: 3.4 }, 0, true)],
];

const drawKey = (ink: Ink, x: number, y: number, w: number): void => {
  ink.text(x, y + 5, 'Key to one-line symbols', { capMm: CAP.value, weight: 'semibold' });
  const half = w / 2;
  const rows = Math.ceil(SIGNS.length / 2);
  const rowH = (TITLE_HEIGHT_MM - 9) / rows;
  SIGNS.forEach(([word, draw], i) => {
    const cx = x + Math.floor(i / rows) * half;
    const cy = y + 7.5 + rowH * ((i % rows) + 0.5);
    draw(ink, cx + 7, cy);
    besideSign(ink, cx + 16, cy, word, half - 17);
  });
};

const notesOf = (practice: Practice): readonly string[] => [
  'Amps at ways: this setup, then the worst of all setups on the fullest leg. Figures at loads, volts and drop at nodes: the worst setup; drop is leg and neutral together.',
  `Order of connection, lock-out and testing: as the qualified person directs. ${bondingWord(practice)} are not drawn.`,
];

/** Key and cautions to the left of the title block. */
const drawFoot = (ink: Ink, f: Rect, practice: Practice): void => {
  const top = f.y + f.h - TITLE_HEIGHT_MM;
  ink.line(f.x, top, f.x + f.w, top, 0.35);
  const w = f.w - TITLE_WIDTH_MM - 2 * PAD_MM;
  if (w < 60) return;
  const keyW = Math.min(KEY_W_MM, w);
  drawKey(ink, f.x + PAD_MM, top, keyW);
  const x = f.x + PAD_MM + keyW + 4;
  const room = f.x + f.w - TITLE_WIDTH_MM - PAD_MM - x;
  if (room < 36) return;
  ink.line(x - 3, top, x - 3, f.y + f.h, 0.35);
  ink.text(x, top + 5, 'Cautions', { capMm: CAP.value, weight: 'semibold' });
  let y = top + 9.6;
  for (const text of [CAUTION, ...notesOf(practice)]) {
    const left = Math.floor((f.y + f.h - 1.5 - y) / 3.3) + 1;
    if (left <= 0) break;
    y = ink.paragraph(x, y, text, room, { maxLines: left, pitchMm: 3.3 }) + 1.2;
  }
};

/** Where a diagram lands on its page, and how much larger than drawn. */
interface Place {
  readonly dx: number;
  readonly dy: number;
  readonly k: number;
}

/** A primitive of the diagram on the page. Texts go through the page's ink, which knows what the font lacks. */
const put = (ink: Ink, notices: Notices, p: Primitive, { dx, dy, k }: Place): void => {
  const x = (v: number): number => v * k + dx;
  const y = (v: number): number => v * k + dy;
  if (p.kind === 'text') {
    const { weight, align, role } = p;
    if (p.text.endsWith('…')) notices.cut(p.text);
    ink.text(x(p.xMm), y(p.yMm), p.text, { capMm: p.capMm * k, weight, align, role });
  } else if (p.kind === 'path') {
    const d = p.d.map((c): typeof c => {
      if (c[0] === 'C') return ['C', x(c[1]), y(c[2]), x(c[3]), y(c[4]), x(c[5]), y(c[6])];
      return c[0] === 'Z' ? c : [c[0], x(c[1]), y(c[2])];
    });
    ink.add([{ ...p, d }]);
  } else if (p.kind === 'circle') {
    const { space: _, ...rest } = p;
    ink.add([{ ...rest, xMm: x(p.xMm), yMm: y(p.yMm), rMm: p.rMm * k }]);
  } else
    ink.add([
      {
        ...p,
        xMm: x(p.xMm),
        yMm: y(p.yMm),
        widthMm: p.widthMm * k,
        ...('lengthMm' in p ? { lengthMm: p.lengthMm * k } : { heightMm: p.heightMm * k }),
      },
    ]);
};

const MARK_MM = 3.2;

/** Where the conductor of an item begins: the first point it draws. */
const startOf = (i: OneLineSheet['items'][number]): { readonly x: number; readonly y: number } => {
  const first = i.primitives.find((p) => p.kind === 'path');
  const move = first?.kind === 'path' ? first.d[0] : undefined;
  return move && move[0] !== 'Z'
    ? { x: Number(move.at(-2)), y: Number(move.at(-1)) }
    : { x: i.box.minX + MARK_MM, y: i.box.minY };
};

/** A triangle with the revision letter beside the conductor of what changed since the issue before. */
const drawMarks = (ink: Ink, info: SetInfo, sheet: OneLineSheet, { dx, dy, k }: Place): void => {
  for (const i of sheet.items) {
    // Parts of an item, like the fork below it, go with the item itself.
    if (i.key.includes('#')) continue;
    const ballast = recordOf(info.plan, 'ballast', i.recordId);
    const letter = markFor(info, i.recordId, ballast?.fixtureId);
    if (letter === undefined) continue;
    const { x, y } = startOf(i);
    revisionTriangle(ink, (x - 2.9) * k + dx, (y + 2.4) * k + dy, letter, MARK_MM * k);
  }
};

const drawDiagram = (
  ink: Ink,
  info: SetInfo,
  sheet: OneLineSheet,
  area: Rect,
  nameOf: (index: number) => string,
): void => {
  // A drawing smaller than its sheet is drawn larger, until its least letters are 2.5 mm high, and stands in the middle, a
  // little to the top.
  const k = Math.max(1, Math.min(CAP.value / CAP.note, area.w / sheet.widthMm, area.h / sheet.heightMm));
  const at = {
    k,
    dx: area.x + Math.max(0, (area.w - sheet.widthMm * k) / 2),
    dy: area.y + Math.max(0, (area.h - sheet.heightMm * k) * 0.3),
  };
  for (const item of sheet.items) for (const p of item.primitives) put(ink, info.notices, p, at);
  drawMarks(ink, info, sheet, at);
  for (const r of sheet.references)
    ink.text(r.xMm * k + at.dx, r.yMm * k + at.dy, `sheet ${nameOf(r.toSheet)}`, {
      capMm: CAP.note * k,
      role: 'ink-soft',
    });
};

/** The one-line diagram on as many sheets as the network needs. */
export function* oneLinePages(info: SetInfo): Making {
  const f = frameOf(info.sheet);
  const area = {
    x: f.x + PAD_MM,
    y: f.y + PAD_MM,
    w: f.w - 2 * PAD_MM,
    h: f.h - TITLE_HEIGHT_MM - 2 * PAD_MM,
  };
  const sheets = yield* oneLineSteps(info.plan, info.assessment, info.setupId, {
    widthMm: area.w,
    heightMm: area.h,
  });
  return sheets.map(
    (sheet, i): PageMaker =>
      (number, count) =>
        framedPage(
          info,
          {
            title: 'One-line diagram',
            subtitle: `${sheet.subjects.join(', ')}${sheets.length > 1 ? ` (${i + 1} of ${sheets.length})` : ''}`,
            documentType: 'Diagram',
            scale: 'none',
            units: info.units === 'imperial' ? 'A, V, ft' : 'A, V, m',
          },
          (ink, frame) => {
            drawDiagram(ink, info, sheet, area, (to) => sheetName(number - i + to));
            drawFoot(ink, frame, planRecord(info.plan).practice);
          },
        )(number, count),
  );
}
