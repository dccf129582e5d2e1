import { describe, expect, it } from 'vitest';
import { LABEL_STOCKS, labelFaults } from '../../../src/papers/label-stocks.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type Plan, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { textsOf, touchingTexts } from '../../support/page-texts.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const plan = samplePlan();
const set = (p: Plan, sheet: string) =>
  paperSet(p, assess(p, { revision: 0 }), { revision: 'A', date: '', programVersion: '0', sheets: [sheet] });
const onStock = (labels: Record<string, number>): Plan => {
  const head = planRecord(plan);
  const stock = LABEL_STOCKS[0]?.stock;
  if (!stock) throw new Error('no label sheet');
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from: head, to: { ...head, paper: { ...head.paper, labels: { ...stock, ...labels } } } }],
  });
};

describe('labels', () => {
  it('are one for each unit and two for each run, none touching another', () => {
    const units = set(plan, 'unit-labels').pages;
    const big = units.flatMap(textsOf).filter((t) => t.capMm > 3);
    expect(big.map((t) => t.text).sort()).toEqual(
      recordsOf(plan, 'fixture')
        .map((f) => f.unit)
        .sort(),
    );
    const cables = set(plan, 'cable-labels').pages.flatMap(textsOf);
    const runs = recordsOf(plan, 'cable').length;
    expect(cables.filter((t) => t.text === 'source end').length).toBe(runs);
    expect(cables.filter((t) => t.text === 'load end').length).toBe(runs);
    for (const page of units) expect(touchingTexts(page)).toEqual([]);
  });

  it('keep inside the sizes that were typed', () => {
    const p = onStock({
      columns: 2,
      rows: 3,
      widthMm: 90,
      heightMm: 50,
      leftMm: 10,
      topMm: 20,
      pitchXMm: 95,
      pitchYMm: 60,
    });
    const { pages } = set(p, 'unit-labels');
    expect(pages.length).toBe(Math.ceil(recordsOf(plan, 'fixture').length / 6));
    for (const t of pages.flatMap(textsOf)) {
      const [x, y] = [(t.xMm - 10) % 95, (t.yMm - 20) % 60];
      expect(x >= 0 && x <= 90 && y >= 0 && y <= 50, t.text).toBe(true);
    }
  });

  it('say so when the typed sheet does not hold what was typed', () => {
    expect(set(onStock({ columns: 9 }), 'unit-labels').notices.join(' ')).toContain('larger than its paper');
    expect(set(onStock({ widthMm: 5, pitchXMm: 5 }), 'unit-labels').notices.join(' ')).toContain(
      'too small to print on',
    );
  });

  it('are not laid out, with word why, where one is wider or higher than its sheet or they would overlap', () => {
    for (const [labels, words] of [
      [{ widthMm: 300 }, 'One label is wider than its sheet: it begins at'],
      [{ topMm: 280 }, 'One label is higher than its sheet'],
      [
        { pitchXMm: 30 },
        'The labels would lie on one another across: each is 63.5 mm and the next begins after 30 mm',
      ],
      [{ pitchYMm: 10 }, 'The labels would lie on one another down'],
    ] as const) {
      const { pages, notices } = set(onStock(labels), 'unit-labels');
      expect(pages).toEqual([]);
      expect(notices.join(' ')).toContain(words);
    }
    // One row of labels overlaps nothing, whatever the step down says.
    expect(set(onStock({ rows: 1, pitchYMm: 1 }), 'unit-labels').pages.length).toBeGreaterThan(0);
    for (const s of LABEL_STOCKS) expect(labelFaults(s.stock).faults, s.name).toEqual([]);
  });

  it('are printed only when they are asked for', () => {
    const all = paperSet(plan, assess(plan, { revision: 0 }), {
      revision: 'A',
      date: '',
      programVersion: '0',
    });
    expect(all.pages.some((p) => p.title.includes('labels'))).toBe(false);
  });
});
