import type { Box } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import type { AnyRecord } from '../plan/records/index.ts';

/** One thing that is not as it was. */
export interface PlanChange {
  readonly what: 'added' | 'removed' | 'changed';
  /** A sentence without its stop: “Unit 14 moved 1.2 m, now on K3 way 5, was way 2”. */
  readonly words: string;
  /** What it is about, the main one first: ids of the later plan, of the earlier one for what was removed. */
  readonly recordIds: readonly Id[];
  /** Where it is drawn, floor millimetres; undefined for what has no place of its own. */
  readonly floorId: Id | undefined;
  readonly box: Box | undefined;
}

/** A record of either plan beside its like of the other. */
export interface Pair {
  readonly before: AnyRecord | undefined;
  readonly after: AnyRecord | undefined;
}
