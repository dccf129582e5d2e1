import type { FloorAsk } from '../../editor/floor-view.ts';
import type { Session } from '../../editor/session.ts';
import type { Id } from '../../kernel/ids.ts';

/** Opens a dialog of the floor about one record. */
export const askAbout = (session: Session, ask: FloorAsk, id: Id): void =>
  session.set({ floorView: { ...session.getState().floorView, ask, askFor: id } });
