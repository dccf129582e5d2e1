import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText } from '../../../src/report/text.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const set = (limit: string, value = 0.5) => ({ limit, value, reason: 'a slip' });

describe('limits set in a plan', () => {
  it('plan-limit: a name that no table has, or none of this practice, is told; one that is used is not', () => {
    const plan = new PlanBuilder({
      limits: [set('breaker-load-faktor'), set('breaker-load-factor'), set('drop-branch', Number.NaN)],
    }).plan();
    const found = assess(plan, { revision: 1 }).findings.filter((f) => f.rule === 'plan-limit');
    expect(found.map((f) => [f.severity, f.params.limit])).toEqual([
      ['note', 'breaker-load-faktor'],
      ['note', 'drop-branch'],
    ]);
    const [first] = found;
    if (!first) throw new Error('none');
    expect(findingText(plan, first).body).toContain('there is no limit of that name');
    const after = applyChanges(plan, first.remedies[0]?.changes ?? { added: [], updated: [], removed: [] });
    expect(
      assess(after, { revision: 2 }).findings.some((f) => f.params.limit === 'breaker-load-faktor'),
    ).toBe(false);
  });

  it('plan-limit: a limit of the other practice is told as one', () => {
    const plan = new PlanBuilder({ practice: 'europe', limits: [set('breaker-short-load-factor')] }).plan();
    const [f] = assess(plan, { revision: 1 }).findings.filter((x) => x.rule === 'plan-limit');
    expect(f?.params.why).toBe('it is a limit of another practice or country');
  });
});
