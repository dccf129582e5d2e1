import type { FigureTable, SupplyEntity } from '../derive/types.ts';
import type { Id } from '../kernel/ids.ts';
import type { ChangeSet } from '../plan/change-set.ts';

export type Severity = 'stop' | 'warn' | 'note';

/** A problem or remark as data. Wording and citation are added by `findingText`. */
export interface Finding {
  /** Rule and entities, so that the same problem keeps its id from run to run. */
  readonly id: string;
  /** Number on screen and paper, like `F3`; stable within one assessment. */
  readonly number: string;
  readonly rule: string;
  readonly severity: Severity;
  /** Record ids the finding is about, the main one first. */
  readonly recordIds: readonly Id[];
  /** Worst setup and all setups it holds in; empty when it does not depend on a setup. */
  readonly worstSetupId: Id | undefined;
  readonly setupIds: readonly Id[];
  /** Values for the wording, by name, in SI with the unit in the name. */
  readonly params: Readonly<Record<string, string | number>>;
  /** The figure whose working explains it, as a key for `explain`. */
  readonly figureKey: string | undefined;
  readonly remedies: readonly Remedy[];
  readonly acknowledged: { readonly by: string; readonly reason: string; readonly when: string } | undefined;
}

/** A change offered with a finding. */
export interface Remedy {
  readonly label: string;
  readonly changes: ChangeSet;
}

/** A finding put into words for people: a head line, the arithmetic, what to do, where the limit is from. */
export interface FindingText {
  readonly head: string;
  readonly body: string;
  readonly todo: string;
  readonly citation: string;
}

/** One input of a working. */
export interface WorkingInput {
  readonly name: string;
  readonly value: string;
  readonly from: string;
  readonly assumed: boolean;
}

/** The arithmetic behind one figure, as data. */
export interface Working {
  readonly key: string;
  readonly title: string;
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  readonly steps: readonly string[];
  readonly result: string;
  readonly rule: string;
  readonly source: string;
}

/** A value the plan does not give and the program took from elsewhere. Listed on paper. */
export interface Assumption {
  readonly id: string;
  readonly text: string;
  readonly recordIds: readonly Id[];
}

/** All that was computed from one plan. Tied to its revision; never stored in the plan. */
export interface Assessment {
  readonly revision: number;
  readonly setups: readonly { readonly id: Id; readonly name: string }[];
  /** Sources, boxes, ways, outlets, cables and loads in tree order, sources first. */
  readonly entities: readonly SupplyEntity[];
  readonly figures: FigureTable;
  readonly findings: readonly Finding[];
  readonly assumptions: readonly Assumption[];
}
