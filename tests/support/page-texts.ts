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

/** Corner points of what an item draws; what a clip holds keeps inside the clip. */
const reach = (i: PageItem): readonly (readonly [number, number])[] => {
  if (i.kind === 'path')
    return i.d.flatMap((c) => (c[0] === 'Z' ? [] : [[Number(c.at(-2)), Number(c.at(-1))] as const]));
  if (i.kind === 'circle')
    return [
      [i.xMm - i.rMm, i.yMm - i.rMm],
      [i.xMm + i.rMm, i.yMm + i.rMm],
    ];
  if (i.kind === 'clip')
    return [
      [i.xMm, i.yMm],
      [i.xMm + i.widthMm, i.yMm + i.heightMm],
    ];
  if (i.kind === 'text')
    return coverOf(i).flatMap((b) => [[b.minX, b.minY] as const, [b.maxX, b.maxY] as const]);
  return i.kind === 'symbol' ? [[i.xMm, i.yMm]] : [];
};

/** Border of zones round the frame line, and the filing edge, after ISO 5457:1999. */
const MARGINS_MM = { left: 15, other: 5 } as const;

/**
 * What goes over the border of the zones, and texts that stand across the frame line: told by their first letters. Letters
 * of zones stand between the two.
 */
export const outsideFrame = (page: Page): readonly string[] => {
  const [l, o, w, h] = [MARGINS_MM.left, MARGINS_MM.other, page.widthMm, page.heightMm];
  const inside = (d: number, [x, y]: readonly [number, number]): boolean =>
    x >= l + d - 0.01 && x <= w - o - d + 0.01 && y >= o + d - 0.01 && y <= h - o - d + 0.01;
  return page.items.flatMap((i) => {
    const points = reach(i);
    const out = points.some((p) => !inside(0, p));
    const across = i.kind === 'text' && points.some((p) => inside(5, p)) && points.some((p) => !inside(5, p));
    return out || across ? [JSON.stringify(i.kind === 'text' ? i.text : i).slice(0, 90)] : [];
  });
};

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
