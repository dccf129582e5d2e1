import type { Id } from '../../kernel/ids.ts';
import type { PoolId } from './types.ts';

/** A stretch in which a unit draws; `drain` is the share of a full loading it takes in a minute. */
export interface DrainStretch {
  readonly startMin: number;
  readonly endMin: number;
  readonly drain: number;
  readonly levelPct: number;
  readonly setupId: Id;
}

/** A unit as the rotation sees it: what it drains when, from which pool, and how many packs it takes at once. */
export interface RotationUnit {
  readonly id: Id;
  readonly label: string;
  /** Fixtures it keeps alight: itself, or all that a pack on the floor feeds. */
  readonly feeds: readonly Id[];
  readonly pool: PoolId;
  readonly count: number;
  readonly hotSwap: boolean;
  readonly swapMin: number;
  readonly stretches: readonly DrainStretch[];
}

/** Packs of one sort that are exchanged for one another. */
export interface RotationPool {
  readonly id: PoolId;
  readonly name: string;
  /** Packs at hand, reserve left out; undefined where the plan does not say. */
  readonly packs: number | undefined;
  readonly reserve: number;
  /** Minutes from empty to full in one bay. */
  readonly chargeMin: number;
  /** Watts that go into one pack in a bay at most. */
  readonly chargeW: number;
  /** Units themselves are exchanged, and each is charged on its own lead. */
  readonly exchange: boolean;
}

/** One bay of a charger and the pools whose packs it takes. */
export interface RotationBay {
  readonly id: string;
  readonly chargerId: Id;
  readonly label: string;
  readonly pools: ReadonlySet<PoolId>;
  /** How much slower than the pool's own `chargeMin` it charges a pool's packs. */
  readonly slower: ReadonlyMap<PoolId, number>;
}

/** A day of packs, as numbers. */
export interface Rotation {
  readonly units: readonly RotationUnit[];
  readonly pools: readonly RotationPool[];
  readonly bays: readonly RotationBay[];
  /** Share of what a pack gives at which it is changed. */
  readonly swapAt: number;
  /** Share of the charge up to which it goes in at full current. */
  readonly changeOver: number;
  /** Share of the charging time until then. */
  readonly changeOverTime: number;
  /** Current at the start of the taper over that at its end. */
  readonly taper: number;
}

/** A stretch of a unit on one loading, or dark. States of charge are shares of what the packs can give. */
export interface UnitSpan {
  readonly unit: number;
  readonly startMin: number;
  readonly endMin: number;
  readonly state: 'burning' | 'dark';
  readonly packs: readonly string[];
  readonly fromSoc: number;
  readonly toSoc: number;
  readonly levelPct: number;
  readonly setupId: Id;
}

/** A change of packs. `darkMin` is how long the unit is dark for it by the change alone; 0 with a second plate or while it is off. */
export interface Swap {
  readonly unit: number;
  readonly atMin: number;
  readonly out: readonly string[];
  readonly outSoc: number;
  readonly into: readonly string[];
  readonly darkMin: number;
}

/** A pack in a bay. `bay` is a position in the rotation's bays; -1 for a unit charging on its own lead. */
export interface BaySpan {
  readonly bay: number;
  readonly pool: PoolId;
  readonly pack: string;
  readonly startMin: number;
  readonly endMin: number;
  readonly fromSoc: number;
}

/** The first time that packs fall due on a unit and none is charged: it runs on below the change point. */
export interface FirstShort {
  readonly unit: number;
  readonly dueMin: number;
}

/** The first time a unit that should burn is dark for want of a pack: due at `dueMin`, dark from `darkMin`. */
export interface FirstDark extends FirstShort {
  readonly darkMin: number;
}

/** What happened on the day. */
export interface RotationResult {
  readonly spans: readonly UnitSpan[];
  readonly swaps: readonly Swap[];
  readonly bays: readonly BaySpan[];
  /** Packs of each pool that were used at all. */
  readonly used: ReadonlyMap<PoolId, number>;
  readonly firstShort: FirstShort | undefined;
  readonly firstDark: FirstDark | undefined;
  /** The same for each pool that runs short. */
  readonly shortPools: ReadonlyMap<
    PoolId,
    { readonly short: FirstShort; readonly dark: FirstDark | undefined }
  >;
}
