import type { FloorAsk } from '../floor-view.ts';
import type { SessionState } from '../session.ts';
import { type Command, canEditSelection } from './command.ts';

const asks = (
  id: string,
  ask: FloorAsk,
  label: string,
  keys: readonly string[],
  enabled: (s: SessionState) => boolean,
): Command => ({
  id,
  label,
  keys,
  enabled,
  perform: ({ session }) => session.set({ floorView: { ...session.getState().floorView, ask } }),
});

const hasUnit = (s: SessionState): boolean =>
  canEditSelection(s) && [...s.selection].some((id) => s.plan.records.get(id)?.type === 'fixture');

/** What a dialog asks more about before it is done to the selection. */
export const plottingCommands: readonly Command[] = [
  asks('renumber', 'renumber', 'Number units by a rule…', ['Shift+KeyN'], hasUnit),
  asks('turn-about', 'turn', 'Turn together about a point…', ['Alt+KeyR'], canEditSelection),
];
