import { angleDeg } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import { groundOf, hopsTo, verdictOf } from './budget.ts';
import { binOf, byDirection } from './directions.ts';
import { type FreePlace, freePlaces } from './free-places.ts';
import { computeRadio, takes } from './links.ts';
import { aerialOf } from './materials.ts';
import { type RadioModel, radioModel } from './model.ts';
import type { Listener, Sender, Verdict } from './types.ts';

export interface SpotsAsk {
  readonly floorId: Id;
  /** One transmitter, or two that share the units between them. */
  readonly count: 1 | 2;
  /** The transmitter that is to be put up; absent: one of a usual sort, whip aerial, 20 dBm. */
  readonly senderId?: Id | undefined;
  /** Height of its aerial where it goes on no stand of the plan; absent: 2.5 m. */
  readonly heightMm?: number | undefined;
  readonly runnersUp?: number | undefined;
}

/** One or two places, with what the worst of the units has there. */
export interface SpotChoice {
  readonly places: readonly FreePlace[];
  /** Where an aerial with a direction points at each place, degrees clockwise from +x; undefined for one that is even all round. */
  readonly facingDeg: readonly number[] | undefined;
  readonly worstDb: number;
  readonly worstId: Id;
  readonly meanDb: number;
  readonly verdict: Verdict;
}

export interface Spots {
  /** The best first, then places well apart from it. */
  readonly choices: readonly SpotChoice[];
  readonly listenerIds: readonly Id[];
  readonly placesTried: number;
  /** What the worst unit has now; undefined where nothing is linked. */
  readonly nowDb: number | undefined;
  /** Why there is nothing to choose, in words. */
  readonly why: string | undefined;
}

const USUAL_HEIGHT_MM = 2500;
const USUAL_EIRP_DBM = 20;
const SINGLE_MOST = 2600;
const PAIR_MOST = 500;
/** Runners-up are this far from what is better. */
const APART_MM = 3000;
const PAIR_APART_MM = 2000;

const usualSender = (floorId: Id): Sender => ({
  id: '',
  role: 'transmitter',
  label: 'transmitter',
  floorId,
  spot: { x: 0, y: 0, z: 0 },
  heightM: USUAL_HEIGHT_MM / 1000,
  band: { fromMhz: 2400, toMhz: 2483.5 },
  fMhz: 2441.75,
  eirpDbm: USUAL_EIRP_DBM,
  eirpFrom: 'planning value',
  eirpAssumed: true,
  antenna: 'whip',
  facingDeg: 0,
  universeIds: [],
  linksMax: undefined,
  mesh: undefined,
  listensToId: undefined,
});

/** What the transmitter is for: what is linked to it or would be, all that listens where it has no say yet. */
const wantedBy = (plan: Plan, model: RadioModel, s: Sender): readonly Listener[] => {
  const all = [...model.listeners.values()].filter((l) => l.what !== 'repeater' && takes(l, s.band));
  if (s.id === '') return all;
  const r = computeRadio(plan);
  const mine = all.filter(
    (l) =>
      l.linkId === s.id ||
      (l.linkId === undefined && l.universeIds.some((u) => r.carried.get(s.id)?.includes(u))),
  );
  return mine.length > 0 ? mine : all.filter((l) => l.linkId === undefined);
};

/**
 * The best places for one or two transmitters among the free places of a floor: those at which the worst unit has the most
 * margin, then the most on the whole. Every place is tried; runners-up are at least 3 m away from what is better.
 */
