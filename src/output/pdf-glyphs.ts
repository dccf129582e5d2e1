import type { jsPDF } from 'jspdf';

type Weight = 'regular' | 'semibold';

/** What jsPDF has of a font and does with it beyond its typed surface. */
interface Raw {
  readonly internal: {
    getFont(name: string, style: string): { readonly id: string };
    write(text: string): string[];
  };
  pdfEscape16(text: string, font: unknown): string;
}

/** A text as a page shows it: the name of the font on the page and its glyphs in hexadecimal. */
export interface Glyphs {
  readonly font: string;
  readonly hex: string;
}

/**
 * Glyphs of texts by jsPDF's tables, which note what the subset of a font must have. Each character is looked up once in
 * a document; the order of letters is as given, since the font has no script that runs from the right.
 */
export const glyphWriter = (doc: jsPDF, family: string): ((text: string, weight: Weight) => Glyphs) => {
  const raw = doc as unknown as Raw;
  const known = new Map<
    Weight,
    { readonly font: unknown; readonly id: string; hex: (string | undefined)[] }
  >();

  const begin = (weight: Weight) => {
    const style = weight === 'semibold' ? 'bold' : 'normal';
    const font = raw.internal.getFont(family, style);
    // A font goes into the file when jsPDF itself has set a text in it; what it wrote is taken away again.
    const page = raw.internal.write('');
    const length = page.length;
    doc.setFont(family, style).text('0', 0, 0);
    page.length = length;
    const own = { font, id: font.id, hex: [] as (string | undefined)[] };
    known.set(weight, own);
    return own;
  };

  return (text, weight) => {
    const own = known.get(weight) ?? begin(weight);
    let hex = '';
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      let glyph = own.hex[code];
      if (glyph === undefined) {
        glyph = raw.pdfEscape16(text.charAt(i), own.font);
        own.hex[code] = glyph;
      }
      hex += glyph;
    }
    return { font: own.id, hex };
  };
};
