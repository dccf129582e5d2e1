import type { InletPort, LoadSpec } from '../plan/kinds/ports.ts';
import { kindOf, type Plan } from '../plan/plan.ts';
import { deviceFamilies } from '../plan/ports.ts';
import type { Box, Charger, Device, Source } from '../plan/records/index.ts';
import { loadBranches } from './connections.ts';
import { recordLabel } from './labels.ts';
import { loadProblem } from './loads.ts';
import type { SupplyIndex } from './supply-checks.ts';
import { chargeKey, type NewNode } from './supply-node.ts';
import type { Reach } from './supply-reach.ts';

const steady = (
  index: SupplyIndex,
  r: Charger | Device | Box | Source,
  kind: { readonly load?: LoadSpec | undefined } | undefined,
  inlet: InletPort | undefined,
  reach: Reach,
): Pick<NewNode, 'what' | 'connectors' | 'steady' | 'load' | 'branches' | 'notComputed'> => {
  const load = kind?.load;
  const branches =
    load && inlet && reach.shape && reach.notComputed === undefined
      ? loadBranches(reach.shape, inlet, reach.legs, reach.neutral, load)
      : [];
  const words = typeof branches === 'string' ? branches : undefined;
  const problem = load && loadProblem(load);
  const fault =
    problem !== undefined
      ? index.otherFault(r, problem)
      : words !== undefined
        ? index.legsFault(r, words)
        : kind
          ? load
            ? undefined
            : 'its kind does not say what it draws'
          : index.kindFault(r, r.kindId);
  return {
    what: 'load',
    connectors: inlet ? [inlet.connector] : [],
    steady: true,
    load,
    branches: typeof branches === 'string' || fault !== undefined ? [] : branches,
    notComputed: fault,
  };
};

/** Control gear, mains supplies, and a charger with all its bays busy, in every setup: which packs are in it when is for the day to say. */
export const steadyNode = (
  plan: Plan,
  index: SupplyIndex,
  r: Charger | Device | Box,
  inlet: InletPort | undefined,
  reach: Reach,
): NewNode => ({
  key: r.id,
  recordId: r.id,
  label: recordLabel(plan, r),
  ...steady(index, r, kindOf(plan, r.kindId, 'charger', 'converter', ...deviceFamilies), inlet, reach),
});

/** A power station at whose outlet it is charged: a load there, whatever it gives on its own side. */
export const chargingNode = (
  plan: Plan,
  index: SupplyIndex,
  s: Source,
  inlet: InletPort | undefined,
  reach: Reach,
): NewNode => ({
  key: chargeKey(s.id),
  recordId: s.id,
  label: `${recordLabel(plan, s)}, charging`,
  ...steady(index, s, kindOf(plan, s.kindId, 'source'), inlet, reach),
});
