import type { FixtureKind, StandKind } from '../plan/kinds/kinds.ts';

/** A stand that goes up less than this is for special places, so it is not chosen by itself. */
const USUAL_HEIGHT_MM = 2000;

/**
 * The stand for a unit: it receives one of the unit's mounts, is rated for its mass and reaches the height; of those
 * the one with the smallest footprint, then the lightest. Undefined where none does. Accessories on the unit are not counted.
 */
export const standFor = (
  kind: FixtureKind,
  stands: readonly StandKind[],
  heightMm = 0,
): StandKind | undefined => {
  const fit = stands.filter(
    (s) => s.receives.some((r) => kind.mount.fits.some((m) => m === r)) && s.ratedLoadKg >= kind.massKg,
  );
  const tall = fit.filter((s) => s.heightMaxMm >= Math.max(heightMm, USUAL_HEIGHT_MM));
  const tallest = Math.max(...fit.map((s) => s.heightMaxMm));
  return (tall.length > 0 ? tall : fit.filter((s) => s.heightMaxMm === tallest)).reduce<
    StandKind | undefined
  >(
    (best, s) =>
      !best ||
      s.legCircleMm < best.legCircleMm ||
      (s.legCircleMm === best.legCircleMm && s.massKg < best.massKg)
        ? s
        : best,
    undefined,
  );
};
