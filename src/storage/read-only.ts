import { fail } from '../kernel/result.ts';
import type { Plan } from '../plan/plan.ts';
import type { OpenPlan } from './port.ts';

/**
 * A plan that is only looked at: one from a file of a newer program. It is in no store and nothing of it is ever written,
 * so that an older program cannot save over it.
 */
export const openReadOnly = (planId: string, plan: Plan, notices: readonly string[]): OpenPlan => ({
  planId,
  plan,
  notices,
  saveState: () => ({ state: 'read-only', reason: 'newer-version' }),
  onSaveState: () => () => {},
  append: () => {
    throw new Error('an edit of a plan that is open read-only');
  },
  onForeign: () => () => {},
  onNotice: () => () => {},
  takeOver: async () =>
    fail({
      what: 'This plan was saved by a newer version of the program.',
      todo: 'Update this program to change it.',
    }),
  flush: async () => {},
  close: async () => {},
});
