import { useStore } from 'zustand';
import type { Session, SessionState } from '../editor/session.ts';

/** A part of the session's state; renders again only when that part is another. */
export const useSession = <T>(session: Session, select: (s: SessionState) => T): T =>
  useStore(session, select);
