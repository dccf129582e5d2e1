import type { Point } from '../kernel/geometry.ts';

/** What part of the floor the canvas shows: the floor point at the view's centre and the zoom. */
export interface Camera {
  readonly center: Point;
  readonly pxPerMm: number;
}

export interface Viewport {
  readonly widthPx: number;
  readonly heightPx: number;
}

export const toScreen = (c: Camera, v: Viewport, p: Point): { x: number; y: number } => ({
  x: (p.xMm - c.center.xMm) * c.pxPerMm + v.widthPx / 2,
  y: (p.yMm - c.center.yMm) * c.pxPerMm + v.heightPx / 2,
});

export const toFloor = (c: Camera, v: Viewport, x: number, y: number): Point => ({
  xMm: (x - v.widthPx / 2) / c.pxPerMm + c.center.xMm,
  yMm: (y - v.heightPx / 2) / c.pxPerMm + c.center.yMm,
});

const MIN_PX_PER_MM = 0.002;
const MAX_PX_PER_MM = 2;

/** The camera after zooming by a factor with the floor point under (x, y) staying where it is. */
export const zoomAt = (c: Camera, v: Viewport, x: number, y: number, factor: number): Camera => {
  const pxPerMm = Math.min(MAX_PX_PER_MM, Math.max(MIN_PX_PER_MM, c.pxPerMm * factor));
  const fixed = toFloor(c, v, x, y);
  return {
    pxPerMm,
    center: {
      xMm: fixed.xMm - (x - v.widthPx / 2) / pxPerMm,
      yMm: fixed.yMm - (y - v.heightPx / 2) / pxPerMm,
    },
  };
};

export const panBy = (c: Camera, dxPx: number, dyPx: number): Camera => ({
  ...c,
  center: { xMm: c.center.xMm - dxPx / c.pxPerMm, yMm: c.center.yMm - dyPx / c.pxPerMm },
});
