import { always, type EngineFinding } from '../derive/findings.ts';
import { compareIds, type Id } from '../kernel/ids.ts';
import { problemsOf, type ReferenceProblem } from '../plan/checks.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { AnyRecord } from '../plan/records/index.ts';
import { changedIds } from '../plan/remembered.ts';

/** Fields whose broken reference the power engine reports itself, with what follows from it. */
const POWER_FIELDS = new Set(['from', 'to', 'sourceId', 'wayId']);
/** Likewise for the control engine. */
const CONTROL_FIELDS = new Set(['patch.universeId', 'patch.modeId']);

type Found = ReadonlyMap<Id, readonly ReferenceProblem[]>;

const NONE: readonly ReferenceProblem[] = [];

const ofRecord = (plan: Plan, r: AnyRecord): readonly ReferenceProblem[] => {
  // Of a cable only its ends and its kind could lead nowhere.
  if (r.type === 'cable') return NONE;
  // Most records of a large plan are levels, and lead to what is there.
  if (r.type === 'level' && recordOf(plan, 'setup', r.setupId) && recordOf(plan, 'fixture', r.fixtureId))
    return NONE;
  const problems = problemsOf(plan, r);
  if (problems.length === 0) return NONE;
  return problems.filter(
    (p) =>
      !POWER_FIELDS.has(p.field) &&
      !CONTROL_FIELDS.has(p.field) &&
      (p.field !== 'kindId' || r.type === 'stand'),
  );
};

const look = (plan: Plan, records: Iterable<AnyRecord>): Found => {
  const found = new Map<Id, readonly ReferenceProblem[]>();
  for (const r of records) {
    const problems = ofRecord(plan, r);
    if (problems.length > 0) found.set(r.id, problems);
  }
  return found;
};

/** What others may look at behind a reference: what sort of record it is, its kind, its own ways. */
const behind = (r: AnyRecord): readonly unknown[] => [
  r.type,
  'kindId' in r ? r.kindId : undefined,
  'ways' in r ? r.ways : undefined,
];

/** Whether everything that leads to a record leads to the same after a change. */
const leadsStill = (from: AnyRecord, to: AnyRecord | undefined): boolean => {
  if (!to || from.type === 'kind') return false;
  const now = behind(to);
  return behind(from).every((x, i) => x === now[i]);
};

/**
 * Broken references by record, made with those of an earlier plan. As long as nothing that others may lead to went, only what
 * changed and what was broken before needs a look.
 */
const foundIn = (plan: Plan, last: { readonly plan: Plan; readonly found: Found } | undefined): Found => {
  const changed = last && changedIds(last.plan, plan);
  if (!last || !changed) return look(plan, plan.records.values());
  for (const id of changed) {
    const from = last.plan.records.get(id);
    if (from && !leadsStill(from, plan.records.get(id))) return look(plan, plan.records.values());
  }
  const again = new Set([...changed, ...last.found.keys()]);
  return look(
    plan,
    [...again].flatMap((id) => plan.records.get(id) ?? []),
  );
};

let last: { readonly plan: Plan; readonly found: Found } | undefined;

/** References that lead nowhere, as findings by record; those an engine reports itself are left out. */
export const referenceFindings = (plan: Plan): readonly EngineFinding[] => {
  if (last?.plan !== plan) last = { plan, found: foundIn(plan, last) };
  return [...last.found]
    .sort(([a], [b]) => compareIds(a, b))
    .flatMap(([, problems]) => problems)
    .map((p) =>
      always('plan-reference', 'warn', `${p.recordId}/${p.field}`, [p.recordId], {
        what: p.what,
        todo: p.todo,
        field: p.field,
      }),
    );
};
