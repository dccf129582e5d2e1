import { describe, expect, test } from 'vitest';
import type { OpenPlan } from '../../../src/storage/port.ts';
import { YIELD_MS } from '../../../src/storage/tab-link.ts';
import { BATCH_MS } from '../../../src/storage/write-queue.ts';
import { media } from '../../support/media.ts';
import { smallPlan } from '../../support/small-plan.ts';
import { addMark, need, reopened, settle, type Tab, textOf, World } from '../../support/storage-world.ts';

/** Two tabs on one plan: the first writes, the second follows. */
const twoTabs = async (world: World): Promise<{ a: OpenPlan; b: OpenPlan; tabA: Tab; tabB: Tab }> => {
  const tabA = world.tab();
  const tabB = world.tab();
  const a = need(await tabA.store.create(smallPlan()));
  const b = need(await tabB.store.open(a.planId));
  return { a, b, tabA, tabB };
};

const FOLLOWS = { state: 'read-only', reason: 'other-tab' };

describe.each(media)('two tabs on one plan in %s', (_name, place) => {
  test('P3: the first writes, the second follows and sees every edit', async () => {
    const world = new World(place());
    const { a, b } = await twoTabs(world);
    expect(b.saveState()).toEqual(FOLLOWS);
    expect(() => addMark(b, 'mark-b')).toThrow();
    const heard: string[] = [];
    b.onForeign((t, after) => heard.push(`${t.origin} ${t.label} ${after.records.size}`));
    addMark(a, 'mark-a');
    addMark(a, 'mark-aa');
    await a.flush();
    await settle();
    expect(heard).toEqual(['other-tab Add mark-a 6', 'other-tab Add mark-aa 7']);
    expect(textOf(b.plan)).toBe(textOf(a.plan));
  });

  test('P3: a follower takes over, with the edits the writer had not written yet', async () => {
    const world = new World(place());
    const { a, b } = await twoTabs(world);
    const withA = addMark(a, 'mark-a');
    const taken = need(await b.takeOver());
    expect(textOf(taken)).toBe(textOf(withA));
    expect(a.saveState()).toEqual(FOLLOWS);
    expect(b.saveState().state).toBe('saved');
    const withB = addMark(b, 'mark-b');
    await b.flush();
    await settle();
    expect(textOf(a.plan)).toBe(textOf(withB));
    expect(await reopened(world, a.planId)).toBe(textOf(withB));
  });

  test('P3: when the writer closes, the follower may write', async () => {
    const world = new World(place());
    const { a, b } = await twoTabs(world);
    addMark(a, 'mark-a');
    await a.close();
    await settle();
    expect(b.saveState().state).toBe('saved');
    expect(b.plan.records.has('mark-a')).toBe(true);
  });

  test('P3: when the writer is killed, the follower may write, from the last saved edit', async () => {
    const world = new World(place());
    const { a, b, tabA } = await twoTabs(world);
    const saved = addMark(a, 'mark-a');
    await a.flush();
    addMark(a, 'mark-unsaved');
    tabA.kill();
    world.advance(BATCH_MS);
    await settle();
    expect(b.saveState().state).toBe('saved');
    expect(textOf(b.plan)).toBe(textOf(saved));
  });

  test('P3: a tab that slept while another took over keeps its unsaved edits in a copy, and shows the newest plan', async () => {
    const world = new World(place());
    const { a, b, tabA } = await twoTabs(world);
    addMark(a, 'mark-asleep');
    tabA.freeze();
    const taking = b.takeOver();
    await settle();
    world.advance(YIELD_MS);
    need(await taking);
    const withB = addMark(b, 'mark-b');
    await b.flush();

    const notices: string[] = [];
    const foreign: string[] = [];
    a.onNotice((text) => notices.push(text));
    a.onForeign((t) => foreign.push(t.label));
    tabA.wake();
    world.advance(BATCH_MS);
    await settle();

    expect(a.saveState()).toEqual(FOLLOWS);
    expect(textOf(a.plan)).toBe(textOf(withB));
    expect(await reopened(world, b.planId)).toBe(textOf(withB));
    expect(notices).toHaveLength(1);
    expect(foreign.length).toBeGreaterThan(0);
    const copy = (await world.tab().store.list()).find((p) => p.planId !== a.planId);
    expect(copy?.title).toBe('Kitchen (kept from another window)');
    const copyText = await reopened(world, copy?.planId ?? '');
    expect(copyText).toContain('mark-asleep');
    expect(copyText).not.toContain('mark-b');
  });

  test('P3: without locks the last tab to open writes, and the other finds out with its next write', async () => {
    const world = new World(place(), { locks: true });
    const { a, b } = await twoTabs(world);
    expect(b.saveState().state).toBe('saved');
    const withB = addMark(b, 'mark-b');
    await b.flush();
    addMark(a, 'mark-a');
    await a.flush();
    await settle();
    expect(a.saveState()).toEqual(FOLLOWS);
    expect(textOf(a.plan)).toBe(textOf(withB));
    expect(await reopened(world, a.planId)).toBe(textOf(withB));
    expect((await world.tab().store.list()).map((p) => p.title).sort()).toEqual([
      'Kitchen',
      'Kitchen (kept from another window)',
    ]);
  });

  test('P3: without a channel a follower still takes the newest plan when it takes over', async () => {
    const world = new World(place(), { channel: true });
    const { a, b } = await twoTabs(world);
    const withA = addMark(a, 'mark-a');
    await a.flush();
    const taking = b.takeOver();
    await settle();
    world.advance(YIELD_MS);
    expect(textOf(need(await taking))).toBe(textOf(withA));
  });

  test('an edit written while another tab is still opening is not missed', async () => {
    const world = new World(place());
    const a = need(await world.tab().store.create(smallPlan()));
    const opening = world.tab().store.open(a.planId);
    const after = addMark(a, 'mark-a');
    await a.flush();
    const b = need(await opening);
    await settle();
    expect(textOf(b.plan)).toBe(textOf(after));
  });

  test('three tabs: one that takes over wins over one that waits longer', async () => {
    const world = new World(place());
    const { a, b } = await twoTabs(world);
    const c = need(await world.tab().store.open(a.planId));
    need(await c.takeOver());
    await settle();
    expect([a, b, c].map((p) => p.saveState().state)).toEqual(['read-only', 'read-only', 'saved']);
    await c.close();
    await settle();
    expect([a, b].map((p) => p.saveState().state).sort()).toEqual(['read-only', 'saved']);
  });
});
