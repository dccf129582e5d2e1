import type { Point } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf } from '../plan.ts';
import type { LabelPlace } from '../records/index.ts';

export const labelPlaceId = (recordId: Id): Id => `label:${recordId}`;

/** Where a record's label was put by hand, from the record's own place; undefined where it finds its own. */
export const labelPlaceOf = (plan: Plan, recordId: Id): LabelPlace | undefined =>
  recordOf(plan, 'labelPlace', labelPlaceId(recordId));

/** Puts the label of a record by hand, so many millimetres of floor from the record's place. */
export const moveLabel = (plan: Plan, recordId: Id, off: Point): ChangeSet => {
  const draft = new Draft(plan);
  if (!plan.records.has(recordId)) return draft.changes();
  const id = labelPlaceId(recordId);
  const next = {
    ...(recordOf(plan, 'labelPlace', id) ?? { id, type: 'labelPlace' as const, recordId }),
    dxMm: Math.round(off.xMm),
    dyMm: Math.round(off.yMm),
  };
  return draft.put(next).changes();
};

/** Lets labels find their own place again. */
export const resetLabels = (plan: Plan, recordIds: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const recordId of recordIds) {
    const place = labelPlaceOf(plan, recordId);
    if (place) draft.remove(place.id);
  }
  return draft.changes();
};
