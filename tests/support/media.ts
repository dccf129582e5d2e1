import 'fake-indexeddb/auto';
import { idbMedium } from '../../src/storage/idb-medium.ts';
import type { Medium } from '../../src/storage/medium.ts';
import { type MemoryShelf, memoryMedium } from '../../src/storage/memory-medium.ts';

let databases = 0;

/** Both media, each as a maker of media over one shared place, as tabs of one browser have. */
export const media: readonly (readonly [string, () => () => Medium])[] = [
  [
    'memory',
    () => {
      const shelf: MemoryShelf = new Map();
      return () => memoryMedium(shelf);
    },
  ],
  [
    'IndexedDB',
    () => {
      const name = `test-${++databases}`;
      return () => idbMedium(name);
    },
  ],
];
