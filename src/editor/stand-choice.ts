import type { FixtureKind, StandKind } from '../plan/kinds/kinds.ts';

/**
 * The stand for a unit: it receives one of the unit's mounts and is rated for its mass; of those the one with the
 * lowest rating, then the smallest footprint. Undefined where none does. Accessories on the unit are not counted.
 */
export const standFor = (kind: FixtureKind, stands: readonly StandKind[]): StandKind | undefined =>
  stands
    .filter((s) => s.receives.some((r) => kind.mount.fits.includes(r)) && s.ratedLoadKg >= kind.massKg)
    .reduce<StandKind | undefined>(
      (best, s) =>
        !best ||
        s.ratedLoadKg < best.ratedLoadKg ||
        (s.ratedLoadKg === best.ratedLoadKg && s.legCircleMm < best.legCircleMm)
          ? s
          : best,
      undefined,
    );
