import type { jsPDF, Matrix } from 'jspdf';
import type { Fill, PathCommand, Stroke } from '../drawing/display-list.ts';
import { hatchLines } from '../drawing/hatch.ts';
import { fillColor } from '../drawing/scale-color.ts';
import { scaledSymbol } from '../drawing/symbols.ts';
import { emMm, textWidthMm } from '../drawing/text.ts';
import type { PageItem, PageText } from '../papers/page.ts';
import type { ColorScheme } from './colors.ts';
import { glyphWriter } from './pdf-glyphs.ts';
import { packed } from './pdf-pack.ts';

/** What the writer needs of jsPDF beyond its typed surface. */
interface Raw {
  /** `write` gives the lines of the page that is written to. */
  readonly internal: { write(text: string): string[] };
  readonly Matrix: new (a: number, b: number, c: number, d: number, e: number, f: number) => Matrix;
  beginFormObject(x: number, y: number, w: number, h: number, m: Matrix): unknown;
  endFormObject(key: string): unknown;
  doFormObject(key: string, m: Matrix): unknown;
}

export const PT_PER_MM = 72 / 25.4;
export const FONT_FAMILY = 'LampwrightSans';
const OUTLINE_MM = 0.5;
const DETAIL_MM = 0.25;

/** To a thousandth; a large sheet has hundreds of thousands of these. */
const num = (n: number): string => String(Math.round(n * 1000) / 1000);
/** Parts of a unit vector, along which a text may run half a metre. */
const fine = (n: number): string => String(Math.round(n * 1e6) / 1e6);

const rgb = (hex: string): string =>
  [1, 3, 5].map((i) => num(Number.parseInt(hex.slice(i, i + 2), 16) / 255)).join(' ');

/** A colour let through in part, as it lies on white paper: what is under a fill is not mixed in. */
const overPaper = (hex: string, opacity = 1): string => {
  if (opacity >= 1) return hex;
  const part = (i: number): string =>
    Math.round(255 + (Number.parseInt(hex.slice(i, i + 2), 16) - 255) * Math.max(0, opacity))
      .toString(16)
      .padStart(2, '0');
  return `#${part(1)}${part(3)}${part(5)}`;
};

const pathOps = (d: readonly PathCommand[]): string => {
  let out = '';
  for (const c of d) {
    if (out !== '') out += ' ';
    if (c[0] === 'Z') out += 'h';
    else if (c[0] === 'C')
      out += `${num(c[1])} ${num(c[2])} ${num(c[3])} ${num(c[4])} ${num(c[5])} ${num(c[6])} c`;
    else out += `${num(c[1])} ${num(c[2])} ${c[0] === 'M' ? 'm' : 'l'}`;
  }
  return out;
};

const KAPPA = 0.5522847498307936;

const circleOps = (x: number, y: number, r: number): string => {
  const k = r * KAPPA;
  return pathOps([
    ['M', x + r, y],
    ['C', x + r, y + k, x + k, y + r, x, y + r],
    ['C', x - k, y + r, x - r, y + k, x - r, y],
    ['C', x - r, y - k, x - k, y - r, x, y - r],
    ['C', x + k, y - r, x + r, y - k, x + r, y],
    ['Z'],
  ]);
};

/** Writes the items of one page after another into a jsPDF document. */
export interface PdfWriter {
  /** Writes a page and packs it; gives a number that changes with what is on it. */
  page(items: readonly PageItem[], heightMm: number): number;
}

