import { drawFloor, floorExtents, itemsBox } from '../drawing/draw-floor.ts';
import { type Box, isEmptyBox } from '../kernel/geometry.ts';
import { planRecord, recordsOf } from '../plan/plan.ts';
import type { Camera } from './camera.ts';
import { fitBox } from './fit.ts';
import { scaleForZoom } from './scale-choice.ts';
import type { SessionState } from './session.ts';

/** Labels may make the drawing itself smaller down to this share; beyond, the outermost of them are cut. */
const LEAST_SHARE = 0.68;
/** How much each side may then grow for labels, as a share of the drawing. */
const SIDE_SHARE = 0.16;
/** With more units than this, placing their labels takes longer than a person waits; the margin holds the outer ones. */
const MOST_LABELLED = 150;

type Seen = Pick<SessionState, 'plan' | 'floorId' | 'setupId' | 'assessment' | 'viewport' | 'floorView'>;

/** Box around everything drawn at the scale of a camera, labels included; beams may run far beyond everything else. */
const boxAt = (s: Seen, camera: Camera): Box | undefined => {
  const { items } = drawFloor(s.plan, {
    floorId: s.floorId ?? '',
    setupId: s.setupId,
    nominalScale: scaleForZoom(camera.pxPerMm, planRecord(s.plan).lengthUnits),
    assessment: s.assessment,
    options: {
      labels: s.floorView.layers.labels.shown,
      labelFields: s.floorView.labelFields,
      rooms: s.floorView.rooms,
    },
  });
  return itemsBox(items.filter((item) => item.layer !== 'beams'));
};

/**
 * The camera that shows the whole floor, with room for its labels and dimensions; undefined without a view or anything
 * drawn. Labels keep their size on the screen, so a second look is taken at the scale the first one gives.
 */
export const fitFloor = (s: Seen): Camera | undefined => {
  if (s.floorId === undefined) return undefined;
  const drawn = floorExtents(s.plan, s.floorId);
  const bare = fitBox(drawn, s.viewport);
  if (!bare || !drawn || recordsOf(s.plan, 'fixture').length > MOST_LABELLED) return bare;
  let camera = bare;
  for (let look = 0; look < 2; look++) {
    const all = boxAt(s, camera);
    if (!all || isEmptyBox(all)) return camera;
    const whole = fitBox(all, s.viewport);
    if (whole && whole.pxPerMm >= LEAST_SHARE * bare.pxPerMm) {
      camera = whole;
      continue;
    }
    const w = (drawn.maxX - drawn.minX) * SIDE_SHARE;
    const h = (drawn.maxY - drawn.minY) * SIDE_SHARE;
    camera =
      fitBox(
        {
          minX: Math.max(all.minX, drawn.minX - w),
          minY: Math.max(all.minY, drawn.minY - h),
          maxX: Math.min(all.maxX, drawn.maxX + w),
          maxY: Math.min(all.maxY, drawn.maxY + h),
        },
        s.viewport,
      ) ?? camera;
  }
  return camera;
};
