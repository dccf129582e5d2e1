import type { Session } from '../../editor/session.ts';

/** Closes the dialog that a command asked for. */
export const closeAsk = (session: Session): void =>
  session.set({
    floorView: {
      ...session.getState().floorView,
      ask: undefined,
      askAt: undefined,
      outletAt: undefined,
      askFor: undefined,
    },
  });
