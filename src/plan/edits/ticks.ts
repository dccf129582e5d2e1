import type { Id } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Tick } from '../records/index.ts';

/** Id of the tick for one step of a unit's card. */
export const tickId = (fixtureId: Id, step: string): Id => `tick:${fixtureId}:${step}`;

/** Ticks steps of a unit's card as done, by whom and when (ISO date and time, as the caller knows it). */
export const tickSteps = (
  plan: Plan,
  fixtureId: Id,
  steps: readonly string[],
  by: string,
  when: string,
): ChangeSet => {
  const draft = new Draft(plan);
  if (!recordOf(plan, 'fixture', fixtureId)) return draft.changes();
  for (const step of steps) {
    const id = tickId(fixtureId, step);
    if (recordOf(plan, 'tick', id)) continue;
    const tick: Tick = { id, type: 'tick', fixtureId, step, by, when };
    draft.put(tick);
  }
  return draft.changes();
};

/** Takes ticks of a unit's card away. */
export const untickSteps = (plan: Plan, fixtureId: Id, steps: readonly string[]): ChangeSet => {
  const draft = new Draft(plan);
  for (const step of steps) {
    const id = tickId(fixtureId, step);
    if (recordOf(plan, 'tick', id)) draft.remove(id);
  }
  return draft.changes();
};

/** Takes every tick of the plan, or of some units, away: another day, the rig is set up anew. */
export const clearTicks = (plan: Plan, fixtureIds?: ReadonlySet<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const t of recordsOf(plan, 'tick')) if (!fixtureIds || fixtureIds.has(t.fixtureId)) draft.remove(t.id);
  return draft.changes();
};
