import type { Id } from '../../kernel/ids.ts';
import type { PackKind } from '../../plan/kinds/kinds.ts';
import type { Fixture, FloorPack, PackLead } from '../../plan/records/index.ts';
import type { CutOff } from './cut-off.ts';
import type { Range } from './tables.ts';

/** How a fixture without mains gets its power. */
export type BatteryMode = 'packs' | 'own-cells';

/** A fixture that runs on packs or on its own cells, with what its runtime is reckoned from. */
export interface BatteryUnit {
  readonly fixture: Fixture;
  readonly label: string;
  readonly kindName: string;
  readonly mode: BatteryMode;
  readonly pack: PackKind | undefined;
  /** Packs on it at once. */
  readonly count: number;
  readonly joined: 'parallel' | 'series';
  /** Energy on its labels, all its packs together. */
  readonly ratedWh: number;
  /** Share of the label's energy it gets: usable × health × temperature, without the rate. */
  readonly usable: Range;
  /** Where it cuts out while its packs still hold charge. */
  readonly cutOff: CutOff | undefined;
  readonly soh: Range;
  readonly temperature: Range;
  /** Share that reaches the unit through its converter; 1 without one. */
  readonly efficiency: number;
  readonly idleW: number;
  /** The pack on the floor it is fed from, which may feed others too. */
  readonly floorPack: FloorPack | undefined;
  /** Its lead from the packs; `assumed` where the plan does not give it. */
  readonly lead: (PackLead & { readonly assumed: boolean }) | undefined;
  /** Resistance of the lead there and back. */
  readonly loopOhm: number;
  readonly ratedW: number;
  readonly standbyW: number;
  /** What its kind takes from packs at most; infinite where it says nothing. */
  readonly maxW: number;
  readonly hotSwap: boolean;
  readonly swapMin: number;
  /** Why it cannot be reckoned, in words. */
  readonly problem: string | undefined;
}

/** Watts the unit takes at a level, and how they load its packs. */
export interface Draw {
  readonly levelPct: number;
  readonly unitW: number;
  /** Drawn from the packs in all: converter and lead counted. */
  readonly packW: number;
  /** Current of one pack at its nominal volts. */
  readonly packA: number;
  /** Share of its energy a pack gives at that current. */
  readonly rate: Range;
}

/** Runtime at a level in minutes, from worst to best. Infinity where nothing is drawn; NaN where it cannot be reckoned. */
export interface Runtime extends Draw {
  readonly minutes: Range;
  readonly usableWh: Range;
}

/** Id of what packs of one sort are drawn from: a pack's kind, or a fixture's kind for units that are exchanged. */
export type PoolId = Id;
