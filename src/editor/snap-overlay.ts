import { distanceMm } from '../kernel/geometry.ts';
import { formatLength } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { NO_OVERLAY, type Overlay } from './overlay.ts';
import type { Snapped } from './snapping.ts';

/** What a snap shows: the lines it holds to, and gaps that are alike with their length. */
export const snapOverlay = (plan: Plan, snapped: Snapped): Overlay => {
  const { lengthUnits } = planRecord(plan);
  return {
    ...NO_OVERLAY,
    guides: snapped.guides,
    ...(snapped.gaps
      ? {
          measures: snapped.gaps.map((g) => ({
            ...g,
            text: formatLength(distanceMm(g.from, g.to), lengthUnits),
          })),
        }
      : {}),
  };
};
