import { beforeAll, describe, expect, it } from 'vitest';
import { papersCommand } from '../../../src/cli/papers.ts';
import { pagesToPdf } from '../../../src/output/pdf.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { scalesFor, sheetOf } from '../../../src/papers/sheets.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type Plan, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { paperFonts } from '../../support/paper-fonts.ts';
import { type PdfPage, type PdfRead, readPdf } from '../../support/read-pdf.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const options = {
  revision: 'B',
  date: '2026-03-09',
  programVersion: '0.1.0',
  sheets: ['plot', 'circuits', 'units'],
};
const meta = {
  title: 'Letters at Low Tide',
  subject: 'Lighting papers',
  author: 'T. Lund',
  date: '2026-03-09',
};
const fonts = paperFonts();

const onSheet = (
  sheet: string,
  landscape: boolean,
  scale?: number,
  units: 'imperial' | 'metric' = 'imperial',
): Plan => {
  const plan = samplePlan();
  const from = planRecord(plan);
  const paper = scale === undefined ? { sheet, landscape } : { sheet, landscape, scale };
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, paper, lengthUnits: units } }],
  });
};
const pdfOf = (plan: Plan): Uint8Array =>
  pagesToPdf(paperSet(plan, assess(plan, { revision: 1 }), options).pages, fonts, meta);

const words = (p: PdfPage | undefined): string[] => (p?.texts ?? []).map((t) => t.text);

let read: PdfRead;
beforeAll(async () => {
  read = await readPdf(pdfOf(samplePlan()));
});

describe('the PDF set', () => {
  it('gives the same bytes on two runs', () => {
    expect(Buffer.compare(Buffer.from(pdfOf(samplePlan())), Buffer.from(pdfOf(samplePlan())))).toBe(0);
  });

  it('has a bookmark per sheet and its facts, and the date of issue in place of the clock', () => {
    expect(read.bookmarks).toEqual([
      'E-1 Lighting plot',
      'E-2 Circuit schedule',
      'E-3 Circuit schedule',
      'E-4 Circuit schedule',
      'E-5 Unit list',
    ]);
    expect(read.info.Title).toBe('Letters at Low Tide');
    expect(String(read.info.CreationDate)).toContain('20260309');
  });

  it('keeps all text selectable, signs of the trade included', () => {
    const plot = words(read.pages[0]);
    for (const t of [
      'Letters at Low Tide',
      'For review: 1 stop open',
      '3/16″ = 1′-0″ (1:64)',
      'K1·1 · U2 31 · 12′-0″',
      '24′-3″',
      '8′-7½″',
    ])
      expect(plot).toContain(t);
    const all = read.pages.flatMap(words).join(' ');
    expect(all).toContain('60×60');
  });

  it('extracts Ω ≤ ≥ and primes exactly', async () => {
    const text = 'R = 0.25 Ω ≤ 1 Ω, 12′-6½″ – “×” · 30 °C';
    const page = {
      title: 't',
      widthMm: 210,
      heightMm: 297,
      items: [
        { kind: 'text', xMm: 20, yMm: 50, text, capMm: 2.5, weight: 'regular', align: 'left', role: 'ink' },
        {
          kind: 'text',
          xMm: 190,
          yMm: 60,
          text,
          capMm: 2.5,
          weight: 'semibold',
          align: 'right',
          role: 'ink',
        },
      ],
    } as const;
    const { pages } = await readPdf(pagesToPdf([page], fonts, meta));
    expect(words(pages[0])).toEqual([text, text]);
    const [left, right] = pages[0]?.texts ?? [];
    expect(left?.xMm).toBeCloseTo(20, 2);
    // Our own width table and the font in the file agree, so right-aligned text ends where it should.
    expect((right?.xMm ?? 0) + (right?.widthMm ?? 0)).toBeCloseTo(190, 1);
  });

  it('places each fixture, box, source, outlet, ballast and mark once as a stored form', () => {
    const plan = samplePlan();
    const drawn = (['fixture', 'box', 'source', 'outlet', 'ballast', 'mark'] as const).reduce(
      (n, t) => n + recordsOf(plan, t).length,
      0,
    );
    const plot = paperSet(plan, assess(plan, { revision: 1 }), options).pages[0];
    const count = (items: readonly { readonly kind: string }[]): number =>
      items.reduce(
        (n, i) =>
          n +
          (i.kind === 'symbol' ? 1 : i.kind === 'clip' && 'items' in i ? count(i.items as typeof items) : 0),
        0,
      );
    const inClip = (plot?.items ?? []).filter((i) => i.kind === 'clip');
    expect(count(inClip)).toBe(drawn);
    expect(read.pages[0]?.forms).toBe(count(plot?.items ?? []));
  });

  it('keeps every text and stroke within the border of the sheet', () => {
    for (const p of read.pages) {
      const right = p.widthMm - 5;
      const bottom = p.heightMm - 5;
      for (const t of p.texts) {
        expect(t.xMm, t.text).toBeGreaterThan(15);
        expect(t.xMm + t.widthMm, t.text).toBeLessThan(right);
        expect(t.yMm, t.text).toBeLessThan(bottom);
      }
      for (const l of p.lines) {
        // The drawing itself is clipped to its field; what lies outside it is cut off there.
        if (l.weightMm < 0.2 || l.weightMm > 0.6) continue;
        expect(Math.min(l.x1, l.x2)).toBeGreaterThan(14.9);
        expect(Math.max(l.x1, l.x2)).toBeLessThan(right + 0.1);
      }
    }
  });
});

