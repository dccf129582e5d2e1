import { MM_PER_INCH } from '../kernel/units.ts';
import { type Rect, TITLE_WIDTH_MM } from './frame.ts';
import { CAP, type Ink } from './ink.ts';
import { CAUTION } from './sheet-info.ts';
import { TITLE_HEIGHT_MM } from './title-block.ts';
import { LEAST_STRIP_MM, STRIP_HEIGHT_MM } from './title-strip.ts';

const LINES = [
  'Reset first, and clear an old radio link before a new one is made: common practice, no published source. Menus differ: follow each maker’s instructions.',
  'Boxes left open: not in the plan. Write in what was set, tick what is done, and sign.',
  'Ring on the small plan: where the unit stands.',
];

const inches = (mm: number): string => `${(mm / MM_PER_INCH).toFixed(2)}″`;

/** Beside the title block of a page of cards, or over its strip: cautions, how to use the cards, and their size. */
export const drawCardAside = (ink: Ink, f: Rect, cardWMm: number, cardHMm: number): void => {
  const size = `Cut at the marks. Cards are ${cardWMm.toFixed(0)} × ${cardHMm.toFixed(0)} mm (${inches(cardWMm)} × ${inches(cardHMm)}).`;
  if (f.w >= LEAST_STRIP_MM) {
    const y = f.y + f.h - STRIP_HEIGHT_MM - 5.6;
    ink.text(f.x + 5, y, CAUTION, { maxMm: f.w - 10 });
    ink.text(
      f.x + 5,
      y + 3.5,
      `${size} ${LINES[2]} ${LINES[1]} Menus differ: follow each maker’s instructions.`,
      {
        role: 'ink-soft',
        maxMm: f.w - 10,
      },
    );
    return;
  }
  const top = f.y + f.h - TITLE_HEIGHT_MM;
  ink.line(f.x, top, f.x + f.w, top, 0.35);
  const w = f.w - TITLE_WIDTH_MM - 10;
  if (w < 40) return;
  let y = top + 6;
  ink.text(f.x + 5, y, 'Cautions', { capMm: CAP.value, weight: 'semibold' });
  y = ink.paragraph(f.x + 5, y + 4.6, CAUTION, w) + 2;
  for (const l of [...LINES, size]) {
    const left = Math.floor((f.y + f.h - 2 - y) / 3.5) + 1;
    if (left <= 0) break;
    y = ink.paragraph(f.x + 5, y, l, w, { role: 'ink-soft', maxLines: left }) + 0.8;
  }
};
