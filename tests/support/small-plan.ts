import { applyChanges, type ChangeSet, Draft, type Transaction } from '../../src/plan/change-set.ts';
import { emptyPlan, type Plan } from '../../src/plan/plan.ts';
import { type AnyRecord, recordSchemas } from '../../src/plan/records/index.ts';

export const planRecordOf = (title: string): AnyRecord =>
  recordSchemas.plan.parse({
    id: 'plan',
    type: 'plan',
    title,
    production: 'A Lamp for Odessa Street',
    practice: 'europe',
    lengthUnits: 'metric',
    frequencyHz: 50,
    paper: { sheet: 'A3' },
  });

export const floorRecord: AnyRecord = recordSchemas.floor.parse({
  id: 'floor-1',
  type: 'floor',
  name: 'Ground',
});

export const markRecord = (id: string, name: string, xMm = 0): AnyRecord =>
  recordSchemas.mark.parse({
    id,
    type: 'mark',
    floorId: 'floor-1',
    what: 'talent',
    at: { xMm, yMm: 0 },
    name,
  });

const planOf = (records: readonly AnyRecord[]): Plan =>
  applyChanges(emptyPlan, { added: records, updated: [], removed: [] });

/** A plan with a floor and as many marks as asked. */
export const smallPlan = (title = 'Kitchen', marks = 3): Plan =>
  planOf([
    planRecordOf(title),
    floorRecord,
    ...Array.from({ length: marks }, (_, i) => markRecord(`mark-${i}`, `Mark ${i}`, i * 100)),
  ]);

/** An edit by the user: what `draw` does to a draft of the plan. */
export const edit = (
  plan: Plan,
  label: string,
  draw: (draft: Draft) => unknown,
): { transaction: Transaction; after: Plan } => {
  const draft = new Draft(plan);
  draw(draft);
  const changes: ChangeSet = draft.changes();
  return { transaction: { label, origin: 'user', changes }, after: applyChanges(plan, changes) };
};
