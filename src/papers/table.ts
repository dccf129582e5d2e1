import type { ColorRole } from '../drawing/display-list.ts';
import { wrapText } from '../drawing/text.ts';
import type { Block } from './flow.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, widthOf } from './ink.ts';
import { revisionTriangle } from './revision-marks.ts';
import { type PlacedColumn, pitchOf, rowMm } from './table-columns.ts';
import { HEAD_PITCH_MM } from './table-head.ts';

export { type Column, type PlacedColumn, pitchOf, placeColumns, rowMm } from './table-columns.ts';
export { tableHead } from './table-head.ts';

/** Where a cell is, and the height of the capitals of its table. */
export interface CellBox extends Rect {
  readonly capMm: number;
}

/** What stands in a cell: a text, or something drawn. */
export type Cell =
  | string
  | { readonly text: string; readonly weight?: 'regular' | 'semibold'; readonly role?: ColorRole }
  | {
      readonly draw: (ink: Ink, cell: CellBox) => void;
      /** Lines it needs in a column so wide; one when left out. */
      readonly lines?: (column: { readonly w: number; readonly capMm: number }) => number;
    };

/** Lines a text may run on in a cell that is too narrow for it. */
const CELL_LINES = 8;

const asText = (cell: Cell | undefined) =>
  cell === undefined || (typeof cell === 'object' && 'draw' in cell)
    ? undefined
    : typeof cell === 'string'
      ? { text: cell }
      : cell;

/** How a text stands in its column: on one line where it fits, else broken at its words. */
const linesIn = (c: PlacedColumn, cell: Cell | undefined): number => {
  if (typeof cell === 'object' && 'draw' in cell) return cell.lines?.(c) ?? 1;
  const t = asText(cell);
  if (!t || t.text === '') return 1;
  const weight = t.weight ?? 'regular';
  return widthOf(t.text, { capMm: c.capMm, weight }) <= c.w
    ? 1
    : Math.max(1, wrapText(t.text, c.capMm, weight, c.w, CELL_LINES).length);
};

const cellText = (ink: Ink, c: PlacedColumn, x: number, base: number, cell: Cell, lines: number): void => {
  const t = asText(cell);
  if (!t) return;
  const align = c.align ?? 'left';
  const style = {
    capMm: c.capMm,
    align,
    ...(t.weight ? { weight: t.weight } : {}),
    ...(t.role ? { role: t.role } : {}),
  };
  const at = align === 'right' ? x + c.w : x;
  if (lines === 1) ink.text(at, base, t.text, { ...style, maxMm: c.w });
  else ink.paragraph(at, base, t.text, c.w, { ...style, pitchMm: pitchOf(c.capMm), maxLines: CELL_LINES });
};

const capOf = (columns: readonly PlacedColumn[]): number =>
  columns.reduce<number>((m, c) => Math.max(m, c.capMm), CAP.note);

/**
 * One row; a hairline under it unless told otherwise. Texts too wide for their column are broken over lines and make the
 * row higher. With `mark` a triangle with a revision letter stands before it.
 */
export const tableRow = (
  columns: readonly PlacedColumn[],
  cells: Readonly<Record<string, Cell>>,
  how: {
    readonly rule?: 'hair' | 'thin' | 'none';
    readonly keep?: boolean;
    readonly ruleFrom?: string;
    readonly mark?: string | undefined;
  } = {},
): Block => {
  const cap = capOf(columns);
  const row = rowMm(cap);
  const lines = columns.map((c) => linesIn(c, cells[c.id]));
  const more = Math.max(0, ...columns.map((c, i) => ((lines[i] ?? 1) - 1) * pitchOf(c.capMm)));
  return {
    heightMm: row + more,
    keep: how.keep ?? false,
    draw: (ink, area) => {
      const base = area.y + row / 2 + cap / 2;
      for (const [i, c] of columns.entries()) {
        const cell = cells[c.id];
        if (cell === undefined) continue;
        if (typeof cell === 'object' && 'draw' in cell)
          cell.draw(ink, { x: area.x + c.x, y: area.y, w: c.w, h: row, capMm: c.capMm });
        else cellText(ink, c, area.x + c.x, base, cell, lines[i] ?? 1);
      }
      if (how.mark) revisionTriangle(ink, area.x - 2.7, area.y + row / 2, how.mark, 3.4);
      if (how.rule === 'none') return;
      const from = columns.find((c) => c.id === how.ruleFrom)?.x ?? 0;
      const y = area.y + area.h;
      ink.line(
        area.x + from,
        y,
        area.x + area.w,
        y,
        how.rule === 'thin' ? 0.25 : 0.13,
        how.rule === 'thin' ? 'ink' : 'ink-faint',
      );
    },
  };
};

/** Two blocks as one, so that nothing comes between them. */
export const stacked = (...blocks: readonly Block[]): Block => ({
  heightMm: blocks.reduce((s, b) => s + b.heightMm, 0),
  keep: true,
  draw: (ink, area) => {
    let y = area.y;
    for (const b of blocks) {
      b.draw(ink, { ...area, y, h: b.heightMm });
      y += b.heightMm;
    }
  },
});

/** Lines of the remark beside a heading. */
const REMARK_LINES = 2;

/** A heading in the text of a sheet with a remark after it, on two lines where one is too short for it. */
export const headingBlock = (text: string, remark: string, spaceMm = 4): Block => ({
  heightMm: spaceMm + 5,
  keep: true,
  draw: (ink, area) => {
    const base = area.y + spaceMm + 3.2;
    const most = area.w * (remark === '' ? 1 : 0.5);
    ink.text(area.x, base, text, { capMm: CAP.head, weight: 'semibold', maxMm: most });
    if (remark === '') return;
    const x = Math.min(most, widthOf(text, { capMm: CAP.head, weight: 'semibold' })) + 4;
    const lines = wrapText(remark, CAP.note, 'regular', area.w - x, REMARK_LINES).length;
    ink.paragraph(area.x + x, base - (lines - 1) * HEAD_PITCH_MM, remark, area.w - x, {
      role: 'ink-soft',
      maxLines: REMARK_LINES,
      pitchMm: HEAD_PITCH_MM,
    });
  },
});
