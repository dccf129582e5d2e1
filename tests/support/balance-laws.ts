import fc from 'fast-check';
import { expect } from 'vitest';
import { balanceProblem, computePower, scoreOf } from '../../src/engines/power/index.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import { balanceLegs } from '../../src/report/balance.ts';
import { balancePlan, balanceRig, solveByMip } from './balance-oracle.ts';

/** Balances so many random rigs and holds each to the solver’s overloads and worst leg, and to the plan it leaves. */
export const balanceAgainstSolver = (runs: number, seed: number): Promise<void> =>
  fc.assert(
    fc.asyncProperty(balanceRig(16, 4), async (rig) => {
      const plan = balancePlan(rig);
      const before = balanceProblem(computePower(plan), 'source-0001');
      if (!before) throw new Error('no problem');
      const theirs = await solveByMip(before.problem);
      const mine = balanceLegs(plan);
      const row = mine.sources[0];
      expect(row?.after.overloads).toBe(theirs.overloads);
      expect(Math.abs((row?.after.worstLegA ?? 0) - theirs.worstLegA)).toBeLessThan(1e-5);
      expect(row?.boundA ?? 0).toBeLessThanOrEqual(theirs.worstLegA + 1e-5);
      // The plan after the moves is what was promised.
      const after = balanceProblem(computePower(applyChanges(plan, mine.changes)), 'source-0001');
      const start = Int32Array.from(after?.problem.plugs ?? [], (p) => p.at);
      const kept = after && scoreOf(after.problem, start);
      expect(kept?.overloads).toBe(row?.after.overloads);
      expect(kept?.worstLegA).toBeCloseTo(row?.after.worstLegA ?? 0, 6);
      expect(mine.moves.length).toBe(row?.after.moves);
    }),
    { numRuns: runs, seed, endOnFailure: true },
  );
