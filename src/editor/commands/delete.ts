import { removeRecords } from '../../plan/edits/arrange.ts';
import { capital, unpluggedWords, wordsFor } from '../words.ts';
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
    const now = session.getState().plan;
    const kept = [...selection].some((id) => now.records.get(id)?.locked);
    const off = unpluggedWords(plan, now);
    session.set({
      message: kept
        ? `What is locked was kept.${off}`
        : `${capital(words)} deleted.${off} Undo brings it back.`,
    });
  },
};
