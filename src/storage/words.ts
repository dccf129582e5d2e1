import type { Problem } from '../kernel/result.ts';

const nameOf = (error: unknown): string => (error instanceof Error ? error.name : String(error));

/** What a failed write means, in the user's words. */
export const writeProblem = (error: unknown): Required<Pick<Problem, 'what' | 'todo'>> =>
  nameOf(error) === 'QuotaExceededError'
    ? {
        what: 'The browser has no room left, so the last changes are not saved.',
        todo: 'Save the plan to a file now. Then free disk space or remove plans you no longer need; saving is tried again by itself.',
      }
    : {
        what: `The browser could not save the last changes (${nameOf(error)}).`,
        todo: 'Save the plan to a file now. Saving is tried again by itself.',
      };

/** What a failed read means. */
export const readProblem = (error: unknown): Problem => ({
  what: `The browser’s storage does not answer (${nameOf(error)}).`,
  todo: 'Close other windows of this program and reload. If storage is turned off for this site, turn it on. Plan files can be opened and saved all the same.',
});

export const missingProblem = (planId: string): Problem => ({
  what: 'This plan is not in the browser’s storage.',
  where: planId,
  todo: 'Go back to the start page and choose another, or open its file.',
});
