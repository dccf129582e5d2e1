import { frameOf, type Rect, TITLE_WIDTH_MM } from './frame.ts';
import { CAP, type Ink } from './ink.ts';
import { CAUTION, framedPage, type PageMaker, type SetInfo, type SheetTitle } from './sheet-info.ts';
import { TITLE_HEIGHT_MM } from './title-block.ts';

/** A piece of a page that is never broken. */
export interface Block {
  readonly heightMm: number;
  /** Stays on one page with the block after it. */
  readonly keep?: boolean;
  draw(ink: Ink, area: Rect): void;
}

/** Blocks under one heading; where they run over a page the heading and the head of the table come again. */
export interface Section {
  readonly head: (continued: boolean) => Block;
  readonly blocks: readonly Block[];
}

const PAD_MM = 5;

/** The room for blocks on a page of this set. */
export const flowArea = (info: SetInfo): Rect => {
  const f = frameOf(info.sheet);
  return { x: f.x + PAD_MM, y: f.y + 3, w: f.w - 2 * PAD_MM, h: f.h - TITLE_HEIGHT_MM - 6 };
};

/** Space between columns of text. */
const GUTTER_MM = 8;

/** Width of one of so many columns on a page of this set. */
export const columnWidth = (info: SetInfo, columns: number): number =>
  (flowArea(info).w - (columns - 1) * GUTTER_MM) / columns;

interface Placed {
  readonly block: Block;
  readonly column: number;
  readonly y: number;
}

/** A section no taller than this share of a page is not parted. */
const WHOLE_SHARE = 0.34;

/** Lays sections out over as many columns and pages as they need. A block taller than a page is a programmer's mistake. */
const layOut = (
  sections: readonly Section[],
  heightMm: number,
  columns: number,
): readonly (readonly Placed[])[] => {
  const pages: Placed[][] = [[]];
  let y = 0;
  let column = 0;
  const put = (block: Block): void => {
    pages.at(-1)?.push({ block, column, y });
    y += block.heightMm;
  };
  const next = (): void => {
    y = 0;
    column = (column + 1) % columns;
    if (column === 0) pages.push([]);
  };
  for (const s of sections) {
    const first = s.head(false);
    const firstH = first.heightMm + runHeight(s.blocks, 0);
    const whole = first.heightMm + s.blocks.reduce((sum, b) => sum + b.heightMm, 0);
    const small = whole <= heightMm * WHOLE_SHARE;
    if (y > 0 && y + (small ? whole : firstH) > heightMm) {
      next();
    }
    put(first);
    for (let i = 0; i < s.blocks.length; i++) {
      const block = s.blocks[i];
      if (!block) continue;
      if (y + runHeight(s.blocks, i) > heightMm) {
        next();
        put(s.head(true));
      }
      put(block);
    }
  }
  return pages;
};

/** Height of a block with those it must stay with, at most a third of a page's worth of rows. */
const runHeight = (blocks: readonly Block[], from: number): number => {
  let h = 0;
  for (let i = from; i < Math.min(blocks.length, from + 12); i++) {
    const b = blocks[i];
    if (!b) break;
    h += b.heightMm;
    if (!b.keep) break;
  }
  return h;
};

/** Pages with a frame and title block that carry the sections, with `aside` beside the title block on each. */
export const flowPages = (
  info: SetInfo,
  title: SheetTitle,
  sections: readonly Section[],
  aside: readonly string[],
  columns = 1,
): readonly PageMaker[] => {
  const area = flowArea(info);
  const w = columnWidth(info, columns);
  const pages = layOut(sections, area.h, columns);
  return pages.map((placed, i) =>
    framedPage(
      info,
      {
        ...title,
        subtitle: pages.length > 1 ? `${title.subtitle} (${i + 1} of ${pages.length})` : title.subtitle,
      },
      (ink, f) => {
        for (const { block, column, y } of placed)
          block.draw(ink, {
            x: area.x + column * (w + GUTTER_MM),
            y: area.y + y,
            w,
            h: block.heightMm,
          });
        drawAside(ink, f, aside);
      },
    ),
  );
};

const drawAside = (ink: Ink, f: Rect, lines: readonly string[]): void => {
  const w = f.w - TITLE_WIDTH_MM - 2 * PAD_MM;
  const top = f.y + f.h - TITLE_HEIGHT_MM;
  ink.line(f.x, top, f.x + f.w, top, 0.35);
  if (w < 40) return;
  let y = top + 6;
  ink.text(f.x + PAD_MM, y, 'Cautions', { capMm: CAP.value, weight: 'semibold' });
  y = ink.paragraph(f.x + PAD_MM, y + 4.6, CAUTION, w) + 2;
  for (const l of lines) {
    const left = Math.floor((f.y + f.h - 2 - y) / 3.5) + 1;
    if (left <= 0) break;
    y = ink.paragraph(f.x + PAD_MM, y, l, w, { role: 'ink-soft', maxLines: left }) + 0.8;
  }
};
