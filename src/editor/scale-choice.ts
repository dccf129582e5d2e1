import type { LengthUnits } from '../kernel/units.ts';
import { OPTIONS } from './options.ts';

/** Standard scales a screen view steps through: 48 for 1:48. */
const SCALES: Readonly<Record<LengthUnits, readonly number[]>> = {
  imperial: [12, 16, 24, 32, 48, 64, 96, 128, 192, 256, 384],
  metric: [10, 15, 20, 25, 30, 50, 75, 100, 150, 200, 300, 500],
};

/**
 * The nominal scale for a zoom: the largest drawing (smallest number) at which a paper millimetre still has the
 * least number of pixels, so that text stays legible. `last` is kept until the zoom is clearly past its step.
 */
export const scaleForZoom = (pxPerMm: number, units: LengthUnits, last?: number): number => {
  const scales = SCALES[units];
  const pick = (least: number): number =>
    scales.find((s) => s * pxPerMm >= least) ?? (scales.at(-1) as number);
  const least = OPTIONS.paperMinPxPerMm;
  if (last !== undefined && scales.includes(last)) {
    const low = pick(least * (1 - OPTIONS.scaleHysteresis));
    const high = pick(least * (1 + OPTIONS.scaleHysteresis));
    if (last >= low && last <= high) return last;
  }
  return pick(least);
};
