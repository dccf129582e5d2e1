import { canonicalJson } from '../kernel/canonical.ts';
import type { Id } from '../kernel/ids.ts';
import { type ChangeSet, Draft, type Transaction } from '../plan/change-set.ts';
import { PLAN_VERSION, serialisePlan } from '../plan/file.ts';
import type { Plan } from '../plan/plan.ts';
import type { AnyRecord } from '../plan/records/index.ts';
import { checksum } from './checksum.ts';
import type { Part } from './medium.ts';

/** One edit as the journal keeps it: how its records are afterwards. Doing it twice changes nothing. */
export interface Edit {
  readonly label: string;
  readonly put: readonly AnyRecord[];
  readonly remove: readonly Id[];
}

export const editOf = ({ label, changes }: Transaction): Edit => ({
  label,
  put: [...changes.added, ...changes.updated.map((u) => u.to)],
  remove: changes.removed.map((r) => r.id),
});

/** The change-set that an edit is on this plan. */
export const changesOf = (plan: Plan, { put, remove }: Edit): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of remove) draft.remove(id);
  for (const record of put) draft.put(record);
  return draft.changes();
};

const partOf = (planId: string, seq: number, text: string): Part => ({
  planId,
  seq,
  version: PLAN_VERSION,
  text,
  sum: checksum(text),
});

export const entryOf = (planId: string, seq: number, edits: readonly Edit[]): Part =>
  partOf(planId, seq, JSON.stringify(edits));

export const snapshotOf = (planId: string, seq: number, plan: Plan): Part =>
  partOf(planId, seq, serialisePlan(plan));

/** The edits of an entry, or undefined where it is damaged. */
export const editsOf = (entry: Part): readonly Edit[] | undefined => {
  if (checksum(entry.text) !== entry.sum) return undefined;
  try {
    const edits: unknown = JSON.parse(entry.text);
    return Array.isArray(edits) ? (edits as Edit[]) : undefined;
  } catch {
    return undefined;
  }
};

/**
 * What changed from a plan to a fresh reading of it, by value. The plan that comes with it keeps every record
 * that is equal, so that what follows records by identity is not woken for nothing.
 */
export const differenceByValue = (before: Plan, fresh: Plan): { changes: ChangeSet; plan: Plan } => {
  const records = new Map<Id, AnyRecord>();
  const draft = new Draft(before);
  for (const [id, record] of fresh.records) {
    const known = before.records.get(id);
    const same = known !== undefined && canonicalJson(known) === canonicalJson(record);
    records.set(id, same ? known : record);
    if (!same) draft.put(record);
  }
  for (const id of before.records.keys()) if (!fresh.records.has(id)) draft.remove(id);
  return { changes: draft.changes(), plan: { ...fresh, records } };
};
