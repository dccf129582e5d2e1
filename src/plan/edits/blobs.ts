import type { Id } from '../../kernel/ids.ts';
import type { Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { AnyRecord } from '../records/index.ts';

const blobIdOf = (r: AnyRecord): Id | undefined => {
  switch (r.type) {
    case 'underlay':
    case 'photo':
      return r.blobId;
    case 'issue':
      return r.snapshotId;
    default:
      return undefined;
  }
};

/**
 * Takes blobs along that only records which go (or change in the draft) were about. They come back with the undo of
 * the same step.
 */
export const dropStrayBlobs = (draft: Draft, plan: Plan, goneIds: Iterable<Id>): void => {
  const asked = new Set<Id>();
  for (const id of goneIds) {
    const r = plan.records.get(id);
    const blobId = r && blobIdOf(r);
    if (blobId !== undefined) asked.add(blobId);
  }
  if (asked.size === 0) return;
  for (const type of ['underlay', 'photo', 'issue'] as const)
    for (const r of recordsOf(plan, type)) {
      const now = draft.get(r.id);
      const blobId = now && blobIdOf(now);
      if (blobId !== undefined) asked.delete(blobId);
    }
  for (const id of asked) if (recordOf(plan, 'blob', id)) draft.remove(id);
};
