import { textCover } from '../../src/drawing/label-obstacles.ts';
import type { Box } from '../../src/kernel/geometry.ts';
import type { Page, PageItem, PageText } from '../../src/papers/page.ts';

/** All items of a page, those in clips included. */
export const allItems = (items: readonly PageItem[]): readonly PageItem[] =>
  items.flatMap((i) => (i.kind === 'clip' ? allItems(i.items) : [i]));

export const textsOf = (page: Page): readonly PageText[] =>
  allItems(page.items).filter((i): i is PageText => i.kind === 'text');

/** Boxes that cover a text from a little above its capitals to its descenders, turned texts as several. */
export const coverOf = (t: PageText): readonly Box[] => textCover({ ...t, dxPaperMm: 0, dyPaperMm: 0 }, 1, 0);

const meet = (a: Box, b: Box): boolean =>
  a.minX < b.maxX - 0.01 && b.minX < a.maxX - 0.01 && a.minY < b.maxY - 0.01 && b.minY < a.maxY - 0.01;

/** Pairs of texts that touch one another on a page. */
export const touchingTexts = (page: Page): readonly (readonly [string, string])[] => {
  const texts = textsOf(page).map((t) => ({ t, boxes: coverOf(t) }));
  const out: (readonly [string, string])[] = [];
  texts.forEach((a, i) => {
    for (const b of texts.slice(i + 1))
      if (a.boxes.some((x) => b.boxes.some((y) => meet(x, y)))) out.push([a.t.text, b.t.text]);
  });
  return out;
};
