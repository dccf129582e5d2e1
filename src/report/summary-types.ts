import type { VoltsBasis } from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';

/** One current against its limit, in the setup asked for and in the worst one. NaN means not computed. */
export interface Meter {
  /** Name of the leg, or `N`. */
  readonly name: string;
  readonly nowA: number;
  readonly worstA: number;
  readonly worstSetupId: Id | undefined;
  readonly worstSetup: string;
  /** What may be used here; undefined where no limit is known. */
  readonly limitA: number | undefined;
  readonly ratingA: number | undefined;
  readonly setBy: string | undefined;
  readonly nowPct: number;
  readonly worstPct: number;
  /** Key for `explain` of the current now. */
  readonly figureKey: string;
}

/** Power against a rating, in the setup asked for and in the worst one. */
export interface PowerMeter {
  readonly now: number;
  readonly worst: number;
  readonly worstSetupId: Id | undefined;
  readonly worstSetup: string;
  readonly rated: number | undefined;
  /** The rating follows from the other one at a power factor of 0.8. */
  readonly ratedDerived: boolean;
  /** What the set gives of its rating where it stands; the percentages are of this. */
  readonly gives: number | undefined;
  readonly nowPct: number;
  readonly worstPct: number;
  readonly figureKey: string;
}

/** One load on a circuit. */
export interface LoadRow {
  readonly key: string;
  readonly recordId: Id;
  readonly label: string;
  readonly kindName: string;
  readonly legs: string;
  readonly nowA: number;
  readonly worstA: number;
  readonly worstSetupId: Id | undefined;
  /** Key for `explain` of the current now. */
  readonly figureKey: string;
  readonly nowW: number;
  readonly nowVa: number;
  readonly voltsV: number;
  readonly dropPct: number;
  readonly dropV: number;
  /** The setup in which it loses most volts, and what it sees and loses there. */
  readonly least: { readonly setupId: Id | undefined; readonly voltsV: number; readonly dropPct: number };
  readonly levelPct: number | undefined;
  readonly levelAssumed: boolean;
  /** The run that feeds it: its label and made-up length in mm. */
  readonly cable: string;
  readonly cableId: Id | undefined;
  readonly cableMm: number;
  readonly notComputed: string | undefined;
}

/** One way with what hangs on it; or, without a `wayId`, what a source or box feeds with no breaker of its own between. */
export interface CircuitRow {
  readonly key: string;
  readonly ownerId: Id;
  readonly owner: string;
  readonly wayId: string | undefined;
  readonly label: string;
  readonly legs: string;
  readonly breakerA: number | undefined;
  readonly poles: number;
  readonly curve: string | undefined;
  readonly rcdMa: number | undefined;
  /** The leg that carries most in the worst setup. */
  readonly amps: Meter;
  readonly nowW: number;
  readonly nowVa: number;
  readonly loads: readonly LoadRow[];
  /** Wall outlets on it, and boxes it feeds. */
  readonly outlets: readonly string[];
  readonly feeds: readonly string[];
  readonly notComputed: string | undefined;
}

/** A set beyond its meters: what it gives where it stands, its fuel, its largest step. Undefined figures are not known. */
export interface SetRow {
  /** Share of the rating it gives, and why: its rating as it is, its maker's word in the plan, or the derating table. */
  readonly share: number;
  readonly shareFrom: 'rating' | 'plan' | 'table';
  readonly givesW: number | undefined;
  readonly givesVa: number | undefined;
  /** Amps it gives on one leg, and volt-amperes between one pair of legs and no more. */
  readonly legA: number | undefined;
  readonly pairVa: number | undefined;
  /** Litres of diesel an hour, by the chart in `fuelSource`. */
  readonly fuelNowLph: number | undefined;
  readonly fuelWorstLph: number | undefined;
  readonly fuelSource: string;
  /** Litres in its tank, and whether that is only its kind's; hours a full tank lasts in this setup and in the worst. */
  readonly tankL: number | undefined;
  readonly tankAssumed: boolean;
  readonly tankNowH: number | undefined;
  readonly tankWorstH: number | undefined;
  /** The least load over all setups in which it runs, in per cent of the rated kilowatts. */
  readonly lightestPct: number;
  readonly stepW: number;
  readonly stepOf: string;
}

/** One source: meters, powers, circuits. */
export interface SourceRow {
  readonly id: Id;
  readonly label: string;
  readonly kindName: string;
  readonly what: string;
  readonly system: string;
  /** Colours of its conductors by custom or rule, in one line; colour proves nothing. */
  readonly colours: string;
  readonly voltsBasis: VoltsBasis;
  readonly voltsV: number | undefined;
  readonly legs: readonly Meter[];
  /** Limit undefined where nothing at the source limits the neutral. */
  readonly neutral: Meter;
  /** Kilowatts and kVA in W and VA; cable loss included where the volts are known. */
  readonly watts: PowerMeter;
  readonly voltAmps: PowerMeter;
  /** Only for generators. */
  readonly set: SetRow | undefined;
  readonly circuits: readonly CircuitRow[];
  readonly notComputed: string | undefined;
}

/** The supply of a plan in one setup. `unfed` are loads that no source reaches. */
export interface SupplySummary {
  readonly setupId: Id;
  readonly setup: string;
  readonly sources: readonly SourceRow[];
  readonly unfed: readonly LoadRow[];
}
