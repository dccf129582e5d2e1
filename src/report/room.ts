import { feedAmps } from '../derive/transformers.ts';
import type { Assessment } from './types.ts';

/** What this plan leaves on a node of the supply and on everything it is fed through. */
export interface RoomLeft {
  /** Amps on its fullest leg before the first limit upstream is reached, in the worst setup of each. Negative: over. */
  readonly freeA: number;
  /** Limit of the node that leaves least. */
  readonly limitA: number;
  /** Label of that node. */
  readonly setBy: string;
}

const LEGS = ['leg0A', 'leg1A', 'leg2A'] as const;

/**
 * Room left at a node: the least, over it and all it is fed through, of limit less worst current on any of its own legs.
 * Undefined where a limit or a current on the way is not known. Other loads on the circuit are unknown to the plan.
 */
export const roomLeft = (a: Assessment, entityKey: string): RoomLeft | undefined => {
  const byKey = indexOf(a);
  const first = byKey.get(entityKey);
  if (!first || first.notComputed) return undefined;
  let least: RoomLeft | undefined;
  // Amps on each leg of what is ahead for one amp on each leg asked about: more or less of them ahead of a transformer.
  let perAmp: readonly number[] = [0, 1, 2].map((l) => (first.legs.includes(l) ? 1 : 0));
  const seen = new Set<string>();
  for (
    let at: typeof first | undefined = first;
    at && !seen.has(at.key);
    at = at.parentKey ? byKey.get(at.parentKey) : undefined
  ) {
    seen.add(at.key);
    const limit = at.legLimit;
    perAmp.forEach((per, leg) => {
      const quantity = LEGS[leg];
      const used = quantity && limit ? a.figures.worst(at?.key ?? '', quantity).value : Number.NaN;
      if (!limit || !(per > 0) || !Number.isFinite(used)) return;
      // An eased breaker that already carries more than the usual limit has no room, and is not over.
      const limitA = limit.planningA ?? limit.limitA;
      const freeA = Math.max(limitA - used, Math.min(0, limit.limitA - used)) / per;
      if (!least || freeA < least.freeA) least = { freeA, limitA, setBy: at?.label ?? '' };
    });
    if (at.transformer) perAmp = feedAmps(at.transformer, perAmp);
  }
  return least;
};

const indexes = new WeakMap<Assessment, ReadonlyMap<string, Assessment['entities'][number]>>();

const indexOf = (a: Assessment): ReadonlyMap<string, Assessment['entities'][number]> => {
  let index = indexes.get(a);
  if (!index) {
    index = new Map(a.entities.map((e) => [e.key, e]));
    indexes.set(a, index);
  }
  return index;
};
