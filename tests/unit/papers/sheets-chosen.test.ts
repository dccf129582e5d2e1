import { describe, expect, it } from 'vitest';
import { cableLines } from '../../../src/papers/cable-order.ts';
import { noticeList } from '../../../src/papers/ink.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { readSheetChoice, SHEET_PRESETS } from '../../../src/papers/presets.ts';
import { runsOf } from '../../../src/papers/runs.ts';
import { setInfo } from '../../../src/papers/sheet-info.ts';
import { SHEET_CHOICES } from '../../../src/papers/sheet-kinds.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { acknowledge } from '../../../src/plan/edits/document.ts';
import { type Plan, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { recordSchemas } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { gearLines } from '../../../src/report/gear-lines.ts';
import { spareBasis, sparesFor } from '../../../src/report/spares.ts';
import { textsOf } from '../../support/page-texts.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const options = { revision: 'A', date: '2026-03-09', programVersion: '0', setupId: 'su-1' };
/** The sample with a block to shoot in and a unit that runs on its own cells, so that every sheet has something to say. */
const withDay = (): Plan => {
  const sample = samplePlan();
  const { patch: _patch, ...unit } = recordsOf(sample, 'fixture')[0] ?? need();
  const added = [
    { ...unit, id: 'fx-cells', unit: '99', support: { on: 'floor' as const }, onPacks: true },
    recordSchemas.block.parse({
      id: 'bk-1',
      type: 'block',
      day: 1,
      startMin: 480,
      endMin: 720,
      what: 'setup',
      setupId: 'su-1',
    }),
  ];
  return applyChanges(sample, { added, updated: [], removed: [] });
};
const need = (): never => {
  throw new Error('the sample has lost its units');
};
const plan = withDay();
const assessment = assess(plan, { revision: 0 });
const issue = (sheets?: readonly string[]) => paperSet(plan, assessment, { ...options, sheets });
const wordsOf = (sheets: readonly string[]): string =>
  issue(sheets)
    .pages.flatMap(textsOf)
    .map((t) => t.text)
    .join('\n');

const full = issue().pages.map((p) => p.title.toLowerCase());
const inFull = (name: string): boolean => full.some((t) => t.includes(name.toLowerCase().replace(/s$/, '')));

describe('the sheets of a set', () => {
  it('has the sheets of the power crew', () => {
    for (const name of [
      'Cover',
      'Lighting plot',
      'One-line diagram',
      'Leg summary',
      'Circuit schedule',
      'Box layout',
    ])
      expect(inFull(name), name).toBe(true);
    for (const name of ['Run sheet', 'Cable list', 'Test sheet', 'Unit list'])
      expect(inFull(name), name).toBe(true);
  });

  it.each(SHEET_CHOICES.filter((s) => !s.apart).map((s) => [s.id, s.name]))(
    'can be issued alone: %s',
    (id, name) => {
      const { pages } = issue([id]);
      // A sheet that the sample has nothing for is not in its full set either.
      expect(pages.length > 0, name).toBe(inFull(name));
      pages.forEach((p, i) => {
        expect(p.title.toLowerCase()).toContain(name.toLowerCase().replace(/s$/, ''));
        expect(textsOf(p).map((t) => t.text)).toContain(`E-${i + 1}, ${i + 1} of ${pages.length}`);
      });
    },
  );

  it('come in the order they are asked in, each once', () => {
    const titles = issue(['units', 'one-line', 'cover', 'units']).pages.map((p) =>
      p.title.replace(/^E-\d+ /, ''),
    );
    expect([...new Set(titles)]).toEqual(['Unit list', 'One-line diagram', 'Cover']);
  });

  it('of every preset exist, and a typed choice names presets and sheets', () => {
    for (const p of SHEET_PRESETS) expect(readSheetChoice(p.sheets.join(',')).unknown).toEqual([]);
    expect(readSheetChoice('Console, runs, nonsense')).toEqual({
      sheets: [...(SHEET_PRESETS.find((p) => p.id === 'console')?.sheets ?? []), 'runs'],
      unknown: ['nonsense'],
    });
  });

  it('are indexed on the cover by the numbers they carry', () => {
    const { pages } = issue();
    const cover = pages
      .filter((p) => p.title.endsWith('Cover'))
      .flatMap(textsOf)
      .map((t) => t.text);
    const first = new Map<string, string>();
    for (const p of pages) {
      const [number = '', ...name] = p.title.split(' ');
      if (!first.has(name.join(' '))) first.set(name.join(' '), number);
    }
    expect(first.size).toBeGreaterThan(8);
    for (const [name, number] of first)
      if (name !== 'Cover')
        expect(cover.filter((t) => t.startsWith(`${number} `) && t.includes('  ')).length, name).toBe(1);
  });
});

describe('the cover', () => {
  it('has who noted a finding and why, an empty place to sign, and boxes for emergencies', () => {
    const stop = assessment.findings.find((f) => f.severity === 'stop');
    if (!stop) throw new Error('the sample plan has lost its stop');
    const noted = applyChanges(
      plan,
      acknowledge(
        plan,
        {
          findingId: stop.id,
          severity: 'stop',
          reason: 'will be moved on the day',
          who: 'R. Osei',
          when: '2026-03-08',
          figure: Number(stop.params.figure),
        },
        () => 'ak-1',
      ),
    );
    const set = paperSet(noted, assess(noted, { revision: 0 }), { ...options, sheets: ['cover'] });
    const words = set.pages.flatMap(textsOf).map((t) => t.text);
    expect(
      words.some((t) => t.startsWith('noted by R. Osei') && t.includes('will be moved on the day')),
    ).toBe(true);
    expect(words).toContain('Signature');
    expect(words).toContain('Who stops the set, and where');
  });
});

describe('run sheet, cable list, box layout and test sheet', () => {
  const info = setInfo(plan, assessment, options, noticeList());

  it('list every run once, feeders before what hangs on them', () => {
    const runs = runsOf(info);
    expect(runs.map((r) => r.cable.id).sort()).toEqual(
      recordsOf(plan, 'cable')
        .map((c) => c.id)
        .sort(),
    );
    runs.forEach((run, i) => {
      const feeder = runs.findIndex((r) => r.cable.to.recordId === run.cable.from.recordId);
      expect(feeder).toBeLessThan(i);
    });
  });

  it('order as many pieces as the runs are made of, spares on top', () => {
    const { lines, joints } = cableLines(info);
    const runs = runsOf(info);
    expect(lines.reduce((s, l) => s + l.pieces, 0)).toBe(runs.reduce((s, r) => s + r.piecesMm.length, 0));
    expect([...joints.values()].reduce((s, n) => s + n, 0)).toBe(
      runs.reduce((s, r) => s + Math.max(0, r.piecesMm.length - 1), 0),
    );
    for (const l of lines) expect(l.spare).toBe(Math.ceil(l.pieces / 10));
    expect(sparesFor(plan, 'cable', 0)).toBe(0);
  });

  it('add the spares the plan sets in place of common practice, and say which', () => {
    const head = planRecord(plan);
    const set: Plan = {
      ...plan,
      records: new Map([
        ...plan.records,
        ['plan', { ...head, paper: { ...head.paper, spares: { cable: 50, lights: 0 } } }],
      ]),
    };
    const own = { ...info, plan: set };
    for (const l of cableLines(own).lines) expect(l.spare).toBe(Math.ceil(l.pieces / 2));
    const gear = gearLines(set, String);
    for (const g of gear.filter((x) => x.type === 'cable')) expect(g.spare).toBe(Math.ceil(g.count / 2));
    for (const g of gear.filter((x) => x.type === 'fixture')) expect(g.spare).toBe(0);
    const usual = gearLines(plan, String);
    const stands = (lines: typeof gear) => lines.filter((x) => x.type === 'stand').map((x) => x.spare);
    expect(stands(gear)).toEqual(stands(usual));
    expect(spareBasis(set, ['cable'])).toBe('as set in this plan');
    expect(spareBasis(plan, ['cable'])).toContain('common practice');
    const sheets = paperSet(set, assess(set, { revision: 0 }), {
      revision: 'A',
      date: '',
      programVersion: '0',
      sheets: ['cables'],
    });
    expect(
      sheets.pages
        .flatMap(textsOf)
        .map((t) => t.text)
        .join(' '),
    ).toContain('spares: 50 % of each line, rounded up (as set in this plan)');
  });

  it('show free outlets as free, and what plugs in by unit', () => {
    const words = wordsOf(['boxes']);
    expect(words).toContain('free');
    expect(words).toContain('Unit 9: LED spot 350 W, edge');
  });

  it('leave every measured value empty', () => {
    const { pages } = issue(['tests']);
    for (const p of pages) {
      const heads = textsOf(p).filter((t) => t.text === 'V, leg to N' || t.text === 'By whom');
      expect(heads.length).toBeGreaterThan(0);
      const [from, to] = [heads[0]?.xMm ?? 0, heads[1]?.xMm ?? 0];
      const below = textsOf(p).filter(
        (t) =>
          t.align === 'left' &&
          t.xMm > from + 1 &&
          t.xMm < to - 1 &&
          t.yMm > (heads[0]?.yMm ?? 0) + 1 &&
          t.yMm < p.heightMm - 70,
      );
      expect(below.map((t) => t.text).filter((t) => /\d/.test(t))).toEqual([]);
    }
    expect(wordsOf(['tests'])).toContain('Polarity');
  });

  it('mark the worst setup of each column with a box', () => {
    const words = wordsOf(['legs']);
    expect(words).toContain('G1 by setup');
    expect(words).toContain('12C night');
  });
});
