import { type Box, isEmptyBox } from '../kernel/geometry.ts';
import type { Camera, Viewport } from './camera.ts';
import { OPTIONS } from './options.ts';

/** The camera that shows a box whole with some room around it; undefined when there is no box or no view yet. */
export const fitBox = (box: Box | undefined, view: Viewport): Camera | undefined => {
  if (!box || isEmptyBox(box) || view.widthPx <= 0 || view.heightPx <= 0) return undefined;
  const room = Math.min(OPTIONS.fitMarginPx, view.widthPx / 4, view.heightPx / 4);
  const wide = Math.max(1, box.maxX - box.minX);
  const high = Math.max(1, box.maxY - box.minY);
  const left = view.widthPx >= OPTIONS.fitToolsFromPx ? OPTIONS.fitToolsPx : room;
  // The row of panels covers the upper edge, the scale bar the lower one.
  const roomy = view.heightPx >= OPTIONS.fitToolsFromPx * 0.75;
  const [top, bottom] = roomy ? [OPTIONS.fitTopPx, OPTIONS.fitBottomPx] : [room, room];
  const zoom = Math.min((view.widthPx - left - room) / wide, (view.heightPx - top - bottom) / high);
  const pxPerMm = Math.max(0.002, Math.min(OPTIONS.fitMaxPxPerMm, zoom));
  return {
    center: {
      xMm: (box.minX + box.maxX) / 2 - (left - room) / 2 / pxPerMm,
      yMm: (box.minY + box.maxY) / 2 + (bottom - top) / 2 / pxPerMm,
    },
    pxPerMm,
  };
};

/** The floor box that a view shows. */
export const viewBox = (camera: Camera, view: Viewport): Box => {
  const w = view.widthPx / 2 / camera.pxPerMm;
  const h = view.heightPx / 2 / camera.pxPerMm;
  const { xMm, yMm } = camera.center;
  return { minX: xMm - w, minY: yMm - h, maxX: xMm + w, maxY: yMm + h };
};
