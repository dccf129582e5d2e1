import { QUANTITIES, type Quantity } from '../../derive/types.ts';
import type { Plan } from '../../plan/plan.ts';
import { computePower } from './compute.ts';
import { legWorking, neutralWorking } from './working-currents.ts';
import { inputWorking, powerWorking } from './working-power.ts';
import type { PowerWorking, Subject } from './working-types.ts';
import { usageWorking } from './working-use.ts';
import { dropWorking } from './working-volts.ts';

/** Why there is no working for a key. */
export type ExplainMiss = { readonly why: string };

/** Takes `<quantity>@<entityKey>@<setupId>` apart. Ids may hold `@`, so the entity is what is between the first and the last. */
export const parseFigureKey = (
  key: string,
): { quantity: Quantity; entityKey: string; setupId: string } | undefined => {
  const first = key.indexOf('@');
  const last = key.lastIndexOf('@');
  if (first <= 0 || last <= first) return undefined;
  const quantity = key.slice(0, first);
  if (!QUANTITIES.includes(quantity as Quantity)) return undefined;
  return {
    quantity: quantity as Quantity,
    entityKey: key.slice(first + 1, last),
    setupId: key.slice(last + 1),
  };
};

/** The last results asked about, so that a sheet of workings does not solve the plan anew for each. */
const results = new WeakMap<Plan, ReturnType<typeof computePower>>();

const resultOf = (plan: Plan): ReturnType<typeof computePower> => {
  const known = results.get(plan);
  if (known) return known;
  const made = computePower(plan);
  results.set(plan, made);
  return made;
};

/** The arithmetic behind one figure of the power engine, recomputed from the plan; words where there is none. */
export const explainPower = (plan: Plan, key: string): PowerWorking | ExplainMiss => {
  const asked = parseFigureKey(key);
  if (!asked) return { why: `“${key}” is not a figure. A figure is written quantity@thing@setup.` };
  const result = resultOf(plan);
  const node = result.tree.byKey.get(asked.entityKey);
  if (!node) return { why: `There is nothing ${asked.entityKey} in the supply of this plan.` };
  if (node.notComputed !== undefined) return { why: `${node.label} is not computed: ${node.notComputed}.` };
  const setup = result.setups.findIndex((s) => s.id === asked.setupId);
  if (setup < 0) return { why: `There is no setup ${asked.setupId} in this plan.` };
  const source = node.sourceId === undefined ? undefined : result.sources.get(node.sourceId);
  const run = source?.setups[setup];
  if (!source || !run) return { why: `${node.label} is not computed.` };
  if (!run.sweep.settled)
    return { why: `${node.label} is not computed: the load flow did not settle in this setup.` };
  const local = source.model.nodeOf.indexOf(node.index);
  return build({ plan, result, node, local, setup, source, run }, asked.quantity, key);
};

const build = (s: Subject, quantity: Quantity, key: string): PowerWorking | ExplainMiss => {
  switch (quantity) {
    case 'leg0A':
    case 'leg1A':
    case 'leg2A':
      return legWorking(s, Number(quantity[3]), key);
    case 'neutralA':
      return neutralWorking(s, key);
    case 'loadW':
    case 'loadVa':
      return powerWorking(s, quantity, key);
    case 'inW':
    case 'inVa':
      return inputWorking(s, quantity, key);
    case 'usePct':
      return usageWorking(s, key);
    case 'voltsV':
    case 'dropPct':
    case 'dropV':
      return dropWorking(s, quantity, key);
  }
};
