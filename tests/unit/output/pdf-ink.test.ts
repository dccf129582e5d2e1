import { expect, it } from 'vitest';
import { pagesToPdf } from '../../../src/output/pdf.ts';
import type { PageItem } from '../../../src/papers/page.ts';
import { paperFonts } from '../../support/paper-fonts.ts';
import { readPdf } from '../../support/read-pdf.ts';

const line = (yMm: number): PageItem => ({
  kind: 'path',
  d: [
    ['M', 20, yMm],
    ['L', 80, yMm],
  ],
  stroke: { role: 'ink', weightMm: 0.7 },
});
const word = (yMm: number, text: string): PageItem => ({
  kind: 'text',
  xMm: 20,
  yMm,
  text,
  capMm: 3.5,
  weight: 'semibold',
  align: 'left',
  role: 'ink',
});

it('inks are the same before, in and after a clipped field, and on the page after', async () => {
  const clip: PageItem = {
    kind: 'clip',
    xMm: 10,
    yMm: 10,
    widthMm: 150,
    heightMm: 150,
    items: [line(40), word(50, 'in')],
  };
  const items = [line(20), word(30, 'before'), clip, line(60), word(70, 'after')];
  const page = { title: 't', widthMm: 210, heightMm: 297, items };
  const { pages } = await readPdf(
    pagesToPdf([page, page], paperFonts(), { title: '', subject: '', author: '' }),
  );
  for (const p of pages) {
    expect(p.lines.map((l) => l.weightMm.toFixed(2))).toEqual(['0.70', '0.70', '0.70']);
    expect(p.texts.map((t) => t.text)).toEqual(['before', 'in', 'after']);
    expect(p.texts.map((t) => t.yMm.toFixed(1))).toEqual(['30.0', '50.0', '70.0']);
    for (const t of p.texts) expect(t.widthMm / t.text.length).toBeGreaterThan(1.5);
  }
});
