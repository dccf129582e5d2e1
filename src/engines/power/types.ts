import type { EngineFinding } from '../../derive/findings.ts';
import type { SupplyTree } from '../../derive/supply-types.ts';
import type { FigureTable, SupplyEntity } from '../../derive/types.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Plan } from '../../plan/plan.ts';
import type { NodeLimits } from './limits.ts';
import type { SourceModel } from './model.ts';
import type { Sweep } from './solve.ts';

/** A setup the engine computes. A plan without setups is computed once, with everything at full. */
export interface SetupName {
  readonly id: Id;
  readonly name: string;
}

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
  /** Loads that have no level in at least one setup. */
  readonly assumedLevels: readonly Id[];
}

/** All that the power engine knows of one plan. */
export interface PowerResult extends Computed {
  readonly findings: readonly EngineFinding[];
}
