import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { svgToPng } from '../../src/cli/png.ts';
import { pageToSvg } from '../../src/output/svg.ts';
import type { Page } from '../../src/papers/page.ts';
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

/**
 * All pages of the study, and of the larger plans the first page of the sheets that say most about them, with fewer dots:
 * the pages after it are laid out by the same code.
 */
const SETS = [
  { name: 'study', dpi: DPI, titles: undefined },
  {
    name: 'street',
    dpi: 40,
    titles: [
      'Lighting plot',
      'One-line diagram',
      'Leg summary',
      'Circuit schedule',
      'Run sheet',
      'Setup cards',
      'Stand and rigging list',
    ],
  },
  {
    name: 'stage',
    dpi: 40,
    titles: [
      'Lighting plot',
      'One-line diagram',
      'Patch sheet',
      'Universe maps',
      'Part levels',
      'Data lines',
      'Radio',
      'Unit list',
    ],
  },
] as const;

const setOf = (name: (typeof SETS)[number]['name']): readonly Page[] => {
  const plan = demoPlan(name);
  return paperSet(plan, assess(plan, { revision: 0 }), {
    revision: 'A',
    date: '2026-03-09',
    programVersion: '0',
  }).pages;
};

const PAGES = SETS.flatMap(({ name, dpi, titles }) => {
  const seen = new Set<string>();
  return setOf(name).flatMap((page, i) => {
    const title = page.title.replace(/^E-\d+ /, '');
    const wanted =
      titles === undefined || (!seen.has(title) && (titles as readonly string[]).includes(title));
    seen.add(title);
    const file =
      titles === undefined ? String(i + 1).padStart(2, '0') : title.toLowerCase().replaceAll(' ', '-');
    return wanted
      ? [
          {
            name: `${name} ${page.title}`,
            file: `${name}-${file}.png`,
            page,
            dpi: titles !== undefined && title === 'Lighting plot' ? 30 : dpi,
          },
        ]
      : [];
  });
});

const differing = (a: Pixels, b: Pixels): number => {
  let n = 0;
  for (let i = 0; i < a.rgba.length; i++) if (Math.abs((a.rgba[i] ?? 0) - (b.rgba[i] ?? 0)) > OFF) n++;
  return (100 * n) / a.rgba.length;
};

describe('the pages look as they were accepted', () => {
  test.each(PAGES)('$name', async ({ file: fileName, page, dpi }) => {
    const png = await svgToPng(pageToSvg(page), page, fonts, dpi);
    const file = new URL(fileName, folder);
    if (process.env.UPDATE_PAGES || !existsSync(file)) {
      if (!process.env.UPDATE_PAGES) throw new Error(`no accepted picture ${file.pathname}`);
      mkdirSync(folder, { recursive: true });
      writeFileSync(file, png);
    }
    const [now, accepted] = [readPng(png), readPng(new Uint8Array(readFileSync(file)))];
    expect([now.width, now.height]).toEqual([accepted.width, accepted.height]);
    expect(differing(now, accepted)).toBeLessThan(MOST_PCT);
  });

  test('no picture is left that no page is held against', () => {
    const files = new Set(PAGES.map((p) => p.file));
    expect(readdirSync(folder).filter((f) => !files.has(f))).toEqual([]);
  });

  test('a word moved by two millimetres is seen', async () => {
    const page = PAGES[0]?.page;
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
