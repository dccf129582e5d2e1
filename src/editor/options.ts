import type { LengthUnits } from '../kernel/units.ts';
import { MM_PER_FOOT, MM_PER_INCH } from '../kernel/units.ts';

/** Every threshold of the editor and the canvas, in one place. Pixels are CSS pixels. */
export const OPTIONS = {
  /** A press becomes a drag when the pointer went this far. */
  dragPx: 4,
  touchDragPx: 9,
  /** A finger that rests so long asks for the menu. */
  longPressMs: 550,
  /** How far from a thing a press still means it. */
  hitPx: 5,
  touchHitPx: 14,
  /** Radius of handles, drawn and hit. */
  handlePx: 6,
  touchHandlePx: 13,
  /** Least radius of the ring around a selected unit, and its distance from the unit. */
  ringMinPx: 22,
  ringGapPx: 9,
  /** How near, on the screen, a thing must be to snap to it. */
  snapPx: 8,
  /** How near the pointer must be to a mark for a fixture to follow it. */
  markPx: 16,
  /** Turning by the handle goes by this step unless snapping is held off. */
  turnStepDeg: 5,
  rotateSmallDeg: 1,
  rotateLargeDeg: 15,
  /** Drawn beyond the view, as a share of the view's size, before anything is drawn anew. */
  cullMargin: 0.5,
  /** Labels are placed in slices of so long, so that the hand is never held up. */
  labelSliceMs: 8,
  /** After so long of placing labels a person is told. */
  busyMs: 400,
  /** Labels and another scale wait until the view has been still for so long. */
  stillMs: 140,
  /** Labels are left out below this many pixels per millimetre. */
  labelMinPxPerMm: 0.012,
  /** Text on the screen: least pixels per paper millimetre, and how far past a step of the scale before it changes back. */
  paperMinPxPerMm: 3.2,
  scaleHysteresis: 0.12,
  pixelRatioCap: 2,
  zoomStep: 1.25,
  /** Zoom for one pixel of wheel travel. */
  wheelZoomPerPx: 0.0016,
  /** Space kept free around what is fitted into the view, pixels. */
  fitMarginPx: 48,
  /** Room kept free above and below by a fit: for the panels’ row and the scale bar. */
  fitTopPx: 52,
  fitBottomPx: 64,
  /** The tools stand at the left edge of a view this wide or wider: what is fitted keeps clear of them. */
  fitToolsPx: 122,
  fitToolsFromPx: 640,
  /** Fitting one small thing stops at this zoom. */
  fitMaxPxPerMm: 0.25,
  /** How far a copy lies from its original. */
  duplicateMm: 600,
  /** Height a unit is hung at when it is placed hung, and when it is on the floor. */
  hungHeightMm: 2700,
  floorHeightMm: 150,
  /** A unit placed so near to a tube hangs on it; one that is told to hang looks for a tube this far. */
  tubeReachMm: 120,
  hangReachMm: 600,
} as const;

/** Steps that arrow keys move by, millimetres. */
export const nudgeMm = (units: LengthUnits): { readonly small: number; readonly large: number } =>
  units === 'imperial' ? { small: MM_PER_INCH, large: MM_PER_FOOT } : { small: 10, large: 100 };

/** Spacing of the light and the heavy grid lines, millimetres. */
export const gridMm = (units: LengthUnits): { readonly light: number; readonly heavy: number } =>
  units === 'imperial' ? { light: MM_PER_FOOT, heavy: 5 * MM_PER_FOOT } : { light: 500, heavy: 2500 };

const BAR_MM: Readonly<Record<LengthUnits, readonly number[]>> = {
  imperial: [1, 2, 5, 10, 20, 50, 100, 200, 500].map((ft) => ft * MM_PER_FOOT),
  metric: [200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000, 100_000],
};
const BAR_LEAST_PX = 150;

/** Length of the scale bar for a zoom, a round number near 150 to 400 pixels, with its words. */
export const scaleBar = (
  pxPerMm: number,
  units: LengthUnits,
): { readonly lengthMm: number; readonly half: string; readonly full: string } => {
  const lengths = BAR_MM[units];
  const lengthMm = lengths.find((l) => l * pxPerMm >= BAR_LEAST_PX) ?? (lengths.at(-1) as number);
  const n = units === 'imperial' ? Math.round(lengthMm / MM_PER_FOOT) : lengthMm / 1000;
  const unit = units === 'imperial' ? 'ft' : 'm';
  return { lengthMm, half: String(Number((n / 2).toFixed(2))), full: `${Number(n.toFixed(2))} ${unit}` };
};
