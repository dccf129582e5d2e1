import { describe, expect, it } from 'vitest';
import { issueOptions } from '../../../src/papers/issue-options.ts';
import type { Page } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addIssue } from '../../../src/plan/edits/issue.ts';
import { type Plan, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import type { AnyRecord } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { struckTexts } from '../../support/page-strokes.ts';
import { outsideFrame, textsOf, touchingTexts } from '../../support/page-texts.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const change = (plan: Plan, id: string, patch: Record<string, unknown>): Plan => {
  const from = plan.records.get(id);
  if (!from) throw new Error(`no record ${id}`);
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, ...patch } as AnyRecord }],
  });
};
const issued = (): Plan => {
  const plan = samplePlan();
  return applyChanges(
    plan,
    addIssue(plan, { date: '2026-03-02', note: 'First issue', by: 'T. Lund' }, (p) => `${p}-1`).changes,
  );
};
const unit = (plan: Plan, n: string) => {
  const f = recordsOf(plan, 'fixture').find((x) => x.unit === n);
  if (!f) throw new Error(`the sample has lost unit ${n}`);
  return f;
};
const pagesOf = (plan: Plan, sheets: readonly string[]): readonly Page[] =>
  paperSet(plan, assess(plan, { revision: 0 }), { ...issueOptions(plan, { programVersion: '0' }), sheets })
    .pages;
/** Revision letters in triangles: drawn in the colour of changes. */
const letters = (pages: readonly Page[]): number =>
  pages.flatMap(textsOf).filter((t) => t.text === 'B' && t.role === 'accent').length;

describe('what changed since the issue before', () => {
  it('is marked on the one-line diagram at the unit and nowhere else', () => {
    const plan = issued();
    const changed = change(plan, unit(plan, '7').id, { use: 'key, moved' });
    const pages = pagesOf(changed, ['one-line']);
    expect(letters(pages)).toBe(1);
    const [page] = pages;
    const texts = page ? textsOf(page) : [];
    const mark = texts.find((t) => t.text === 'B' && t.role === 'accent');
    const number = texts.find((t) => t.text === '7' && t.align === 'center' && t.yMm > 20 && t.yMm < 200);
    if (!mark || !number) throw new Error('no mark or no number');
    expect(Math.abs(mark.xMm - number.xMm)).toBeLessThan(20);
    expect(Math.abs(mark.yMm - number.yMm)).toBeLessThan(16);
    expect(letters(pagesOf(plan, ['one-line']))).toBe(0);
  });

  it('is marked on the universe map in the block of the unit', () => {
    const plan = issued();
    const patched = unit(plan, '7');
    const changed = change(plan, patched.id, { use: 'key, moved' });
    const pages = pagesOf(changed, ['universes']);
    expect(letters(pages)).toBe(1);
    expect(letters(pagesOf(plan, ['universes']))).toBe(0);
    for (const p of pages) {
      expect(touchingTexts(p)).toEqual([]);
      expect(struckTexts(p)).toEqual([]);
      expect(outsideFrame(p)).toEqual([]);
    }
  });

  it('is told with part and zone where the plot comes in parts, and with the zone where it is whole', () => {
    const plan = issued();
    const head = planRecord(plan);
    const changed = change(plan, unit(plan, '7').id, { use: 'key, moved' });
    const at = (paper: Record<string, unknown>): readonly string[] =>
      pagesOf(change(changed, 'plan', { paper: { ...head.paper, ...paper } }), ['plot', 'changes'])
        .filter((p) => p.title.endsWith('List of changes'))
        .flatMap(textsOf)
        .map((t) => t.text);
    expect(at({}).some((t) => /^[A-Z]\d+$/.test(t))).toBe(true);
    expect(
      at({ sheet: 'A4', landscape: false, scale: 24 }).some((t) => /^part [A-Z]\d+, [A-Z]\d+$/.test(t)),
    ).toBe(true);
  });
});
