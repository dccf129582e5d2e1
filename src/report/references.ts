import { always, type EngineFinding } from '../derive/findings.ts';
import { referenceProblems } from '../plan/checks.ts';
import type { Plan } from '../plan/plan.ts';

/** Fields whose broken reference the power engine reports itself, with what follows from it. */
const POWER_FIELDS = new Set(['from', 'to', 'sourceId', 'wayId']);
/** Likewise for the control engine. */
const CONTROL_FIELDS = new Set(['patch.universeId', 'patch.modeId']);

/** References that lead nowhere, as findings; those an engine reports itself are left out. */
export const referenceFindings = (plan: Plan): readonly EngineFinding[] =>
  referenceProblems(plan)
    .filter((p) => !POWER_FIELDS.has(p.field) && !CONTROL_FIELDS.has(p.field))
    .filter((p) => p.field !== 'kindId' || plan.records.get(p.recordId)?.type === 'stand')
    .map((p) =>
      always('plan-reference', 'warn', `${p.recordId}/${p.field}`, [p.recordId], {
        what: p.what,
        todo: p.todo,
        field: p.field,
      }),
    );
