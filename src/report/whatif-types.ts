import type { SupplyNode } from '../derive/supply-types.ts';
import type { FloatingNeutral, LostLeg, NeutralLoad, PowerResult } from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import type { Plan } from '../plan/plan.ts';

/** One fault to try. `leg` is the position among the source's legs; `recordId` the thing whose neutral comes off ahead of it. */
export type Fault =
  | { readonly trip: { readonly ownerId: Id; readonly wayId: string } }
  | { readonly loseLeg: { readonly sourceId: Id; readonly leg: number } }
  | { readonly loseNeutral: { readonly recordId: Id } };

/** What becomes of one load. */
export interface FaultLoad {
  readonly key: string;
  readonly recordId: Id;
  readonly label: string;
  /** `dark`: gets nothing. `fewer legs`: runs on two of three legs. `wrong volts`: outside what its kind takes. `as before`. */
  readonly state: 'dark' | 'fewer legs' | 'wrong volts' | 'as before';
  /** Volts it sees, and its watts there; NaN where not computed. */
  readonly voltsV: number;
  readonly wattsW: number;
  readonly voltsMinV: number;
  readonly voltsMaxV: number;
  /** Minutes until a discharge head can be struck again after going dark; undefined where it needs none or none is known. */
  readonly restrikeMin: number | undefined;
}

/** Amps on the wires of a source before and after. */
export interface FaultMeter {
  readonly sourceId: Id;
  readonly label: string;
  readonly wires: readonly { readonly name: string; readonly beforeA: number; readonly afterA: number }[];
}

export interface WhatIf {
  readonly title: string;
  readonly setupId: Id;
  readonly setup: string;
  /** All loads of the source concerned: those hit first, worst first. */
  readonly loads: readonly FaultLoad[];
  /** How the volts were reckoned: the source's own, or its nominal where they are not known. */
  readonly voltsKnown: boolean;
  /** Undefined for a lost neutral, whose currents are not those of the plan. */
  readonly meter: FaultMeter | undefined;
  readonly notes: readonly string[];
}

/** One winding or element of a load in a fault: the wires it lies between, its watts at some volts, and what becomes of both. */
export interface FaultPart {
  readonly between: string;
  readonly atV: number;
  readonly atW: number;
  readonly voltsV: number;
  readonly wattsW: number;
}

/** What the figures of a case were reckoned from. */
export interface Reckoned {
  /** By the key of the load. */
  readonly parts: ReadonlyMap<string, readonly FaultPart[]>;
  /** Of a trip: the plan with the loads that are dark taken off. */
  readonly left?: Plan;
  readonly lostLeg?: LostLeg;
  /** Of a lost neutral: where it comes off, volts of the legs as (re, im) pairs, and every load that shares it. */
  readonly floating?: {
    readonly node: SupplyNode;
    readonly legV: Float64Array | readonly number[];
    readonly answer: FloatingNeutral;
    /** Passes of the load flows with the cables counted; undefined where only the star point was reckoned. */
    readonly passes: number | undefined;
    readonly loads: readonly { readonly index: number; readonly load: NeutralLoad }[];
  };
}

/** A case with all that was reckoned for it; `setup` is the position of its setup. */
export interface TriedFault extends Reckoned {
  readonly result: WhatIf;
  readonly power: PowerResult;
  readonly setup: number;
}
