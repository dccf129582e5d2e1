import { drawFloor, type FloorDrawing } from '../drawing/draw-floor.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import { frameOf } from './frame.ts';
import { noticeList } from './ink.ts';
import { plotLayout, plotViews } from './plot-layout.ts';
import { cloudItems } from './revision-marks.ts';
import { type PaperOptions, setInfo } from './sheet-info.ts';
import { drawnFloors } from './sheet-kinds.ts';

/** A floor as a drawing of its own, without sheet and frame, at the scale of its plot. */
export interface FloorPicture {
  readonly floorId: Id;
  readonly name: string;
  readonly list: FloorDrawing;
}

/** Every floor that has something on it, drawn whole for the shown setup, with what changed since the issue before. */
export const floorPictures = (
  plan: Plan,
  assessment: Assessment,
  options: PaperOptions,
): readonly FloorPicture[] => {
  const info = setInfo(plan, assessment, options, noticeList());
  const layout = plotLayout(frameOf(info.sheet));
  return drawnFloors(plan).map((floorId) => {
    const ratio = plotViews(info, floorId, layout, () => {})[0]?.ratio ?? 50;
    return {
      floorId,
      name: recordOf(plan, 'floor', floorId)?.name ?? '',
      list: drawFloor(plan, {
        floorId,
        setupId: info.setupId,
        nominalScale: ratio,
        assessment,
        options: { findings: true },
        marks: cloudItems(info, floorId, ratio),
      }),
    };
  });
};
