import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordsOf } from '../../plan/plan.ts';
import {
  breakpointM,
  EDGE_FREE_NU,
  edgeDb,
  edgeNu,
  freeSpaceDb,
  groundDb,
  indoorDb,
  patternDb,
} from './calc.ts';
import { aerialOf, floorLoss } from './materials.ts';
import { barriersDb, type Spot } from './path.ts';
import { isIndoors, type Scene, sceneOf } from './scene.ts';
import type { Air, Listener, Sender, Verdict } from './types.ts';
import { freeShare, wifiDb } from './wifi.ts';

/** What the sums of one plan share: limits looked up once, the air, and the barriers at one frequency. */
export interface Ground {
  readonly plan: Plan;
  readonly air: Air;
  readonly scene: Scene;
  readonly nearestM: number;
  readonly coefficientIn: number;
  readonly coefficientOut: number;
  readonly headM: number;
  readonly fewMaxDb: number;
  readonly manyMaxDb: number;
  readonly crowdNearestM: number;
  readonly reserveDb: number;
  readonly indoors: (floorId: Id) => boolean;
}

export const groundOf = (plan: Plan, air: Air, fMhz: number): Ground => {
  const v = (id: string): number => limitOf(plan, id).value;
  const known = new Map<Id, boolean>();
  return {
    plan,
    air,
    scene: sceneOf(plan, fMhz),
    nearestM: v('radio-nearest'),
    coefficientIn: air.coefficient ?? v('radio-distance-indoors'),
    coefficientOut: air.coefficient ?? v('radio-distance-outdoors'),
    headM: v('radio-head-height') / 1000,
    fewMaxDb: v('radio-crowd-few-max'),
    manyMaxDb: v('radio-crowd-many-max'),
    crowdNearestM: v('radio-crowd-nearest') / 1000,
    reserveDb: v('radio-reserve'),
    indoors: (floorId) => {
      let at = known.get(floorId);
      if (at === undefined) {
        at = isIndoors(plan, floorId);
        known.set(floorId, at);
      }
      return at;
    },
  };
};

export const verdictOf = (plan: Plan, marginDb: number): Verdict =>
  marginDb >= limitOf(plan, 'radio-margin-good').value
    ? 'good'
    : marginDb >= limitOf(plan, 'radio-margin-fair').value
      ? 'fair'
      : marginDb >= 0
        ? 'weak'
        : 'none';

/** One end of a path: where it is and on which floor. */
export interface End {
  readonly floorId: Id;
  readonly spot: Spot;
  readonly heightM: number;
}

const lengthM = (a: Spot, b: Spot): number => Math.hypot(b.x - a.x, b.y - a.y, b.z - a.z);

/** dB below its best that an aerial gives towards a spot: off its axis across for a panel, off the level for all. */
export const patternLossDb = (antenna: string, facingDeg: number, from: Spot, to: Spot): number => {
  const shape = aerialOf(antenna);
  if (!shape || shape.mostDb === 0) return 0;
  const flat = Math.hypot(to.x - from.x, to.y - from.y);
  const rise = to.z - from.z;
  if (flat === 0 && rise === 0) return 0;
  const up = Math.abs((Math.atan2(rise, flat) * 180) / Math.PI);
  const bearing = (Math.atan2(to.y - from.y, to.x - from.x) * 180) / Math.PI;
  const off = Math.abs(((((bearing - facingDeg) % 360) + 540) % 360) - 180);
  const across = shape.beamDeg >= 360 ? 0 : patternDb(off, shape.beamDeg, shape.mostDb);
  const loss = Math.min(shape.mostDb, across + patternDb(up, shape.upDeg, shape.mostDb));
  // Less than anyone would write down.
  return loss < 0.05 ? 0 : loss;
};

const HALF_WAY: readonly number[] = [0.5];
const EIGHTHS: readonly number[] = [0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875];

/** What people in the path cost: a knife edge at head height, where they stand worst; none above the heads. */
export const crowdDb = (g: Ground, floorM: number, a: Spot, b: Spot): number => {
  if (g.air.crowd === 'none') return 0;
  const length = lengthM(a, b);
  if (length <= 2 * g.crowdNearestM) return 0;
  // Above the heads by more than the zone is wide anywhere, no place of the path needs a look.
  const clear = Math.min(a.z, b.z) - floorM - g.headM;
  if (clear > 0 && edgeNu(g.scene.fMhz, -clear, length / 2, length / 2) <= EDGE_FREE_NU) return 0;
  const places = g.air.crowd === 'few' ? HALF_WAY : EIGHTHS;
  let most = 0;
  for (const t of places) {
    const d1 = Math.max(g.crowdNearestM, t * length);
    const d2 = Math.max(g.crowdNearestM, (1 - t) * length);
    const above = floorM + g.headM - (a.z + (b.z - a.z) * t);
    most = Math.max(most, edgeDb(edgeNu(g.scene.fMhz, above, d1, d2)));
  }
  return Math.min(most, g.air.crowd === 'few' ? g.fewMaxDb : g.manyMaxDb);
};

