import { fail, ok, type Result } from '../kernel/result.ts';
import type { Head, Medium } from './medium.ts';
import { StoredPlanHandle } from './open-plan.ts';
import type { Platform } from './platform.ts';
import type { PlanStore, StoredPlanInfo } from './port.ts';
import { writeNew } from './stored-plan.ts';
import { missingProblem, readProblem, writeProblem } from './words.ts';

const infoOf = ({ planId, title, production, savedAtMs, fixtureCount }: Head): StoredPlanInfo => ({
  planId,
  title,
  production,
  savedAtMs,
  fixtureCount,
});

/** A store of plans on a medium. The promises it keeps are in SPEC.md. */
export const planStore = (medium: Medium, platform: Platform): PlanStore => {
  const listed = async (removed: boolean): Promise<readonly StoredPlanInfo[]> =>
    (await medium.heads())
      .filter((h) => (h.removedAtMs !== undefined) === removed)
      .sort((a, b) => b.savedAtMs - a.savedAtMs)
      .map(infoOf);

  const mark = async (planId: string, change: (head: Head) => Head): Promise<Result<void>> => {
    try {
      const head = await medium.update(planId, (h) => h && { head: change(h) });
      return head ? ok(undefined) : fail(missingProblem(planId));
    } catch (error) {
      return fail(writeProblem(error));
    }
  };

  return {
    list: () => listed(false),
    listRemoved: () => listed(true),
    create: async (plan) => {
      const planId = platform.newPlanId();
      try {
        await writeNew(medium, planId, plan, platform.nowMs());
      } catch (error) {
        return fail(writeProblem(error));
      }
      return StoredPlanHandle.open(medium, platform, planId);
    },
    open: (planId) => StoredPlanHandle.open(medium, platform, planId),
    remove: (planId) => mark(planId, (h) => ({ ...h, removedAtMs: platform.nowMs() })),
    restore: (planId) =>
      mark(planId, (h) => {
        const { removedAtMs: _, ...rest } = h;
        return rest;
      }),
    salvage: async (planId) => {
      try {
        const stored = await medium.read(planId);
        if (!stored) return fail(missingProblem(planId));
        const damaged = await medium.damaged(planId);
        return ok(JSON.stringify({ ...stored, damaged }, undefined, 1));
      } catch (error) {
        return fail(readProblem(error));
      }
    },
  };
};
