import { CAP, inkOf, rectPath, type Sketch, shapesOf, type TextStyle } from '../drawing/sketch.ts';
import { fitText, showable, textWidthMm, wrapText } from '../drawing/text.ts';
import type { PageItem } from './page.ts';

export { CAP, type RectStyle, type TextStyle, widthOf } from '../drawing/sketch.ts';
export const PITCH_MM = 3.5;

/**
 * Collects what is drawn on one page. Texts are checked on the way in: characters the font lacks become a visible
 * mark, texts too wide are cut, and both are told to `notice`.
 */
export interface Ink extends Sketch {
  readonly items: PageItem[];
  /** Wrapped text from a first baseline; gives the baseline after the last line. */
  paragraph(
    xMm: number,
    yMm: number,
    text: string,
    widthMm: number,
    style?: TextStyle & { readonly maxLines?: number; readonly pitchMm?: number },
  ): number;
  add(items: readonly PageItem[]): void;
  /** A field that leads to the first of these anchors that the set has. */
  link(xMm: number, yMm: number, widthMm: number, heightMm: number, ...to: readonly string[]): void;
  /** A place that links lead to. */
  anchor(name: string, xMm: number, yMm: number): void;
}

/** Between two lines of the least letters where room is short. */
const CLOSE_MM = 2.85;

/** A word beside a sign whose middle is at `cy`, on two close lines where one is too short for it. */
export const besideSign = (ink: Ink, x: number, cy: number, word: string, widthMm: number): void => {
  const base = cy + CAP.note / 2;
  if (textWidthMm(word, CAP.note) <= widthMm) ink.text(x, base, word);
  else ink.paragraph(x, base - CLOSE_MM / 2, word, widthMm, { maxLines: 2, pitchMm: CLOSE_MM });
};

/** Gathers notices of a set of papers, each once. */
export interface Notices {
  missing(characters: readonly string[], text: string): void;
  cut(text: string): void;
  say(text: string): void;
  readonly list: () => readonly string[];
}

export const noticeList = (): Notices => {
  const missing = new Map<string, number>();
  const cuts = new Set<string>();
  const said = new Set<string>();
  return {
    missing: (characters) => {
      for (const c of characters) missing.set(c, (missing.get(c) ?? 0) + 1);
    },
    cut: (text) => cuts.add(text),
    say: (text) => said.add(text),
    list: () => {
      const out: string[] = [...said];
      if (missing.size > 0) {
        const shown = [...missing.keys()]
          .slice(0, 12)
          .map((c) => `U+${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`);
        const more = missing.size > 12 ? ` and ${missing.size - 12} more` : '';
        out.push(
          `The paper font has no shape for ${missing.size} characters; each is printed as □: ${shown.join(', ')}${more}.`,
        );
      }
      if (cuts.size > 0) {
        const shown = [...cuts].slice(0, 3).map((t) => `“${t.length > 60 ? `${t.slice(0, 59)}…` : t}”`);
        const more = cuts.size > 3 ? ` and ${cuts.size - 3} more` : '';
        out.push(
          `${cuts.size === 1 ? '1 text was too long for its place and ends' : `${cuts.size} texts were too long for their places and end`} in …: ${shown.join(', ')}${more}.`,
        );
      }
      return out;
    },
  };
};

export const makeInk = (notices: Notices): Ink => {
  const items: PageItem[] = [];
  const put = (xMm: number, yMm: number, text: string, s: TextStyle): void => {
    if (text === '') return;
    items.push({
      kind: 'text',
      xMm,
      yMm,
      text,
      capMm: s.capMm ?? CAP.note,
      weight: s.weight ?? 'regular',
      align: s.align ?? 'left',
      role: s.role ?? 'ink',
      ...(s.rotationDeg === undefined ? {} : { rotationDeg: s.rotationDeg }),
    });
  };
  const clean = (text: string): string => {
    const s = showable(text);
    if (s.missing.length > 0) notices.missing(s.missing, text);
    return s.text;
  };
  return {
    items,
    text: (x, y, raw, s = {}) => {
      const text = clean(raw);
      const fitted =
        s.maxMm === undefined ? text : fitText(text, s.capMm ?? CAP.note, s.weight ?? 'regular', s.maxMm);
      if (fitted !== text) notices.cut(text);
      put(x, y, fitted, s);
    },
    paragraph: (x, y, raw, width, s = {}) => {
      const text = clean(raw);
      const cap = s.capMm ?? CAP.note;
      const lines = wrapText(text, cap, s.weight ?? 'regular', width, s.maxLines);
      if (lines.at(-1)?.endsWith('…') && !text.endsWith('…')) notices.cut(text);
      let at = y;
      for (const l of lines) {
        put(x, at, l, s);
        at += s.pitchMm ?? PITCH_MM;
      }
      return at;
    },
    line: (x1, y1, x2, y2, weightMm, role = 'ink', dashMm) => {
      items.push({
        kind: 'path',
        d: [
          ['M', x1, y1],
          ['L', x2, y2],
        ],
        stroke: dashMm ? { role, weightMm, dashMm } : { role, weightMm },
      });
    },
    rect: (x, y, w, h, how) => {
      items.push(...shapesOf(rectPath(x, y, w, h), how));
    },
    path: (d, how) => {
      items.push(...shapesOf(d, how));
    },
    circle: (xMm, yMm, rMm, how) => {
      items.push({ kind: 'circle', xMm, yMm, rMm, ...inkOf(how) });
    },
    symbol: (symbolId, xMm, yMm, size, rotationDeg, broken) => {
      items.push({ kind: 'symbol', symbolId, xMm, yMm, rotationDeg, ...size, broken, role: 'gear' });
    },
    add: (more) => {
      items.push(...more);
    },
    link: (xMm, yMm, widthMm, heightMm, ...to) => {
      items.push({ kind: 'link', xMm, yMm, widthMm, heightMm, to });
    },
    anchor: (name, xMm, yMm) => {
      items.push({ kind: 'anchor', name, xMm, yMm });
    },
  };
};
