import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A straight stroke on a page, millimetres from the sheet's upper left corner. */
export interface PdfLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly weightMm: number;
}

export interface PdfText {
  readonly text: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
}

export interface PdfPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly texts: readonly PdfText[];
  readonly lines: readonly PdfLine[];
  /** How often a form object is placed. */
  readonly forms: number;
}

export interface PdfRead {
  readonly pages: readonly PdfPage[];
  readonly info: Readonly<Record<string, unknown>>;
  readonly bookmarks: readonly string[];
}

const MM = 25.4 / 72;
type Matrix = readonly [number, number, number, number, number, number];

const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Operations of a path as pdf.js packs them: 0 move, 1 line, 2 curve, 3 quadratic, 4 close. */
const ARGS = [2, 2, 6, 4, 0] as const;

/**
 * Reads a PDF back with pdf.js, a reader that has nothing in common with our writer: sizes, texts with their places, and
 * straight strokes in the page's millimetres, the matrices in force taken in.
 */
export const readPdf = async (bytes: Uint8Array): Promise<PdfRead> => {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const doc = await task.promise;
  const pages: PdfPage[] = [];
  for (let i = 1; i <= doc.numPages; i++) {
    const page = await doc.getPage(i);
    const [, , wPt = 0, hPt = 0] = page.view;
    const content = await page.getTextContent({ disableNormalization: true });
    const texts = content.items.flatMap((t) =>
      'str' in t && t.str !== ''
        ? [{ text: t.str, xMm: t.transform[4] * MM, yMm: (hPt - t.transform[5]) * MM, widthMm: t.width * MM }]
        : [],
    );
    const ops = await page.getOperatorList();
    pages.push({ widthMm: wPt * MM, heightMm: hPt * MM, texts, ...strokes(ops, hPt) });
  }
  const { info } = await doc.getMetadata();
  const outline = (await doc.getOutline()) ?? [];
  const read = { pages, info: info as Record<string, unknown>, bookmarks: outline.map((o) => o.title) };
  await task.destroy();
  return read;
};

const strokes = (
  ops: { fnArray: number[]; argsArray: unknown[][] },
  hPt: number,
): Pick<PdfPage, 'lines' | 'forms'> => {
  let m: Matrix = [1, 0, 0, 1, 0, 0];
  let weight = 1;
  const stack: [Matrix, number][] = [];
  const lines: PdfLine[] = [];
  let forms = 0;
  ops.fnArray.forEach((fn, i) => {
    const args = ops.argsArray[i] ?? [];
    if (fn === OPS.save) stack.push([m, weight]);
    else if (fn === OPS.restore || fn === OPS.paintFormXObjectEnd) [m, weight] = stack.pop() ?? [m, weight];
    else if (fn === OPS.transform) m = times(m, args as unknown as Matrix);
    else if (fn === OPS.setLineWidth) weight = Number(args[0]);
    else if (fn === OPS.paintFormXObjectBegin) {
      forms++;
      stack.push([m, weight]);
      if (args[0]) m = times(m, args[0] as Matrix);
    } else if (fn === OPS.constructPath) {
      const paint = Number(args[0]);
      if (paint !== OPS.stroke && paint !== OPS.fillStroke) return;
      const data = (args[1] as ArrayLike<number>[])[0];
      if (!data) return;
      const at = (x: number, y: number): [number, number] => [
        (m[0] * x + m[2] * y + m[4]) * MM,
        (hPt - (m[1] * x + m[3] * y + m[5])) * MM,
      ];
      const weightMm = weight * Math.hypot(m[0], m[1]) * MM;
      let from: [number, number] = [0, 0];
      let k = 0;
      while (k < data.length) {
        const op = Number(data[k++]);
        const n = ARGS[op as 0] ?? 0;
        if (op === 0 || op === 1) {
          const to = at(Number(data[k]), Number(data[k + 1]));
          if (op === 1) lines.push({ x1: from[0], y1: from[1], x2: to[0], y2: to[1], weightMm });
          from = to;
        } else if (n > 0) from = at(Number(data[k + n - 2]), Number(data[k + n - 1]));
        k += n;
      }
    }
  });
  return { lines, forms };
};
