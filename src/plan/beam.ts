import type { FixtureKind } from './kinds/kinds.ts';
import type { Fixture } from './records/index.ts';

/** Beam angle of a fixture as it is set: between the ends of its zoom where it has one; wide where nothing is said. */
export const beamDegOf = (kind: FixtureKind, f: Pick<Fixture, 'zoomPct'>): number | undefined => {
  const { beamDeg, spot } = kind;
  if (beamDeg === undefined || !spot || f.zoomPct === undefined) return beamDeg;
  return spot.beamDeg + ((beamDeg - spot.beamDeg) * Math.max(0, Math.min(100, f.zoomPct))) / 100;
};

/** Styles of fixture that take barn doors: common practice, no published source. */
const WITH_DOORS: ReadonlySet<string> = new Set([
  'fresnel',
  'open-face',
  'softlight',
  'cyc-flood',
  'panel',
  'bank',
  'spot',
]);

/** Whether barn doors go on a kind of fixture. */
export const takesDoors = (kind: FixtureKind): boolean => WITH_DOORS.has(kind.style);

/** Leaves of barn doors as angles from the throw; those above and below only where they are given. */
export interface Doors {
  readonly leftDeg: number;
  readonly rightDeg: number;
  readonly topDeg?: number | undefined;
  readonly bottomDeg?: number | undefined;
}

/** The barn doors on a fixture; undefined where it has none on. */
export const doorsOf = (kind: FixtureKind, f: Pick<Fixture, 'doors'>): Doors | undefined =>
  takesDoors(kind) && f.doors ? f.doors : undefined;
