import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { LengthUnits } from '../../../src/kernel/units.ts';
import type { Page } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { readPlan } from '../../../src/plan/file.ts';
import { type Plan, planRecord, setupsOf } from '../../../src/plan/plan.ts';
import type { AnyRecord } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { struckTexts } from '../../support/page-strokes.ts';
import { outsideFrame, textsOf, touchingTexts } from '../../support/page-texts.ts';

const folder = new URL('../../../demo-sets/', import.meta.url);
const plans = readdirSync(folder).filter((f) => f.endsWith('.plan.json'));

const planOf = (file: string): Plan => {
  const read = readPlan(readFileSync(new URL(file, folder), 'utf8'), file);
  if (!read.ok) throw new Error(read.error.what);
  return read.value.plan;
};

const options = { revision: 'A', date: '2026-03-09', programVersion: '0' };

/** What every page keeps to: texts clear of texts and strokes, and all of it inside the frame. */
const keepsLaws = (page: Page, where: string): void => {
  expect(touchingTexts(page), `${where}, ${page.title}: texts touch`).toEqual([]);
  expect(struckTexts(page), `${where}, ${page.title}: strokes through texts`).toEqual([]);
  expect(outsideFrame(page), `${where}, ${page.title}: outside the frame`).toEqual([]);
};

/** No text ends in …; blocks of a day that last minutes have no room for their names but in the table below. */
const nothingCut = (page: Page): void => {
  const cut = textsOf(page).filter((t) => t.text.endsWith('…'));
  if (!page.title.endsWith('Shooting day')) expect(cut, page.title).toEqual([]);
};

/** The plan on another sheet, its plot at the largest scale that fits. */
const onSheet = (plan: Plan, sheet: string, landscape: boolean, lengthUnits: LengthUnits): Plan => {
  const head = planRecord(plan);
  const { scale: _, ...paper } = head.paper;
  const next: AnyRecord = { ...head, lengthUnits, paper: { ...paper, sheet, landscape } };
  return { ...plan, records: new Map<string, AnyRecord>([...plan.records, ['plan', next]]) };
};

