import { describe, expect, it } from 'vitest';
import { pagesToPdf } from '../../../src/output/pdf.ts';
import { frameOf } from '../../../src/papers/frame.ts';
import { issueOptions } from '../../../src/papers/issue-options.ts';
import type { Page } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { SHEET_IDS, scalesFor, sheetOf } from '../../../src/papers/sheets.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addIssue } from '../../../src/plan/edits/issue.ts';
import { type Plan, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import type { AnyRecord } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { struckTexts } from '../../support/page-strokes.ts';
import { outsideFrame, textsOf, touchingTexts } from '../../support/page-texts.ts';
import { paperFonts } from '../../support/paper-fonts.ts';
import { readPdf } from '../../support/read-pdf.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const meta = { title: 'x', subject: '', author: '' };
const options = { revision: 'A', date: '', programVersion: '0' };
const change = (plan: Plan, id: string, patch: Record<string, unknown>): Plan => {
  const from = plan.records.get(id);
  if (!from) throw new Error(`no record ${id}`);
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, ...patch } as AnyRecord }],
  });
};
const paper = (plan: Plan, patch: Record<string, unknown>): Plan =>
  change(plan, 'plan', { paper: { ...planRecord(plan).paper, ...patch } });
const papers = (plan: Plan, more: Record<string, unknown> = {}) =>
  paperSet(plan, assess(plan, { revision: 0 }), { ...options, ...more });
const words = (pages: readonly Page[]): string =>
  pages
    .flatMap(textsOf)
    .map((t) => t.text)
    .join('\n');

/** Two walls of ten metres on a floor, at right angles, and nothing else. */
const tenMetres = (units: 'metric' | 'imperial'): Plan => {
  const plan = samplePlan();
  const head = planRecord(plan);
  const wall = (id: string, x: number, y: number): AnyRecord => ({
    id,
    type: 'wall',
    floorId: 'fl-1',
    from: { xMm: 0, yMm: 0 },
    to: { xMm: x, yMm: y },
    thicknessMm: 0.001,
    heightMm: 3000,
    material: 'brick',
  });
  const keep = [...plan.records.values()].filter((r) => ['floor', 'setup'].includes(r.type));
  return {
    ...plan,
    records: new Map(
      [
        { ...head, lengthUnits: units, people: {} },
        ...keep,
        wall('w-1', 10_000, 0),
        wall('w-2', 0, 10_000),
      ].map((r) => [r.id, r as AnyRecord]),
    ),
  };
};

describe('scale, read back from the PDF by an independent reader', () => {
  const cases = (['metric', 'imperial'] as const).flatMap((units) =>
    SHEET_IDS.flatMap((id) => scalesFor(units).map((s) => [units, id, s.ratio] as const)),
  );

  it('is true to a tenth of a millimetre on every sheet at every scale that fits on it', async () => {
    let checked = 0;
    for (const [units, id, ratio] of cases) {
      const sheet = sheetOf(id, true);
      // Only scales at which ten metres fit, and are not lost in the line.
      const f = sheet && frameOf(sheet);
      const long = 10_000 / ratio;
      if (!f || long > Math.min(f.w * 0.6, f.h - 150) || long < 9) continue;
      const plan = paper(tenMetres(units), { sheet: id, landscape: true, scale: ratio });
      const set = papers(plan, { sheets: ['plot'] });
      expect(set.pages.length, `${id} 1:${ratio}`).toBe(1);
      const [page] = (await readPdf(pagesToPdf(set.pages, paperFonts(), meta))).pages;
      const found =
        page?.lines.filter((l) => Math.abs(Math.hypot(l.x2 - l.x1, l.y2 - l.y1) - long) < 0.1) ?? [];
      expect(
        found.some((l) => Math.abs(l.y1 - l.y2) < 0.01),
        `${id} 1:${ratio} across`,
      ).toBe(true);
      expect(
        found.some((l) => Math.abs(l.x1 - l.x2) < 0.01),
        `${id} 1:${ratio} down`,
      ).toBe(true);
      checked++;
    }
    expect(checked).toBeGreaterThan(40);
  }, 120_000);
});

describe('every page', () => {
  const changed = (): Plan => {
    const plan = samplePlan();
    const issued = applyChanges(
      plan,
      addIssue(plan, { date: '2026-03-02', note: 'First issue', by: 'T. Lund' }, (p) => `${p}-1`).changes,
    );
    const f = recordsOf(issued, 'fixture').find((x) => x.unit === '7');
    return change(issued, f?.id ?? '', { gel: 'CTO ½', use: 'key, moved' });
  };

  it.each([
    ['ANSI B', true],
    ['A3', true],
    ['A4', false],
    ['A0', true],
    ['ARCH C', false],
  ] as const)(
    'of %s (landscape %s), changes marked, keeps inside its frame, and no text touches another or a stroke',
    (id, landscape) => {
      const plan = paper(changed(), { sheet: id, landscape });
      const set = paperSet(plan, assess(plan, { revision: 0 }), issueOptions(plan, { programVersion: '0' }));
      for (const page of set.pages) {
        expect(outsideFrame(page), page.title).toEqual([]);
        expect(touchingTexts(page), page.title).toEqual([]);
        expect(struckTexts(page), page.title).toEqual([]);
      }
    },
  );

  it('of a draft carries the next letter, marks what changed and lists it', () => {
    const plan = changed();
    const set = paperSet(plan, assess(plan, { revision: 0 }), issueOptions(plan, { programVersion: '0' }));
    const all = words(set.pages);
    expect(all).toContain('Revision, draft');
    expect(all).toContain('Changes from A to B');
    expect(all).toMatch(/Unit 7 gel now CTO ½, was none, use now “key, moved”/);
    const plot = set.pages.find((p) => p.title.endsWith('Lighting plot'));
    expect(
      plot && textsOf(plot).filter((t) => t.text === 'B' && t.role === 'accent').length,
    ).toBeGreaterThanOrEqual(2);
  });

  it('is reached by its line of the index: a link of the cover leads to the first page of each sheet', async () => {
    const set = papers(samplePlan());
    const pdf = pagesToPdf(set.pages, paperFonts(), meta);
    const { getDocument } = await import('pdfjs-dist/legacy/build/pdf.mjs');
    const doc = await getDocument({ data: pdf.slice(), verbosity: 0 }).promise;
    const links = (await (await doc.getPage(1)).getAnnotations()).filter((a) => a.subtype === 'Link');
    const targets = await Promise.all(links.map((l) => doc.getPageIndex(l.dest[0])));
    const titles = targets.map((t) => set.pages[t]?.title.replace(/^E-\d+ /, ''));
    for (const name of ['Lighting plot', 'Circuit schedule', 'Workings', 'Gear list'])
      expect(titles).toContain(name);
    expect(targets.every((t) => t > 0)).toBe(true);
    await doc.destroy();
  });

  it('never says that anything may be done, or is safe', () => {
    const all = words(papers(samplePlan(), { sheets: undefined }).pages);
    expect(all).not.toMatch(/\b(safe|compliant|complies|approved for|you may|ready to (rig|energi[sz]e))\b/i);
  });
});

