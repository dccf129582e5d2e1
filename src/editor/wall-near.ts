import { distanceMm, nearestOnSegment, type Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import type { Wall } from '../plan/records/index.ts';

/** The wall of a floor whose body is nearest to a spot, within reach of its faces. */
export const wallNear = (plan: Plan, floorId: Id, at: Point, reachMm: number): Wall | undefined => {
  let found: Wall | undefined;
  let off = reachMm;
  for (const w of recordsOf(plan, 'wall')) {
    if (w.floorId !== floorId) continue;
    const d = distanceMm(at, nearestOnSegment(at, w.from, w.to).at) - w.thicknessMm / 2;
    if (d <= off) {
      off = d;
      found = w;
    }
  }
  return found;
};
