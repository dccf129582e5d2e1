import type { Id, NewId } from '../../kernel/ids.ts';
import type { ChangeSet } from '../../plan/change-set.ts';
import { groupRecords, lockRecords, ungroupRecords } from '../../plan/edits/groups.ts';
import { labelPlaceOf, resetLabels } from '../../plan/edits/label-places.ts';
import { letRoute } from '../../plan/edits/routes.ts';
import type { AnyRecord } from '../../plan/records/index.ts';
import { circuitOf, onCircuits, sameKind, sameUniverse } from '../same.ts';
import type { SessionState } from '../session.ts';
import { capital, wordsFor } from '../words.ts';
import { type Command, canEditSelection } from './command.ts';

const choose = (
  id: string,
  label: string,
  keys: readonly string[],
  find: (s: SessionState) => readonly Id[],
  none: string,
): Command => ({
  id,
  label,
  keys,
  enabled: (s) => s.selection.size > 0,
  perform: ({ session }) => {
    const found = find(session.getState());
    if (found.length === 0) session.set({ message: none });
    else session.set({ selection: new Set(found), message: `${found.length} selected.` });
  },
});

const holds = (s: SessionState, id: Id, fits: (r: AnyRecord) => boolean): boolean => {
  const r = s.plan.records.get(id);
  return r !== undefined && fits(r);
};

const edit = (
  id: string,
  label: string,
  keys: readonly string[],
  change: (s: SessionState, newId: NewId) => ChangeSet,
  done: string,
  fits: (r: AnyRecord) => boolean,
  least = 1,
): Command => ({
  id,
  label,
  keys,
  enabled: (s) =>
    canEditSelection(s) && s.selection.size >= least && [...s.selection].some((id) => holds(s, id, fits)),
  perform: ({ session }) => {
    const s = session.getState();
    const words = wordsFor(s.plan, s.selection);
    session.commit(`${label} ${words}`, change(s, session.newId));
    session.set({ message: `${capital(words)}: ${done}.` });
  },
});

const cablesOf = (s: SessionState): readonly Id[] =>
  [...s.selection].filter((id) => s.plan.records.get(id)?.type === 'cable');

/** What is chosen, as a whole. */
export const selectionCommands: readonly Command[] = [
  choose(
    'select-kind',
    'Select all of this kind',
    ['KeyK'],
    (s) => sameKind(s.plan, s.floorId, s.selection),
    'Nothing else is of this kind.',
  ),
  choose(
    'select-circuit',
    'Select all on this circuit',
    ['Shift+KeyK'],
    (s) => {
      const circuits = new Set([...s.selection].flatMap((id) => circuitOf(s.plan, id) ?? []));
      return onCircuits(s.plan, circuits);
    },
    'It is not plugged into a circuit.',
  ),
  choose(
    'select-universe',
    'Select all in this universe',
    [],
    (s) => sameUniverse(s.plan, s.selection),
    'It has no address in a universe.',
  ),
  edit(
    'group',
    'Group',
    ['$mod+KeyG'],
    (s, newId) => groupRecords(s.plan, s.selection, newId),
    'grouped',
    () => true,
    2,
  ),
  edit(
    'ungroup',
    'Ungroup',
    ['$mod+Shift+KeyG'],
    (s) => ungroupRecords(s.plan, s.selection),
    'no longer grouped',
    (r) => r.groupId !== undefined,
  ),
  edit(
    'lock',
    'Lock',
    ['KeyL'],
    (s) => lockRecords(s.plan, s.selection, true),
    'locked',
    (r) => !r.locked,
  ),
  edit(
    'unlock',
    'Unlock',
    ['Shift+KeyL'],
    (s) => lockRecords(s.plan, s.selection, false),
    'free to move',
    (r) => r.locked === true,
  ),
  {
    id: 'reset-labels',
    label: 'Let labels find their own place again',
    keys: [],
    enabled: (s) => canEditSelection(s) && [...s.selection].some((id) => labelPlaceOf(s.plan, id)),
    perform: ({ session }) => {
      const { plan, selection } = session.getState();
      session.commit('Let labels find their place', resetLabels(plan, selection));
    },
  },
  {
    id: 'let-route',
    label: 'Lay the cable by itself again',
    keys: [],
    enabled: (s) => !s.readOnly && cablesOf(s).length > 0,
    perform: ({ session }) => {
      const s = session.getState();
      session.commit('Lay a cable by itself', letRoute(s.plan, cablesOf(s)));
    },
  },
];
