import { wrapText } from '../drawing/text.ts';
import type { Block, Section } from './flow.ts';
import { CAP, PITCH_MM } from './ink.ts';
import { headingBlock } from './table.ts';

/** Lines of a paragraph at most, so that none is taller than a page. */
const MAX_LINES = 30;
const LEAD_MM = 36;

/** A wrapped text, with a lead word beside it where there is one. */
export const paragraphBlock = (text: string, w: number, lead = '', maxLines = MAX_LINES): Block => {
  const left = lead === '' ? 0 : LEAD_MM;
  const leadLines = lead === '' ? 0 : wrapText(lead, CAP.note, 'semibold', left - 2, 2).length;
  const lines = Math.max(leadLines, wrapText(text, CAP.note, 'regular', w - left, maxLines).length);
  return {
    heightMm: lines * PITCH_MM + 1.2,
    draw: (ink, area) => {
      if (lead !== '')
        ink.paragraph(area.x, area.y + 3.2, lead, left - 2, { weight: 'semibold', maxLines: 2 });
      ink.paragraph(area.x + left, area.y + 3.2, text, w - left, { maxLines });
    },
  };
};

/** A section with a heading; nothing where it has no blocks. */
export const section = (title: string, remark: string, blocks: readonly Block[]): readonly Section[] =>
  blocks.length === 0
    ? []
    : [{ head: (continued) => headingBlock(continued ? `${title} (continued)` : title, remark, 3), blocks }];

/** Named boxes to write in, so many to a row. */
export const writeInBlocks = (names: readonly string[], w: number, columns: number): readonly Block[] => {
  const colW = w / columns;
  return Array.from(
    { length: Math.ceil(names.length / columns) },
    (_, row): Block => ({
      heightMm: 11.6,
      draw: (ink, area) => {
        for (let c = 0; c < columns; c++) {
          const name = names[row * columns + c];
          if (name === undefined) continue;
          const x = area.x + c * colW;
          const gap = c === columns - 1 ? 0 : 4;
          ink.text(x, area.y + 2.6, name, { role: 'ink-soft', maxMm: colW - 4 });
          ink.rect(x, area.y + 3.6, colW - gap, 6.6, { weightMm: 0.25 });
        }
      },
    }),
  );
};
