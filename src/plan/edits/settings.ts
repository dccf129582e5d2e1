import type { Result } from '../../kernel/result.ts';
import { applyChanges, type ChangeSet, Draft, diffPlans } from '../change-set.ts';
import { type Plan, planRecord } from '../plan.ts';
import type { AnyRecord, Practice, RecordOf } from '../records/index.ts';
import { changeRecord } from './document.ts';

/** The fields of `patch` that are undefined are taken out of the record. */
const without = (record: AnyRecord, patch: Readonly<Record<string, unknown>>): AnyRecord => {
  const gone = Object.entries(patch).filter(([, v]) => v === undefined);
  const kept = Object.entries(record).filter(([k]) => !gone.some(([g]) => g === k));
  return Object.fromEntries(kept) as AnyRecord;
};

/**
 * The plan with fields of one record set; a field set to undefined is taken out, so that it counts as not said. For a form
 * that is looked through before it is kept. A value that does not fit gives a problem that names the field.
 */
export const withSetting = (
  plan: Plan,
  id: string,
  patch: Readonly<Record<string, unknown>>,
): Result<Plan> => {
  const record = plan.records.get(id);
  if (!record) throw new Error(`no record ${id}`);
  const given = Object.fromEntries(Object.entries(patch).filter(([, v]) => v !== undefined));
  const r = changeRecord(plan, without(record, patch) as AnyRecord, given as Partial<AnyRecord>);
  return r.ok ? { ok: true, value: applyChanges(plan, r.value) } : r;
};

/** The plan under another practice: its country is forgotten, its mains frequency is the practice's; gear stays as it is. */
export const withPractice = (plan: Plan, practice: Practice): Plan => {
  const { country: _, ...head } = planRecord(plan);
  const next: RecordOf<'plan'> = { ...head, practice, frequencyHz: practice === 'north-america' ? 60 : 50 };
  return applyChanges(plan, new Draft(plan).put(next).changes());
};

/** A limit set in place of the table's, with the reason; `value` undefined goes back to the table's. */
export const withLimit = (plan: Plan, limit: string, value: number | undefined, reason: string): Plan => {
  const head = planRecord(plan);
  const rest = head.limits.filter((l) => l.limit !== limit);
  const limits = value === undefined ? rest : [...rest, { limit, value, reason }];
  return applyChanges(plan, new Draft(plan).put({ ...head, limits }).changes());
};

/** Everything a form of settings changed, as one change-set. */
export const settingsChange = (before: Plan, draft: Plan): ChangeSet => diffPlans(before, draft);
