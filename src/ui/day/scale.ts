import type { DaySummary } from '../../report/day.ts';

/** Where a minute of the day is, in pixels from the left of the lanes. */
export interface Scale {
  readonly fromMin: number;
  readonly toMin: number;
  readonly pxPerMin: number;
  readonly widthPx: number;
  x(minute: number): number;
}

const LEAST_PX_PER_MIN = 0.4;
const MARGIN_MIN = 30;
const HOUR = 60;

/** Whole hours around the day's blocks, a margin on both sides; at a zoom of 1 as wide as there is room. */
export const timeScale = (
  s: Pick<DaySummary, 'startMin' | 'endMin' | 'blocks'>,
  zoom: number,
  roomPx: number,
): Scale => {
  const starts = s.blocks.map((b) => b.block.startMin);
  const ends = s.blocks.map((b) => b.block.endMin);
  const fromMin = Math.max(0, Math.floor((Math.min(s.startMin, ...starts) - MARGIN_MIN) / HOUR) * HOUR);
  const toMin = Math.min(2160, Math.ceil((Math.max(s.endMin, ...ends) + MARGIN_MIN) / HOUR) * HOUR);
  const pxPerMin = Math.max(LEAST_PX_PER_MIN, roomPx / Math.max(HOUR, toMin - fromMin)) * zoom;
  return {
    fromMin,
    toMin,
    pxPerMin,
    widthPx: Math.max(1, (toMin - fromMin) * pxPerMin),
    x: (minute) => (minute - fromMin) * pxPerMin,
  };
};
