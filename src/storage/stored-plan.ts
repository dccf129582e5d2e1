import { applyChanges } from '../plan/change-set.ts';
import { type Plan, planRecord, recordsOf } from '../plan/plan.ts';
import type { PlanRecord } from '../plan/records/index.ts';
import { entryOf, snapshotOf } from './journal.ts';
import type { LoadedPlan } from './load.ts';
import type { Head, Medium } from './medium.ts';
import type { Queued } from './write-queue.ts';

/** A whole snapshot is written with every so many entries. */
export const SNAPSHOT_EVERY = 100;

/** What the start page shows of a plan. */
const describe = (plan: Plan): Pick<Head, 'title' | 'production' | 'fixtureCount'> => {
  const { title, production } = planRecord(plan);
  return { title, production, fixtureCount: recordsOf(plan, 'fixture').length };
};

/** Puts a new plan on the medium. */
export const writeNew = async (medium: Medium, planId: string, plan: Plan, nowMs: number): Promise<void> => {
  await medium.update(planId, (there) => {
    if (there) throw new Error(`${planId} is in the store already`);
    const head: Head = { ...describe(plan), planId, savedAtMs: nowMs, epoch: 0, seq: 0, snapshotSeq: 0 };
    return { head, snapshot: snapshotOf(planId, 0, plan) };
  });
};

/** The plan under a title that tells it from the one it was parted from. */
export const partedCopy = (plan: Plan): Plan => {
  const record = planRecord(plan);
  const to: PlanRecord = { ...record, title: `${record.title} (kept from another window)` };
  return applyChanges(plan, { added: [], updated: [{ from: record, to }], removed: [] });
};

/** Raises the epoch, so that no other tab's writes are taken from now on. Undefined where the plan is gone. */
export const claimEpoch = (medium: Medium, planId: string): Promise<Head | undefined> =>
  medium.update(planId, (head) => head && { head: { ...head, epoch: head.epoch + 1 } });

/** Writes a batch as the next entry, with a snapshot when one is due. Undefined where the epoch is no longer ours. */
export const writeBatch = (
  medium: Medium,
  planId: string,
  epoch: number,
  batch: readonly Queued[],
  loaded: Pick<LoadedPlan, 'needsSnapshot' | 'damaged'>,
  nowMs: number,
): Promise<Head | undefined> =>
  medium.update(planId, (head) => {
    const last = batch.at(-1);
    if (!head || !last || head.epoch !== epoch) return undefined;
    const seq = head.seq + 1;
    const entry = entryOf(
      planId,
      seq,
      batch.map((q) => q.edit),
    );
    const next: Head = { ...head, ...describe(last.after), savedAtMs: nowMs, seq };
    if (!loaded.needsSnapshot && seq - head.snapshotSeq < SNAPSHOT_EVERY) return { head: next, entry };
    const aside = loaded.damaged.map((d) => ({ ...d, planId, foundAtMs: nowMs }));
    return {
      head: { ...next, snapshotSeq: seq },
      entry,
      snapshot: snapshotOf(planId, seq, last.after),
      aside,
      // Where something was damaged, the older parts may be all there is to fall back on.
      ...(aside.length === 0 ? { dropBefore: head.snapshotSeq } : {}),
    };
  });
