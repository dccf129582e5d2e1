import type { SupplyNode } from '../../derive/supply-types.ts';
import type { Computed } from './types.ts';

/** The largest rise of load at a source in one go, and what makes it. */
export interface LoadStep {
  readonly watts: number;
  readonly what: string;
}

/** The largest single unit on a source, or the rise from one setup to the next, whichever is more. `watts` is by setup. */
export const largestStep = (
  c: Pick<Computed, 'tree' | 'setups'>,
  source: SupplyNode,
  watts: (setup: number) => number,
): LoadStep => {
  let most: LoadStep = { watts: 0, what: '' };
  for (const n of c.tree.nodes)
    if (n.sourceId === source.recordId && n.branches.length > 0 && n.load && n.load.wattsW > most.watts)
      most = { watts: n.load.wattsW, what: n.label };
  for (let s = 1; s < c.setups.length; s++) {
    const rise = watts(s) - watts(s - 1);
    if (rise > most.watts) most = { watts: rise, what: `going to “${c.setups[s]?.name ?? ''}”` };
  }
  return most;
};
