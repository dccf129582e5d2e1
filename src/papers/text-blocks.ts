import { wrapText } from '../drawing/text.ts';
import type { Block, Section } from './flow.ts';
import { CAP, PITCH_MM } from './ink.ts';
import { headingBlock } from './table.ts';

/** Lines of a paragraph at most, so that none is taller than a page. */
const MAX_LINES = 30;
const LEAD_MM = 36;

/** Columns of text this wide have letters of 2.5 mm, narrower ones of the least size. */
const ROOMY_MM = 176;

/** Height of the capitals of running text in a column, and from line to line of it. */
export const textCap = (columnMm: number): number => (columnMm >= ROOMY_MM ? CAP.value : CAP.note);
export const textPitch = (capMm: number): number => (capMm > CAP.note ? 4.2 : PITCH_MM);

/** A wrapped text, with a lead word beside it where there is one. */
export const paragraphBlock = (text: string, w: number, lead = '', capMm = textCap(w)): Block => {
  const maxLines = MAX_LINES;
  const pitchMm = textPitch(capMm);
  const left = lead === '' ? 0 : (LEAD_MM * (capMm + CAP.note)) / (2 * CAP.note);
  const leadLines = lead === '' ? 0 : wrapText(lead, capMm, 'semibold', left - 2, 3).length;
  const lines = Math.max(leadLines, wrapText(text, capMm, 'regular', w - left, maxLines).length);
  return {
    heightMm: lines * pitchMm + 1.2,
    draw: (ink, area) => {
      if (lead !== '')
        ink.paragraph(area.x, area.y + capMm + 1.4, lead, left - 2, {
          capMm,
          pitchMm,
          weight: 'semibold',
          maxLines: 3,
        });
      ink.paragraph(area.x + left, area.y + capMm + 1.4, text, w - left, { capMm, pitchMm, maxLines });
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
