import { distanceMm, lerp, type Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { SessionState } from './session.ts';

/** A corner of a selected cable's route or an end of a selected wall, to be pulled by hand. */
export interface CornerHandle {
  readonly recordId: Id;
  /** `between` makes a new corner of a cable's route. */
  readonly what: 'corner' | 'between' | 'from' | 'to';
  /** Of a cable: place in the list of route points. */
  readonly index: number;
  readonly at: Point;
}

const LEAST_MM = 150;

/** Handles for the selection, when it is one cable or one wall. `plan` may be a preview. */
export const cornersFor = (
  plan: Plan,
  s: Pick<SessionState, 'selection' | 'readOnly'>,
): readonly CornerHandle[] => {
  const [id] = s.selection;
  if (s.selection.size !== 1 || id === undefined || s.readOnly) return [];
  const wall = recordOf(plan, 'wall', id);
  if (wall)
    return wall.locked
      ? []
      : (['from', 'to'] as const).map((what) => ({ recordId: id, what, index: 0, at: wall[what] }));
  const cable = recordOf(plan, 'cable', id);
  if (!cable || cable.locked) return [];
  const from = placeOf(plan, cable.from.recordId)?.at;
  const to = placeOf(plan, cable.to.recordId)?.at;
  if (!from || !to) return [];
  const points = [from, ...cable.route.points, to];
  const handles: CornerHandle[] = cable.route.points.map((at, index) => ({
    recordId: id,
    what: 'corner',
    index,
    at,
  }));
  points.slice(1).forEach((b, i) => {
    const a = points[i] ?? b;
    if (distanceMm(a, b) >= LEAST_MM)
      handles.push({ recordId: id, what: 'between', index: i, at: lerp(a, b, 0.5) });
  });
  return handles;
};

/** The handle at a spot, corners before middles. */
export const cornerAt = (
  handles: readonly CornerHandle[],
  at: Point,
  reachMm: number,
): CornerHandle | undefined => {
  let found: CornerHandle | undefined;
  let off = reachMm;
  for (const h of handles) {
    const d = distanceMm(h.at, at) + (h.what === 'between' ? reachMm * 0.2 : 0);
    if (d <= off) {
      off = d;
      found = h;
    }
  }
  return found;
};
