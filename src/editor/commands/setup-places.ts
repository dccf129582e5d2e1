import { moveOnlyHere, placeEverywhere, stayHere } from '../../plan/edits/moves.ts';
import { isMovable, moveOf, wholePlan } from '../../plan/moves.ts';
import { recordOf, setupsOf } from '../../plan/plan.ts';
import { wholeSession } from '../on-setup.ts';
import type { SessionState } from '../session.ts';
import { capital, wordsFor } from '../words.ts';
import { type Command, canEditSelection } from './command.ts';

const movable = (s: SessionState): readonly string[] =>
  [...s.selection].filter((id) => isMovable(s.plan.records.get(id)));

const own = (s: SessionState): readonly string[] =>
  movable(s).filter((id) => moveOf(wholePlan(s.plan), s.setupId, id) !== undefined);

/** A place of its own in the chosen setup for what is selected, or back to the one it has in every setup. */
export const setupPlaceCommands: readonly Command[] = [
  {
    id: 'own-place',
    label: 'Its own place in this setup, or back to the usual one',
    keys: ['Shift+KeyS'],
    enabled: (s) => canEditSelection(s) && setupsOf(s.plan).length > 1 && movable(s).length > 0,
    perform: ({ session }) => {
      const whole = wholeSession(session);
      const s = whole.getState();
      if (s.setupId === undefined) return;
      const words = wordsFor(s.plan, movable(s));
      const setup = recordOf(s.plan, 'setup', s.setupId)?.name ?? '';
      if (own(s).length > 0) {
        whole.commit(`Usual place in ${setup}: ${words}`, stayHere(s.plan, s.setupId, movable(s)));
        session.set({ message: `${capital(words)} is in ${setup} where it always is.` });
      } else {
        whole.commit(`Own place in ${setup}: ${words}`, moveOnlyHere(s.plan, s.setupId, movable(s)));
        session.set({ message: `${capital(words)} moves in ${setup} only from now on.` });
      }
    },
  },
  {
    id: 'place-everywhere',
    label: 'Use the place of this setup in every setup',
    keys: [],
    enabled: (s) => canEditSelection(s) && own(s).length > 0,
    perform: ({ session }) => {
      const whole = wholeSession(session);
      const s = whole.getState();
      if (s.setupId === undefined) return;
      whole.commit(
        `Same place in every setup: ${wordsFor(s.plan, own(s))}`,
        placeEverywhere(s.plan, s.setupId, own(s)),
      );
    },
  },
];
