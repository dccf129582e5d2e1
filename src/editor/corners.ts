import { hopPoints } from '../derive/data-lines.ts';
import { distanceMm, lerp, type Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { DataLine } from '../plan/records/index.ts';
import type { SessionState } from './session.ts';

/** A corner of a selected cable's route or an end of a selected wall, to be pulled by hand. */
export interface CornerHandle {
  readonly recordId: Id;
  /** `between` makes a new corner of a cable's route. */
  readonly what: 'corner' | 'between' | 'from' | 'to';
  /** Of a cable: place in the list of route points. */
  readonly index: number;
  readonly at: Point;
  /** Of a data line: the stop its stretch leads to. */
  readonly hop?: number;
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
  const feature = recordOf(plan, 'feature', id);
  if (feature)
    return feature.locked || feature.points.length < 2
      ? []
      : feature.points.map((at, index) => ({ recordId: id, what: 'corner', index, at }));
  const dataLine = recordOf(plan, 'line', id);
  if (dataLine)
    return dataLine.locked ? [] : dataLine.stops.flatMap((_, hop) => hopHandles(plan, dataLine, hop));
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

/** Handles of one stretch of a data line: its corners, and the middles between them. */
const hopHandles = (plan: Plan, line: DataLine, hop: number): readonly CornerHandle[] => {
  const from = placeOf(plan, hop === 0 ? line.from.recordId : (line.stops[hop - 1] ?? ''))?.at;
  const to = placeOf(plan, line.stops[hop] ?? '')?.at;
  const points = hopPoints(plan, line, hop)?.points;
  if (!from || !to || !points) return [];
  const all = [from, ...points, to];
  const middles = all.slice(1).flatMap((b, index): CornerHandle[] => {
    const a = all[index] ?? b;
    return distanceMm(a, b) >= LEAST_MM
      ? [{ recordId: line.id, what: 'between', index, at: lerp(a, b, 0.5), hop }]
      : [];
  });
  return [
    ...points.map((at, index) => ({ recordId: line.id, what: 'corner' as const, index, at, hop })),
    ...middles,
  ];
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
