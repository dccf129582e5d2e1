import type { SkyDay } from '../derive/sun.ts';
import type { BaySpan, LeastPacks, Overnight, Range, UnitSpan } from '../engines/battery/index.ts';
import type { Id } from '../kernel/ids.ts';
import type { Block } from '../plan/records/index.ts';
import type { PackCurrentRow } from './pack-currents.ts';

/** What happens to one thing on the mains when its plug is pulled. */
export interface BackUpRow {
  readonly id: Id;
  readonly label: string;
  /** Minutes on its own cell; 0 without one. */
  readonly minutes: number;
  /** Minutes were measured, not reckoned. */
  readonly measured: boolean;
  /** Units that get their data through it. */
  readonly feeds: readonly Id[];
  /** When it is pulled in the example, and when it dies. */
  readonly atMin: number;
  readonly diesMin: number;
  /** `If its plug is kicked out at 14:00 it dies at 14:50; it feeds 24 units.` */
  readonly text: string;
}

/** A block as a row: when, what, which setup, how many units burn. */
export interface BlockRow {
  readonly id: Id;
  readonly block: Block;
  readonly name: string;
  readonly setupName: string;
  /** Why it takes no part in the day, in words. */
  readonly fault: string | undefined;
  readonly unitsOn: number;
}

/** Watts drawn from a source in a stretch of the day: units and chargers behind it, cable loss left out. */
export interface PowerStep {
  readonly startMin: number;
  readonly endMin: number;
  readonly lightW: number;
  readonly chargerW: number;
}

/** One source over the day. */
export interface SourceDay {
  readonly id: Id;
  readonly label: string;
  readonly steps: readonly PowerStep[];
  readonly peakW: number;
  /** Mean over the hours in which anything is drawn. */
  readonly averageW: number;
  readonly energyWh: number;
  readonly ratedW: number | undefined;
  /** Litres of diesel on the day, by the chart; undefined where it is no set or the chart does not go there. */
  readonly fuelL: number | undefined;
  /** Times at which its tank is filled up; undefined where it has none or the tank is not known. */
  readonly refuelMin: readonly number[] | undefined;
  /** What is left in its cells, where it is a power station. */
  readonly station: StationDay | undefined;
}

/** A stretch of a power station's day. Shares are of what it can give. */
export interface StationSpan {
  readonly startMin: number;
  readonly endMin: number;
  readonly outW: number;
  readonly fromShare: number;
  readonly toShare: number;
  /** Watts it draws at its inlet while it is charged. */
  readonly chargeW: number;
  /** Watts of what hangs on it and is off that come through it from there at the same time. */
  readonly throughW: number;
  readonly state: 'gives' | 'rests' | 'charges' | 'empty';
}

/** A power station over the day. */
export interface StationDay {
  readonly storedWh: number;
  readonly usableWh: number;
  readonly leftWh: number;
  /** The first minute at which it is empty with something on. */
  readonly emptyMin: number | undefined;
  /** Whether its inlet is plugged in, and where: the label of the source. */
  readonly chargesFrom: string | undefined;
  readonly chargedWh: number;
  /** Asked for at its outlets over the day, while it is not charged. */
  readonly wantedWh: number;
  readonly spans: readonly StationSpan[];
}

/** Hours a circuit is loaded on this day. */
export interface CircuitHours {
  readonly key: string;
  readonly label: string;
  readonly totalH: number;
  readonly longestH: number;
}

/** A runtime of a unit in a setup of the day, with the key of its working. */
export interface RuntimeCell {
  readonly setupId: Id;
  readonly setupName: string;
  readonly levelPct: number;
  readonly minutes: Range;
  readonly text: string;
  readonly key: string;
}

/** A pack on the floor that feeds units by leads of their own, as a lane of its own. It is changed for all of them at once. */
export interface SharedPackLane {
  /** The pack's record. */
  readonly id: Id;
  /** `P1`. */
  readonly label: string;
  /** What it is: `Pack, block, 750 Wh, 46.8 V`, with how many of them. */
  readonly on: string;
  readonly units: readonly {
    readonly fixtureId: Id;
    readonly label: string;
    readonly leadMm: number;
    readonly leadAssumed: boolean;
    /** Fall in volts in its lead at full level with the pack nearly empty, in per cent; undefined where it cannot start. */
    readonly dropPct: number | undefined;
  }[];
  readonly spans: readonly UnitSpan[];
  readonly swaps: readonly SwapRow[];
  /** Runtime by setup with all its units at their levels. */
  readonly runtimes: readonly Omit<RuntimeCell, 'levelPct' | 'key'>[];
  /** Current of one of its packs with all units at full and the pack nearly empty, and what it may give for long. */
  readonly fullA: number;
  readonly continuousA: number;
  /** The same with its inrush, in words with the keys of their workings. */
  readonly currents: readonly PackCurrentRow[];
  readonly burnsMin: number;
  readonly darkMin: number;
}

