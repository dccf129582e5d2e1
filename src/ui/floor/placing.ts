import type { Book } from '../../editor/book.ts';
import { placeThere } from '../../editor/placing.ts';
import type { Session } from '../../editor/session.ts';
import { problemText } from '../../kernel/result.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';

/** Puts a kind at the centre of the view and selects it: the way to place without a mouse. */
export const placeKind = (session: Session, book: Book, kind: Kind): void => {
  const { plan, floorId, camera, readOnly } = session.getState();
  if (!floorId || readOnly) return;
  const at = { xMm: Math.round(camera.center.xMm), yMm: Math.round(camera.center.yMm) };
  const made = placeThere(plan, book, { slug: kind.slug, floorId, at, facingDeg: 270 }, session.newId);
  if (!made.ok) return session.set({ message: problemText(made.error) });
  session.commit(`Place ${made.value.name}`, made.value.changes);
  session.set({ selection: new Set([made.value.id]), placing: undefined, tool: 'select', message: '' });
};