/** Floors between two ends, and the floors whose walls a path between them can meet. Undefined for two apart on one level. */
export const floorsBetween = (
  plan: Plan,
  a: Id,
  b: Id,
): { readonly count: number; readonly ids: ReadonlySet<Id> } | undefined => {
  if (a === b) return { count: 0, ids: new Set([a]) };
  const floors = recordsOf(plan, 'floor');
  const level = (id: Id): number => floors.find((f) => f.id === id)?.levelMm ?? 0;
  const low = Math.min(level(a), level(b));
  const high = Math.max(level(a), level(b));
  if (low === high) return undefined;
  const between = floors.filter((f) => f.levelMm > low && f.levelMm <= high);
  const count = new Set(between.map((f) => f.levelMm)).size;
  const ids = new Set([a, b, ...between.filter((f) => f.levelMm < high).map((f) => f.id)]);
  return { count, ids };
};

/** What all paths from one floor to another have in common. */
export interface Between {
  readonly floors: { readonly count: number; readonly ids: ReadonlySet<Id> } | undefined;
  readonly indoors: boolean;
  readonly coefficient: number;
  readonly floorsDb: number;
}

export const betweenFloors = (g: Ground, a: Id, b: Id): Between => {
  const floors = floorsBetween(g.plan, a, b);
  const indoors = g.indoors(a) || g.indoors(b);
  return {
    floors,
    indoors,
    coefficient: indoors ? g.coefficientIn : g.coefficientOut,
    floorsDb: floorLoss(floors?.count ?? 0, g.scene.fMhz).db,
  };
};

/** Loss with distance alone: free space, what rooms add to it, what flat ground adds to it. */
export const distanceParts = (g: Ground, k: Between, a: End, b: End) => {
  const d = Math.max(g.nearestM, lengthM(a.spot, b.spot));
  const f = g.scene.fMhz;
  const freeDb = freeSpaceDb(f, d);
  const byLaw = k.indoors || g.air.coefficient !== undefined;
  const lawDb = byLaw ? Math.max(0, indoorDb(f, d, k.coefficient) - freeDb) : 0;
  const h1 = Math.max(0.1, a.heightM);
  const h2 = Math.max(0.1, b.heightM);
  const flat = a.floorId === b.floorId && d > breakpointM(f, h1, h2);
  return { d, freeDb, lawDb, groundDb: flat ? Math.max(0, groundDb(d, h1, h2) - freeDb - lawDb) : 0 };
};

/** Loss of everything between two aerials in dB, the aerials themselves left out. NaN for two floors on one level. */
const lossDb = (g: Ground, k: Between, a: End, b: End, only?: ArrayLike<number>): number => {
  if (!k.floors) return Number.NaN;
  const part = distanceParts(g, k, a, b);
  const level = Math.min(a.spot.z - a.heightM, b.spot.z - b.heightM);
  return (
    part.freeDb +
    part.lawDb +
    part.groundDb +
    barriersDb(g.scene, a.spot, b.spot, k.floors.ids, only) +
    k.floorsDb +
    crowdDb(g, level, a.spot, b.spot)
  );
};

/** Loss of everything between two aerials in dB, the aerials themselves left out. NaN for two floors on one level. */
export const pathDb = (g: Ground, a: End, b: End): number =>
  lossDb(g, betweenFloors(g, a.floorId, b.floorId), a, b);

/** What Wi-Fi in the sender's band costs, and the share of the band that is free. */
export const wifiOf = (air: Air, sender: Sender): { readonly share: number; readonly db: number } => {
  const share = freeShare(sender.band.fromMhz, sender.band.toMhz, air.wifiChannels);
  return { share, db: wifiDb(share) };
};

type Ear = End & Pick<Listener, 'gainDbi' | 'sensitivityDbm'>;

/** Margins of one sender's hops to one floor in dB, for many places: what is the same for all is reckoned once. */
export const hopsTo = (g: Ground, s: Sender, floorId: Id): ((l: Ear, only?: ArrayLike<number>) => number) => {
  const between = betweenFloors(g, s.floorId, floorId);
  const steady = s.eirpDbm - g.reserveDb - wifiOf(g.air, s).db;
  return (l, only) =>
    steady -
    patternLossDb(s.antenna, s.facingDeg, s.spot, l.spot) -
    lossDb(g, between, s, l, only) +
    l.gainDbi -
    l.sensitivityDbm;
};

/** Margin of one hop in dB: what arrives less what the receiver needs. */
export const hopMarginDb = (g: Ground, s: Sender, l: Ear): number => hopsTo(g, s, l.floorId)(l);
