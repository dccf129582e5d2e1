import type { Id } from '../kernel/ids.ts';
import type { System } from '../plan/kinds/kinds.ts';
import type { LoadSpec, Way } from '../plan/kinds/ports.ts';
import type { Plan } from '../plan/plan.ts';
import type { DimmerHow, DimmerWay } from './dimmers.ts';
import type { EngineFinding } from './findings.ts';
import type { Segment } from './supply-reuse.ts';
import type { Transformer } from './transformer.ts';
import type { EntityWhat } from './types.ts';

/** One branch of a load: from leg `from` to leg `to` (or to the neutral, 3), taking `share` of its power. */
export interface LoadBranch {
  readonly from: number;
  readonly to: number;
  readonly share: number;
  readonly nominalV: number;
}

/** Position of the neutral among the wires of a source: legs are 0, 1, 2. */
export const NEUTRAL = 3;

/** One node of the supply tree. Nodes stand in tree order: a parent before its children. */
export interface SupplyNode {
  readonly index: number;
  readonly key: string;
  readonly what: EntityWhat;
  readonly recordId: Id;
  readonly wayId: string | undefined;
  readonly label: string;
  /** Index of the parent; -1 for sources and for what hangs on nothing. */
  readonly parent: number;
  readonly depth: number;
  readonly sourceId: Id | undefined;
  readonly system: System | undefined;
  /** Legs that reach it: of the source, or behind a transformer of its output. */
  readonly legs: readonly number[];
  readonly neutral: boolean;
  readonly notComputed: string | undefined;
  /** The protecting device of a way, or the main breaker of a source or box, in amps. */
  readonly way: Way | undefined;
  readonly mainBreakerA: number | undefined;
  /** Connectors the current passes: of a wall outlet, of an inlet, of a cable's plug and socket. */
  readonly connectors: readonly string[];
  readonly load: LoadSpec | undefined;
  readonly branches: readonly LoadBranch[];
  readonly lengthMm: number;
  /** A load the plan does not switch: it is at full in every setup. */
  readonly steady: boolean;
  /** The output of a transformer, whose feed is the node above. */
  readonly transformer: Transformer | undefined;
  /** A way of a dimmer. */
  readonly dimmer: DimmerWay | undefined;
  /** How the nearest dimmer ahead takes its share out of the wave. */
  readonly dimmedBy: DimmerHow | undefined;
  /** Circuit (from 1) of a multi-circuit cable or end that this node is. */
  readonly circuit: number | undefined;
}

/** All sources with what hangs on them, and what was found wrong while walking. */
export interface SupplyTree {
  readonly nodes: readonly SupplyNode[];
  readonly byKey: ReadonlyMap<string, SupplyNode>;
  /** Indexes of the children, by index. */
  readonly children: readonly (readonly number[])[];
  readonly defects: readonly EngineFinding[];
  /** The plan it was made from, and its parts by source, for the next tree. */
  readonly plan: Plan;
  readonly segments: ReadonlyMap<Id, Segment>;
}