describe('a measured length', () => {
  const cases: readonly [string, boolean, number | undefined, 'imperial' | 'metric'][] = [
    ['ANSI B', true, undefined, 'imperial'],
    ['A3', true, undefined, 'metric'],
    ['A4', false, undefined, 'metric'],
    ['ANSI D', true, 48, 'imperial'],
    ['ARCH D', true, 24, 'imperial'],
    ['A1', true, 25, 'metric'],
    ['A0', true, 50, 'metric'],
  ];
  it.each(cases)(
    'on %s (landscape %s, scale %s, %s) is the plan’s over the scale within 0.1 mm',
    async (sheet, landscape, scale, units) => {
      const plan = onSheet(sheet, landscape, scale, units);
      const set = paperSet(plan, assess(plan, { revision: 1 }), options);
      const { pages } = await readPdf(pagesToPdf(set.pages, fonts, meta));
      const size = sheetOf(sheet, landscape);
      expect(pages[0]?.widthMm).toBeCloseTo(size?.widthMm ?? 0, 1);
      expect(pages[0]?.heightMm).toBeCloseTo(size?.heightMm ?? 0, 1);
      const printed =
        words(pages[0])
          .find((t) => t.startsWith('Scale '))
          ?.slice(6) ?? '';
      const ratio = scalesFor(units).find((s) => s.text === printed)?.ratio ?? Number.NaN;
      if (scale !== undefined) expect(ratio).toBe(scale);
      // The long outer faces of the north and south walls: inside length and two thicknesses.
      const [wall] = recordsOf(plan, 'wall');
      if (!wall) throw new Error('the sample has walls');
      const outerMm = Math.abs(wall.to.xMm - wall.from.xMm) + wall.thicknessMm;
      const lengths = (pages[0]?.lines ?? [])
        .filter((l) => Math.abs(l.weightMm - 0.5) < 0.01 && Math.abs(l.y1 - l.y2) < 0.001)
        .map((l) => Math.abs(l.x2 - l.x1));
      const nearest = lengths.reduce(
        (best, l) => (Math.abs(l - outerMm / ratio) < Math.abs(best - outerMm / ratio) ? l : best),
        0,
      );
      expect(Math.abs(nearest - outerMm / ratio)).toBeLessThan(0.1);
    },
  );

  it('of a symbol is its own, turned with it', async () => {
    const page = {
      title: 't',
      widthMm: 210,
      heightMm: 297,
      items: [
        {
          kind: 'symbol',
          symbolId: 'unit-plain',
          xMm: 100,
          yMm: 120,
          rotationDeg: 90,
          lengthMm: 30,
          widthMm: 12,
          broken: false,
          role: 'gear',
        },
      ],
    } as const;
    const { pages } = await readPdf(pagesToPdf([page], fonts, meta));
    const lines = (pages[0]?.lines ?? []).filter((l) => Math.abs(l.weightMm - 0.5) < 0.01);
    const xs = lines.flatMap((l) => [l.x1, l.x2]);
    const ys = lines.flatMap((l) => [l.y1, l.y2]);
    // Its throw, 30 mm long, points down the page after a quarter turn clockwise.
    for (const [have, want] of [
      [Math.min(...xs), 94],
      [Math.max(...xs), 106],
      [Math.min(...ys), 105],
      [Math.max(...ys), 135],
    ] as const)
      expect(have).toBeCloseTo(want, 2);
  });

  it('is that of the print check: 2 in', () => {
    const lines = read.pages[0]?.lines ?? [];
    expect(
      lines.some((l) => Math.abs(l.y1 - l.y2) < 0.001 && Math.abs(Math.abs(l.x2 - l.x1) - 50.8) < 0.01),
    ).toBe(true);
  });
});

describe('papers as files', () => {
  it('are one PDF and the lists under fixed names', async () => {
    const plan = samplePlan();
    const { files, notices } = await papersCommand(plan, assess(plan, { revision: 1 }), {
      fonts,
      programVersion: '0.1.0',
    });
    expect(files[0]?.name).toBe('papers.pdf');
    const lists = files.slice(1).map((f) => f.name);
    for (const name of ['circuits', 'legs', 'runs', 'cables', 'units', 'patch', 'gear', 'truck', 'findings'])
      expect(lists).toContain(`${name}.csv`);
    expect(lists.every((n) => /^[a-z]+\.csv$/.test(n))).toBe(true);
    expect(notices).toEqual([]);
  });
});
