import { duplicateRecords } from '../../plan/edits/duplicate.ts';
import { OPTIONS } from '../options.ts';
import { wordsFor } from '../words.ts';
import { type Command, canEditSelection } from './command.ts';

/** Copies the selection to the side and selects the copies. */
export const duplicate: Command = {
  id: 'duplicate',
  label: 'Duplicate',
  keys: ['$mod+KeyD'],
  enabled: canEditSelection,
  perform: ({ session }) => {
    const { plan, selection } = session.getState();
    const by = { xMm: OPTIONS.duplicateMm, yMm: OPTIONS.duplicateMm };
    const { changes, copies } = duplicateRecords(plan, selection, by, session.newId);
    if (copies.size === 0) {
      session.set({ message: 'Cables and wall outlets are not copied: run or place new ones.' });
      return;
    }
    session.commit(`Duplicate ${wordsFor(plan, selection)}`, changes);
    const after = session.getState().plan;
    session.set({ selection: new Set([...copies].filter((id) => after.records.has(id))) });
  },
};
