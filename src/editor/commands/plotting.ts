import { noChanges } from '../../plan/change-set.ts';
import { hangLine, hangOn, lineUnder } from '../../plan/edits/hang.ts';
import { fixturePlace, recordOf, recordsOf } from '../../plan/plan.ts';
import { chainEdits } from '../chain.ts';
import type { FloorAsk } from '../floor-view.ts';
import { OPTIONS } from '../options.ts';
import type { SessionState } from '../session.ts';
import { wordsFor } from '../words.ts';
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

/** Hangs each selected unit on the tube or truss it is over or beside. */
const hang: Command = {
  id: 'hang',
  label: 'Hang on the tube beside it',
  keys: ['Alt+KeyT'],
  enabled: (s) => hasUnit(s) && recordsOf(s.plan, 'rigging').some((r) => hangLine(s.plan, r) !== undefined),
  perform: ({ session }) => {
    const { plan, selection, floorId } = session.getState();
    const units = [...selection].flatMap((id) => recordOf(plan, 'fixture', id) ?? []);
    let left = 0;
    const changes = chainEdits(plan, units, (at, f) => {
      const line = lineUnder(at, floorId ?? '', fixturePlace(at, f).at, OPTIONS.hangReachMm);
      if (!line) left++;
      return line ? hangOn(at, [f.id], line.rigging.id) : noChanges;
    });
    session.commit(`Hang ${wordsFor(plan, selection)}`, changes);
    if (left > 0) session.set({ message: `${left} of them have no tube or truss beside them.` });
  },
};

/** What a dialog asks more about before it is done to the selection. */
export const plottingCommands: readonly Command[] = [
  asks('renumber', 'renumber', 'Number units by a rule…', ['Shift+KeyN'], hasUnit),
  hang,
  asks('turn-about', 'turn', 'Turn together about a point…', ['Alt+KeyR'], canEditSelection),
];
