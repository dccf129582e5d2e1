import { placeMark } from '../../plan/edits/place.ts';
import { keyboardSpot } from '../pointer-spot.ts';
import { type Command, canEdit } from './command.ts';

const add = (what: 'camera' | 'talent' | 'note', label: string, keys: readonly string[]): Command => ({
  id: `add-${what}`,
  label,
  keys,
  enabled: (s) => canEdit(s) && s.floorId !== undefined,
  perform: ({ session }) => {
    const { plan, floorId } = session.getState();
    if (floorId === undefined) return;
    const at = keyboardSpot(session);
    const made = placeMark(plan, what, floorId, at, session.newId);
    session.commit(label, made.changes);
    session.set({ selection: new Set([made.mark.id]), tool: 'select', placing: undefined });
  },
});

/** Spots that matter, put under the pointer or at the centre of the view, to be dragged from there. */
export const marks: readonly Command[] = [
  add('talent', 'Add an actor’s mark', ['KeyM']),
  add('camera', 'Add a camera', ['Shift+KeyM']),
  add('note', 'Add a note', ['KeyN']),
];