/** A unit that hangs on a power station: burning, or dark because the station is empty. */
export interface StationLoadLane {
  readonly fixtureId: Id;
  readonly label: string;
  readonly kindName: string;
  readonly sourceId: Id;
  readonly sourceLabel: string;
  readonly spans: readonly {
    readonly startMin: number;
    readonly endMin: number;
    readonly state: 'burning' | 'dark';
    readonly levelPct: number;
    readonly setupId: Id;
  }[];
  readonly burnsMin: number;
  readonly darkMin: number;
}

/** A unit's lane on the time line. */
export interface UnitLane {
  readonly fixtureId: Id;
  readonly label: string;
  readonly kindName: string;
  /** What it runs on: `2 × brick 98 Wh`, `own cells 40 Wh`. */
  readonly on: string;
  /** The pack on the floor it hangs on; its changes are in that pack's lane, those that find the unit burning here too. */
  readonly sharedPackId: Id | undefined;
  readonly problem: string | undefined;
  readonly spans: readonly UnitSpan[];
  readonly swaps: readonly SwapRow[];
  readonly charges: readonly {
    readonly startMin: number;
    readonly endMin: number;
    readonly fromSoc: number;
    readonly toSoc: number;
  }[];
  readonly runtimes: readonly RuntimeCell[];
  /** Current of one of its own packs, at full and when switched on. */
  readonly currents: readonly PackCurrentRow[];
  readonly burnsMin: number;
  readonly darkMin: number;
}

export interface SwapRow {
  /** The unit's first packs of the day: nothing comes off. */
  readonly first: boolean;
  readonly atMin: number;
  readonly label: string;
  readonly out: string;
  readonly into: string;
  readonly outPct: number;
  readonly darkMin: number;
}

/** A bay's lane. */
export interface BayLane {
  readonly label: string;
  /** Label of its charger. */
  readonly charger: string;
  readonly spans: readonly BaySpan[];
}

/** Packs of one kind on the day: at hand, needed, and what happens with fewer. */
export interface PoolRow {
  readonly id: Id;
  readonly name: string;
  readonly exchange: boolean;
  readonly count: number | undefined;
  readonly reserve: number;
  readonly atHand: number | undefined;
  /** Packs with which the plain rotation gets through. */
  readonly need: number;
  readonly bays: number;
  readonly swaps: number;
  readonly short:
    | { readonly label: string; readonly dueMin: number; readonly darkMin: number | undefined }
    | undefined;
  readonly airText: string;
}

/** Everything about one shooting day, for screen, paper and command line. */
export interface DaySummary {
  readonly day: number;
  readonly date: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly hoursOn: number;
  readonly blocks: readonly BlockRow[];
  readonly sky: SkyDay | undefined;
  readonly sources: readonly SourceDay[];
  readonly circuits: readonly CircuitHours[];
  readonly lanes: readonly UnitLane[];
  /** Packs on the floor that feed units by leads. */
  readonly sharedPacks: readonly SharedPackLane[];
  /** Units on the mains that hang on power stations. */
  readonly stationLoads: readonly StationLoadLane[];
  readonly bays: readonly BayLane[];
  readonly pools: readonly PoolRow[];
  /** Packs that are not full again when the next day wants them. */
  readonly overnight: readonly Overnight[];
  /** What a pulled plug does to control gear and to units with cells of their own. */
  readonly backUps: readonly BackUpRow[];
}

/** The fewest packs and bays, found on demand, in words. */
export interface LeastRow {
  readonly pool: Id;
  readonly name: string;
  readonly packs: number;
  readonly bound: number;
  readonly by: LeastPacks['by'];
  /** `12 packs are the fewest: one fewer and unit 7 goes dark at 15:40.` */
  readonly text: string;
}
