import { limitOf } from '../../derive/limits.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import type { Plan } from '../../plan/plan.ts';
import { isPhaseCut } from './phase-cut.ts';

/**
 * Tells of nodes whether most of what hangs on them is non-linear, by rated volt-amperes: loads with much third harmonic by
 * their kind, and lamps on phase-cut dimmers. Behind a transformer between legs the thirds stay there.
 */
export const loadedNeutrals = (plan: Plan, tree: SupplyTree): ((n: SupplyNode) => boolean) => {
  const from = limitOf(plan, 'nonlinear-third').value;
  const majority = limitOf(plan, 'nonlinear-majority').value / 100;
  let sums: Float64Array | undefined;
  const sum = (): Float64Array => {
    const all = new Float64Array(tree.nodes.length * 2);
    for (let i = tree.nodes.length - 1; i >= 0; i--) {
      const n = tree.nodes[i];
      if (!n) continue;
      if (n.load && n.branches.length > 0) {
        const va = n.load.wattsW / n.load.powerFactor;
        all[i * 2] = (all[i * 2] as number) + va;
        if (n.load.thirdHarmonicPct >= from || isPhaseCut(n))
          all[i * 2 + 1] = (all[i * 2 + 1] as number) + va;
      }
      if (n.parent < 0) continue;
      const up = n.parent * 2;
      all[up] = (all[up] as number) + (all[i * 2] as number);
      if (!n.transformer) all[up + 1] = (all[up + 1] as number) + (all[i * 2 + 1] as number);
    }
    return all;
  };
  return (n) => {
    sums ??= sum();
    return (sums[n.index * 2 + 1] as number) > majority * (sums[n.index * 2] as number);
  };
};
