import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { svgToPng } from '../../src/cli/png.ts';
import { pageToSvg } from '../../src/output/svg.ts';
import { paperSet } from '../../src/papers/paper-set.ts';
import { assess } from '../../src/report/assess.ts';
import { demoPlan } from '../support/demo-plan.ts';
import { paperFonts } from '../support/paper-fonts.ts';
import { type Pixels, readPng } from '../support/read-png.ts';

const folder = new URL('pages-out/', import.meta.url);
const fonts = paperFonts();
/** Dots to the inch: enough that a lost line or a moved text shows. */
const DPI = 60;
/** A sample is another one when it is off by more than this, of 255: rounding at edges is not. */
const OFF = 48;
/** Share of samples that may be others, in per cent: a moved word on a small sheet is about 0.1. */
const MOST_PCT = 0.02;

const plan = demoPlan('study');
const set = paperSet(plan, assess(plan, { revision: 0 }), {
  revision: 'A',
  date: '2026-03-09',
  programVersion: '0',
});

const differing = (a: Pixels, b: Pixels): number => {
  let n = 0;
  for (let i = 0; i < a.rgba.length; i++) if (Math.abs((a.rgba[i] ?? 0) - (b.rgba[i] ?? 0)) > OFF) n++;
  return (100 * n) / a.rgba.length;
};

describe('the pages of the study look as they were accepted', () => {
  test.each(set.pages.map((page, i) => [`${String(i + 1).padStart(2, '0')} ${page.title}`, page] as const))(
    '%s',
    async (name, page) => {
      const png = await svgToPng(pageToSvg(page), page, fonts, DPI);
      const file = new URL(`study-${name.slice(0, 2)}.png`, folder);
      if (process.env.UPDATE_PAGES || !existsSync(file)) {
        if (!process.env.UPDATE_PAGES) throw new Error(`no accepted picture ${file.pathname}`);
        mkdirSync(folder, { recursive: true });
        writeFileSync(file, png);
      }
      const [now, accepted] = [readPng(png), readPng(new Uint8Array(readFileSync(file)))];
      expect([now.width, now.height]).toEqual([accepted.width, accepted.height]);
      expect(differing(now, accepted)).toBeLessThan(MOST_PCT);
    },
  );

  test('a word moved by two millimetres is seen', async () => {
    const [page] = set.pages;
    if (!page) throw new Error('no page');
    const moved = {
      ...page,
      items: page.items.map((i) => (i.kind === 'text' && i.capMm > 3 ? { ...i, xMm: i.xMm + 2 } : i)),
    };
    const [a, b] = await Promise.all([page, moved].map((p) => svgToPng(pageToSvg(p), p, fonts, DPI)));
    if (!a || !b) throw new Error('no pictures');
    expect(differing(readPng(a), readPng(b))).toBeGreaterThan(MOST_PCT);
  });
});
