import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';

/** Where units of a floor are set out from. */
export interface Datum {
  readonly xMm: number;
  readonly yMm: number;
  readonly text: string;
}

/** The datum of a floor: the lower left corner of its walls; the plan's origin where there are none. */
export const datumOf = (plan: Plan, floorId: Id): Datum => {
  const walls = recordsOf(plan, 'wall').filter((w) => w.floorId === floorId);
  if (walls.length === 0) return { xMm: 0, yMm: 0, text: 'the plan’s origin' };
  return {
    xMm: Math.min(...walls.flatMap((w) => [w.from.xMm, w.to.xMm])),
    yMm: Math.max(...walls.flatMap((w) => [w.from.yMm, w.to.yMm])),
    text: 'the lower left corner of the walls, on their centre lines',
  };
};
