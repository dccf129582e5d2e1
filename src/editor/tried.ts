import type { Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';

/** What a thing would see while something is tried. */
export type TriedState = 'dark' | 'fewer legs' | 'wrong volts';

/** Where on a floor the loads are that something tried would hit; a ballast counts where its head is. */
export const triedSpots = (
  plan: Plan,
  floorId: Id | undefined,
  tried: ReadonlyMap<Id, TriedState>,
): readonly { readonly at: Point; readonly state: TriedState }[] =>
  [...tried].flatMap(([id, state]) => {
    const ballast = recordOf(plan, 'ballast', id);
    const place = (ballast && placeOf(plan, ballast.fixtureId)) ?? placeOf(plan, id);
    return place && place.floorId === floorId ? [{ at: place.at, state }] : [];
  });