describe('the papers of every demo plan', () => {
  it.each(plans)(
    '%s: on every page, in any setup, no text touches another or a stroke, and every unit is numbered',
    (file) => {
      const plan = planOf(file);
      const assessment = assess(plan, { revision: 0 });
      for (const setup of setupsOf(plan)) {
        const set = paperSet(plan, assessment, { ...options, setupId: setup.id });
        for (const page of set.pages) {
          keepsLaws(page, setup.name);
          nothingCut(page);
        }
        const plot = set.pages
          .filter((p) => p.title.includes('plot'))
          .flatMap(textsOf)
          .map((t) => t.text);
        expect(plot.length).toBeGreaterThan(0);
        expect(plot.join(' ')).not.toContain('without room for a number');
        expect(set.notices.filter((n) => n.includes('does not fit'))).toEqual([]);
      }
    },
    120_000,
  );

  const sheets = [
    ['A4', false, 'metric'],
    ['A4', true, 'imperial'],
    ['A3', true, 'metric'],
    ['A1', true, 'metric'],
    ['ANSI B', true, 'imperial'],
    ['ARCH D', true, 'imperial'],
    ['ARCH C', false, 'metric'],
  ] as const;

  it.each(plans.flatMap((file) => sheets.map((s) => [file, ...s] as const)))(
    '%s on %s (landscape %s, %s): every page keeps the laws, and no text but in the bars of a day is cut',
    (file, sheet, landscape, units) => {
      const plan = onSheet(planOf(file), sheet, landscape, units);
      const set = paperSet(plan, assess(plan, { revision: 0 }), options);
      for (const page of set.pages) {
        keepsLaws(page, sheet);
        nothingCut(page);
      }
    },
    60_000,
  );

  it.each(plans)(
    '%s with every unit and box changed since the issue before: marks keep the laws too',
    (file) => {
      const plan = planOf(file);
      const was = [...plan.records.values()].map(
        (r): AnyRecord =>
          r.type === 'fixture'
            ? { ...r, use: 'was' }
            : r.type === 'box'
              ? { ...r, label: `was ${r.label}` }
              : r,
      );
      const since = { plan: { ...plan, records: new Map(was.map((r) => [r.id, r])) }, revision: 'A' };
      const set = paperSet(plan, assess(plan, { revision: 0 }), { ...options, revision: 'B', since });
      expect(set.pages.map((p) => p.title).join(' ')).toContain('List of changes');
      for (const page of set.pages) keepsLaws(page, file);
    },
    60_000,
  );

  it.each(plans)(
    '%s with names of 400 letters in three scripts: cut with a notice, and never over one another',
    (file) => {
      const plan = planOf(file);
      const long = 'Überlänge Ωμέγα Жарков × ≤ ½″ '.repeat(14).slice(0, 400);
      const records = [...plan.records.values()].map((r, i): AnyRecord => {
        if (r.type === 'fixture') return i % 3 === 0 ? { ...r, use: long, unit: `Unit-number-${r.unit}` } : r;
        if (r.type === 'plan') return { ...r, production: long, title: `撮影 ${long}` };
        return r.type === 'setup' || r.type === 'block' ? { ...r, name: long } : r;
      });
      const next: Plan = { ...plan, records: new Map(records.map((r) => [r.id, r])) };
      const set = paperSet(next, assess(next, { revision: 0 }), options);
      for (const page of set.pages) keepsLaws(page, file);
      expect(set.notices.join(' ')).toMatch(/no shape for 2 characters/);
      expect(set.notices.join(' ')).toMatch(/too long for/);
    },
    60_000,
  );

  it('tables have letters of 2.5 mm where the sheet has room, and never less than 1.8 mm', () => {
    const capsOf = (plan: Plan): readonly number[] =>
      paperSet(plan, assess(plan, { revision: 0 }), { ...options, sheets: ['circuits', 'units', 'patch'] })
        .pages.flatMap(textsOf)
        .map((t) => t.capMm);
    for (const file of plans) {
      const large = capsOf(onSheet(planOf(file), 'A3', true, 'metric'));
      expect(Math.min(...large)).toBeGreaterThanOrEqual(1.8);
      expect(large.filter((c) => c === 2.5).length).toBeGreaterThan(large.length * 0.5);
      expect(Math.min(...capsOf(onSheet(planOf(file), 'A4', false, 'metric')))).toBeGreaterThanOrEqual(1.8);
    }
  });

  it('a text that a stroke goes through, that touches another, or that leaves the frame is seen', () => {
    const text = {
      kind: 'text',
      yMm: 100,
      capMm: 2.5,
      weight: 'regular',
      align: 'left',
      role: 'ink',
    } as const;
    const line = {
      kind: 'path',
      d: [
        ['M', 40, 99],
        ['L', 80, 99],
      ],
      stroke: { role: 'ink', weightMm: 0.2 },
    } as const;
    const page: Page = {
      title: 't',
      widthMm: 297,
      heightMm: 210,
      items: [
        { ...text, xMm: 50, text: 'struck' },
        line,
        { ...text, xMm: 150, text: 'one over' },
        { ...text, xMm: 155, text: 'another' },
        { ...text, xMm: 280, text: 'far too long for the frame' },
      ],
    };
    expect(struckTexts(page)).toEqual(['struck']);
    expect(touchingTexts(page)).toEqual([['one over', 'another']]);
    expect(outsideFrame(page)).toEqual(['"far too long for the frame"']);
    const clip = { kind: 'clip', xMm: 60, yMm: 90, widthMm: 40, heightMm: 20, items: [line] } as const;
    // What a clip hides of a stroke goes through nothing.
    expect(struckTexts({ ...page, items: [{ ...text, xMm: 44, text: 'seen' }, clip] })).toEqual([]);
  });

  it('study: the plot measures a breaker by all that hangs on it, not outlet by outlet', () => {
    const read = readPlan(readFileSync(new URL('study.plan.json', folder), 'utf8'), 'study');
    if (!read.ok) throw new Error(read.error.what);
    const a = assess(read.value.plan, { revision: 0 });
    const set = paperSet(read.value.plan, a, { revision: 'A', date: '', programVersion: '0' });
    const texts = set.pages.filter((p) => p.title.includes('plot')).flatMap(textsOf);
    const row = texts.find((t) => t.text === 'P1 way 7');
    const way = a.entities.find((e) => e.label === 'P1 way 7');
    if (!row || !way) throw new Error('the study has lost circuit 7');
    const q = (['leg0A', 'leg1A', 'leg2A'] as const)[way.legs[0] ?? 0] ?? 'leg0A';
    const onRow = texts.filter((t) => Math.abs(t.yMm - row.yMm) < 0.5).map((t) => t.text);
    expect(onRow).toContain(a.figures.worst(way.key, q).value.toFixed(1));
  });
});
