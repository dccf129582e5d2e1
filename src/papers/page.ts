import type { ColorRole, Fill, PathCommand, Stroke } from '../drawing/display-list.ts';

/** What a page is made of: millimetres from the sheet's upper left corner, y down. */
export type PageItem =
  | {
      readonly kind: 'path';
      readonly d: readonly PathCommand[];
      readonly stroke?: Stroke;
      readonly fill?: Fill;
    }
  | {
      readonly kind: 'circle';
      readonly xMm: number;
      readonly yMm: number;
      readonly rMm: number;
      readonly stroke?: Stroke;
      readonly fill?: Fill;
    }
  | PageText
  | {
      readonly kind: 'image';
      readonly blobId: string;
      readonly mediaType: 'image/png' | 'image/jpeg';
      readonly base64: string;
      /** Upper left corner, about which it is turned. */
      readonly xMm: number;
      readonly yMm: number;
      readonly rotationDeg: number;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly opacity: number;
    }
  | {
      readonly kind: 'symbol';
      readonly symbolId: string;
      readonly xMm: number;
      readonly yMm: number;
      readonly rotationDeg: number;
      readonly lengthMm: number;
      readonly widthMm: number;
      readonly broken: boolean;
      readonly role: ColorRole;
    }
  | PageLink
  | {
      /** A place that links lead to; nothing is drawn. */
      readonly kind: 'anchor';
      readonly name: string;
      readonly xMm: number;
      readonly yMm: number;
    }
  | {
      readonly kind: 'clip';
      readonly xMm: number;
      readonly yMm: number;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly items: readonly PageItem[];
    };

/** One line of text with its baseline at (x, y). */
export interface PageText {
  readonly kind: 'text';
  readonly xMm: number;
  readonly yMm: number;
  readonly text: string;
  readonly capMm: number;
  readonly weight: 'regular' | 'semibold';
  readonly align: 'left' | 'center' | 'right';
  readonly role: ColorRole;
  readonly rotationDeg?: number;
}

/** A field that leads to an anchor on this or another page; nothing is drawn. */
export interface PageLink {
  readonly kind: 'link';
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Names of anchors: it leads to the first of them that the set has, and nowhere where it has none. */
  readonly to: readonly string[];
}

export interface Page {
  /** Bookmark and sheet name, like `E-1 Lighting plot`. */
  readonly title: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly items: readonly PageItem[];
}

/** What a set of papers says about the papers themselves: texts cut or characters the font lacks. */
export interface PaperSet {
  readonly pages: readonly Page[];
  readonly notices: readonly string[];
}

/** Where a link leads: the number of the page, counted from 0, and the height on it. */
export interface LinkTarget {
  readonly page: number;
  readonly yMm: number;
}

/** Anchors of a set by name; the first of a name counts. */
export const anchorsOf = (pages: readonly Page[]): ReadonlyMap<string, LinkTarget> => {
  const out = new Map<string, LinkTarget>();
  pages.forEach((p, page) => {
    for (const i of p.items)
      if (i.kind === 'anchor' && !out.has(i.name)) out.set(i.name, { page, yMm: i.yMm });
  });
  return out;
};

/** The target of a link among the anchors of a set. */
export const targetOf = (
  link: PageLink,
  anchors: ReadonlyMap<string, LinkTarget>,
): LinkTarget | undefined => {
  for (const name of link.to) {
    const target = anchors.get(name);
    if (target) return target;
  }
  return undefined;
};
