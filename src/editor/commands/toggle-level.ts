import { setLevels } from '../../plan/edits/document.ts';
import { levelOf, type Plan, recordOf } from '../../plan/plan.ts';
import type { SessionState } from '../session.ts';
import { wordsFor } from '../words.ts';
import type { Command } from './command.ts';

const unitsOf = (s: SessionState): readonly string[] =>
  [...s.selection].filter((id) => recordOf(s.plan, 'fixture', id) !== undefined);

const allOff = (plan: Plan, setupId: string, ids: readonly string[]): boolean =>
  ids.every((id) => levelOf(plan, setupId, id).levelPct === 0);

/** Off in this setup; full again where all of them are off. */
export const toggleLevel: Command = {
  id: 'toggle-level',
  label: 'Off or full in this setup',
  keys: ['KeyO'],
  enabled: (s) => !s.readOnly && s.setupId !== undefined && unitsOf(s).length > 0,
  perform: ({ session }) => {
    const s = session.getState();
    if (s.setupId === undefined) return;
    const ids = unitsOf(s);
    const levelPct = allOff(s.plan, s.setupId, ids) ? 100 : 0;
    const setup = recordOf(s.plan, 'setup', s.setupId)?.name ?? '';
    session.commit(
      `${levelPct === 0 ? 'Off' : 'Full'} in ${setup}: ${wordsFor(s.plan, ids)}`,
      setLevels(s.plan, s.setupId, ids, levelPct),
    );
  },
};
