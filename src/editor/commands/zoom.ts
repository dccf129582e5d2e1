import { zoomAt } from '../camera.ts';
import { OPTIONS } from '../options.ts';
import type { Command } from './command.ts';

const zoom = (id: string, label: string, keys: readonly string[], factor: number): Command => ({
  id,
  label,
  keys,
  enabled: (s) => s.viewport.widthPx > 0,
  perform: ({ session }) => {
    const { camera, viewport } = session.getState();
    session.set({ camera: zoomAt(camera, viewport, viewport.widthPx / 2, viewport.heightPx / 2, factor) });
  },
});

export const zoomIn = zoom('zoom-in', 'Zoom in', ['Equal', 'Shift+Equal', 'NumpadAdd'], OPTIONS.zoomStep);
export const zoomOut = zoom('zoom-out', 'Zoom out', ['Minus', 'NumpadSubtract'], 1 / OPTIONS.zoomStep);
