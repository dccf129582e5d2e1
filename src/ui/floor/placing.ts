import type { Book } from '../../editor/book.ts';
import type { Session } from '../../editor/session.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { placeBox, placeFixture, placeSource, placeStand } from '../../plan/edits/place.ts';
import type { Kind } from '../../plan/kinds/kinds.ts';

const START_HEIGHT_MM = 2000;

/** Puts a kind at the centre of the view and selects it: the way to place without a mouse. */
export const placeKind = (session: Session, book: Book, kind: Kind): void => {
  const { plan, floorId, camera, readOnly } = session.getState();
  if (!floorId || readOnly) return;
  const at = { xMm: Math.round(camera.center.xMm), yMm: Math.round(camera.center.yMm) };
  let made: { readonly changes: ChangeSet; readonly id: string } | undefined;
  if (kind.family === 'fixture') {
    const ballast = kind.needsBallast ? book.ballastFor(kind.slug) : undefined;
    const r = placeFixture(
      plan,
      { kind, ballast, floorId, at, heightMm: START_HEIGHT_MM, facingDeg: 270 },
      session.newId,
    );
    made = { changes: r.changes, id: r.fixture.id };
  } else if (kind.family === 'stand') {
    const r = placeStand(plan, kind, floorId, at, session.newId);
    made = { changes: r.changes, id: r.stand.id };
  } else if (kind.family === 'box') {
    const r = placeBox(plan, kind, floorId, at, session.newId);
    made = { changes: r.changes, id: r.box.id };
  } else if (kind.family === 'source') {
    const r = placeSource(plan, kind, floorId, at, session.newId);
    made = { changes: r.changes, id: r.source.id };
  }
  if (!made) return;
  session.commit(`Place ${kind.name}`, made.changes);
  session.set({ selection: new Set([made.id]), placing: undefined, tool: 'select' });
};
