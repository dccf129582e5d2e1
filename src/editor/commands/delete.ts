import { removeRecords } from '../../plan/edits/arrange.ts';
import { capital, wordsFor } from '../words.ts';
import { type Command, canEditSelection } from './command.ts';

export const deleteSelection: Command = {
  id: 'delete',
  label: 'Delete',
  keys: ['Delete', 'Backspace'],
  enabled: canEditSelection,
  perform: ({ session }) => {
    const { plan, selection } = session.getState();
    const words = wordsFor(plan, selection);
    session.commit(`Delete ${words}`, removeRecords(plan, selection));
    const kept = [...selection].some((id) => session.getState().plan.records.get(id)?.locked);
    session.set({
      message: kept ? 'What is locked was kept.' : `${capital(words)} deleted. Undo brings it back.`,
    });
  },
};
