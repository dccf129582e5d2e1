import { balanceProblem, computePower, search, worstLegBound } from '../../src/engines/power/index.ts';
import { balancePlan, largeRig, solveLegsByMip } from '../support/balance-oracle.ts';
import { line, ms, quantile, timed, times } from './measure.ts';

const ROUNDS = 3;
const SETUPS = 12;

/**
 * Balancing against a mixed-integer solver: what it needs for an answer within 1 % of its own bound (choosing legs only, the
 * easier problem), and what our search needs, ways and all, for one as good.
 */
export const benchBalance = async (): Promise<void> => {
  for (const loads of [20, 60, 120, 300]) {
    const theirs: number[] = [];
    const ours: number[] = [];
    const whole: number[] = [];
    let gap = 0;
    for (let round = 0; round < ROUNDS; round++) {
      const p = balanceProblem(
        computePower(balancePlan(largeRig(loads, SETUPS, 11 + round))),
        'source-0001',
      )?.problem;
      if (!p) throw new Error('no problem');
      const found = await solveLegsByMip(p, 0.01);
      theirs.push(found.ms);
      let best = search(p);
      whole.push(timed(() => (best = search(p))));
      // Where ways keep the search from what legs alone allow, its own answer is what it is timed to.
      const goal = {
        overloads: best.score.overloads,
        worstLegA: Math.max(found.worstLegA, best.score.worstLegA) + 1e-9,
      };
      ours.push(timed(() => search(p, undefined, goal)));
      gap = Math.max(gap, best.score.worstLegA / worstLegBound(p) - 1);
    }
    line(
      `balance ${loads} loads × ${SETUPS} setups, to the quality of the solver`,
      ms(quantile(ours)),
      `solver ${ms(quantile(theirs))}, ${times(quantile(theirs) / quantile(ours))} as long; whole search ${ms(quantile(whole))}, ${(100 * gap).toFixed(2)} % above the bound`,
    );
  }
};
