import type { DimmerKind } from '../plan/kinds/dimmer.ts';
import type { InletPort } from '../plan/kinds/ports.ts';
import { kindOf, type Plan } from '../plan/plan.ts';
import { inletsOf } from '../plan/ports.ts';
import type { Box } from '../plan/records/index.ts';
import type { NewNode } from './supply-node.ts';
import type { Reach } from './supply-reach.ts';
import { type LoadBranch, NEUTRAL, type SupplyNode } from './supply-types.ts';
import { legVoltsV, lineToLineV } from './systems.ts';
import type { Transformer } from './transformers.ts';

/** Id of the node behind a transformer, after the box's own. */
export const OUTPUT = 'output';

/** Key of a record's node: of one of its circuits where it has several. */
export const circuitKey = (id: string, circuit: number | undefined): string =>
  circuit === undefined ? id : `${id}#${circuit}`;

export const circuitLabel = (label: string, circuit: number | undefined): string =>
  circuit === undefined ? label : `${label} circuit ${circuit}`;

/** The circuit a box is entered by: that of its multi-circuit inlet, or the inlet's own place where each inlet is one. */
export const circuitInto = (
  plan: Plan,
  box: Box,
  inlet: InletPort | undefined,
  circuit: number | undefined,
): number | undefined => {
  const kind = kindOf(plan, box.kindId, 'adapter');
  if (!kind || kind.circuits <= 1 || !inlet) return undefined;
  if (kind.what !== 'break-in') return circuit;
  const at = inletsOf(plan, box.id).findIndex((i) => i.id === inlet.id);
  return at < 0 ? undefined : at + 1;
};

/** Whether each inlet of a box feeds a circuit of its own, so that it takes several feeds. */
export const takesSeveralFeeds = (plan: Plan, box: Box): boolean =>
  kindOf(plan, box.kindId, 'adapter')?.what === 'break-in';

/** A dimmer's way: what it does to the wave, and where its loss is drawn. */
export const dimmerWay = (
  kind: DimmerKind,
  reach: Reach,
  legs: readonly number[],
): Pick<SupplyNode, 'dimmer' | 'branches' | 'steady'> => {
  const [a, b] = legs;
  const { shape } = reach;
  const dimmer = { how: kind.how, wayW: kind.wayW, leastW: kind.leastW, lossPct: kind.lossPct };
  if (a === undefined || !shape || reach.notComputed !== undefined)
    return { dimmer, branches: [], steady: true };
  const branch: LoadBranch =
    b === undefined && reach.neutral
      ? { from: a, to: NEUTRAL, share: 1, nominalV: legVoltsV(shape, a) }
      : { from: a, to: b ?? a, share: 1, nominalV: b === undefined ? Number.NaN : lineToLineV(shape, a, b) };
  return { dimmer, branches: branch.from === branch.to || kind.lossPct <= 0 ? [] : [branch], steady: true };
};

/** The output of a transformer as a node: a supply of its own volts and legs. Without one it is not computed. */
export const outputNode = (b: Box, label: string, t: Transformer | undefined): NewNode => ({
  key: `${b.id}/${OUTPUT}`,
  what: 'way',
  recordId: b.id,
  wayId: OUTPUT,
  label: `${label} output`,
  ...(t ? { transformer: t, system: t.system, legs: t.shape.anglesRad.map((_, l) => l), neutral: true } : {}),
});
