import { describe, expect, test } from 'vitest';
import { PLAN_VERSION } from '../../../src/plan/file.ts';
import type { SaveState } from '../../../src/storage/port.ts';
import { SNAPSHOT_EVERY } from '../../../src/storage/stored-plan.ts';
import { BATCH_MS } from '../../../src/storage/write-queue.ts';
import { media } from '../../support/media.ts';
import { edit, markRecord, smallPlan } from '../../support/small-plan.ts';
import { addMark, need, reopened, settle, textOf, World } from '../../support/storage-world.ts';

describe.each(media)('a store in %s', (_name, place) => {
  test('gives back a plan as it was created', async () => {
    const world = new World(place());
    const plan = smallPlan('Kitchen');
    const open = need(await world.tab().store.create(plan));
    expect(textOf(open.plan)).toBe(textOf(plan));
    await open.close();
    expect(await reopened(world, open.planId)).toBe(textOf(plan));
  });

  test('P1: says saving, then saved, and then the edit is there though the tab is killed', async () => {
    const world = new World(place());
    const tab = world.tab();
    const open = need(await tab.store.create(smallPlan()));
    const states: SaveState['state'][] = [];
    open.onSaveState((s) => states.push(s.state));
    const after = addMark(open, 'mark-a');
    expect(open.saveState().state).toBe('saving');
    world.advance(BATCH_MS);
    await settle();
    expect(states).toEqual(['saving', 'saved']);
    tab.kill();
    expect(await reopened(world, open.planId)).toBe(textOf(after));
  });

  test('P1: an edit is written within a second, however many follow it', async () => {
    const world = new World(place());
    const tab = world.tab();
    const open = need(await tab.store.create(smallPlan()));
    const first = addMark(open, 'mark-0a');
    for (let i = 1; i <= 9; i++) {
      world.advance(100);
      await settle();
      if (i < 9) addMark(open, `mark-0${i}b`);
    }
    tab.kill();
    const text = await reopened(world, open.planId);
    expect(text).toContain('mark-0a');
    expect(text.length).toBeGreaterThan(textOf(first).length);
  });

  test('closing writes what waits', async () => {
    const world = new World(place());
    const open = need(await world.tab().store.create(smallPlan()));
    const after = addMark(open, 'mark-a');
    await open.close();
    expect(await reopened(world, open.planId)).toBe(textOf(after));
  });

  test('edits that come while one is written arrive too, in order', async () => {
    const world = new World(place());
    const open = need(await world.tab().store.create(smallPlan()));
    addMark(open, 'mark-a', 'first');
    const writing = open.flush();
    const { transaction, after } = edit(open.plan, 'Rename', (d) => d.put(markRecord('mark-a', 'second')));
    open.append(transaction, after);
    const last = edit(after, 'Delete', (d) => d.remove('mark-0'));
    open.append(last.transaction, last.after);
    await writing;
    await open.close();
    expect(await reopened(world, open.planId)).toBe(textOf(last.after));
  });

  test('survives many edits, and keeps its journal short', async () => {
    const makeMedium = place();
    const world = new World(makeMedium);
    const open = need(await world.tab().store.create(smallPlan()));
    let after = open.plan;
    for (let i = 0; i < 2.5 * SNAPSHOT_EVERY; i++) {
      after = addMark(open, 'mark-a', `name ${i}`);
      await open.flush();
    }
    const stored = await makeMedium().read(open.planId);
    expect(stored?.snapshots).toHaveLength(2);
    expect(stored?.entries.length).toBeLessThanOrEqual(2 * SNAPSHOT_EVERY);
    expect(await reopened(world, open.planId)).toBe(textOf(after));
  });

  test('P6: numbers entries one by one and never uses a number twice', async () => {
    const makeMedium = place();
    const world = new World(makeMedium);
    const planId = need(await world.tab().store.create(smallPlan())).planId;
    const seen: number[] = [];
    for (let i = 0; i < 3; i++) {
      const open = need(await world.tab().store.open(planId));
      if (open.saveState().state !== 'saved') need(await open.takeOver());
      addMark(open, `mark-n${i}`);
      await open.close();
      seen.push((await makeMedium().read(planId))?.head.seq ?? -1);
    }
    expect(seen).toEqual([1, 2, 3]);
  });

  test('keeps several plans side by side', async () => {
    const world = new World(place());
    const { store } = world.tab();
    const a = need(await store.create(smallPlan('Kitchen', 1)));
    world.advance(1000);
    const b = need(await store.create(smallPlan('Yard', 2)));
    addMark(b, 'only-in-b');
    await a.close();
    await b.close();
    expect((await store.list()).map((p) => [p.title, p.production, p.fixtureCount])).toEqual([
      ['Yard', 'A Lamp for Odessa Street', 0],
      ['Kitchen', 'A Lamp for Odessa Street', 0],
    ]);
    expect(await reopened(world, a.planId)).not.toContain('only-in-b');
  });

  test('the list shows the newest title', async () => {
    const world = new World(place());
    const { store } = world.tab();
    const open = need(await store.create(smallPlan('Kitchen')));
    const record = smallPlan('Kitchen, night').records.get('plan');
    if (!record) throw new Error('no plan record');
    const { transaction, after } = edit(open.plan, 'Rename', (d) => d.put(record));
    open.append(transaction, after);
    await open.close();
    expect((await store.list()).map((p) => p.title)).toEqual(['Kitchen, night']);
  });

  test('a plan goes to the bin and comes back', async () => {
    const world = new World(place());
    const { store } = world.tab();
    const open = need(await store.create(smallPlan()));
    await open.close();
    need(await store.remove(open.planId));
    expect(await store.list()).toEqual([]);
    expect((await store.listRemoved()).map((p) => p.planId)).toEqual([open.planId]);
    need(await store.restore(open.planId));
    expect((await store.list()).map((p) => p.planId)).toEqual([open.planId]);
    expect(await reopened(world, open.planId)).toBe(textOf(open.plan));
  });

  test('says so where a plan is not there', async () => {
    const { store } = new World(place()).tab();
    expect(await store.open('plan-x')).toMatchObject({ ok: false, error: { where: 'plan-x' } });
    expect(await store.remove('plan-x')).toMatchObject({ ok: false });
    expect(await store.salvage('plan-x')).toMatchObject({ ok: false });
  });

  test('P4: a plan of a newer program opens read-only and stays as it is', async () => {
    const makeMedium = place();
    const world = new World(makeMedium);
    const open = need(await world.tab().store.create(smallPlan()));
    await open.close();
    const before = await makeMedium().read(open.planId);
    const snapshot = before?.snapshots[0];
    if (!snapshot) throw new Error('no snapshot');
    const { checksum } = await import('../../../src/storage/checksum.ts');
    const text = snapshot.text.replace(`"version": ${PLAN_VERSION}`, `"version": ${PLAN_VERSION + 1}`);
    await makeMedium().update(
      open.planId,
      (head) =>
        head && { head, snapshot: { ...snapshot, text, sum: checksum(text), version: PLAN_VERSION + 1 } },
    );
    const changed = await makeMedium().read(open.planId);

    const newer = need(await world.tab().store.open(open.planId));
    expect(newer.saveState()).toEqual({ state: 'read-only', reason: 'newer-version' });
    expect(newer.notices.join()).toMatch(/newer/);
    expect(() => addMark(newer, 'mark-a')).toThrow();
    expect(await newer.takeOver()).toMatchObject({ ok: false });
    await newer.close();
    expect(await makeMedium().read(open.planId)).toEqual(changed);
  });
});
