import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { recordName } from '../names.ts';
import { atWholeLevel, isAtLevel } from '../part-levels.ts';
import { levelId, type Plan, setupsOf } from '../plan.ts';
import { type AnyRecord, type RecordOf, type RecordType, recordSchemas } from '../records/index.ts';
import { copyMoves } from './moves.ts';
import { outletsFollowWithCables } from './wall-outlets.ts';

/** Sets the level of fixtures in one setup, 0 to 100 %. */
export const setLevels = (plan: Plan, setupId: Id, fixtureIds: Iterable<Id>, levelPct: number): ChangeSet => {
  const draft = new Draft(plan);
  for (const fixtureId of fixtureIds) {
    const id = levelId(setupId, fixtureId);
    const old = plan.records.get(id);
    const base = old?.type === 'level' ? old : { id, type: 'level' as const, setupId, fixtureId };
    if (old?.type === 'level' && isAtLevel(old, levelPct)) continue;
    draft.put(atWholeLevel(base, levelPct));
  }
  return draft.changes();
};

/** Adds a setup after the others; levels are copied from `likeId` when given. */
export const addSetup = (plan: Plan, name: string, likeId: Id | undefined, newId: NewId): ChangeSet => {
  const id = newId('su');
  const order = Math.max(0, ...setupsOf(plan).map((s) => s.order)) + 1;
  const draft = new Draft(plan).put({ id, type: 'setup', order, name, scene: '' });
  for (const r of plan.records.values()) {
    if (likeId !== undefined && r.type === 'level' && r.setupId === likeId) {
      draft.put({ ...r, id: levelId(id, r.fixtureId), setupId: id });
    }
  }
  if (likeId !== undefined) copyMoves(plan, draft, likeId, id);
  return draft.changes();
};

/** Changes fields of one record, checked against its type. A value that does not fit gives a problem that names the field. */
export const changeRecord = <T extends RecordType>(
  plan: Plan,
  record: RecordOf<T>,
  patch: Partial<RecordOf<T>>,
): Result<ChangeSet> => {
  const next = { ...record, ...patch };
  const parsed = recordSchemas[record.type as RecordType].safeParse(next);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    return fail({
      what: `That does not fit ${recordName(plan, record as AnyRecord)}.`,
      where: issue?.path.map(String).join('.') ?? '',
      todo: issue?.message ?? '',
    });
  }
  const draft = new Draft(plan).put(parsed.data as AnyRecord);
  if (record.type === 'wall') outletsFollowWithCables(draft, plan);
  return ok(draft.changes());
};

/** Notes that a finding is known. It changes no status; it prints with the finding. */
export const acknowledge = (
  plan: Plan,
  note: Omit<RecordOf<'acknowledgement'>, 'id' | 'type'>,
  newId: NewId,
): ChangeSet =>
  new Draft(plan)
    .put({ ...note, id: newId('ak'), type: 'acknowledgement' } as RecordOf<'acknowledgement'>)
    .changes();
