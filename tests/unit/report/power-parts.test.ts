import { describe, expect, it } from 'vitest';
import { daySummary } from '../../../src/report/day.ts';
import { powerParts } from '../../../src/report/power-parts.ts';
import { demoPlan } from '../../support/demo-plan.ts';

describe('what draws from a source', () => {
  it('adds up to the watts of the time line in every stretch, chargers aside', () => {
    const plan = demoPlan('study');
    for (const s of daySummary(plan, 1).sources)
      for (const step of s.steps) {
        const parts = powerParts(plan, 1, s.id, step.startMin);
        expect(parts.reduce((sum, p) => sum + p.watts, 0)).toBeCloseTo(step.lightW, 6);
      }
  });
  it('names nothing before the day begins', () => {
    const plan = demoPlan('study');
    expect(powerParts(plan, 1, daySummary(plan, 1).sources[0]?.id ?? '', 60)).toEqual([]);
  });
});
