import { describe, expect, it } from 'vitest';
import { balanceProblem, computePower, search, worstLegBound } from '../../src/engines/power/index.ts';
import { balancePlan, largeRig, solveLegsByMip } from '../support/balance-oracle.ts';

describe('balancing large rigs against a mixed-integer solver', () => {
  for (const loads of [60, 120])
    it(`power-balance: ${loads} loads × 12 setups come within 1 % of the solver, which leaves the ways out`, {
      timeout: 120_000,
    }, async () => {
      const p = balanceProblem(computePower(balancePlan(largeRig(loads, 12, 1))), 'source-0001')?.problem;
      if (!p) throw new Error('no problem');
      const mine = search(p);
      const theirs = await solveLegsByMip(p, 0.01);
      expect(mine.score.worstLegA).toBeLessThanOrEqual(theirs.worstLegA * 1.01);
      expect(mine.score.worstLegA).toBeGreaterThanOrEqual(worstLegBound(p) - 1e-6);
      expect(mine.score.overloads).toBe(0);
    });
});
