import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { useShallow } from 'zustand/react/shallow';
import type { Session, SessionState } from '../editor/session.ts';
import { useServices } from './services.ts';

/** A slice of the session; the component renders again only when the slice changes. */
export const useSessionSlice = <T>(select: (s: SessionState) => T): T => {
  const { session } = useServices();
  return useStore(asStore(session), useShallow(select));
};

/** A session has the three members a store needs; it never takes writes through `setState`. */
const asStore = (session: Session) => ({
  getState: session.getState,
  getInitialState: session.getInitialState,
  subscribe: session.subscribe,
});

/** A value that follows another after it has been still for a while. */
export const useSettled = <T>(value: T, ms: number): T => {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const t = setTimeout(() => setSettled(value), ms);
    return () => clearTimeout(t);
  }, [value, ms]);
  return settled;
};
