import { hopPoints } from '../derive/data-lines.ts';
import type { Point } from '../kernel/geometry.ts';
import { ok, type Result } from '../kernel/result.ts';
import { type ChangeSet, noChanges } from '../plan/change-set.ts';
import { moveFeatureCorner } from '../plan/edits/features.ts';
import { setHopRoute } from '../plan/edits/lines.ts';
import { setRoute } from '../plan/edits/routes.ts';
import { moveCorner } from '../plan/edits/walls.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { CornerHandle } from './corners.ts';

/** What pulling a corner to a spot does: a cable or a stretch of a data line is laid by hand from there on, a wall's corner takes its neighbours along. */
export const pullCorner = (plan: Plan, handle: CornerHandle, at: Point): Result<ChangeSet> => {
  if (handle.what === 'from' || handle.what === 'to')
    return moveCorner(plan, handle.recordId, handle.what, at);
  if (recordOf(plan, 'feature', handle.recordId))
    return ok(moveFeatureCorner(plan, handle.recordId, handle.index, at));
  const line = handle.hop === undefined ? undefined : recordOf(plan, 'line', handle.recordId);
  if (line && handle.hop !== undefined) {
    const own = hopPoints(plan, line, handle.hop)?.points ?? [];
    return ok(setHopRoute(plan, line.id, handle.hop, withPoint(own, handle, at)));
  }
  const points = recordOf(plan, 'cable', handle.recordId)?.route.points;
  if (!points) return ok(noChanges);
  return ok(setRoute(plan, handle.recordId, withPoint(points, handle, at)));
};

const withPoint = (points: readonly Point[], handle: CornerHandle, at: Point): readonly Point[] => [
  ...points.slice(0, handle.index),
  at,
  ...points.slice(handle.index + (handle.what === 'corner' ? 1 : 0)),
];
