import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { Plan } from '../plan.ts';
import type { AnyRecord } from '../records/index.ts';

/** Makes one group of records: choosing one chooses all. Groups they were in before are left. */
export const groupRecords = (plan: Plan, ids: ReadonlySet<Id>, newId: NewId): ChangeSet => {
  const draft = new Draft(plan);
  const groupId = newId('gr');
  if (ids.size < 2) return draft.changes();
  for (const id of ids) {
    const r = plan.records.get(id);
    if (r && r.type !== 'plan') draft.put({ ...r, groupId } as AnyRecord);
  }
  return draft.changes();
};

/** Takes records out of their groups. */
export const ungroupRecords = (plan: Plan, ids: ReadonlySet<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of ids) {
    const r = plan.records.get(id);
    if (r?.groupId === undefined) continue;
    const { groupId: _gone, ...free } = r;
    draft.put(free as AnyRecord);
  }
  return draft.changes();
};

/** The records with all others of their groups. */
export const withGroups = (plan: Plan, ids: ReadonlySet<Id>): ReadonlySet<Id> => {
  const groups = new Set<string>();
  for (const id of ids) {
    const g = plan.records.get(id)?.groupId;
    if (typeof g === 'string') groups.add(g);
  }
  if (groups.size === 0) return ids;
  const all = new Set(ids);
  for (const r of plan.records.values())
    if (typeof r.groupId === 'string' && groups.has(r.groupId)) all.add(r.id);
  return all;
};

/** Locks records against every change of place, or frees them. */
export const lockRecords = (plan: Plan, ids: ReadonlySet<Id>, locked: boolean): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of ids) {
    const r = plan.records.get(id);
    if (!r || (r.locked ?? false) === locked) continue;
    const { locked: _old, ...free } = r;
    draft.put((locked ? { ...free, locked } : free) as AnyRecord);
  }
  return draft.changes();
};
