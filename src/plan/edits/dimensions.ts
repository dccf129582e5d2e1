import { add, distanceMm, dot, type Point, point, scale, sub } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordsOf } from '../plan.ts';
import { placeOf } from '../ports.ts';
import type { Dimension, DimensionAnchor } from '../records/index.ts';

export type { DimensionAnchor } from '../records/index.ts';

/** How near a spot must be to a thing's centre or a wall's end to be measured from it. */
const REACH_MM = 2;

const baseOf = (plan: Plan, a: DimensionAnchor): Point | undefined => {
  const r = a.recordId === undefined ? undefined : plan.records.get(a.recordId);
  if (!r) return undefined;
  if (r.type === 'wall') return r[a.end ?? 'from'];
  if (
    r.type === 'setPiece' ||
    r.type === 'mark' ||
    r.type === 'stand' ||
    r.type === 'grip' ||
    r.type === 'rigging'
  )
    return r.at;
  return placeOf(plan, r.id)?.at;
};

/** Where one end of a dimension line is now. */
export const anchorPoint = (plan: Plan, a: DimensionAnchor): Point => {
  const base = baseOf(plan, a);
  return base ? add(base, a.byMm ?? point(0, 0)) : a.at;
};

/** A spot as an end of a dimension line: held to the thing whose centre it is, to the nearest wall's end, or to the floor. */
export const anchorAt = (plan: Plan, floorId: Id, at: Point): DimensionAnchor => {
  for (const r of plan.records.values()) {
    if (r.type === 'wall' || r.type === 'ballast' || !('floorId' in r) || r.floorId !== floorId) continue;
    const base = baseOf(plan, { at, recordId: r.id });
    if (base && distanceMm(base, at) <= REACH_MM) return { at, recordId: r.id };
  }
  let best: DimensionAnchor | undefined;
  let off = Number.POSITIVE_INFINITY;
  for (const w of recordsOf(plan, 'wall')) {
    if (w.floorId !== floorId) continue;
    for (const end of ['from', 'to'] as const) {
      const d = distanceMm(w[end], at);
      // A corner of a face is at most a wall's thickness from the end of its line.
      if (d <= w.thicknessMm && d < off) {
        off = d;
        best = { at, recordId: w.id, end, byMm: sub(at, w[end]) };
      }
    }
  }
  return best ?? { at };
};

/** Keeps a dimension line between two ends. Millimetres on the floor. */
export const addDimension = (
  plan: Plan,
  what: Pick<Dimension, 'floorId' | 'from' | 'to'> & { readonly offsetMm?: number },
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly dimension: Dimension }> => {
  if (distanceMm(anchorPoint(plan, what.from), anchorPoint(plan, what.to)) < 1)
    return fail({
      what: 'There is nothing to measure between one spot and itself.',
      todo: 'Press on two spots.',
    });
  const dimension: Dimension = {
    id: newId('dm'),
    type: 'dimension',
    floorId: what.floorId,
    from: what.from,
    to: what.to,
    offsetMm: what.offsetMm ?? 0,
  };
  return ok({ changes: new Draft(plan).put(dimension).changes(), dimension });
};

/** A dimension line set off further from what it measures by a drag on the floor. */
export const offsetDimension = (plan: Plan, d: Dimension, by: Point): ChangeSet => {
  const a = anchorPoint(plan, d.from);
  const b = anchorPoint(plan, d.to);
  const l = distanceMm(a, b) || 1;
  const u = scale(sub(b, a), 1 / l);
  return new Draft(plan).put({ ...d, offsetMm: d.offsetMm + dot(by, point(u.yMm, -u.xMm)) }).changes();
};

/** Lets dimension lines keep their place where what they were held to goes. */
export const freeDimensions = (draft: Draft, plan: Plan, gone: ReadonlySet<Id>): void => {
  for (const d of recordsOf(plan, 'dimension')) {
    if (gone.has(d.id)) continue;
    const held = (a: DimensionAnchor): boolean => a.recordId !== undefined && gone.has(a.recordId);
    if (!held(d.from) && !held(d.to)) continue;
    const free = (a: DimensionAnchor): DimensionAnchor => (held(a) ? { at: anchorPoint(plan, a) } : a);
    draft.put({ ...d, from: free(d.from), to: free(d.to) });
  }
};
