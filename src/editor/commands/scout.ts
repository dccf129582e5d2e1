import { type Command, canEdit } from './command.ts';

const asks = (
  id: string,
  label: string,
  keys: readonly string[],
  ask: 'underlay' | 'photos' | 'floors',
): Command => ({
  id,
  label,
  keys,
  enabled: (s) => canEdit(s) && s.floorId !== undefined,
  perform: ({ session }) => session.set({ floorView: { ...session.getState().floorView, ask } }),
});

const scale: Command = {
  id: 'tool-scale',
  label: 'Scale an underlay from a known length',
  keys: ['Shift+KeyI'],
  enabled: (s) => canEdit(s) && s.floorId !== undefined,
  perform: ({ session }) => session.set({ tool: 'scale', placing: undefined }),
};

/** What a scout brings home: drawings and scans to draw over, photos, the floors of a building. */
export const scoutCommands: readonly Command[] = [
  asks('import-underlay', 'Lay a picture or drawing under the floor…', ['KeyI'], 'underlay'),
  scale,
  asks('pin-photos', 'Pin photos to the floor…', ['KeyJ'], 'photos'),
];