export const pdfWriter = (doc: jsPDF, colors: ColorScheme): PdfWriter => {
  const raw = doc as unknown as Raw;
  const out = (s: string): void => void raw.internal.write(s);
  const forms = new Set<string>();
  const glyphs = glyphWriter(doc, FONT_FAMILY);

  const strokeOps = (s: Stroke): string =>
    `${rgb(colors[s.role])} RG ${num(s.weightMm)} w [${(s.dashMm ?? []).map(num).join(' ')}] 0 d`;

  /** The operators that are in force, so that none is written again: of fills, of strokes, of texts. */
  let force = { fill: '', stroke: '', font: '' };
  const setting = (what: keyof typeof force, ops: string): void => {
    if (force[what] === ops) return;
    force[what] = ops;
    out(ops);
  };

  const paint = (ops: string, stroke: Stroke | undefined, fill: Fill | undefined): void => {
    const solid = fill && !fill.hatch ? fill : undefined;
    if (!stroke && !solid) return;
    if (solid) setting('fill', `${rgb(overPaper(fillColor(solid, colors), solid.opacity))} rg`);
    if (stroke) setting('stroke', strokeOps(stroke));
    out(`${ops} ${solid && stroke ? 'B' : solid ? 'f' : 'S'}`);
  };

  const hatch = (d: readonly PathCommand[], fill: Fill): void => {
    if (!fill.hatch) return;
    const lines = hatchLines(d, fill.hatch.angleDeg, fill.hatch.spacingMm);
    if (lines.length === 0) return;
    const ops = lines.map(([a, b]) => `${num(a.xMm)} ${num(a.yMm)} m ${num(b.xMm)} ${num(b.yMm)} l`);
    setting('stroke', strokeOps({ role: fill.role, weightMm: fill.hatch.weightMm }));
    out(`${ops.join(' ')} S`);
  };

  /** The form object of a symbol at one size, in its own millimetres; made when first asked for. */
  const formOf = (s: Extract<PageItem, { kind: 'symbol' }>): string => {
    const key = [s.symbolId, num(s.lengthMm), num(s.widthMm), s.broken ? 'off' : 'on', s.role].join('|');
    if (forms.has(key)) return key;
    forms.add(key);
    const reach = Math.max(s.lengthMm, s.widthMm) * 2 + 2;
    const outside = force;
    force = { fill: '', stroke: '', font: '' };
    raw.beginFormObject(-reach, -reach, 2 * reach, 2 * reach, new raw.Matrix(1, 0, 0, 1, 0, 0));
    out('1 j');
    for (const { line, d } of scaledSymbol(s.symbolId, s.lengthMm, s.widthMm)) {
      if (line === 'solid') paint(pathOps(d), undefined, { role: s.role });
      else if (line === 'detail') paint(pathOps(d), { role: s.role, weightMm: DETAIL_MM }, undefined);
      else {
        const stroke: Stroke = s.broken
          ? { role: s.role, weightMm: OUTLINE_MM, dashMm: [1.2, 0.8] }
          : { role: s.role, weightMm: OUTLINE_MM };
        paint(pathOps(d), stroke, { role: 'gear-fill' });
      }
    }
    raw.endFormObject(key);
    force = outside;
    return key;
  };

  const symbol = (s: Extract<PageItem, { kind: 'symbol' }>): void => {
    const rad = (s.rotationDeg * Math.PI) / 180;
    const c = Math.cos(rad);
    const n = Math.sin(rad);
    raw.doFormObject(formOf(s), new raw.Matrix(c, n, -n, c, s.xMm, s.yMm));
  };

  /** One line of text; jsPDF's own alignment is not used, so that all outputs agree. */
  const text = (t: PageText): void => {
    const w = textWidthMm(t.text, t.capMm, t.weight);
    const back = t.align === 'left' ? 0 : t.align === 'center' ? w / 2 : w;
    const rad = ((t.rotationDeg ?? 0) * Math.PI) / 180;
    const [c, s] = [Math.cos(rad), Math.sin(rad)];
    const { font, hex } = glyphs(t.text, t.weight);
    setting('fill', `${rgb(colors[t.role])} rg`);
    setting('font', `/${font} ${num(emMm(t.capMm))} Tf`);
    // The page's y runs down, letters stand up.
    const m = t.rotationDeg ? `${fine(c)} ${fine(s)} ${fine(s)} ${fine(-c)}` : '1 0 0 -1';
    out(`BT ${m} ${num(t.xMm - back * c)} ${num(t.yMm - back * s)} Tm <${hex}> Tj ET`);
  };

  /**
   * A picture by jsPDF, which stores each once however often it is placed. It is laid over the unit square and brought
   * to its place by a matrix, since jsPDF turns about another corner than ours.
   */
  const image = (i: Extract<PageItem, { kind: 'image' }>, heightMm: number, clip: string): void => {
    const rad = (i.rotationDeg * Math.PI) / 180;
    const k = PT_PER_MM;
    const [c, s] = [Math.cos(rad), Math.sin(rad)];
    // Page millimetres, y down, to points, y up; the picture's own square has its y up.
    const m = [
      c * i.widthMm * k,
      -s * i.widthMm * k,
      s * i.heightMm * k,
      c * i.heightMm * k,
      (i.xMm - s * i.heightMm) * k,
      (heightMm - i.yMm - c * i.heightMm) * k,
    ];
    out('q');
    if (clip)
      out(`${PT_PER_MM.toFixed(9)} 0 0 -${PT_PER_MM.toFixed(9)} 0 ${(heightMm * k).toFixed(5)} cm ${clip}`);
    if (clip) {
      const inverse = 1 / k;
      out(`${inverse.toFixed(9)} 0 0 -${inverse.toFixed(9)} 0 ${heightMm.toFixed(5)} cm`);
    }
    out(`${m.map((v) => v.toFixed(5)).join(' ')} cm`);
    doc.saveGraphicsState();
    doc.setGState(doc.GState({ opacity: i.opacity }));
    // One point square at the lower left corner of the page.
    try {
      doc.addImage(
        `data:${i.mediaType};base64,${i.base64}`,
        i.mediaType === 'image/png' ? 'PNG' : 'JPEG',
        0,
        heightMm - 1 / k,
        1 / k,
        1 / k,
        i.blobId,
        'FAST',
      );
    } catch {
      // A damaged picture shows as a crossed box: the rest of the page is worth having.
      out('0.02 w 0 0 m 1 1 l 0 1 m 1 0 l S 0 0 1 1 re S');
    }
    doc.restoreGraphicsState();
    out('Q');
  };

  return {
    page: (items, heightMm) => {
      const open = (clip: string): void => {
        // More decimals than coordinates have: over a metre of sheet a rounded factor would show.
        const k = PT_PER_MM.toFixed(9);
        out(`q ${k} 0 0 -${k} 0 ${(heightMm * PT_PER_MM).toFixed(5)} cm 1 j ${clip}`);
        force = { fill: '', stroke: '', font: '' };
      };
      const put = (list: readonly PageItem[], clip: string): void => {
        for (const i of list) {
          if (i.kind === 'text') text(i);
          else if (i.kind === 'symbol') symbol(i);
          else if (i.kind === 'circle') paint(circleOps(i.xMm, i.yMm, i.rMm), i.stroke, i.fill);
          else if (i.kind === 'path') {
            if (i.fill) hatch(i.d, i.fill);
            paint(pathOps(i.d), i.stroke, i.fill);
          } else if (i.kind === 'image') {
            out('Q');
            image(i, heightMm, clip);
            open(clip);
          } else if (i.kind === 'clip') {
            out('Q');
            const area = `${num(i.xMm)} ${num(i.yMm)} ${num(i.widthMm)} ${num(i.heightMm)} re W n`;
            open(area);
            put(i.items, area);
            out('Q');
            open(clip);
          }
        }
      };
      open('');
      put(items, '');
      const lines = raw.internal.write('Q');
      const { stream, hash } = packed(lines.join('\n'));
      lines.splice(0, lines.length, stream);
      return hash;
    },
  };
};
