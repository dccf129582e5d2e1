import { describe, expect, it } from 'vitest';
import type { Page, PageItem } from '../../../src/papers/page.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type Plan, planRecord, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText } from '../../../src/report/text.ts';
import { demoPlan } from '../../support/demo-plan.ts';

const onSheet = (plan: Plan, paper: { sheet: string; landscape: boolean; scale?: number }): Plan => {
  const from = planRecord(plan);
  return applyChanges(plan, { added: [], removed: [], updated: [{ from, to: { ...from, paper } }] });
};

const plots = (plan: Plan) =>
  paperSet(plan, assess(plan, { revision: 0 }), {
    revision: '',
    date: '',
    programVersion: '0',
    sheets: ['plot'],
  });

const words = (items: readonly PageItem[]): string[] =>
  items.flatMap((i) => (i.kind === 'text' ? [i.text] : i.kind === 'clip' ? words(i.items) : []));
const said = (page: Page | undefined): string[] => words(page?.items ?? []);

describe('a plot on a sheet too narrow or too small', () => {
  it('has its key, signs and notes on a page of their own where there is no room beside it', () => {
    const { pages } = plots(onSheet(demoPlan('study'), { sheet: 'A4', landscape: false }));
    const keys = pages.filter((p) => said(p).includes('Key to symbols'));
    expect(keys).toHaveLength(1);
    expect(said(keys[0])).toEqual(
      expect.arrayContaining(['Open-face 800 W', 'Unit number', 'Notes', 'Cautions']),
    );
    // A wider sheet has it beside the drawing and needs no other page.
    const wide = plots(onSheet(demoPlan('study'), { sheet: 'A4', landscape: true })).pages;
    expect(wide.every((p) => said(p).includes('Key to symbols'))).toBe(true);
    expect(wide).toHaveLength(pages.length - 1);
  });

  it('comes at a scale that can be read, not at the smallest, where the scale asked for takes too many sheets', () => {
    const { pages, notices } = plots(
      onSheet(demoPlan('street'), { sheet: 'A4', landscape: false, scale: 20 }),
    );
    expect(notices[0]).toMatch(
      /^At 1:20 as asked the plot would take \d+ sheets of A4.* 1\/16″ = 1′-0″, in 2 parts with match marks\.$/,
    );
    expect(said(pages[0]).join(' ')).toContain('1/16″ = 1′-0″ (1:192)');
  });
});

describe('a finding about something with a name without end', () => {
  it('still says what is wrong', () => {
    const plan = demoPlan('street');
    const boxes = recordsOf(plan, 'box').map((from) => ({
      from,
      to: { ...from, label: `${from.label} ${'a name that does not end '.repeat(15)}`.slice(0, 400) },
    }));
    const long = applyChanges(plan, { added: [], removed: [], updated: boxes });
    const findings = assess(long, { revision: 0 }).findings.filter((f) => f.severity === 'stop');
    expect(findings.length).toBeGreaterThan(0);
    for (const f of findings) {
      const { head } = findingText(long, f);
      expect(head).toContain(' … ');
      expect(head).toMatch(/: [\d.]+ A on a limit of [\d.]+ A/);
      expect(head.length).toBeLessThan(220);
    }
  });
});
