import type { ToolId } from '../session.ts';
import type { Command } from './command.ts';

const TOOLS: readonly { readonly id: ToolId; readonly label: string; readonly key: string }[] = [
  { id: 'select', label: 'Select', key: 'KeyS' },
  { id: 'place', label: 'Place', key: 'KeyP' },
  { id: 'cable', label: 'Cable', key: 'KeyC' },
  { id: 'line', label: 'Data line', key: 'KeyB' },
  { id: 'aim', label: 'Aim', key: 'KeyA' },
  { id: 'pan', label: 'Move the view', key: 'KeyV' },
  { id: 'wall', label: 'Draw walls', key: 'KeyW' },
  { id: 'outlet', label: 'Place wall outlets', key: 'KeyE' },
  { id: 'measure', label: 'Measure', key: 'KeyR' },
];

const EDITS: readonly ToolId[] = ['place', 'cable', 'line', 'aim', 'wall', 'outlet'];

/** One letter per tool. */
export const toolCommands: readonly Command[] = TOOLS.map((t) => ({
  id: `tool-${t.id}`,
  label: t.label,
  keys: [t.key],
  enabled: (s) => !s.readOnly || !EDITS.includes(t.id),
  perform: ({ session }) => session.set({ tool: t.id, ...(t.id === 'place' ? {} : { placing: undefined }) }),
}));
