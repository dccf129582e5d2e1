import { compareIds, type Id } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { Plan } from '../plan.ts';
import type { AnyRecord } from '../records/index.ts';
import { movedWith } from './arrange.ts';

export type StackWay = 'front' | 'back' | 'forward' | 'backward';

const orderOf = (r: AnyRecord): number => (typeof r.order === 'number' ? r.order : 0);

const ordered = (r: AnyRecord, order: number): AnyRecord => {
  const { order: _old, ...bare } = r;
  return (order === 0 ? bare : { ...bare, order }) as AnyRecord;
};

const floorOf = (r: AnyRecord): unknown => ('floorId' in r ? r.floorId : undefined);

/**
 * Puts records above or below the others of their layer on the drawing, all the way or by one step. Among themselves
 * they keep their order. What a record carries or stands on keeps its own place.
 */
export const stackRecords = (plan: Plan, ids: ReadonlySet<Id>, way: StackWay): ChangeSet => {
  const draft = new Draft(plan);
  const chosen = [...ids]
    .flatMap((id) => plan.records.get(id) ?? [])
    .filter((r) => r.type !== 'plan' && r.type !== 'setup')
    .sort((a, b) => orderOf(a) - orderOf(b) || compareIds(a.id, b.id));
  if (chosen.length === 0) return draft.changes();
  if (way === 'forward' || way === 'backward') {
    for (const r of chosen) draft.put(ordered(r, orderOf(r) + (way === 'forward' ? 1 : -1)));
    return draft.changes();
  }
  const floors = new Set(chosen.map(floorOf));
  let [low, high] = [0, 0];
  for (const r of plan.records.values()) {
    // Setups are in an order of their own.
    if (ids.has(r.id) || r.type === 'setup' || !floors.has(floorOf(r))) continue;
    low = Math.min(low, orderOf(r));
    high = Math.max(high, orderOf(r));
  }
  chosen.forEach((r, i) => {
    const to = way === 'front' ? high + 1 + i : low - chosen.length + i;
    if (orderOf(r) !== to) draft.put(ordered(r, to));
  });
  return draft.changes();
};

/** Takes records off the drawing, with what carries them and what they carry, or shows them again. Nothing else changes. */
export const hideRecords = (plan: Plan, ids: ReadonlySet<Id>, hidden: boolean): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of movedWith(plan, ids)) {
    const r = plan.records.get(id);
    if (!r || r.type === 'plan' || (r.hidden ?? false) === hidden) continue;
    const { hidden: _old, ...bare } = r;
    draft.put((hidden ? { ...bare, hidden } : bare) as AnyRecord);
  }
  return draft.changes();
};

/** Everything of a floor that is hidden; openings count by their wall, cables by being there at all. */
export const hiddenOn = (plan: Plan, floorId: Id | undefined): readonly Id[] =>
  [...plan.records.values()].flatMap((r) => {
    if (!r.hidden) return [];
    const wall = r.type === 'opening' ? plan.records.get(r.wallId) : undefined;
    const floor = wall ? floorOf(wall) : floorOf(r);
    return floor === undefined || floor === floorId ? [r.id] : [];
  });
