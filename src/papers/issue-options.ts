import { issuedPlan, issueState } from '../plan/edits/issue.ts';
import type { Plan } from '../plan/plan.ts';
import type { PaperOptions } from './sheet-info.ts';

/**
 * What the papers of a plan carry by its issues: as issued they have that issue's letter and date, changed since they are
 * a draft of the next one. Changes are marked against the issue before where it kept its plan. The date is the issue's,
 * else the one given, else none.
 */
export const issueOptions = (
  plan: Plan,
  given: {
    readonly date?: string | undefined;
    readonly setupId?: string | undefined;
    readonly sheets?: readonly string[] | undefined;
    readonly programVersion: string;
  },
): PaperOptions => {
  const state = issueState(plan);
  const kept = state.before && issuedPlan(plan, state.before);
  const issued = state.draft ? '' : (state.last?.date ?? '');
  return {
    setupId: given.setupId,
    sheets: given.sheets,
    programVersion: given.programVersion,
    revision: state.last ? state.revision : '',
    draft: state.draft,
    date: issued || given.date || '',
    since: state.before && kept?.ok ? { plan: kept.value, revision: state.before.revision } : undefined,
  };
};
