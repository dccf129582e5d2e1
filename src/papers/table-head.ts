import { wrapText } from '../drawing/text.ts';
import type { Block } from './flow.ts';
import { CAP, widthOf } from './ink.ts';
import type { PlacedColumn } from './table-columns.ts';

interface Group {
  readonly text: string;
  readonly x: number;
  readonly w: number;
}

const groupsOf = (columns: readonly PlacedColumn[]): readonly Group[] => {
  const out: Group[] = [];
  for (let i = 0; i < columns.length; ) {
    const c = columns[i];
    let j = i;
    while (c?.group && columns[j + 1]?.group === c.group) j++;
    const last = columns[j] ?? c;
    if (c?.group && last) out.push({ text: c.group, x: c.x, w: last.x + last.w - c.x });
    i = j + 1;
  }
  return out;
};

export const HEAD_PITCH_MM = 3.2;
const HEAD_LINES = 3;

/** The head of a table: group words over rules, then the column heads over a line, each broken where it is too wide. */
export const tableHead = (columns: readonly PlacedColumn[]): Block => {
  const groups = groupsOf(columns);
  const headLines = (c: PlacedColumn): readonly string[] =>
    widthOf(c.head, { weight: 'semibold' }) <= c.w + 1
      ? [c.head]
      : wrapText(c.head, CAP.note, 'semibold', c.w + 1, HEAD_LINES);
  const lines = Math.max(1, ...columns.map((c) => headLines(c).length));
  const groupLines = Math.max(
    0,
    ...groups.map((g) => wrapText(g.text, CAP.note, 'regular', g.w, HEAD_LINES).length),
  );
  const over = groupLines === 0 ? 0 : 3.4 + (groupLines - 1) * HEAD_PITCH_MM;
  const h = 6 + (lines - 1) * HEAD_PITCH_MM + over;
  return {
    heightMm: h,
    keep: true,
    draw: (ink, area) => {
      for (const g of groups) {
        const own = wrapText(g.text, CAP.note, 'regular', g.w, HEAD_LINES).length;
        ink.paragraph(area.x + g.x + g.w / 2, area.y + 3 + (groupLines - own) * HEAD_PITCH_MM, g.text, g.w, {
          align: 'center',
          role: 'ink-soft',
          maxLines: HEAD_LINES,
          pitchMm: HEAD_PITCH_MM,
        });
        const y = area.y + over + 0.8;
        ink.line(area.x + g.x, y, area.x + g.x + g.w, y, 0.13, 'ink-soft');
      }
      for (const c of columns) {
        const own = headLines(c);
        ink.paragraph(
          c.align === 'right' ? area.x + c.x + c.w : area.x + c.x,
          area.y + h - 1.7 - (own.length - 1) * HEAD_PITCH_MM,
          c.head,
          c.w + 1,
          { align: c.align ?? 'left', weight: 'semibold', maxLines: HEAD_LINES, pitchMm: HEAD_PITCH_MM },
        );
      }
      ink.line(area.x, area.y + h, area.x + area.w, area.y + h, 0.35);
    },
  };
};
