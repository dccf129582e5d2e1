import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { serialisePlan } from '../../src/plan/file.ts';
import { loadPlan } from '../../src/storage/load.ts';
import type { Medium, Part, StoredPlan } from '../../src/storage/medium.ts';
import { type MemoryShelf, memoryMedium } from '../../src/storage/memory-medium.ts';
import { SNAPSHOT_EVERY } from '../../src/storage/stored-plan.ts';
import { smallPlan } from '../support/small-plan.ts';
import { addMark, need, textOf, World } from '../support/storage-world.ts';

/** A plan stored with two snapshots and some entries after each, and the text of the plan after every entry. */
const storedPlan = async (
  more = 5,
): Promise<{ stored: StoredPlan; texts: string[]; medium: Medium; shelf: MemoryShelf; world: World }> => {
  const shelf: MemoryShelf = new Map();
  const medium = memoryMedium(shelf);
  const world = new World(() => medium);
  const open = need(await world.tab().store.create(smallPlan('Kitchen', 1)));
  const texts = [textOf(open.plan)];
  for (let i = 0; i < SNAPSHOT_EVERY + more; i++) {
    texts.push(textOf(addMark(open, `mark-n${i % 7}`, `name ${i}`)));
    await open.flush();
  }
  await open.close();
  const stored = await medium.read(open.planId);
  if (!stored) throw new Error('nothing stored');
  return { stored, texts, medium, shelf, world };
};

const swap = (parts: readonly Part[], seq: number, change: (p: Part) => Part | undefined): readonly Part[] =>
  parts.flatMap((p) => (p.seq === seq ? (change(p) ?? []) : p));

const flipBit = (text: string, bit: number): string => {
  const i = Math.floor(bit / 16) % text.length;
  return text.slice(0, i) + String.fromCharCode(text.charCodeAt(i) ^ (1 << (bit % 16))) + text.slice(i + 1);
};

const indexOfLoaded = (stored: StoredPlan, texts: readonly string[]): number => {
  const loaded = need(loadPlan(stored));
  return texts.indexOf(serialisePlan(loaded.plan));
};

describe('a damaged store', () => {
  test('P2: a damaged newest snapshot loses nothing: the older one and the entries are used', async () => {
    const { stored, texts } = await storedPlan();
    const newest = Math.max(...stored.snapshots.map((s) => s.seq));
    const snapshots = swap(stored.snapshots, newest, (p) => ({ ...p, text: p.text.slice(0, 100) }));
    const loaded = need(loadPlan({ ...stored, snapshots }));
    expect(serialisePlan(loaded.plan)).toBe(texts.at(-1));
    expect(loaded.notices.join()).toMatch(/nothing is lost/);
    expect(loaded.needsSnapshot).toBe(true);
  });

  test('P2: any flipped bit in a snapshot or an entry is found', async () => {
    const { stored, texts } = await storedPlan();
    const last = texts.length - 1;
    const parts = [
      ...stored.snapshots.map((p) => ['snapshots', p] as const),
      ...stored.entries.filter((e) => e.seq > SNAPSHOT_EVERY).map((p) => ['entries', p] as const),
    ];
    fc.assert(
      fc.property(fc.constantFrom(...parts), fc.nat(), ([where, part], bit) => {
        const damaged = {
          ...stored,
          [where]: swap(stored[where], part.seq, (p) => ({ ...p, text: flipBit(p.text, bit) })),
        };
        const at = indexOfLoaded(damaged, texts);
        expect(at).toBe(where === 'snapshots' ? last : part.seq - 1);
      }),
      { numRuns: 200 },
    );
  });

  test('P2: the last entry cut at every length gives the plan before it', async () => {
    const { stored, texts } = await storedPlan(2);
    const last = stored.head.seq;
    const text = stored.entries.find((e) => e.seq === last)?.text ?? '';
    expect(text.length).toBeGreaterThan(50);
    for (let n = 0; n < text.length; n++) {
      const entries = swap(stored.entries, last, (p) => ({ ...p, text: text.slice(0, n) }));
      expect(indexOfLoaded({ ...stored, entries }, texts)).toBe(last - 1);
    }
  });

  test('P2: the newest snapshot cut at any length gives the whole plan from the older one', async () => {
    const { stored, texts } = await storedPlan(2);
    const snapshot = stored.snapshots.find((s) => s.seq === SNAPSHOT_EVERY);
    if (!snapshot) throw new Error('no snapshot');
    for (let n = 0; n < snapshot.text.length; n += 37) {
      const snapshots = swap(stored.snapshots, SNAPSHOT_EVERY, (p) => ({ ...p, text: p.text.slice(0, n) }));
      expect(indexOfLoaded({ ...stored, snapshots }, texts)).toBe(texts.length - 1);
    }
  });

  test('P2: any loss of entries gives an earlier plan as it was, never a mix', async () => {
    const { stored, texts } = await storedPlan();
    fc.assert(
      fc.property(fc.subarray([...stored.entries]), fc.boolean(), (entries, both) => {
        const snapshots = both ? stored.snapshots : stored.snapshots.filter((s) => s.seq === 0);
        expect(indexOfLoaded({ ...stored, entries, snapshots }, texts)).toBeGreaterThanOrEqual(
          both ? SNAPSHOT_EVERY : 0,
        );
      }),
      { numRuns: 200 },
    );
  });

  test('P2: opening changes nothing but the epoch; the next edit puts the damaged part aside', async () => {
    const { stored, texts, medium, world, shelf } = await storedPlan();
    const { planId } = stored.head;
    const lost = stored.head.seq - 1;
    const kept = shelf.get(planId);
    const good = kept?.entries.get(lost);
    if (!kept || !good) throw new Error('nothing kept');
    kept.entries.set(lost, { ...good, text: flipBit(good.text, 99) });
    const before = await medium.read(planId);

    const open = need(await world.tab().store.open(planId));
    expect(textOf(open.plan)).toBe(texts[lost - 1]);
    expect(open.notices.join()).toMatch(/last changes \(2 saves\)/);
    const opened = await medium.read(planId);
    expect({ ...opened, head: undefined }).toEqual({ ...before, head: undefined });
    expect(await medium.damaged(planId)).toEqual([]);

    const after = addMark(open, 'mark-after');
    await open.close();
    expect((await medium.damaged(planId)).map((d) => [d.what, d.part.seq])).toEqual([
      ['entry', lost],
      ['entry', lost + 1],
    ]);
    const again = need(await world.tab().store.open(planId));
    expect(textOf(again.plan)).toBe(textOf(after));
    expect(again.notices).toEqual([]);
  });

  test('P2: a plan without any whole snapshot is refused with words, kept, and given as text', async () => {
    const { stored, medium, world, shelf } = await storedPlan();
    const { planId } = stored.head;
    const kept = shelf.get(planId);
    if (!kept) throw new Error('nothing kept');
    for (const [seq, p] of kept.snapshots) kept.snapshots.set(seq, { ...p, text: p.text.slice(1) });
    const before = await medium.read(planId);
    const { store } = world.tab();
    expect(await store.open(planId)).toMatchObject({
      ok: false,
      error: { todo: expect.stringContaining('kept') },
    });
    expect(await medium.read(planId)).toEqual(before);
    expect(need(await store.salvage(planId))).toContain('mark-n3');
  });
});
