import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Plan } from '../../src/plan/plan.ts';
import type { OpenPlan, SaveState } from '../../src/storage/port.ts';
import { SNAPSHOT_EVERY } from '../../src/storage/stored-plan.ts';
import { BATCH_MS, RETRY_MS } from '../../src/storage/write-queue.ts';
import { faultyMedium, noFaults } from '../support/faulty-medium.ts';
import { media } from '../support/media.ts';
import { edit, markRecord, smallPlan } from '../support/small-plan.ts';
import { addMark, need, reopened, settle, textOf, World } from '../support/storage-world.ts';

/** A fixed script of edits, one write each; gives the plan after each. */
const script = async (open: OpenPlan, steps: number, acknowledged: (p: Plan) => void): Promise<Plan[]> => {
  const plans = [open.plan];
  for (let i = 0; i < steps; i++) {
    const { transaction, after } = edit(open.plan, `Step ${i}`, (d) => {
      d.put(markRecord('mark-moving', `Step ${i}`, i));
      d.put(markRecord(`mark-step-${i}`, `Step ${i}`));
      if (i > 2) d.remove(`mark-step-${i - 2}`);
    });
    open.append(transaction, after);
    plans.push(after);
    await open.flush();
    if (open.saveState().state === 'saved') acknowledged(after);
  }
  return plans;
};

const STEPS = 6;

describe.each(media)('a write that fails, in %s', (_name, place) => {
  test.each(['before', 'after'] as const)(
    'P1, P5: whichever write fails %s it is done, a killed tab leaves an old or a new plan, never less than was shown as saved',
    async (how) => {
      for (let n = 1; n <= STEPS + 3; n++) {
        const faults = noFaults();
        const makeMedium = place();
        const broken = new World(() => faultyMedium(makeMedium(), faults));
        faults.fail = (i) => (i === n ? how : undefined);
        const tab = broken.tab();
        const created = await tab.store.create(smallPlan());
        if (!created.ok) {
          expect(created.error.what).toContain('could not save');
          continue;
        }
        const open = created.value;
        let acknowledged = open.plan;
        const plans = await script(open, STEPS, (p) => {
          acknowledged = p;
        });
        tab.kill();
        const found = await reopened(new World(makeMedium), open.planId);
        const at = plans.map(textOf).indexOf(found);
        expect(at, `write ${n} failed ${how}`).toBeGreaterThanOrEqual(plans.indexOf(acknowledged));
      }
    },
  );

  test('P5: all writes fail from some point on: nothing acknowledged is lost and the state says so', async () => {
    for (let n = 2; n <= STEPS + 1; n++) {
      const faults = noFaults();
      const makeMedium = place();
      const world = new World(() => faultyMedium(makeMedium(), faults));
      const tab = world.tab();
      const open = need(await tab.store.create(smallPlan()));
      faults.fail = () => (faults.count > n ? 'before' : undefined);
      let acknowledged = open.plan;
      await script(open, STEPS, (p) => {
        acknowledged = p;
      });
      expect(open.saveState().state).toBe('failed');
      tab.kill();
      expect(await reopened(new World(makeMedium), open.planId)).toBe(textOf(acknowledged));
    }
  });

  test('P5: no room: the user is told at once, the edits stay, and saving goes on when there is room again', async () => {
    const faults = noFaults();
    const makeMedium = place();
    const world = new World(() => faultyMedium(makeMedium(), faults));
    const tab = world.tab();
    const open = need(await tab.store.create(smallPlan()));
    const states: SaveState[] = [];
    open.onSaveState((s) => states.push(s));
    faults.error = () => new DOMException('full', 'QuotaExceededError');
    faults.fail = () => 'before';
    addMark(open, 'mark-a');
    world.advance(BATCH_MS);
    await settle();
    const failed = states.at(-1);
    expect(failed?.state).toBe('failed');
    expect(failed?.state === 'failed' ? `${failed.what} ${failed.todo}` : '').toMatch(/no room.*file/);
    // What has failed is not called "saving" again until it works.
    const after = addMark(open, 'mark-b');
    expect(open.saveState().state).toBe('failed');
    world.advance(RETRY_MS);
    await settle();
    expect(open.saveState().state).toBe('failed');
    faults.fail = () => undefined;
    world.advance(RETRY_MS);
    await settle();
    expect(open.saveState().state).toBe('saved');
    tab.kill();
    expect(await reopened(new World(makeMedium), open.planId)).toBe(textOf(after));
  });

  test('P5: no room while opening: the plan can still be read and worked on, and is saved once there is room', async () => {
    const faults = noFaults();
    const makeMedium = place();
    const world = new World(() => faultyMedium(makeMedium(), faults));
    const first = need(await world.tab().store.create(smallPlan()));
    await first.close();
    faults.fail = () => 'before';
    const open = need(await world.tab().store.open(first.planId));
    expect(open.saveState().state).toBe('failed');
    const after = addMark(open, 'mark-a');
    faults.fail = () => undefined;
    await open.flush();
    expect(open.saveState().state).toBe('saved');
    await open.close();
    expect(await reopened(world, first.planId)).toBe(textOf(after));
  });

  test('P1: a write with a snapshot that fails loses nothing', async () => {
    for (const how of ['before', 'after'] as const) {
      const faults = noFaults();
      const makeMedium = place();
      const world = new World(() => faultyMedium(makeMedium(), faults));
      const tab = world.tab();
      const open = need(await tab.store.create(smallPlan()));
      faults.fail = (n) => (n === SNAPSHOT_EVERY + 2 ? how : undefined);
      let acknowledged = open.plan;
      await script(open, SNAPSHOT_EVERY + 2, (p) => {
        acknowledged = p;
      });
      tab.kill();
      expect(await reopened(new World(makeMedium), open.planId)).toBe(textOf(acknowledged));
    }
  });
});

describe('single requests that fail inside one IndexedDB transaction', () => {
  afterEach(() => vi.restoreAllMocks());

  test('the transaction is undone whole, whichever of its requests fails', async () => {
    const [, place] = media.find(([name]) => name === 'IndexedDB') ?? media[0] ?? [];
    if (!place) throw new Error('no IndexedDB medium');
    for (let n = 1; n <= 4; n++) {
      const makeMedium = place();
      const world = new World(makeMedium);
      const tab = world.tab();
      const open = need(await tab.store.create(smallPlan()));
      let acknowledged = open.plan;
      // The write that also carries a snapshot has most requests.
      await script(open, SNAPSHOT_EVERY - 1, (p) => {
        acknowledged = p;
      });
      const before = await makeMedium().read(open.planId);
      let calls = 0;
      const method = n === 4 ? 'delete' : 'put';
      const original = IDBObjectStore.prototype[method] as (...args: unknown[]) => IDBRequest;
      const spy = vi.spyOn(IDBObjectStore.prototype, method as 'put').mockImplementation(function (
        this: IDBObjectStore,
        ...args: unknown[]
      ) {
        if (++calls === (n === 4 ? 1 : n)) throw new DOMException('full', 'QuotaExceededError');
        return original.apply(this, args) as IDBRequest<IDBValidKey>;
      });
      addMark(open, 'mark-last');
      await open.flush();
      expect(open.saveState().state).toBe('failed');
      expect(calls).toBeGreaterThan(0);
      spy.mockRestore();
      expect(await makeMedium().read(open.planId)).toEqual(before);
      tab.kill();
      expect(await reopened(new World(makeMedium), open.planId)).toBe(textOf(acknowledged));
    }
  });
});
