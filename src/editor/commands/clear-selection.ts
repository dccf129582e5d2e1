import { NO_OVERLAY } from '../overlay.ts';
import type { Command } from './command.ts';

export const clearSelection: Command = {
  id: 'clear-selection',
  label: 'Select nothing',
  keys: ['Escape'],
  enabled: (s) => s.selection.size > 0 || s.tool !== 'select',
  perform: ({ session }) => {
    const { tool } = session.getState();
    if (tool !== 'select') session.set({ tool: 'select', placing: undefined, message: '' });
    else session.set({ selection: new Set(), preview: undefined, overlay: NO_OVERLAY });
  },
};
