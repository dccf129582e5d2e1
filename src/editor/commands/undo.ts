import type { Command } from './command.ts';

export const undo: Command = {
  id: 'undo',
  label: 'Undo',
  keys: ['$mod+KeyZ'],
  enabled: (s) => !s.readOnly && s.undoStack.length > 0,
  perform: ({ session }) => session.undo(),
};
