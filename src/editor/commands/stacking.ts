import { hiddenOn, hideRecords, type StackWay, stackRecords } from '../../plan/edits/stacking.ts';
import { capital, wordsFor } from '../words.ts';
import { type Command, canEdit, canEditSelection } from './command.ts';

const stack = (way: StackWay, label: string, key: string): Command => ({
  id: `stack-${way}`,
  label,
  keys: [key],
  enabled: canEditSelection,
  perform: ({ session }) => {
    const { plan, selection } = session.getState();
    session.commit(`${label}: ${wordsFor(plan, selection)}`, stackRecords(plan, selection, way));
  },
});

/** What lies above what on the drawing, and what is not shown on it at all. */
export const stackingCommands: readonly Command[] = [
  stack('front', 'Bring to the front', 'Shift+PageUp'),
  stack('back', 'Send to the back', 'Shift+PageDown'),
  stack('forward', 'Bring forward', 'Alt+PageUp'),
  stack('backward', 'Send backward', 'Alt+PageDown'),
  {
    id: 'hide',
    label: 'Hide from the drawing',
    keys: ['KeyH'],
    enabled: canEditSelection,
    perform: ({ session }) => {
      const { plan, selection } = session.getState();
      const words = wordsFor(plan, selection);
      session.commit(`Hide ${words}`, hideRecords(plan, selection, true));
      session.set({
        selection: new Set(),
        message: `${capital(words)} hidden. It still counts; lists and figures have it.`,
      });
    },
  },
  {
    id: 'show',
    label: 'Show what is selected and hidden',
    keys: [],
    enabled: (s) => canEditSelection(s) && [...s.selection].some((id) => s.plan.records.get(id)?.hidden),
    perform: ({ session }) => {
      const { plan, selection } = session.getState();
      session.commit(`Show ${wordsFor(plan, selection)}`, hideRecords(plan, selection, false));
    },
  },
  {
    id: 'show-all',
    label: 'Show everything hidden on this floor',
    keys: ['KeyU'],
    enabled: (s) => canEdit(s) && hiddenOn(s.plan, s.floorId).length > 0,
    perform: ({ session }) => {
      const { plan, floorId } = session.getState();
      const ids = new Set(hiddenOn(plan, floorId));
      session.commit(`Show ${wordsFor(plan, ids)}`, hideRecords(plan, ids, false));
      session.set({ selection: ids, message: `${ids.size} shown again.` });
    },
  },
];
