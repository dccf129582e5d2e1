import { drawFloor, floorExtents, itemsBox } from '../drawing/draw-floor.ts';
import { isEmptyBox } from '../kernel/geometry.ts';
import { planRecord, recordsOf } from '../plan/plan.ts';
import type { Camera } from './camera.ts';
import { fitBox } from './fit.ts';
import { scaleForZoom } from './scale-choice.ts';
import type { SessionState } from './session.ts';

/** Labels may ask for this much room on each side, as a share of the drawing; more would make the drawing itself small. */
const LABEL_SHARE = 0.16;

/** With more units than this, placing their labels takes longer than a person waits; the margin holds the outer ones. */
const MOST_LABELLED = 150;

/**
 * The camera that shows the whole floor, with room for most of its labels and dimensions; undefined without a view or
 * anything drawn.
 */
export const fitFloor = (
  s: Pick<SessionState, 'plan' | 'floorId' | 'setupId' | 'assessment' | 'viewport'>,
): Camera | undefined => {
  if (s.floorId === undefined) return undefined;
  const drawn = floorExtents(s.plan, s.floorId);
  const camera = fitBox(drawn, s.viewport);
  if (!camera || !drawn) return camera;
  if (recordsOf(s.plan, 'fixture').length > MOST_LABELLED) return camera;
  const { items } = drawFloor(s.plan, {
    floorId: s.floorId,
    setupId: s.setupId,
    nominalScale: scaleForZoom(camera.pxPerMm, planRecord(s.plan).lengthUnits),
    assessment: s.assessment,
  });
  // Beams may run far beyond everything else.
  const all = itemsBox(items.filter((item) => item.layer !== 'beams'));
  if (!all || isEmptyBox(all)) return camera;
  const w = (drawn.maxX - drawn.minX) * LABEL_SHARE;
  const h = (drawn.maxY - drawn.minY) * LABEL_SHARE;
  const box = {
    minX: Math.max(all.minX, drawn.minX - w),
    minY: Math.max(all.minY, drawn.minY - h),
    maxX: Math.min(all.maxX, drawn.maxX + w),
    maxY: Math.min(all.maxY, drawn.maxY + h),
  };
  return fitBox(box, s.viewport) ?? camera;
};
