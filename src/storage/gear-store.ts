import { openDB } from 'idb';

const DATABASE = 'lampwright-gear';
const STORE = 'books';
const KEY = 'own';

/** Where a person's own gear book is kept between sessions, apart from the plans. */
export interface GearStore {
  /** The book's text as last saved; undefined where there is none yet. */
  load(): Promise<string | undefined>;
  save(text: string): Promise<void>;
}

/** The own gear book in this browser. */
export const browserGearStore = (): GearStore => {
  const database = openDB(DATABASE, 1, { upgrade: (db) => void db.createObjectStore(STORE) });
  return {
    load: async () => (await (await database).get(STORE, KEY)) as string | undefined,
    save: async (text) => {
      const tx = (await database).transaction(STORE, 'readwrite', { durability: 'strict' });
      await Promise.all([tx.store.put(text, KEY), tx.done]);
    },
  };
};

/** For a browser without storage: the book lasts as long as the page. */
export const noGearStore: GearStore = { load: async () => undefined, save: async () => {} };