export const bestSpots = (plan: Plan, ask: SpotsAsk): Spots => {
  const model = radioModel(plan);
  const known = ask.senderId === undefined ? undefined : model.senders.get(ask.senderId);
  const like: Sender = { ...(known ?? usualSender(ask.floorId)), floorId: ask.floorId };
  const listeners = wantedBy(plan, model, like);
  const none = (why: string): Spots => ({
    choices: [],
    listenerIds: [],
    placesTried: 0,
    nowDb: undefined,
    why,
  });
  if (listeners.length === 0) return none('No unit is linked by radio.');
  const places = freePlaces(plan, ask.floorId, {
    heightMm: ask.heightMm ?? (known ? known.heightM * 1000 : USUAL_HEIGHT_MM),
    most: ask.count === 1 ? SINGLE_MOST : PAIR_MOST,
    ownId: ask.senderId,
    targets: listeners.filter((l) => l.floorId === ask.floorId).map((l) => l.spot),
  });
  if (places.length === 0) return none('There is no free place on this floor.');

  const g = groundOf(plan, model.air, like.fMhz);
  const level = (recordOf(plan, 'floor', ask.floorId)?.levelMm ?? 0) / 1000;
  const spot = { x: 0, y: 0, z: 0 };
  const trial = { ...like, spot, heightM: 0 };
  // An aerial with a direction points at the middle of the units, wherever it is put.
  const directed = (aerialOf(like.antenna)?.beamDeg ?? 360) < 360;
  const middle = {
    xMm: (listeners.reduce((s, l) => s + l.spot.x, 0) / listeners.length) * 1000,
    yMm: (listeners.reduce((s, l) => s + l.spot.y, 0) / listeners.length) * 1000,
  };
  const facing = (p: FreePlace): number => Math.round(angleDeg(p, middle));
  const n = listeners.length;
  const margins = new Float32Array(places.length * n);
  listeners.forEach((l, k) => {
    const bins = byDirection(g.scene, l.spot.x, l.spot.y);
    const hop = hopsTo(g, trial, l.floorId);
    places.forEach((p, i) => {
      spot.x = p.xMm / 1000;
      spot.y = p.yMm / 1000;
      trial.heightM = p.heightMm / 1000;
      if (directed) trial.facingDeg = facing(p);
      spot.z = level + trial.heightM;
      const m = hop(l, bins[binOf(spot.x - l.spot.x, spot.y - l.spot.y)]);
      margins[i * n + k] = Number.isNaN(m) ? Number.NEGATIVE_INFINITY : m;
    });
  });

  const choice = (at: readonly number[]): SpotChoice => {
    let worstDb = Number.POSITIVE_INFINITY;
    let worstId = '';
    let sum = 0;
    listeners.forEach((l, k) => {
      const m = Math.max(...at.map((i) => margins[i * n + k] ?? Number.NEGATIVE_INFINITY));
      sum += m;
      if (m < worstDb) {
        worstDb = m;
        worstId = l.id;
      }
    });
    return {
      places: at.flatMap((i) => places[i] ?? []),
      facingDeg: directed ? at.flatMap((i) => (places[i] ? [facing(places[i])] : [])) : undefined,
      worstDb,
      worstId,
      meanDb: sum / n,
      verdict: verdictOf(plan, worstDb),
    };
  };
  const links = [...computeRadio(plan).links.values()].filter((k) =>
    listeners.some((l) => l.id === k.listenerId),
  );
  return {
    choices: apart(
      ask.count === 1 ? singles(places, margins, n) : pairs(places, margins, n),
      places,
      (ask.runnersUp ?? 2) + 1,
    ).map(choice),
    listenerIds: listeners.map((l) => l.id),
    placesTried: places.length,
    nowDb: links.length === 0 ? undefined : Math.min(...links.map((k) => k.marginDb)),
    why: undefined,
  };
};

interface Ranked {
  readonly at: readonly number[];
  readonly worst: number;
  readonly sum: number;
}

const better = (a: Ranked, b: Ranked): number =>
  b.worst - a.worst || b.sum - a.sum || (a.at[0] ?? 0) - (b.at[0] ?? 0);

const singles = (places: readonly FreePlace[], margins: Float32Array, n: number): Ranked[] =>
  places
    .map((_, i): Ranked => {
      let worst = Number.POSITIVE_INFINITY;
      let sum = 0;
      for (let k = 0; k < n; k++) {
        const m = margins[i * n + k] as number;
        worst = Math.min(worst, m);
        sum += m;
      }
      return { at: [i], worst, sum };
    })
    .sort(better);

/** All pairs that are far enough apart; only those that are near the best are kept for sorting. */
const pairs = (places: readonly FreePlace[], margins: Float32Array, n: number): Ranked[] => {
  let kept: Ranked[] = [];
  let bar = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < places.length; i++) {
    const a = places[i] as FreePlace;
    for (let j = i + 1; j < places.length; j++) {
      const b = places[j] as FreePlace;
      if (Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) < PAIR_APART_MM) continue;
      let worst = Number.POSITIVE_INFINITY;
      let sum = 0;
      for (let k = 0; k < n && worst >= bar; k++) {
        const m = Math.max(margins[i * n + k] as number, margins[j * n + k] as number);
        worst = Math.min(worst, m);
        sum += m;
      }
      if (worst < bar) continue;
      kept.push({ at: [i, j], worst, sum });
      if (kept.length > 6000) {
        kept = kept.sort(better).slice(0, 2000);
        bar = kept.at(-1)?.worst ?? bar;
      }
    }
  }
  return kept.sort(better);
};

/** The first of a sorted list, then those with a place far from all that came before. */
const apart = (
  ranked: readonly Ranked[],
  places: readonly FreePlace[],
  most: number,
): (readonly number[])[] => {
  const out: (readonly number[])[] = [];
  const far = (i: number, j: number): boolean => {
    const a = places[i];
    const b = places[j];
    return a !== undefined && b !== undefined && Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm) >= APART_MM;
  };
  for (const r of ranked) {
    if (out.length >= most) break;
    if (out.every((o) => r.at.some((i) => o.every((j) => far(i, j))))) out.push(r.at);
  }
  return out;
};
