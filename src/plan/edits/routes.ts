import { distanceMm, type Point } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf } from '../plan.ts';
import { placeOf } from '../ports.ts';
import { routeBetween } from '../route.ts';

/** Lays a cable by hand along these corners. Corners on one another, or in a straight line, are left out. */
export const setRoute = (plan: Plan, cableId: Id, points: readonly Point[]): ChangeSet => {
  const cable = recordOf(plan, 'cable', cableId);
  const draft = new Draft(plan);
  if (!cable || cable.locked) return draft.changes();
  const from = placeOf(plan, cable.from.recordId)?.at;
  const to = placeOf(plan, cable.to.recordId)?.at;
  const all = [from, ...points, to];
  const kept = points.filter((p, i) => {
    const a = all[i];
    const c = all[i + 2];
    if (!a || !c) return true;
    const bend = Math.abs((p.xMm - a.xMm) * (c.yMm - a.yMm) - (p.yMm - a.yMm) * (c.xMm - a.xMm));
    return distanceMm(a, p) > 1 && bend / Math.max(1, distanceMm(a, c)) > 5;
  });
  return draft.put({ ...cable, route: { ...cable.route, auto: false, points: kept } }).changes();
};

/** Lets cables find their own way again. */
export const letRoute = (plan: Plan, cableIds: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of cableIds) {
    const cable = recordOf(plan, 'cable', id);
    const from = cable && placeOf(plan, cable.from.recordId);
    const to = cable && placeOf(plan, cable.to.recordId);
    if (!cable || cable.locked || !from || !to) continue;
    draft.put({ ...cable, route: { ...cable.route, auto: true, points: [...routeBetween(plan, from, to)] } });
  }
  return draft.changes();
};

/** Sets the slack of a cable as a share of its drawn length and rises; without one the usual slack counts again. */
export const setSlack = (plan: Plan, cableId: Id, slackPct: number | undefined): ChangeSet => {
  const cable = recordOf(plan, 'cable', cableId);
  const draft = new Draft(plan);
  if (!cable || cable.slackPct === slackPct) return draft.changes();
  const { slackPct: _old, ...bare } = cable;
  return draft.put(slackPct === undefined ? bare : { ...bare, slackPct }).changes();
};

/** Makes a cable up of these stock pieces, in mm, longest first; without any, pieces are made up again as needed. */
export const setPieces = (plan: Plan, cableId: Id, piecesMm: readonly number[] | undefined): ChangeSet => {
  const cable = recordOf(plan, 'cable', cableId);
  const draft = new Draft(plan);
  if (!cable || cable.locked) return draft.changes();
  const { piecesMm: _old, ...bare } = cable;
  const none = piecesMm === undefined || piecesMm.length === 0;
  return draft.put(none ? bare : { ...bare, piecesMm: [...piecesMm].sort((a, b) => b - a) }).changes();
};
