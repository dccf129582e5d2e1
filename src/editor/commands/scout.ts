import type { ToolId } from '../session.ts';
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

const tool = (id: ToolId, label: string, keys: readonly string[]): Command => ({
  id: `tool-${id}`,
  label,
  keys,
  enabled: (s) => canEdit(s) && s.floorId !== undefined,
  perform: ({ session }) => session.set({ tool: id, placing: undefined }),
});

/** What a scout brings home: drawings and scans to draw over, photos, the floors of a building. */
export const scoutCommands: readonly Command[] = [
  asks('import-underlay', 'Lay a picture or drawing under the floor…', ['KeyI'], 'underlay'),
  tool('scale', 'Scale an underlay from a known length', ['Shift+KeyI']),
  asks('pin-photos', 'Pin photos to the floor…', ['KeyJ'], 'photos'),
  tool('feature', 'Draw roads, trees, exits and the like', ['KeyF']),
  tool('crossing', 'Place cable crossings', ['Shift+KeyF']),
];
