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
