import {
  ambientFactor,
  circuitsFactor,
  conductor,
  conductorsFactor,
  drumFactor,
  sameColumnA,
  threeLoadedA,
} from '../../derive/conductors.ts';
import { limitOf } from '../../derive/limits.ts';
import type { CableKind } from '../../plan/kinds/kinds.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import type { Cable } from '../../plan/records/index.ts';

/** Ampacity of one cable and how it came about. */
export interface CableAmpacity {
  readonly legA: number;
  readonly neutralA: number;
  /** Product of the three factors below. */
  readonly factor: number;
  readonly ambient: number;
  readonly grouping: number;
  readonly drum: number;
  /** Ampacity of one conductor before the factors: of the kind, or its value for three loaded conductors in a bundle. */
  readonly baseA: number;
  /** Loaded conductors in the bundle (North America) or cables in it (Europe). */
  readonly together: number;
  /** Less for a neutral that third harmonics load like a leg (Europe; in North America it counts in `together`). */
  readonly harmonic: number;
}

/**
 * Ampacity in A of a cable's leg and neutral, parallel conductors, ambient, bundle and drum counted, before the practice's
 * rule. Without the cable's record it lies on its own and off the drum.
 */
export const cableAmpacity = (
  plan: Plan,
  kind: CableKind,
  cable?: Pick<Cable, 'bundled' | 'onDrum'>,
  neutralLoaded = false,
): CableAmpacity => {
  const { practice, ambientC } = planRecord(plan);
  const ambient = ambientFactor(ambientC);
  const bundled = Math.max(1, cable?.bundled ?? 1);
  const europe = practice === 'europe';
  const fourth = neutralLoaded && kind.neutral && kind.legs === 3;
  const loadedEach = kind.legs + (kind.neutral && (kind.legs < 3 || (fourth && !europe)) ? 1 : 0);
  // The kind's ampacity already counts the circuits in one jacket.
  const inJacket = Math.max(1, kind.circuits ?? 1) * (europe ? 1 : loadedEach);
  const together = bundled * inJacket;
  const alone = bundled === 1 && !(fourth && !europe);
  const factorOf = europe ? circuitsFactor : conductorsFactor;
  const grouping = alone ? 1 : factorOf(together) / (kind.circuits === undefined ? 1 : factorOf(inJacket));
  const harmonic = fourth && europe ? limitOf(plan, 'neutral-counted-factor').value : 1;
  const three =
    alone || europe || kind.circuits !== undefined ? undefined : threeLoadedA(kind.conductor, kind.ampacityA);
  const baseA = Math.min(kind.ampacityA, three ?? kind.ampacityA);
  const drum = drumFactor(cable?.onDrum ?? 0);
  const factor = ambient * grouping * drum * harmonic;
  const legA = baseA * Math.max(1, kind.parallel) * factor;
  return {
    legA,
    neutralA: neutralBaseA(kind, baseA) * neutralCount(kind) * factor,
    factor,
    ambient,
    grouping,
    drum,
    baseA,
    together,
    harmonic,
  };
};

const neutralCount = (kind: CableKind): number => Math.max(1, kind.neutralParallel ?? kind.parallel);

/**
 * Ampacity of one neutral conductor. A thinner one is scaled by its area, a cautious measure; a thicker one counts by the
 * same column of the same table as the legs, and as one of them where no such row is known.
 */
const neutralBaseA = (kind: CableKind, legA: number): number => {
  if (!kind.neutralConductor) return legA;
  const [leg, neutral] = [conductor(kind.conductor), conductor(kind.neutralConductor)];
  if (!leg || !neutral || neutral.areaMm2 === leg.areaMm2) return legA;
  if (neutral.areaMm2 < leg.areaMm2) return (legA * neutral.areaMm2) / leg.areaMm2;
  return sameColumnA(kind.conductor, legA, kind.neutralConductor) ?? legA;
};
