import { jsPDF } from 'jspdf';
import { contentHash } from '../kernel/canonical.ts';
import { type LinkTarget, type Page, type PageLink, targetOf } from '../papers/page.ts';
import { PAPER_COLORS } from './colors.ts';
import { binaryString } from './pdf-pack.ts';
import { FONT_FAMILY, type PdfWriter, pdfWriter } from './pdf-writer.ts';

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

const creationDate = (date: string | undefined): Date => {
  const m = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date ?? '') ?? /^(\d{4})-(\d{2})-(\d{2})$/.exec(NO_DATE);
  return new Date(Date.UTC(Number(m?.[1]), Number(m?.[2]) - 1, Number(m?.[3]), 12));
};

/** A date as PDF writes it, in UTC whatever the machine's zone. */
const pdfDate = (d: Date): string => `D:${d.toISOString().replace(/[-:T]/g, '').slice(0, 14)}+00'00'`;

/** A PDF that is written page by page: each page is packed as soon as it is there, and nothing else of it is kept. */
export interface PdfFile {
  add(page: Page): void;
  /** The file. Links are laid last, as they may lead to pages further on. Throws where no page was added. */
  finish(): Uint8Array;
}

const orientation = (p: Page): 'landscape' | 'portrait' =>
  p.widthMm > p.heightMm ? 'landscape' : 'portrait';

const newDocument = (first: Page, fonts: PaperFonts, meta: PdfMetadata): jsPDF => {
  const doc = new jsPDF({
    unit: 'mm',
    format: [first.widthMm, first.heightMm],
    orientation: orientation(first),
    compress: true,
    floatPrecision: 3,
    putOnlyUsedFonts: true,
  });
  doc.addFileToVFS('regular.ttf', binaryString(fonts.regular));
  doc.addFont('regular.ttf', FONT_FAMILY, 'normal');
  doc.addFileToVFS('semibold.ttf', binaryString(fonts.semibold));
  doc.addFont('semibold.ttf', FONT_FAMILY, 'bold');
  doc.setProperties({
    title: meta.title,
    subject: meta.subject,
    author: meta.author,
    creator: 'Lampwright',
  });
  doc.setLanguage('en-US');
  doc.setCreationDate(pdfDate(creationDate(meta.date)) as unknown as Date);
  return doc;
};

/** What is kept of a page that is written. */
interface Written {
  readonly heightMm: number;
  readonly title: string;
  readonly hash: number;
  readonly links: readonly PageLink[];
}

/**
 * A PDF of vector lines, each symbol size stored once and placed by matrix, embedded subset font with selectable text,
 * bookmarks. Two runs over the same pages give the same bytes.
 */
export const pdfFile = (fonts: PaperFonts, meta: PdfMetadata): PdfFile => {
  const pages: Written[] = [];
  const anchors = new Map<string, LinkTarget>();
  let open: { readonly doc: jsPDF; readonly writer: PdfWriter } | undefined;

  return {
    add: (page) => {
      if (open) open.doc.addPage([page.widthMm, page.heightMm], orientation(page));
      else {
        const doc = newDocument(page, fonts, meta);
        open = { doc, writer: pdfWriter(doc, PAPER_COLORS) };
      }
      const hash = open.writer.page(page.items, page.heightMm);
      open.doc.outline.add(null, page.title, { pageNumber: pages.length + 1 });
      for (const i of page.items)
        if (i.kind === 'anchor' && !anchors.has(i.name))
          anchors.set(i.name, { page: pages.length, yMm: i.yMm });
      pages.push({
        heightMm: page.heightMm,
        title: page.title,
        hash,
        links: page.items.filter((i) => i.kind === 'link'),
      });
    },
    finish: () => {
      if (!open) throw new Error('no pages to write');
      const { doc } = open;
      // jsPDF counts the heights that links and bookmarks lead to from the page that is current at the end: the tallest,
      // so that bookmarks lead to the top of each.
      const tallest = pages.reduce((best, p, i) => (p.heightMm > (pages[best]?.heightMm ?? 0) ? i : best), 0);
      const currentMm = pages[tallest]?.heightMm ?? 0;
      pages.forEach(({ links }, i) => {
        if (links.length > 0) doc.setPage(i + 1);
        for (const link of links) {
          const target = targetOf(link, anchors);
          if (target)
            doc.link(link.xMm, link.yMm, link.widthMm, link.heightMm, {
              pageNumber: target.page + 1,
              magFactor: 'XYZ',
              top: Math.max(0, target.yMm - 6) + currentMm - (pages[target.page]?.heightMm ?? 0),
            });
        }
      });
      const written = pages.map((p) => [p.title, p.hash, p.links.length]);
      doc.setFileId(contentHash({ meta, written }).slice(0, 32).toUpperCase());
      doc.setPage(tallest + 1);
      return new Uint8Array(doc.output('arraybuffer'));
    },
  };
};

/** Pages as a PDF, at once. */
export const pagesToPdf = (pages: readonly Page[], fonts: PaperFonts, meta: PdfMetadata): Uint8Array => {
  const file = pdfFile(fonts, meta);
  for (const page of pages) file.add(page);
  return file.finish();
};
