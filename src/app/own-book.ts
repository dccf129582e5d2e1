import { emptyBook, readBook, serialiseBook } from '../gear/index.ts';
import { fail, ok, problemText } from '../kernel/result.ts';
import type { GearStore } from '../storage/gear-store.ts';
import type { OwnBookService } from '../ui/services.ts';

/** Reads the kept book. A book that cannot be read stays as it is in the store and nothing is written over it. */
export const openOwnBook = async (store: GearStore): Promise<OwnBookService> => {
  const listeners = new Set<() => void>();
  const notices: string[] = [];
  let book = emptyBook;
  let locked = false;
  try {
    const text = await store.load();
    const read =
      text === undefined
        ? ok({ book: emptyBook, notices: [], newer: false })
        : readBook(text, 'Your gear book');
    if (read.ok) {
      book = read.value.book;
      notices.push(...read.value.notices);
      locked = read.value.newer;
    } else {
      notices.push(problemText(read.error));
      locked = true;
    }
  } catch (cause) {
    notices.push(
      `Your gear book could not be read: ${cause instanceof Error ? cause.message : 'unknown error'}.`,
    );
    locked = true;
  }
  return {
    notices,
    get: () => book,
    subscribe: (l) => {
      listeners.add(l);
      return () => listeners.delete(l);
    },
    set: async (next) => {
      if (locked) {
        return fail({
          what: 'Your gear book could not be read, so nothing is written over it.',
          todo: 'Update the program, or export the kept book first.',
        });
      }
      try {
        await store.save(serialiseBook(next));
      } catch (cause) {
        return fail({
          what: `Your gear book could not be kept: ${cause instanceof Error ? cause.message : 'unknown error'}.`,
          todo: 'Free some space and try again.',
        });
      }
      book = next;
      for (const l of listeners) l();
      return ok(undefined);
    },
  };
};
