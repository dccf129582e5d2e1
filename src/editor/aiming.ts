import { distanceMm, type Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import type { ChangeSet } from '../plan/change-set.ts';
import { aimAtMark, aimAtPoint } from '../plan/edits/arrange.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import type { Mark } from '../plan/records/index.ts';
import { OPTIONS } from './options.ts';

/** The mark on this floor that a pointer is near enough to for a fixture to follow it. */
export const markNear = (
  plan: Plan,
  floorId: Id | undefined,
  at: Point,
  pxPerMm: number,
): Mark | undefined => {
  let found: Mark | undefined;
  let off = OPTIONS.markPx / pxPerMm;
  for (const m of recordsOf(plan, 'mark')) {
    if (m.floorId !== floorId || m.what === 'note') continue;
    const d = distanceMm(m.at, at);
    if (d <= off) {
      off = d;
      found = m;
    }
  }
  return found;
};

export interface AimAt {
  readonly changes: ChangeSet;
  readonly target: Point;
  readonly mark: Mark | undefined;
}

/** Aims fixtures at a spot, or makes them follow the mark there. */
export const aimThere = (plan: Plan, ids: Iterable<Id>, at: Point, pxPerMm: number, hold: boolean): AimAt => {
  const list = [...ids];
  const floorId = list.map((id) => recordOf(plan, 'fixture', id)?.floorId).find((f) => f !== undefined);
  const mark = hold ? undefined : markNear(plan, floorId, at, pxPerMm);
  return mark
    ? { changes: aimAtMark(plan, list, mark.id), target: mark.at, mark }
    : { changes: aimAtPoint(plan, list, at), target: at, mark: undefined };
};
