import { figureOffset } from '../../../derive/figures.ts';
import type { EngineFinding } from '../../../derive/findings.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { figureKey, QUANTITIES, type Quantity } from '../../../derive/types.ts';
import type { Computed } from '../types.ts';

const quantityAt = Object.fromEntries(QUANTITIES.map((q, i) => [q, i])) as Record<Quantity, number>;

/** A figure of a node by its place in the tree: the figure table without the look-up of its key. */
export const figureAt = (c: Computed, n: SupplyNode, quantity: Quantity, setup: number): number =>
  c.figures.values[figureOffset(n.index, quantityAt[quantity], setup, c.setups.length)] ?? Number.NaN;

/** Largest of a node's figure over all setups; −Infinity where none is known. Read in one go, for the many nodes that pass nothing. */
export const mostOver = (c: Computed, n: SupplyNode, quantity: Quantity): number => {
  const { values } = c.figures;
  const setups = c.setups.length;
  const start = figureOffset(n.index, quantityAt[quantity], 0, setups);
  let most = Number.NEGATIVE_INFINITY;
  for (let i = start; i < start + setups; i++) {
    const v = values[i] as number;
    if (v > most) most = v;
  }
  return most;
};

/** Least of a node's figure over all setups; Infinity where none is known. */
export const leastOver = (c: Computed, n: SupplyNode, quantity: Quantity): number => {
  const { values } = c.figures;
  const setups = c.setups.length;
  const start = figureOffset(n.index, quantityAt[quantity], 0, setups);
  let least = Number.POSITIVE_INFINITY;
  for (let i = start; i < start + setups; i++) {
    const v = values[i] as number;
    if (v < least) least = v;
  }
  return least;
};

/** Share by which a figure must pass a limit before it counts: rounding of the arithmetic, not a trade allowance. */
export const ROUNDING = 1e-9;

/** Setups in which a figure passes a limit, the worst of them, and its value. */
export const passing = (
  setups: number,
  value: (s: number) => number,
  limit: number,
): { readonly setups: readonly number[]; readonly worst: number; readonly value: number } | undefined => {
  const hit: number[] = [];
  let worst = -1;
  let most = -Infinity;
  for (let s = 0; s < setups; s++) {
    const v = value(s);
    if (!(v > limit * (1 + ROUNDING))) continue;
    hit.push(s);
    if (v > most) {
      most = v;
      worst = s;
    }
  }
  return worst < 0 ? undefined : { setups: hit, worst, value: most };
};

/** A finding about a node that holds in some setups. */
export const inSetups = (
  c: Computed,
  rule: string,
  severity: EngineFinding['severity'],
  n: SupplyNode,
  hit: { readonly setups: readonly number[]; readonly worst: number },
  quantity: Quantity | undefined,
  figure: number,
  params: EngineFinding['params'],
  about: string = n.key,
): EngineFinding => ({
  rule,
  severity,
  about,
  recordIds: [n.recordId],
  setups: hit.setups,
  worstSetup: hit.worst,
  params: { label: n.label, ...params },
  figure,
  ...(quantity ? { figureKey: figureKey(quantity, n.key, c.setups[hit.worst]?.id ?? '') } : {}),
});
