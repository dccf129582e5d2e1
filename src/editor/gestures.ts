import { type Camera, panBy, type Viewport, zoomAt } from './camera.ts';
import { OPTIONS } from './options.ts';

interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Wheel {
  readonly x: number;
  readonly y: number;
  readonly deltaY: number;
  /** 0 pixels, 1 lines, 2 pages, as the platform reports it. */
  readonly deltaMode: number;
  /** A pinch on a trackpad arrives as a wheel with the control key. */
  readonly ctrl: boolean;
}

const LINE_PX = 16;
const PAGE_PX = 400;
const PINCH_GAIN = 6;
const MOST_PX = 240;

/** The camera after a turn of the wheel: zoomed about the pointer. */
export const wheelZoom = (camera: Camera, view: Viewport, w: Wheel): Camera => {
  const unit = w.deltaMode === 1 ? LINE_PX : w.deltaMode === 2 ? PAGE_PX : 1;
  const px = Math.max(-MOST_PX, Math.min(MOST_PX, w.deltaY * unit * (w.ctrl ? PINCH_GAIN : 1)));
  return zoomAt(camera, view, w.x, w.y, Math.exp(-px * OPTIONS.wheelZoomPerPx));
};

/** The camera after two fingers went from `was` to `now`: the floor stays under them. */
export const pinch = (
  camera: Camera,
  view: Viewport,
  was: readonly [Spot, Spot],
  now: readonly [Spot, Spot],
): Camera => {
  const middle = ([a, b]: readonly [Spot, Spot]): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
  const spread = ([a, b]: readonly [Spot, Spot]): number => Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));
  const from = middle(was);
  const to = middle(now);
  return zoomAt(panBy(camera, to.x - from.x, to.y - from.y), view, to.x, to.y, spread(now) / spread(was));
};
