import { onFloorDeg, type SunSpot, sunAt } from '../derive/sun.ts';
import { planRecord } from '../plan/plan.ts';
import { northDegOf } from './floor-facts.ts';
import type { SessionState } from './session.ts';

type Seen = Pick<SessionState, 'plan' | 'floorId' | 'floorView'>;

/** Where the sun stands at the time that is looked at; undefined without a place, a date or a time. */
export const sunOf = (s: Seen): SunSpot | undefined => {
  const { sun } = s.floorView;
  const { place } = planRecord(s.plan);
  return sun && place ? sunAt(place, sun.date, sun.minute) : undefined;
};

/** Direction on the floor that the sun stands in, degrees clockwise from +x, with its height over the horizon. */
export const sunOnFloor = (
  s: Seen,
): { readonly deg: number; readonly elevationDeg: number; readonly azimuthDeg: number } | undefined => {
  const sun = sunOf(s);
  return sun && { ...sun, deg: onFloorDeg(sun.azimuthDeg, northDegOf(s)) };
};
