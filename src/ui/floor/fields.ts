import type { Id } from '../../kernel/ids.ts';
import { fail, type Result } from '../../kernel/result.ts';
import { unitTaken } from '../../plan/edits/renumber.ts';
import type { Plan } from '../../plan/plan.ts';
import { requiredText } from '../common/parse.ts';

/** A unit number as typed; one that another unit has is refused, so that every number stays the only one. */
export const freeUnit = (plan: Plan, id: Id, text: string): Result<string> => {
  const r = requiredText(text);
  return r.ok && unitTaken(plan, r.value, new Set([id]))
    ? fail({ what: `Another unit is number ${r.value}.`, todo: 'Choose one that is free, or renumber both.' })
    : r;
};
