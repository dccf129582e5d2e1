import type { Point } from '../kernel/geometry.ts';
import { ok, type Result } from '../kernel/result.ts';
import { type ChangeSet, noChanges } from '../plan/change-set.ts';
import { setRoute } from '../plan/edits/routes.ts';
import { moveCorner } from '../plan/edits/walls.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { CornerHandle } from './corners.ts';

/** What pulling a corner to a spot does: a cable is laid by hand from there on, a wall's corner takes its neighbours along. */
export const pullCorner = (plan: Plan, handle: CornerHandle, at: Point): Result<ChangeSet> => {
  if (handle.what === 'from' || handle.what === 'to')
    return moveCorner(plan, handle.recordId, handle.what, at);
  const points = recordOf(plan, 'cable', handle.recordId)?.route.points;
  if (!points) return ok(noChanges);
  const rest = handle.what === 'corner' ? 1 : 0;
  return ok(
    setRoute(plan, handle.recordId, [
      ...points.slice(0, handle.index),
      at,
      ...points.slice(handle.index + rest),
    ]),
  );
};
