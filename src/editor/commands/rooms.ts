import { nearestOnSegment } from '../../kernel/geometry.ts';
import { problemText } from '../../kernel/result.ts';
import { alongWall } from '../../plan/edits/openings.ts';
import { joinWalls, splitWall } from '../../plan/edits/walls.ts';
import { recordOf } from '../../plan/plan.ts';
import type { Opening } from '../../plan/records/index.ts';
import type { SessionState } from '../session.ts';
import { type Command, canEdit } from './command.ts';

export const addRoomCommand: Command = {
  id: 'add-room',
  label: 'Add a rectangular room…',
  keys: ['Shift+KeyW'],
  enabled: (s) => canEdit(s) && s.floorId !== undefined,
  perform: ({ session }) => session.set({ floorView: { ...session.getState().floorView, ask: 'room' } }),
};

const opening = (what: Opening['what'], keys: readonly string[]): Command => ({
  id: `tool-${what}`,
  label: `Place ${what === 'archway' ? 'archways' : `${what}s`}`,
  keys,
  enabled: (s) => canEdit(s) && s.floorId !== undefined,
  perform: ({ session }) =>
    session.set({
      floorView: { ...session.getState().floorView, opening: { what } },
      tool: 'opening',
      placing: undefined,
    }),
});

const wallsOf = (s: SessionState): readonly string[] =>
  [...s.selection].filter((id) => recordOf(s.plan, 'wall', id) !== undefined);

const split: Command = {
  id: 'split-wall',
  label: 'Cut the wall in two at the middle of the view',
  keys: [],
  enabled: (s) => canEdit(s) && wallsOf(s).length === 1,
  perform: ({ session }) => {
    const { plan, camera, ...s } = session.getState();
    const wall = recordOf(plan, 'wall', wallsOf({ plan, camera, ...s })[0] ?? '');
    if (!wall) return;
    const at = alongWall(wall, nearestOnSegment(camera.center, wall.from, wall.to).at);
    const made = splitWall(plan, wall.id, at, session.newId);
    if (!made.ok) return session.set({ message: problemText(made.error) });
    session.commit('Cut a wall in two', made.value.changes);
  },
};

const join: Command = {
  id: 'join-walls',
  label: 'Make one wall of two in one line',
  keys: [],
  enabled: (s) => canEdit(s) && wallsOf(s).length === 2,
  perform: ({ session }) => {
    const s = session.getState();
    const [a, b] = wallsOf(s);
    if (a === undefined || b === undefined) return;
    const made = joinWalls(s.plan, a, b);
    if (!made.ok) return session.set({ message: problemText(made.error) });
    session.commit('Join two walls', made.value);
  },
};

const along: Command = {
  id: 'walls-along',
  label: 'Measure walls along the inside or the centre line',
  keys: [],
  enabled: () => true,
  perform: ({ session }) => {
    const { floorView } = session.getState();
    const next = floorView.wall.along === 'inside' ? 'centre' : 'inside';
    session.set({
      floorView: { ...floorView, wall: { ...floorView.wall, along: next } },
      message:
        next === 'inside'
          ? 'Walls are measured along their inside.'
          : 'Walls are measured along their centre lines.',
    });
  },
};

const table: Command = {
  id: 'floor-table',
  label: 'Show the floor as a table, or the drawing again',
  keys: ['KeyQ'],
  enabled: () => true,
  perform: ({ session }) => {
    const { floorView } = session.getState();
    session.set({ floorView: { ...floorView, shows: floorView.shows === 'table' ? 'drawing' : 'table' } });
  },
};

/** Rooms, openings and walls. */
export const roomCommands: readonly Command[] = [
  addRoomCommand,
  opening('door', ['KeyD']),
  opening('window', ['Shift+KeyD']),
  opening('archway', []),
  split,
  join,
  along,
  table,
];
