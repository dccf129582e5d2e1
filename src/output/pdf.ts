import { jsPDF } from 'jspdf';
import { contentHash } from '../kernel/canonical.ts';
import { anchorsOf, type Page, targetOf } from '../papers/page.ts';
import { PAPER_COLORS } from './colors.ts';
import { pdfWriter } from './pdf-writer.ts';

/** The embedded font as TrueType files. */
export interface PaperFonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
}

export interface PdfMetadata {
  readonly title: string;
  readonly subject: string;
  readonly author: string;
  /** Date of issue, `2026-03-09`. Left out, a fixed date is written: never the clock's. */
  readonly date?: string;
}

/** Creation date of a file whose papers carry no date. */
const NO_DATE = '2000-01-01';

const binaryString = (bytes: Uint8Array): string => {
  const parts: string[] = [];
  for (let i = 0; i < bytes.length; i += 8192)
    parts.push(String.fromCharCode(...bytes.subarray(i, i + 8192)));
  return parts.join('');
};

const creationDate = (date: string | undefined): Date => {
  const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date ?? '') ?? /^(\d{4})-(\d{2})-(\d{2})$/.exec(NO_DATE);
  return new Date(Date.UTC(Number(m?.[1]), Number(m?.[2]) - 1, Number(m?.[3]), 12));
};

/** A date as PDF writes it, in UTC whatever the machine's zone. */
const pdfDate = (d: Date): string => `D:${d.toISOString().replace(/[-:T]/g, '').slice(0, 14)}+00'00'`;

/** A number for each page that changes with anything on it: FNV-1a over its texts and its numbers to the micrometre. */
const fingerprint = (pages: readonly Page[]): readonly number[] =>
  pages.map((page) => {
    let h = 0x811c9dc5;
    const mix = (n: number): void => {
      h = Math.imul(h ^ (n & 0xffff), 0x01000193);
      h = Math.imul(h ^ ((n >> 16) & 0xffff), 0x01000193);
    };
    const walk = (v: unknown): void => {
      if (typeof v === 'number') mix(Math.round(v * 1000) | 0);
      else if (typeof v === 'string') for (let i = 0; i < v.length; i++) mix(v.charCodeAt(i));
      else if (Array.isArray(v)) for (const x of v) walk(x);
      else if (v && typeof v === 'object')
        for (const [key, x] of Object.entries(v)) if (key !== 'base64') walk(x);
    };
    walk(page);
    return h >>> 0;
  });

/**
 * Pages as a PDF: vector lines, each symbol size stored once and placed by matrix, embedded subset font with
 * selectable text, bookmarks. Two runs over the same pages give the same bytes.
 */
export const pagesToPdf = (pages: readonly Page[], fonts: PaperFonts, meta: PdfMetadata): Uint8Array => {
  const steps = pdfSteps(pages, fonts, meta);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
};

/** As `pagesToPdf`, page by page: it gives the number of pages written after each, and the file at the end. */
export function* pdfSteps(
  pages: readonly Page[],
  fonts: PaperFonts,
  meta: PdfMetadata,
): Generator<number, Uint8Array, undefined> {
  const [first] = pages;
  if (!first) throw new Error('no pages to write');
  const orientation = (p: Page): 'landscape' | 'portrait' =>
    p.widthMm > p.heightMm ? 'landscape' : 'portrait';
  const doc = new jsPDF({
    unit: 'mm',
    format: [first.widthMm, first.heightMm],
    orientation: orientation(first),
    compress: true,
    floatPrecision: 3,
    putOnlyUsedFonts: true,
  });
  doc.addFileToVFS('regular.ttf', binaryString(fonts.regular));
  doc.addFont('regular.ttf', 'LampwrightSans', 'normal');
  doc.addFileToVFS('semibold.ttf', binaryString(fonts.semibold));
  doc.addFont('semibold.ttf', 'LampwrightSans', 'bold');
  doc.setProperties({
    title: meta.title,
    subject: meta.subject,
    author: meta.author,
    creator: 'Lampwright',
  });
  doc.setLanguage('en-US');
  doc.setCreationDate(pdfDate(creationDate(meta.date)) as unknown as Date);
  doc.setFileId(
    contentHash({ meta, pages: fingerprint(pages) })
      .slice(0, 32)
      .toUpperCase(),
  );
  const writer = pdfWriter(doc, PAPER_COLORS);
  const anchors = anchorsOf(pages);
  // jsPDF counts the heights that links and bookmarks lead to from the page that is current at the end: the tallest, so
  // that bookmarks lead to the top of each.
  const tallest = pages.reduce((best, p, i) => (p.heightMm > (pages[best]?.heightMm ?? 0) ? i : best), 0);
  const currentMm = pages[tallest]?.heightMm ?? 0;
  for (const [i, page] of pages.entries()) {
    if (i > 0) doc.addPage([page.widthMm, page.heightMm], orientation(page));
    writer.page(page.items, page.heightMm);
    doc.outline.add(null, page.title, { pageNumber: i + 1 });
    for (const item of page.items) {
      const target = item.kind === 'link' ? targetOf(item, anchors) : undefined;
      if (item.kind === 'link' && target)
        doc.link(item.xMm, item.yMm, item.widthMm, item.heightMm, {
          pageNumber: target.page + 1,
          magFactor: 'XYZ',
          top: Math.max(0, target.yMm - 6) + currentMm - (pages[target.page]?.heightMm ?? 0),
        });
    }
    yield i + 1;
  }
  doc.setPage(tallest + 1);
  return new Uint8Array(doc.output('arraybuffer'));
}
