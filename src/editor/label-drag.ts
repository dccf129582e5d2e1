import type { Point } from '../kernel/geometry.ts';
import { add, sub } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type ChangeSet, noChanges } from '../plan/change-set.ts';
import { moveLabel } from '../plan/edits/label-places.ts';
import type { Plan } from '../plan/plan.ts';
import { poseOf } from './handles.ts';

/** A label under the hand: what it names and the spot it is held by. */
export interface HeldLabel {
  readonly recordId: Id;
  readonly anchor: Point;
}

/** What dragging a label so far does to the plan. */
export const labelDragged = (plan: Plan, label: HeldLabel, by: Point): ChangeSet => {
  const at = poseOf(plan, label.recordId)?.center;
  return at ? moveLabel(plan, label.recordId, sub(add(label.anchor, by), at)) : noChanges;
};
