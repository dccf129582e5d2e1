import { getMoonIllumination, getMoonTimes, getPosition, getTimes } from 'suncalc';
import type { GeoPlace } from '../plan/records/index.ts';

/** Sun and moon of one day at one place, in minutes after the day's 00:00 by the clocks there. Undefined: it does not happen. */
export interface SkyDay {
  readonly sunriseMin: number | undefined;
  readonly sunsetMin: number | undefined;
  /** Civil twilight: the sun 6° under the horizon. */
  readonly dawnMin: number | undefined;
  readonly duskMin: number | undefined;
  /** Nautical twilight: 12° under. */
  readonly nauticalDawnMin: number | undefined;
  readonly nauticalDuskMin: number | undefined;
  readonly nightEndMin: number | undefined;
  readonly nightMin: number | undefined;
  readonly moonriseMin: number | undefined;
  readonly moonsetMin: number | undefined;
  /** When the moon is up, to noon of the next day, as pairs of minutes. */
  readonly moonUp: readonly (readonly [fromMin: number, toMin: number])[];
  /** Lit share of the moon at noon, 0 to 1, and the name of its phase. */
  readonly moonShare: number;
  readonly moonPhase: string;
}

const MINUTE_MS = 60_000;
const DAY_MIN = 1440;

const phaseName = (phase: number): string => {
  const names = [
    'new moon',
    'waxing crescent',
    'first quarter',
    'waxing gibbous',
    'full moon',
    'waning gibbous',
    'last quarter',
    'waning crescent',
  ];
  return names[Math.round(phase * 8) % 8] ?? '';
};

/** Noon in UTC of a date like `2027-03-04`; undefined for what is no date of a calendar. */
const noonMs = (date: string): number | undefined => {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(date)) return undefined;
  const at = new Date(`${date}T12:00:00Z`);
  return Number.isNaN(at.getTime()) || !at.toJSON().startsWith(date) ? undefined : at.getTime();
};

const LAST_MIN = 2160;

/** Stretches between risings and the settings that follow them, as far as they touch the shooting day. */
const upBetween = (
  rises: readonly (number | undefined)[],
  sets: readonly (number | undefined)[],
): readonly (readonly [number, number])[] =>
  rises.flatMap((rise) => {
    if (rise === undefined) return [];
    const set = sets.filter((m) => m !== undefined && m > rise).sort((a, b) => (a ?? 0) - (b ?? 0))[0];
    const [from, to] = [Math.max(0, rise), Math.min(LAST_MIN, set ?? LAST_MIN)];
    return to > from ? [[from, to] as const] : [];
  });

/**
 * When sun and moon rise and set on a date (`2027-03-04`), with the twilights. Computed by suncalc after Meeus,
 * Astronomical Algorithms; good to a minute or two on a flat horizon. Undefined for what is no date.
 */
export const skyOf = (place: GeoPlace, date: string): SkyDay | undefined => {
  const noon = noonMs(date);
  if (noon === undefined) return undefined;
  const localMidnightMs = noon - (DAY_MIN / 2 + place.utcOffsetMin) * MINUTE_MS;
  const clock = (d: Date | null | undefined): number | undefined =>
    d ? Math.round((d.getTime() - localMidnightMs) / MINUTE_MS) : undefined;
  const middle = new Date(localMidnightMs + (DAY_MIN / 2) * MINUTE_MS);
  const sun = getTimes(middle, place.latDeg, place.lonDeg);
  // The moon's times come by days of UTC: the neighbours are looked at for those of the local day.
  const moons = [-1, 0, 1, 2].map((d) =>
    getMoonTimes(new Date(noon + d * DAY_MIN * MINUTE_MS), place.latDeg, place.lonDeg),
  );
  const today = (times: readonly (Date | undefined)[]): number | undefined =>
    times.map(clock).find((m) => m !== undefined && m >= 0 && m < DAY_MIN);
  const moon = getMoonIllumination(middle);
  return {
    sunriseMin: clock(sun.sunrise),
    sunsetMin: clock(sun.sunset),
    dawnMin: clock(sun.dawn),
    duskMin: clock(sun.dusk),
    nauticalDawnMin: clock(sun.nauticalDawn),
    nauticalDuskMin: clock(sun.nauticalDusk),
    nightEndMin: clock(sun.nightEnd),
    nightMin: clock(sun.night),
    moonriseMin: today(moons.map((m) => m.rise)),
    moonsetMin: today(moons.map((m) => m.set)),
    moonUp: upBetween(
      moons.map((m) => clock(m.rise)),
      moons.map((m) => clock(m.set)),
    ),
    moonShare: moon.fraction,
    moonPhase: phaseName(moon.phase),
  };
};

/** Where the sun stands. */
export interface SunSpot {
  /** Compass direction, degrees clockwise from north. */
  readonly azimuthDeg: number;
  /** Above a flat horizon, refraction counted; negative under it. */
  readonly elevationDeg: number;
}

/**
 * Where the sun stands on a date at a minute after 00:00 by the clocks of the place. Computed by suncalc after Meeus,
 * Astronomical Algorithms. Undefined for what is no date.
 */
export const sunAt = (place: GeoPlace, date: string, minute: number): SunSpot | undefined => {
  const noon = noonMs(date);
  if (noon === undefined) return undefined;
  const at = new Date(noon + (minute - DAY_MIN / 2 - place.utcOffsetMin) * MINUTE_MS);
  const p = getPosition(at, place.latDeg, place.lonDeg);
  return { azimuthDeg: p.azimuth, elevationDeg: p.altitude };
};

/** A compass direction as an angle on a floor, clockwise from +x, by where north points there. */
export const onFloorDeg = (azimuthDeg: number, northDeg: number): number =>
  (((azimuthDeg + northDeg) % 360) + 360) % 360;
