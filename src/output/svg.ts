import type { DisplayItem, DisplayList, Fill, PathCommand, Stroke } from '../drawing/display-list.ts';
import { itemsBox } from '../drawing/draw-floor.ts';
import { hatchLines } from '../drawing/hatch.ts';
import { fillColor } from '../drawing/scale-color.ts';
import { scaledSymbol } from '../drawing/symbols.ts';
import { emMm } from '../drawing/text.ts';
import type { Page, PageItem } from '../papers/page.ts';
import { placeList } from '../papers/place-list.ts';
import { type ColorScheme, PAPER_COLORS } from './colors.ts';

/** Family name the host page gives the embedded font. */
export const SVG_FONT_FAMILY = 'Lampwright Sans';

const num = (n: number): string => String(Number(n.toFixed(3)));

const escapeText = (s: string): string =>
  s.replace(/[&<>"]/g, (c) => (c === '&' ? '&amp;' : c === '<' ? '&lt;' : c === '>' ? '&gt;' : '&quot;'));

const pathData = (d: readonly PathCommand[]): string =>
  d
    .map((c) =>
      c[0] === 'Z'
        ? 'Z'
        : c[0] +
          c
            .slice(1)
            .map((n) => num(Number(n)))
            .join(' '),
    )
    .join('');

const strokeText = (s: Stroke | undefined, colors: ColorScheme): string => {
  if (!s) return '';
  const dash = s.dashMm ? ` stroke-dasharray="${s.dashMm.map(num).join(' ')}"` : '';
  return ` stroke="${colors[s.role]}" stroke-width="${num(s.weightMm)}"${dash}`;
};

const hatchText = (d: readonly PathCommand[], fill: Fill, colors: ColorScheme): string => {
  if (!fill.hatch) return '';
  const lines = hatchLines(d, fill.hatch.angleDeg, fill.hatch.spacingMm).map(
    ([a, b]) => `M${num(a.xMm)} ${num(a.yMm)}L${num(b.xMm)} ${num(b.yMm)}`,
  );
  if (lines.length === 0) return '';
  return `<path d="${lines.join('')}" stroke="${colors[fill.role]}" stroke-width="${num(fill.hatch.weightMm)}"/>`;
};

const fillText = (fill: Fill | undefined, colors: ColorScheme): string => {
  if (!fill || fill.hatch) return '';
  const opacity = fill.opacity === undefined ? '' : ` fill-opacity="${num(fill.opacity)}"`;
  return ` fill="${fillColor(fill, colors)}"${opacity}`;
};

const ANCHOR = { left: 'start', center: 'middle', right: 'end' } as const;

const itemSvg = (p: PageItem, colors: ColorScheme, ids: { next: number }): string => {
  switch (p.kind) {
    case 'path': {
      const own = p.stroke || (p.fill && !p.fill.hatch);
      const hatch = p.fill ? hatchText(p.d, p.fill, colors) : '';
      return `${hatch}${own ? `<path d="${pathData(p.d)}"${strokeText(p.stroke, colors)}${fillText(p.fill, colors)}/>` : ''}`;
    }
    case 'circle':
      return `<circle cx="${num(p.xMm)}" cy="${num(p.yMm)}" r="${num(p.rMm)}"${strokeText(p.stroke, colors)}${fillText(p.fill, colors)}/>`;
    case 'text': {
      const turn = p.rotationDeg
        ? ` transform="rotate(${num(p.rotationDeg)} ${num(p.xMm)} ${num(p.yMm)})"`
        : '';
      const bold = p.weight === 'semibold' ? ' font-weight="600"' : '';
      return (
        `<text x="${num(p.xMm)}" y="${num(p.yMm)}" font-size="${num(emMm(p.capMm))}" text-anchor="${ANCHOR[p.align]}"` +
        ` fill="${colors[p.role]}"${bold}${turn}>${escapeText(p.text)}</text>`
      );
    }
    case 'symbol': {
      const paths = scaledSymbol(p.symbolId, p.lengthMm, p.widthMm).map(({ line, d }) => {
        if (line === 'solid') return `<path d="${pathData(d)}" fill="${colors[p.role]}"/>`;
        const weight = line === 'outline' ? 0.5 : 0.25;
        const dash = p.broken && line === 'outline' ? ' stroke-dasharray="1.2 0.8"' : '';
        const ground = line === 'outline' ? ` fill="${colors['gear-fill']}"` : '';
        return `<path d="${pathData(d)}" stroke="${colors[p.role]}" stroke-width="${weight}"${dash}${ground}/>`;
      });
      return `<g transform="translate(${num(p.xMm)} ${num(p.yMm)}) rotate(${num(p.rotationDeg)})">${paths.join('')}</g>`;
    }
    case 'image':
      return (
        `<image href="data:${p.mediaType};base64,${p.base64}" x="${num(p.xMm)}" y="${num(p.yMm)}" width="${num(p.widthMm)}" height="${num(p.heightMm)}"` +
        ` preserveAspectRatio="none" opacity="${num(p.opacity)}"${p.rotationDeg ? ` transform="rotate(${num(p.rotationDeg)} ${num(p.xMm)} ${num(p.yMm)})"` : ''}/>`
      );
    case 'link':
      return `<rect x="${num(p.xMm)}" y="${num(p.yMm)}" width="${num(p.widthMm)}" height="${num(p.heightMm)}" fill="transparent" cursor="pointer" data-to="${escapeText(p.to.join('|'))}"/>`;
    case 'anchor':
      return '';
    case 'clip': {
      const id = `clip${ids.next++}`;
      return (
        `<clipPath id="${id}"><rect x="${num(p.xMm)}" y="${num(p.yMm)}" width="${num(p.widthMm)}" height="${num(p.heightMm)}"/></clipPath>` +
        `<g clip-path="url(#${id})">${p.items.map((i) => itemSvg(i, colors, ids)).join('')}</g>`
      );
    }
  }
};

const document = (
  widthMm: number,
  heightMm: number,
  title: string,
  items: readonly PageItem[],
  colors: ColorScheme,
): string => {
  const ids = { next: 1 };
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${num(widthMm)} ${num(heightMm)}" width="${num(widthMm)}mm" height="${num(heightMm)}mm"` +
    ` fill="none" font-family="'${SVG_FONT_FAMILY}', 'Source Sans 3', sans-serif" stroke-linejoin="round" stroke-linecap="butt" font-kerning="none">` +
    `<title>${escapeText(title)}</title><rect width="${num(widthMm)}" height="${num(heightMm)}" fill="${colors.paper}"/>` +
    `${items.map((i) => itemSvg(i, colors, ids)).join('\n')}</svg>\n`
  );
};

/** A page as an SVG document, the same figures and texts as in the PDF. Presentation attributes only, no styles. */
export const pageToSvg = (page: Page, colors: ColorScheme = PAPER_COLORS): string =>
  document(page.widthMm, page.heightMm, page.title, page.items, colors);

/** One item of a list at a nominal scale of 1 as SVG markup, for a page that places and groups items itself. */
export const displayItemSvg = (item: DisplayItem, colors: ColorScheme): string => {
  const list: DisplayList = { floorId: '', nominalScale: 1, items: [item] };
  const ids = { next: 1 };
  return placeList(list, { floorXMm: 0, floorYMm: 0, pageXMm: 0, pageYMm: 0 })
    .map((i) => itemSvg(i, colors, ids))
    .join('');
};

/** A display list on paper of its own at its nominal scale, with a margin around what is drawn. */
export const listPage = (
  list: DisplayList,
  marginMm = 5,
): { readonly widthMm: number; readonly heightMm: number; readonly items: readonly PageItem[] } => {
  const box = itemsBox(list.items) ?? { minX: 0, minY: 0, maxX: list.nominalScale, maxY: list.nominalScale };
  return {
    widthMm: (box.maxX - box.minX) / list.nominalScale + 2 * marginMm,
    heightMm: (box.maxY - box.minY) / list.nominalScale + 2 * marginMm,
    items: placeList(list, {
      floorXMm: box.minX,
      floorYMm: box.minY,
      pageXMm: marginMm,
      pageYMm: marginMm,
    }),
  };
};

/** A display list as an SVG document at its nominal scale, with a margin around what is drawn. */
export const displayListToSvg = (
  list: DisplayList,
  colors: ColorScheme = PAPER_COLORS,
  marginMm = 5,
): string => {
  const { widthMm, heightMm, items } = listPage(list, marginMm);
  return document(widthMm, heightMm, 'Plan', items, colors);
};
