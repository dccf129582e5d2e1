import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { DamagedPart, Head, Medium, Part, Write } from './medium.ts';

interface Schema extends DBSchema {
  heads: { key: string; value: Head };
  snapshots: { key: [string, number]; value: Part };
  entries: { key: [string, number]; value: Part };
  damaged: { key: number; value: DamagedPart; indexes: { planId: string } };
}

const STORES = ['heads', 'snapshots', 'entries', 'damaged'] as const;
type Stores = (typeof STORES)[number][];
type WriteTransaction = IDBPTransaction<Schema, Stores, 'readwrite'>;

const BLOCKED_AFTER_MS = 5000;

const connect = (name: string, onClosed: () => void): Promise<IDBPDatabase<Schema>> => {
  const opening = openDB<Schema>(name, 1, {
    upgrade: (db) => {
      db.createObjectStore('heads', { keyPath: 'planId' });
      db.createObjectStore('snapshots', { keyPath: ['planId', 'seq'] });
      db.createObjectStore('entries', { keyPath: ['planId', 'seq'] });
      db.createObjectStore('damaged', { autoIncrement: true }).createIndex('planId', 'part.planId');
    },
    // A newer program in another tab waits to raise the version: let it.
    blocking: (_now, _next, event) => {
      (event.target as IDBDatabase).close();
      onClosed();
    },
    terminated: onClosed,
  });
  const tooLong = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new DOMException('another window holds it', 'BlockedError')), BLOCKED_AFTER_MS);
  });
  return Promise.race([opening, tooLong]);
};

/** All entries or snapshots of one plan have keys between these. */
const ofPlan = (planId: string): IDBKeyRange => IDBKeyRange.bound([planId], [planId, []]);

/** Asks for all of a write. Each request is watched, so that none fails unheard when a later one cannot be asked for. */
const requests = (tx: WriteTransaction, planId: string, w: Write): Promise<unknown>[] => {
  const snapshots = tx.objectStore('snapshots');
  const entries = tx.objectStore('entries');
  const all: Promise<unknown>[] = [];
  const ask = (request: Promise<unknown>): void => {
    request.catch(() => undefined);
    all.push(request);
  };
  for (const d of w.aside ?? []) {
    ask(tx.objectStore('damaged').add(d));
    ask((d.what === 'snapshot' ? snapshots : entries).delete([planId, d.part.seq]));
  }
  if (w.dropBefore !== undefined) {
    ask(snapshots.delete(IDBKeyRange.bound([planId], [planId, w.dropBefore], false, true)));
    ask(entries.delete(IDBKeyRange.bound([planId], [planId, w.dropBefore])));
  }
  if (w.entry) ask(entries.put(w.entry));
  if (w.snapshot) ask(snapshots.put(w.snapshot));
  ask(tx.objectStore('heads').put(w.head));
  return all;
};

const update = async (
  db: IDBPDatabase<Schema>,
  planId: string,
  make: (head: Head | undefined) => Write | undefined,
): Promise<Head | undefined> => {
  const tx = db.transaction(STORES as unknown as Stores, 'readwrite', { durability: 'strict' });
  const done = tx.done.then(
    () => ({ failure: undefined }),
    (failure: unknown) => ({ failure: failure ?? new DOMException('the write was undone', 'AbortError') }),
  );
  let first: { readonly error: unknown } | undefined;
  let written: Head | undefined;
  try {
    const w = make(await tx.objectStore('heads').get(planId));
    if (w) {
      written = w.head;
      const all = requests(tx, planId, w);
      for (const r of await Promise.allSettled(all)) {
        if (r.status === 'rejected') first ??= { error: r.reason };
      }
      if (first) throw first.error;
    }
  } catch (error) {
    first ??= { error };
    try {
      tx.abort();
    } catch {
      // The browser undid it already.
    }
  }
  const { failure } = await done;
  if (first) throw first.error;
  if (failure) throw failure;
  return written;
};

/** Plans in this browser's IndexedDB. Writes ask for strict durability. */
export const idbMedium = (name = 'lampwright'): Medium => {
  let connection: Promise<IDBPDatabase<Schema>> | undefined;
  const db = (): Promise<IDBPDatabase<Schema>> => {
    if (!connection) {
      const mine = connect(name, () => {
        if (connection === mine) connection = undefined;
      });
      connection = mine;
      mine.catch(() => {
        if (connection === mine) connection = undefined;
      });
    }
    return connection;
  };
  return {
    heads: async () => (await db()).getAll('heads'),
    read: async (planId) => {
      const tx = (await db()).transaction(['heads', 'snapshots', 'entries']);
      const [head, snapshots, entries] = await Promise.all([
        tx.objectStore('heads').get(planId),
        tx.objectStore('snapshots').getAll(ofPlan(planId)),
        tx.objectStore('entries').getAll(ofPlan(planId)),
        tx.done,
      ]);
      return head && { head, snapshots, entries };
    },
    damaged: async (planId) => (await db()).getAllFromIndex('damaged', 'planId', planId),
    update: async (planId, make) => update(await db(), planId, make),
  };
};
