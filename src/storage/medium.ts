import type { StoredPlanInfo } from './port.ts';

/** What the store keeps about a plan besides its contents. */
export interface Head extends StoredPlanInfo {
  /** Raised by each tab that becomes the writer. */
  readonly epoch: number;
  /** Number of the last entry. */
  readonly seq: number;
  /** Number of the last entry that a snapshot was written with. */
  readonly snapshotSeq: number;
  readonly removedAtMs?: number;
}

/** A snapshot or an entry of the journal. */
export interface Part {
  readonly planId: string;
  readonly seq: number;
  /** Version of the plan model. */
  readonly version: number;
  readonly text: string;
  readonly sum: string;
}

/** A part that could not be read, kept as it was. */
export interface DamagedPart {
  readonly planId: string;
  readonly what: 'snapshot' | 'entry';
  readonly foundAtMs: number;
  readonly part: Part;
}

export interface StoredPlan {
  readonly head: Head;
  readonly snapshots: readonly Part[];
  readonly entries: readonly Part[];
}

/** All that one transaction changes of one plan. */
export interface Write {
  readonly head: Head;
  readonly entry?: Part;
  readonly snapshot?: Part;
  readonly aside?: readonly DamagedPart[];
  /** Snapshots older than this number, and entries up to it, are dropped. */
  readonly dropBefore?: number;
}

/** The least a place for plans must be able to do. Every method throws the medium's own error when it fails. */
export interface Medium {
  heads(): Promise<readonly Head[]>;
  /** Head, snapshots and entries as of one moment. */
  read(planId: string): Promise<StoredPlan | undefined>;
  /** All of a plan's damaged parts. */
  damaged(planId: string): Promise<readonly DamagedPart[]>;
  /**
   * One atomic, durable transaction: reads the head, asks `make` (which must answer at once) what to write, and writes
   * all of it or nothing. Gives the head it wrote, or undefined where `make` declined.
   */
  update(planId: string, make: (head: Head | undefined) => Write | undefined): Promise<Head | undefined>;
}
