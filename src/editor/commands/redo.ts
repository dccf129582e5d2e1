import type { Command } from './command.ts';

export const redo: Command = {
  id: 'redo',
  label: 'Redo',
  keys: ['$mod+Shift+KeyZ', '$mod+KeyY'],
  enabled: (s) => !s.readOnly && s.redoStack.length > 0,
  perform: ({ session }) => session.redo(),
};
