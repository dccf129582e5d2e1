import type { Id } from '../../kernel/ids.ts';

/** A stretch of slots one fixture or dimmer takes: `fixtureId` is its record. `address` to `last` are its slots in the universe, 1-based. */
export interface PatchRow {
  readonly fixtureId: Id;
  readonly universeId: Id;
  readonly address: number;
  readonly slots: number;
  readonly last: number;
  /** The fixture's own slot that lies on `address`, from 1: more than 1 where the fixture is parted. */
  readonly fromSlot: number;
  /** All slots of the fixture. */
  readonly total: number;
  readonly modeName: string;
  readonly paired: boolean;
}

/** Free slots side by side, both ends included. */
export interface Gap {
  readonly from: number;
  readonly to: number;
}

/** One universe with what is patched on it, in address order. */
export interface UniverseUse {
  readonly universeId: Id;
  readonly number: number;
  readonly rows: readonly PatchRow[];
  /** Slots that at least one fixture takes. */
  readonly usedSlots: number;
  readonly freeSlots: number;
  readonly highestSlot: number;
  readonly gaps: readonly Gap[];
  /** Fixtures with at least one slot here. */
  readonly fixtures: number;
  /** Shortest time of one packet that ends at the highest slot, microseconds, and its rate. */
  readonly packetUs: number;
  readonly refreshHz: number;
}
