import type { Reach } from './supply-reach.ts';
import type { SupplyNode } from './supply-types.ts';

/** Key of a power station as a load of the circuit it is charged from. */
export const chargeKey = (sourceId: string): string => `${sourceId}/charge`;

/** What a walk says of a node; the rest follows from what reaches it. */
export type NewNode = Pick<SupplyNode, 'key' | 'what' | 'recordId' | 'label'> & Partial<SupplyNode>;

/** A node of the tree. Written out field by field: this runs for every entity after every edit. */
export const nodeFrom = (index: number, n: NewNode, reach: Reach): SupplyNode => ({
  index,
  key: n.key,
  what: n.what,
  recordId: n.recordId,
  wayId: n.wayId,
  label: n.label,
  parent: reach.parent,
  depth: reach.depth,
  sourceId: reach.source?.id,
  system: n.system ?? reach.system,
  legs: n.legs ?? reach.legs,
  neutral: n.neutral ?? reach.neutral,
  notComputed: reach.notComputed ?? n.notComputed,
  way: n.way,
  mainBreakerA: n.mainBreakerA,
  connectors: n.connectors ?? [],
  load: n.load,
  branches: n.branches ?? [],
  lengthMm: n.lengthMm ?? 0,
  steady: n.steady ?? false,
  transformer: n.transformer,
  dimmer: n.dimmer,
  dimmedBy: n.dimmer?.how ?? reach.dimmedBy,
  circuit: n.circuit,
});

/** What reaches the things that hang on a node. */
export const reachFrom = (node: SupplyNode, reach: Reach): Reach => ({
  parent: node.index,
  depth: reach.depth + 1,
  source: reach.source,
  system: node.system,
  shape: node.transformer?.shape ?? reach.shape,
  legs: node.legs,
  neutral: node.neutral,
  notComputed:
    node.notComputed === undefined || node.notComputed.startsWith('hangs on')
      ? node.notComputed
      : `hangs on ${node.label}: ${node.notComputed}`,
  dimmedBy: node.dimmedBy,
});
