import type { Book } from '../../editor/book.ts';
import { placeThere } from '../../editor/placing.ts';
import { keyboardSpot } from '../../editor/pointer-spot.ts';
import type { Session } from '../../editor/session.ts';
import { problemText } from '../../kernel/result.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';

/** Puts a kind under the pointer, or at the centre of the view, and selects it: the way to place from the keyboard. */
export const placeKind = (session: Session, book: Book, kind: Kind): void => {
  const { plan, floorId, readOnly } = session.getState();
  if (!floorId || readOnly) return;
  const at = keyboardSpot(session);
  const made = placeThere(plan, book, { slug: kind.slug, floorId, at, facingDeg: 270 }, session.newId);
  if (!made.ok) return session.set({ message: problemText(made.error) });
  session.commit(`Place ${made.value.name}`, made.value.changes);
  session.set({ selection: new Set([made.value.id]), placing: undefined, tool: 'select', message: '' });
};
