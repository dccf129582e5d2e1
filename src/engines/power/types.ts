import type { EngineFinding } from '../../derive/findings.ts';
import type { Segment } from '../../derive/supply-reuse.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import type { FigureTable, SupplyEntity } from '../../derive/types.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Noted } from '../../plan/remembered.ts';
import type { NodeLimits } from './limits.ts';
import type { LoadPowers } from './load-powers.ts';
import type { SourceModel } from './model.ts';
import type { SetupName } from './setup-name.ts';
import type { Sweep } from './solve.ts';

export type { SetupName } from './setup-name.ts';

/** One source solved in one setup, with the powers that went in. */
export interface SolvedSetup {
  readonly wattsW: Float64Array;
  readonly varsVar: Float64Array;
  readonly sweep: Sweep;
  /** Figures by node of the model and quantity, in the order of `QUANTITIES`. */
  readonly figures: Float64Array;
}

export interface SolvedSource {
  readonly model: SourceModel;
  readonly setups: readonly SolvedSetup[];
}

/** What was computed of one plan, before it is judged. */
export interface Computed {
  readonly plan: Plan;
  readonly setups: readonly SetupName[];
  readonly tree: SupplyTree;
  readonly limits: readonly NodeLimits[];
  readonly entities: readonly SupplyEntity[];
  readonly figures: FigureTable;
  readonly sources: ReadonlyMap<Id, SolvedSource>;
  readonly powers: LoadPowers;
  /** Loads that have no level in at least one setup. */
  readonly assumedLevels: readonly Id[];
}

/**
 * What findings are made from, one part of the tree at a time: the nodes under one source, which lie together, or those that no
 * source feeds. Positions of nodes in it are counted from `from`.
 */
export interface Judged extends Computed {
  readonly part: readonly SupplyNode[];
  readonly from: number;
}

/** Findings of one part of the tree, rule by rule, with all they were made from. */
export interface PartFindings {
  readonly segment: Segment;
  readonly solved: SolvedSource | undefined;
  readonly noted: Noted<readonly (readonly EngineFinding[])[]>;
}

/** All that the power engine knows of one plan. */
export interface PowerResult extends Computed {
  readonly findings: readonly EngineFinding[];
  /** By source. */
  readonly parts: ReadonlyMap<Id, PartFindings>;
}
