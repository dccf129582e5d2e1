import type { Id } from '../../../kernel/ids.ts';
import type { ChangeSet } from '../../../plan/change-set.ts';
import type { Mode } from '../../../plan/kinds/kinds.ts';
import type { Fixture } from '../../../plan/records/index.ts';

/** A place of a fixture's slots, in words people read: universe number, address, and the slot of its own it begins with. */
export interface PatchPlace {
  readonly universe: number;
  readonly address: number;
  readonly fromSlot: number;
}

/** What one fixture gets. */
export interface AssignRow {
  readonly fixtureId: Id;
  readonly modeId: string;
  readonly slots: number;
  /** No mode was chosen yet, so its kind's first one was taken. */
  readonly modeAssumed: boolean;
  readonly before: readonly PatchPlace[];
  readonly after: readonly PatchPlace[];
  readonly channelBefore: string;
  readonly channelAfter: string;
  readonly changed: boolean;
}

/** A proposal: who gets which address. Nothing has changed until its change-set is committed. */
export interface Assignment {
  readonly rows: readonly AssignRow[];
  readonly changes: ChangeSet;
  /** Universes the fixtures of the proposal lie in, by number; those among them that the plan does not have yet. */
  readonly universes: readonly number[];
  readonly newUniverses: readonly number[];
  /** Fewer universes than this hold them in no arrangement. */
  readonly lowerBound: number;
  /** With `fewest`: no arrangement that keeps what was asked takes fewer universes. */
  readonly proved: boolean;
  /** Fixtures left as they are: locked, or patched and to be kept. */
  readonly kept: readonly Id[];
  /** What could not be done, in words. */
  readonly notices: readonly string[];
}

/** A fixture that gets an address, with the mode it gets it in. */
export interface Chosen {
  readonly fixture: Fixture;
  readonly mode: Mode;
  readonly modeAssumed: boolean;
}
