import type { DamagedPart, Head, Medium, Part, StoredPlan, Write } from './medium.ts';

interface Kept {
  head: Head;
  readonly snapshots: Map<number, Part>;
  readonly entries: Map<number, Part>;
  readonly damaged: DamagedPart[];
}

/** What a memory medium holds. Several media over one of these stand for several tabs. */
export type MemoryShelf = Map<string, Kept>;

const apply = (shelf: MemoryShelf, planId: string, w: Write): void => {
  const kept: Kept = shelf.get(planId) ?? {
    head: w.head,
    snapshots: new Map(),
    entries: new Map(),
    damaged: [],
  };
  kept.head = w.head;
  for (const d of w.aside ?? []) {
    (d.what === 'snapshot' ? kept.snapshots : kept.entries).delete(d.part.seq);
    kept.damaged.push(d);
  }
  if (w.dropBefore !== undefined) {
    for (const seq of kept.snapshots.keys()) if (seq < w.dropBefore) kept.snapshots.delete(seq);
    for (const seq of kept.entries.keys()) if (seq <= w.dropBefore) kept.entries.delete(seq);
  }
  if (w.entry) kept.entries.set(w.entry.seq, w.entry);
  if (w.snapshot) kept.snapshots.set(w.snapshot.seq, w.snapshot);
  shelf.set(planId, kept);
};

/** Keeps plans as long as the program runs: for tests, and where the browser gives no storage. */
export const memoryMedium = (shelf: MemoryShelf = new Map()): Medium => ({
  heads: async () => [...shelf.values()].map((k) => k.head),
  read: async (planId): Promise<StoredPlan | undefined> => {
    const kept = shelf.get(planId);
    return (
      kept && {
        head: kept.head,
        snapshots: [...kept.snapshots.values()],
        entries: [...kept.entries.values()],
      }
    );
  },
  damaged: async (planId) => [...(shelf.get(planId)?.damaged ?? [])],
  update: async (planId, make) => {
    const w = make(shelf.get(planId)?.head);
    if (w) apply(shelf, planId, w);
    return w?.head;
  },
});
