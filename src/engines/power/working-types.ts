import type { SupplyNode } from '../../derive/supply-types.ts';
import type { Plan } from '../../plan/plan.ts';
import type { PowerResult, SolvedSetup, SolvedSource } from './types.ts';

/** One input of a working: what, how much, where it is from, and whether it was assumed. */
export interface WorkingLine {
  readonly name: string;
  readonly value: string;
  readonly from: string;
  readonly assumed: boolean;
}

/** The arithmetic behind one figure, as data. Same shape as the report's working. */
export interface PowerWorking {
  readonly key: string;
  readonly title: string;
  readonly formula: string;
  readonly inputs: readonly WorkingLine[];
  readonly steps: readonly string[];
  readonly result: string;
  readonly rule: string;
  readonly source: string;
}

/** What a working is about: one node, one setup, one solved run. `local` is the node's place in the solver's arrays. */
export interface Subject {
  readonly plan: Plan;
  readonly result: PowerResult;
  readonly node: SupplyNode;
  readonly local: number;
  readonly setup: number;
  readonly source: SolvedSource;
  readonly run: SolvedSetup;
}
