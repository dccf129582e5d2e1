import type { PlanRecord } from '../plan/records/index.ts';
import { type Rect, TITLE_WIDTH_MM } from './frame.ts';
import { CAP, type Ink, widthOf } from './ink.ts';
import { severitySign } from './signs.ts';

export const TITLE_HEIGHT_MM = 56;

export interface TitleFields {
  readonly settings: PlanRecord;
  readonly setupName: string;
  readonly title: string;
  readonly subtitle: string;
  readonly documentType: string;
  readonly scale: string;
  readonly units: string;
  readonly paper: string;
  readonly sheetName: string;
  readonly sheetNumber: number;
  readonly sheetCount: number;
  readonly revision: string;
  /** Not issued as it is: the letter is the one an issue would get. */
  readonly draft: boolean;
  readonly date: string;
  readonly stopsOpen: number;
  readonly program: string;
}

interface Cell {
  readonly w: number;
  readonly caption: string;
  readonly value: string;
  readonly strong?: boolean;
}

/** The value of a field, in smaller letters where it is too long for it. */
export const fieldValue = (
  ink: Ink,
  x: number,
  y: number,
  value: string,
  maxMm: number,
  strong: boolean,
): void => {
  const weight = strong ? 'semibold' : 'regular';
  const capMm = widthOf(value, { capMm: CAP.value, weight }) <= maxMm ? CAP.value : CAP.note;
  ink.text(x, y, value, { capMm, weight, maxMm });
};

const row = (ink: Ink, x0: number, y: number, h: number, cells: readonly Cell[]): void => {
  let x = x0;
  cells.forEach((c, i) => {
    if (i > 0) ink.line(x, y, x, y + h, 0.35);
    ink.text(x + 1.2, y + 2.6, c.caption, { role: 'ink-soft', maxMm: c.w - 2 });
    fieldValue(ink, x + 1.2, y + h - 1.6, c.value, c.w - 2.4, c.strong ?? false);
    x += c.w;
  });
};

/** Whatever is acknowledged, a sheet stays for review. */
export const statusWords = (stopsOpen: number): string =>
  stopsOpen === 0 ? 'For review' : `For review: ${stopsOpen} ${stopsOpen === 1 ? 'stop' : 'stops'} open`;

/**
 * The number that names one document: where the plan's ends in the number of a sheet, like `GO-12A-E-1`, it is that of
 * this sheet; else all sheets share it and are told apart by their own.
 */
export const idNumber = (drawingNumber: string, sheetName: string): string =>
  drawingNumber.replace(/\bE-\d+$/, sheetName);

/**
 * Title block with the fields of ISO 7200:2004 and those of a production, 180 mm wide at most, in the lower right corner.
 */
export const drawTitleBlock = (ink: Ink, frame: Rect, t: TitleFields): Rect => {
  const w = Math.min(TITLE_WIDTH_MM, frame.w);
  const k = w / TITLE_WIDTH_MM;
  const box = { x: frame.x + frame.w - w, y: frame.y + frame.h - TITLE_HEIGHT_MM, w, h: TITLE_HEIGHT_MM };
  ink.rect(box.x, box.y, box.w, box.h, { weightMm: 0.7, fill: 'paper' });
  const people = t.settings.people;
  const widths = (...ws: number[]): number[] => ws.map((v) => v * k);
  const rows: readonly (readonly [number, number[], readonly (readonly [string, string, boolean?])[]])[] = [
    [
      8.6,
      widths(70, 62, 48),
      [
        ['Production', t.settings.production, true],
        ['Scene / set', t.settings.scene, true],
        ['Setup shown', t.setupName, true],
      ],
    ],
    [
      8.6,
      widths(45, 45, 45, 45),
      [
        ['Director of photography', people['director-of-photography'] ?? ''],
        ['Gaffer', people.gaffer ?? ''],
        ['Best boy', people['best-boy'] ?? ''],
        ['Responsible department', people.department ?? 'Set lighting'],
      ],
    ],
  ];
  let y = box.y;
  const put = ([h, ws, cells]: (typeof rows)[number]): void => {
    row(
      ink,
      box.x,
      y,
      h,
      cells.map(([caption, value, strong], i) => ({
        w: ws[i] ?? 0,
        caption,
        value,
        strong: strong ?? false,
      })),
    );
    y += h;
    ink.line(box.x, y, box.x + box.w, y, 0.35);
  };
  rows.forEach(put);
  const titleH = 13.4;
  const tw = 108 * k;
  ink.text(box.x + 1.2, y + 2.6, 'Title', { role: 'ink-soft' });
  ink.text(box.x + 1.2, y + 8.9, t.title, { capMm: CAP.title, weight: 'semibold', maxMm: tw - 2.4 });
  ink.text(box.x + 1.2, y + 12.6, t.subtitle, { maxMm: tw - 2.4 });
  ink.text(box.x + tw - 1.2, y + 2.6, `Lampwright ${t.program}`, { role: 'ink-faint', align: 'right' });
  ink.line(box.x + tw, y, box.x + tw, y + titleH, 0.35);
  ink.text(box.x + tw + 1.2, y + 2.6, 'Identification number', { role: 'ink-soft' });
  ink.text(box.x + tw + 1.2, y + 9.2, idNumber(t.settings.drawingNumber, t.sheetName) || '–', {
    capMm: CAP.head,
    weight: 'semibold',
    maxMm: 50 * k - 2.4,
  });
  const rx = box.x + tw + 50 * k;
  ink.line(rx, y, rx, y + titleH, 0.35);
  ink.text(rx + 1.2, y + 2.6, t.draft && t.revision ? 'Revision, draft' : 'Revision', { role: 'ink-soft' });
  ink.text((rx + box.x + box.w) / 2, y + 10.4, t.revision || '–', {
    capMm: CAP.title,
    weight: 'semibold',
    align: 'center',
    maxMm: 22 * k - 2.4,
  });
  y += titleH;
  ink.line(box.x, y, box.x + box.w, y, 0.35);
  const statusY = y;
  put([
    8.4,
    widths(70, 45, 65),
    [
      ['Legal owner', t.settings.owner],
      ['Document type', t.documentType],
      ['Document status', ''],
    ],
  ]);
  const sx = box.x + 115 * k;
  const status = statusWords(t.stopsOpen);
  const signed = t.stopsOpen > 0;
  if (signed) severitySign(ink, 'stop', sx + 2.8, statusY + 5.5, 3);
  ink.text(sx + (signed ? 5.4 : 1.2), statusY + 6.8, status, {
    capMm: CAP.value,
    weight: 'semibold',
    role: signed ? 'stop' : 'ink',
    maxMm: 65 * k - 7,
  });
  put([
    8.4,
    widths(38, 38, 62, 42),
    [
      ['Created by', people['drawn-by'] ?? ''],
      ['Technical reference', people.gaffer ?? ''],
      ['Approved (name, signature, date)', ''],
      ['Date of issue', t.date],
    ],
  ]);
  row(ink, box.x, y, box.y + box.h - y, [
    { w: 42 * k, caption: 'Scale', value: t.scale, strong: true },
    { w: 24 * k, caption: 'Units', value: t.units },
    { w: 48 * k, caption: 'Paper', value: t.paper },
    { w: 20 * k, caption: 'Language', value: 'en' },
    {
      w: 46 * k,
      caption: 'Sheet',
      value: `${t.sheetName}, ${t.sheetNumber} of ${t.sheetCount}`,
      strong: true,
    },
  ]);
  return box;
};
