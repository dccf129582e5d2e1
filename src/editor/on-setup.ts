import { fromSetup } from '../plan/edits/moves.ts';
import { planInSetup } from '../plan/moves.ts';
import type { Session, SessionState } from './session.ts';

const sessions = new WeakMap<Session, Session>();
const wholes = new WeakMap<Session, Session>();

/**
 * A session as the floor sees it: its plan is the plan as it stands in the chosen setup, so that tools, commands and
 * panels work on what is drawn. What they commit goes back into the whole plan: the new place of something that has its own
 * place in this setup into its move, everything else as it is. Where nothing moves in the setup it is the session itself.
 */
export const onSetup = (session: Session): Session => {
  const known = sessions.get(session);
  if (known) return known;
  const states = new WeakMap<SessionState, SessionState>();
  const seen = (s: SessionState): SessionState => {
    let to = states.get(s);
    if (!to) {
      const plan = planInSetup(s.plan, s.setupId);
      to = plan === s.plan ? s : { ...s, plan };
      states.set(s, to);
    }
    return to;
  };
  const made: Session = {
    ...session,
    getState: () => seen(session.getState()),
    subscribe: (l) => session.subscribe((s, p) => l(seen(s), seen(p))),
    commit: (label, changes) => {
      const { plan, setupId } = session.getState();
      session.commit(label, fromSetup(plan, setupId, changes));
    },
  };
  sessions.set(session, made);
  // Asked for a second time, it is the same one.
  sessions.set(made, made);
  wholes.set(made, session);
  return made;
};

/** The session with the whole plan behind one of `onSetup`; any other session itself. */
export const wholeSession = (session: Session): Session => wholes.get(session) ?? session;
