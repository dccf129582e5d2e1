import type { ColorRole } from '../drawing/display-list.ts';
import { wrapText } from '../drawing/text.ts';
import type { Block } from './flow.ts';
import type { Rect } from './frame.ts';
import { CAP, type Ink, PITCH_MM, widthOf } from './ink.ts';
import { revisionTriangle } from './revision-marks.ts';

export interface Column {
  readonly id: string;
  readonly head: string;
  /** Least width that is of use, millimetres. */
  readonly leastMm: number;
  /** Share of what is left over. */
  readonly grow?: number;
  readonly align?: 'left' | 'right';
  /** Columns with a higher number go first where the sheet is narrow; 0 always stays. */
  readonly dispensable?: number;
  /** Word over several columns. */
  readonly group?: string;
  readonly note?: boolean;
}

/** What stands in a cell: a text, or something drawn. */
export type Cell =
  | string
  | {
      readonly text: string;
      readonly weight?: 'regular' | 'semibold';
      readonly role?: ColorRole;
      readonly small?: string;
    }
  | { readonly draw: (ink: Ink, cell: Rect) => void };

export interface PlacedColumn extends Column {
  readonly x: number;
  readonly w: number;
}

const GAP_MM = 2.2;
/** More room where figures that end at the right meet a text that begins at the left. */
const MEET_MM = 2.4;

const gapBefore = (columns: readonly Column[], i: number): number =>
  i === 0 ? 0 : GAP_MM + (columns[i - 1]?.align === 'right' && columns[i]?.align !== 'right' ? MEET_MM : 0);

/** Columns for a width: the dispensable ones left out until the rest fit, what is over shared out. */
export const placeColumns = (columns: readonly Column[], widthMm: number): readonly PlacedColumn[] => {
  let kept = [...columns];
  const need = (list: readonly Column[]): number =>
    list.reduce((s, c, i) => s + c.leastMm + gapBefore(list, i), 0);
  while (need(kept) > widthMm) {
    const out = kept.reduce<Column | undefined>(
      (best, c) => ((c.dispensable ?? 0) > (best?.dispensable ?? 0) ? c : best),
      undefined,
    );
    if (!out) break;
    kept = kept.filter((c) => c !== out);
  }
  const squeeze = Math.min(1, widthMm / need(kept));
  const over = Math.max(0, widthMm - need(kept));
  const shares = kept.reduce((s, c) => s + (c.grow ?? 0), 0) || 1;
  let x = 0;
  return kept.map((c, i) => {
    x += gapBefore(kept, i) * squeeze;
    const w = c.leastMm * squeeze + (over * (c.grow ?? 0)) / shares;
    const placed = { ...c, x, w };
    x += w;
    return placed;
  });
};

/** Lines a text may run on in a cell that is too narrow for it. */
const CELL_LINES = 3;

const asText = (cell: Cell | undefined) =>
  cell === undefined || (typeof cell === 'object' && 'draw' in cell)
    ? undefined
    : typeof cell === 'string'
      ? { text: cell }
      : cell;

/** How a text stands in its column: on one line where it fits, else broken at its words. */
const linesIn = (c: PlacedColumn, cell: Cell | undefined): readonly string[] => {
  const t = asText(cell);
  if (!t || t.text === '' || c.align === 'right') return [];
  const weight = t.weight ?? 'regular';
  return widthOf(t.text, { weight }) <= c.w ? [] : wrapText(t.text, CAP.note, weight, c.w, CELL_LINES);
};

const cellText = (ink: Ink, c: PlacedColumn, x: number, base: number, cell: Cell): void => {
  const t = asText(cell);
  if (!t) return;
  const right = c.align === 'right';
  const style = { ...(t.weight ? { weight: t.weight } : {}), ...(t.role ? { role: t.role } : {}) };
  if (linesIn(c, cell).length > 1) {
    ink.paragraph(x, base, t.text, c.w, { ...style, maxLines: CELL_LINES });
    return;
  }
  ink.text(right ? x + c.w : x, base, t.text, { align: right ? 'right' : 'left', maxMm: c.w, ...style });
};

export const ROW_MM = 4.8;

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
  const lines = Math.max(1, ...columns.map((c) => linesIn(c, cells[c.id]).length));
  return {
    heightMm: ROW_MM + (lines - 1) * PITCH_MM,
    keep: how.keep ?? false,
    draw: (ink, area) => {
      const base = area.y + ROW_MM / 2 + CAP.note / 2;
      for (const c of columns) {
        const cell = cells[c.id];
        if (cell === undefined) continue;
        if (typeof cell === 'object' && 'draw' in cell)
          cell.draw(ink, { x: area.x + c.x, y: area.y, w: c.w, h: ROW_MM });
        else cellText(ink, c, area.x + c.x, base, cell);
      }
      if (how.mark) revisionTriangle(ink, area.x - 2.7, area.y + ROW_MM / 2, how.mark, 3.4);
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

/** The head of a table: group words over rules, then the column heads over a line. */
export const tableHead = (columns: readonly PlacedColumn[]): Block => {
  const groups = columns.some((c) => c.group);
  const h = groups ? 9.4 : 6;
  return {
    heightMm: h,
    keep: true,
    draw: (ink, area) => {
      if (groups) {
        for (let i = 0; i < columns.length; ) {
          const c = columns[i];
          if (!c?.group) {
            i++;
            continue;
          }
          let j = i;
          while (columns[j + 1]?.group === c.group) j++;
          const last = columns[j] ?? c;
          const from = area.x + c.x;
          const to = area.x + last.x + last.w;
          ink.text((from + to) / 2, area.y + 3, c.group, {
            align: 'center',
            role: 'ink-soft',
            maxMm: to - from,
          });
          ink.line(from, area.y + 4.2, to, area.y + 4.2, 0.13, 'ink-soft');
          i = j + 1;
        }
      }
      const base = area.y + h - 1.7;
      for (const c of columns) {
        ink.text(c.align === 'right' ? area.x + c.x + c.w : area.x + c.x, base, c.head, {
          align: c.align ?? 'left',
          weight: 'semibold',
          maxMm: c.w + 1,
        });
      }
      ink.line(area.x, area.y + h, area.x + area.w, area.y + h, 0.35);
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

/** A heading in the text of a sheet with a remark after it. */
export const headingBlock = (text: string, remark: string, spaceMm = 4): Block => ({
  heightMm: spaceMm + 5,
  keep: true,
  draw: (ink, area) => {
    const base = area.y + spaceMm + 3.2;
    ink.text(area.x, base, text, { capMm: CAP.head, weight: 'semibold', maxMm: area.w * 0.4 });
    const w = Math.min(area.w * 0.4, headWidth(text));
    ink.text(area.x + w + 4, base, remark, { role: 'ink-soft', maxMm: area.w - w - 4 });
  },
});

const headWidth = (text: string): number => widthOf(text, { capMm: CAP.head, weight: 'semibold' });
