import { useSyncExternalStore } from 'react';
import type { UserBook } from '../../gear/index.ts';
import { useServices } from '../services.ts';

/** The person's own book as it is now. */
export const useOwnBook = (): UserBook => {
  const { ownBook } = useServices();
  return useSyncExternalStore(ownBook.subscribe, ownBook.get);
};
