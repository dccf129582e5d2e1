import { drawFloor, floorExtents, itemsBox } from '../drawing/draw-floor.ts';
import { planRecord } from '../plan/plan.ts';
import type { Camera } from './camera.ts';
import { fitBox } from './fit.ts';
import { scaleForZoom } from './scale-choice.ts';
import type { SessionState } from './session.ts';

/** Texts are sized for the zoom, and the zoom follows from the room they take: a second look settles it. */
const LOOKS = 2;

/** The camera that shows the whole floor with its labels and dimensions; undefined without a view or anything drawn. */
export const fitFloor = (
  s: Pick<SessionState, 'plan' | 'floorId' | 'setupId' | 'assessment' | 'viewport'>,
): Camera | undefined => {
  if (s.floorId === undefined) return undefined;
  let camera = fitBox(floorExtents(s.plan, s.floorId), s.viewport);
  for (let i = 0; camera && i < LOOKS; i++) {
    const nominalScale = scaleForZoom(camera.pxPerMm, planRecord(s.plan).lengthUnits);
    const { items } = drawFloor(s.plan, {
      floorId: s.floorId,
      setupId: s.setupId,
      nominalScale,
      assessment: s.assessment,
    });
    // Beams may run far beyond everything else.
    camera = fitBox(itemsBox(items.filter((item) => item.layer !== 'beams')), s.viewport) ?? camera;
    if (scaleForZoom(camera.pxPerMm, planRecord(s.plan).lengthUnits) === nominalScale) break;
  }
  return camera;
};
