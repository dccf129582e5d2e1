import type { Rect } from './frame.ts';
import { CAP, type Ink } from './ink.ts';
import { severitySign } from './signs.ts';
import { fieldValue, idNumber, statusWords, type TitleFields } from './title-block.ts';

const ROW_MM = 8.6;
export const STRIP_HEIGHT_MM = 2 * ROW_MM;
/** A strip on a narrower frame would have no room for its fields. */
export const LEAST_STRIP_MM = 340;

type Field = readonly [share: number, caption: string, value: string, strong?: boolean];

const row = (ink: Ink, x0: number, y: number, w: number, fields: readonly Field[]): void => {
  const all = fields.reduce((s, [share]) => s + share, 0);
  let x = x0;
  fields.forEach(([share, caption, value, strong], i) => {
    const cw = (share / all) * w;
    if (i > 0) ink.line(x, y, x, y + ROW_MM, 0.35);
    ink.text(x + 1.2, y + 2.6, caption, { role: 'ink-soft', maxMm: cw - 2 });
    fieldValue(ink, x + 1.2, y + ROW_MM - 1.6, value, cw - 2.4, strong ?? false);
    x += cw;
  });
};

/** The fields of the title block (ISO 7200:2004) in two rows along the foot of the frame, for pages that are cut up. */
export const drawTitleStrip = (ink: Ink, frame: Rect, t: TitleFields): void => {
  const y = frame.y + frame.h - STRIP_HEIGHT_MM;
  const { people } = t.settings;
  const first: readonly Field[] = [
    [62, 'Production', t.settings.production, true],
    [40, 'Scene / set', t.settings.scene],
    [54, 'Setup shown', t.setupName],
    [42, 'Director of photography', people['director-of-photography'] ?? ''],
    [36, 'Gaffer', people.gaffer ?? ''],
    [36, 'Best boy', people['best-boy'] ?? ''],
    [34, 'Document type', t.documentType],
    [60, 'Document status', ''],
    [26, t.draft && t.revision ? 'Revision, draft' : 'Revision', t.revision || '–', true],
  ];
  ink.line(frame.x, y, frame.x + frame.w, y, 0.7);
  row(ink, frame.x, y, frame.w, first);
  ink.line(frame.x, y + ROW_MM, frame.x + frame.w, y + ROW_MM, 0.35);
  row(ink, frame.x, y + ROW_MM, frame.w, [
    [46, 'Title', t.title, true],
    [44, 'Identification number', idNumber(t.settings.drawingNumber, t.sheetName) || '–', true],
    [56, 'Legal owner', t.settings.owner],
    [36, 'Created by', people['drawn-by'] ?? ''],
    [56, 'Approved (name, signature, date)', ''],
    [34, 'Date of issue', t.date],
    [22, 'Scale', t.scale],
    [42, 'Paper', t.paper],
    [18, 'Language', 'en'],
    [44, 'Sheet', `${t.sheetName}, ${t.sheetNumber} of ${t.sheetCount}`, true],
  ]);
  const shares = first.map(([share]) => share);
  const all = shares.reduce((a, b) => a + b, 0);
  const before = shares.slice(0, 7).reduce((a, b) => a + b, 0);
  const x = frame.x + (before / all) * frame.w;
  const open = t.stopsOpen > 0;
  if (open) severitySign(ink, 'stop', x + 2.8, y + 5.7, 3);
  ink.text(x + (open ? 5.4 : 1.2), y + ROW_MM - 1.6, statusWords(t.stopsOpen), {
    capMm: CAP.value,
    weight: 'semibold',
    role: open ? 'stop' : 'ink',
    maxMm: ((shares[7] ?? 0) / all) * frame.w - 6,
  });
};
