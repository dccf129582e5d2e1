import { type Camera, panBy } from '../camera.ts';
import type { PointerInfo, Tool } from './tool.ts';

/** Moves the view with the pointer. */
export const createPanTool = (): Tool => {
  let from: { readonly e: PointerInfo; readonly camera: Camera } | undefined;
  return {
    id: 'pan',
    hint: 'Drag to move the view.',
    onPointerDown: (ctx, e) => {
      from = { e, camera: ctx.session.getState().camera };
    },
    onPointerMove: (ctx, e) => {
      if (from) ctx.session.set({ camera: panBy(from.camera, e.x - from.e.x, e.y - from.e.y) });
    },
    onPointerUp: () => {
      from = undefined;
    },
    onPointerCancel: (ctx) => {
      if (from) ctx.session.set({ camera: from.camera });
      from = undefined;
    },
    onKey(ctx, key) {
      if (key !== 'Escape' || !from) return false;
      this.onPointerCancel(ctx);
      return true;
    },
    cursor: () => (from ? 'grabbing' : 'grab'),
  };
};