describe('what a person might bring', () => {
  const everyText = (plan: Plan) => {
    const set = papers(plan);
    for (const page of set.pages) expect(touchingTexts(page), page.title).toEqual([]);
    expect(pagesToPdf(set.pages, paperFonts(), meta).length).toBeGreaterThan(1000);
    return set;
  };

  it('no gear at all: the plot and the cover are there, and say so', () => {
    const set = everyText(tenMetres('metric'));
    expect(set.pages.map((p) => p.title.replace(/^E-\d+ /, ''))).toContain('Lighting plot');
    expect(words(set.pages)).toContain('No source is drawn.');
  });

  it('a plan two kilometres wide comes in parts or is said to be cut off', () => {
    const wide = change(tenMetres('metric'), 'w-1', { to: { xMm: 2_000_000, yMm: 0 } });
    const set = everyText(paper(wide, { sheet: 'A3', landscape: true }));
    expect(set.notices.join(' ')).toMatch(/in \d+ parts with match marks|cut off/);
  });

  it('a wall of a slipped figure, of any length, is said to be cut off', () => {
    for (const xMm of [1e7, 1e8]) {
      const plan = paper(change(tenMetres('metric'), 'w-1', { to: { xMm, yMm: 0 } }), { scale: 50 });
      expect(papers(plan).notices.join(' ')).toMatch(/cut off/);
    }
  });

  it('names of 400 characters are cut or broken inside their place', () => {
    const long = 'Extraordinarily long name of a thing '.repeat(11).slice(0, 400);
    const f = recordsOf(samplePlan(), 'fixture')[0];
    const plan = change(change(samplePlan(), f?.id ?? '', { use: long, unit: long }), 'plan', {
      production: long,
      title: long,
      scene: long,
    });
    expect(everyText(plan).notices.join(' ')).toMatch(/too long for/);
  });

  it('no title, no people, no scene', () => {
    const plan = change(samplePlan(), 'plan', {
      title: '',
      production: '',
      scene: '',
      people: {},
      owner: '',
    });
    expect(words(everyText(plan).pages)).toContain('Production: not in the plan');
  });

  it('a sheet too small for the scale asked for, and one no table has', () => {
    expect(
      everyText(paper(samplePlan(), { sheet: 'A4', landscape: false, scale: 24 })).notices.join(' '),
    ).toMatch(/match marks|would take/);
    expect(everyText(paper(samplePlan(), { sheet: 'B5' })).notices.join(' ')).toContain(
      'There is no sheet “B5”',
    );
  });

  it('scripts the font lacks are printed as boxes and said', () => {
    const plan = change(samplePlan(), 'plan', { production: '撮影 Ωμέγα Жар' });
    const set = everyText(plan);
    expect(set.notices.join(' ')).toMatch(/no shape for 2 characters.*U\+64AE, U\+5F71/);
    expect(words(set.pages)).toContain('Ωμέγα Жар');
  });

  it('an underlay that is no picture, or of a hundred megabytes, is left out and said', () => {
    const blob = (id: string, base64: string): AnyRecord => ({
      id,
      type: 'blob',
      mediaType: 'image/png',
      base64,
    });
    const under = (id: string, blobId: string): AnyRecord => ({
      id,
      type: 'underlay',
      floorId: 'fl-1',
      name: id,
      what: 'image',
      blobId,
      at: { xMm: 0, yMm: 0 },
      rotationDeg: 0,
      mmPerUnit: 10,
      scaled: true,
      widthUnits: 100,
      heightUnits: 100,
      fadePct: 50,
      order: 0,
    });
    const plan = applyChanges(samplePlan(), {
      added: [
        blob('blob:bad', 'AAAA'),
        under('un-bad', 'blob:bad'),
        blob('blob:big', `iVBORw0KGgo${'A'.repeat(134_000_000)}`),
        under('un-big', 'blob:big'),
      ],
      updated: [],
      removed: [],
    });
    const set = papers(plan, { sheets: ['plot'] });
    expect(set.notices.join(' ')).toContain('is no picture that can be read');
    expect(set.notices.join(' ')).toContain('more than 16 MB is left out');
    expect(pagesToPdf(set.pages, paperFonts(), meta).length).toBeLessThan(1_000_000);
  });
});
