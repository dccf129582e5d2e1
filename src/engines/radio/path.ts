import type { Id } from '../../kernel/ids.ts';
import { EDGE_FREE_NU, edgeDb, edgeNu } from './calc.ts';
import type { Barrier, Hole, Scene } from './scene.ts';

/** A place of an aerial in metres; z above the datum of all floors. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Something on the straight path, with what it costs. */
export interface Hit {
  readonly barrier: Barrier;
  readonly hole: Hole | undefined;
  /** Share of the path from its start. */
  readonly t: number;
  /** Where the path is there, above the datum. */
  readonly zM: number;
  /** What it would cost to go through, and over the top; NaN where there is no way over. */
  readonly throughDb: number;
  readonly overDb: number;
  readonly db: number;
  /** Top above the path, negative where the path passes over it; and the first zone's radius there. */
  readonly topAboveM: number;
}

/** One crossing of a barrier's line in plan. */
interface Cross {
  readonly t: number;
  /** Metres from the wall's start. */
  readonly alongM: number;
}

const pathLengthM = (p: Spot, q: Spot): number => Math.max(0.1, Math.hypot(q.x - p.x, q.y - p.y, q.z - p.z));

/** -1 without a crossing, else the share of the path at which it crosses one straight piece from (x1, y1) to (x2, y2). */
const crossOneWay = (
  ax: number,
  ay: number,
  bx: number,
  by: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): number => {
  const s1 = (bx - ax) * (y1 - ay) - (by - ay) * (x1 - ax);
  const s2 = (bx - ax) * (y2 - ay) - (by - ay) * (x2 - ax);
  // One end on each side of the path; an end on its line belongs to one side only, so that a joint counts once.
  if (s1 >= 0 === s2 >= 0) return -1;
  const e1 = (x2 - x1) * (ay - y1) - (y2 - y1) * (ax - x1);
  const e2 = (x2 - x1) * (by - y1) - (y2 - y1) * (bx - x1);
  if ((e1 > 0 && e2 > 0) || (e1 < 0 && e2 < 0) || e1 === 0 || e2 === 0) return -1;
  return e1 / (e1 - e2);
};

/** As `crossOneWay`, and the same from either end. */
const crossAt = (
  ax: number,
  ay: number,
  bx: number,
  by: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): number => {
  if (ax < bx || (ax === bx && ay <= by)) return crossOneWay(ax, ay, bx, by, x1, y1, x2, y2);
  const t = crossOneWay(bx, by, ax, ay, x1, y1, x2, y2);
  return t < 0 ? t : 1 - t;
};

/** Shares of the path at which it crosses a barrier's line in plan, in order. Ends of the path on the line do not count. */
const crossings = (b: Barrier, p: Spot, q: Spot): readonly Cross[] => {
  const found: Cross[] = [];
  const n = b.xs.length;
  const last = b.what === 'wall' ? n - 1 : n;
  for (let i = 0; i < last; i++) {
    const j = (i + 1) % n;
    const x1 = b.xs[i] as number;
    const y1 = b.ys[i] as number;
    const x2 = b.xs[j] as number;
    const y2 = b.ys[j] as number;
    const t = crossAt(p.x, p.y, q.x, q.y, x1, y1, x2, y2);
    if (t < 0) continue;
    const alongM = Math.hypot(p.x + (q.x - p.x) * t - x1, p.y + (q.y - p.y) * t - y1);
    found.push({ t, alongM });
  }
  if (found.length > 1) found.sort((a, c) => a.t - c.t);
  return found;
};

const NO_EDGE = Number.NaN;

/** What passing this barrier costs when its top is so far above (or below) the path at `t` of a path `lengthM` long. */
const hitAt = (
  scene: Scene,
  b: Barrier,
  t: number,
  lengthM: number,
  zM: number,
  through: number,
  hole: Hole | undefined,
): Hit | undefined => {
  const topAboveM = b.topM - zM;
  const d1 = Math.max(0.05, t * lengthM);
  const d2 = Math.max(0.05, (1 - t) * lengthM);
  const over = b.open || topAboveM <= 0;
  if (topAboveM <= 0 && edgeNu(scene.fMhz, topAboveM, d1, d2) <= EDGE_FREE_NU) return undefined;
  const overDb = over ? edgeDb(edgeNu(scene.fMhz, topAboveM, d1, d2)) : NO_EDGE;
  const db = over ? Math.min(through, overDb) : through;
  return { barrier: b, hole, t, zM, throughDb: through, overDb, db, topAboveM };
};

const wallHit = (scene: Scene, b: Barrier, c: Cross, p: Spot, q: Spot, lengthM: number): Hit | undefined => {
  const zM = p.z + (q.z - p.z) * c.t;
  // Under it: a wall on a higher floor.
  if (zM < b.baseM) return undefined;
  const up = zM - b.baseM;
  const hole =
    zM < b.topM
      ? b.holes.find((h) => c.alongM >= h.fromM && c.alongM <= h.toM && up >= h.lowM && up <= h.highM)
      : undefined;
  return hitAt(scene, b, c.t, lengthM, zM, hole ? hole.db : b.db, hole);
};

/** Whether a spot is inside a closed outline in plan. */
export const inside = (b: Barrier, x: number, y: number): boolean => {
  let odd = false;
  const n = b.xs.length;
  for (let i = 0, j = n - 1; i < n; j = i++) {
    const yi = b.ys[i] as number;
    const yj = b.ys[j] as number;
    const xi = b.xs[i] as number;
    const xj = b.xs[j] as number;
    if (yi > y !== yj > y && x < ((xj - xi) * (y - yi)) / (yj - yi) + xi) odd = !odd;
  }
  return odd;
};

/** A set piece costs once, where it costs most: at its outline, or around an aerial that is inside it. */
const pieceHit = (
  scene: Scene,
  b: Barrier,
  found: readonly Cross[],
  p: Spot,
  q: Spot,
  lengthM: number,
): Hit | undefined => {
  let worst: Hit | undefined;
  const look = (t: number): void => {
    const zM = p.z + (q.z - p.z) * t;
    const hit = zM < b.baseM ? undefined : hitAt(scene, b, t, lengthM, zM, b.db, undefined);
    if (hit && (!worst || hit.db > worst.db)) worst = hit;
  };
  for (const c of found) look(c.t);
  // An aerial that stands on it has nothing of it in the way.
  if (p.z < b.topM && inside(b, p.x, p.y)) look(0);
  if (q.z < b.topM && inside(b, q.x, q.y)) look(1);
  return worst;
};

/**
 * What stands in the straight way from `p` to `q`, one after another. `only` names the barriers to look at by their place
 * in the scene, `floors` the floors that count; all of them where nothing is said.
 */
export const hitsOn = (
  scene: Scene,
  p: Spot,
  q: Spot,
  floors?: ReadonlySet<Id>,
  only?: ArrayLike<number>,
): readonly Hit[] => {
  const found: Hit[] = [];
  const lengthM = pathLengthM(p, q);
  const count = only ? only.length : scene.barriers.length;
  for (let i = 0; i < count; i++) {
    const b = scene.barriers[only ? (only[i] as number) : i];
    if (!b || (floors && !floors.has(b.floorId))) continue;
    const cross = crossings(b, p, q);
    const first = cross[0];
    if (!first) continue;
    const hit =
      b.what === 'wall' ? wallHit(scene, b, first, p, q, lengthM) : pieceHit(scene, b, cross, p, q, lengthM);
    if (hit) found.push(hit);
  }
  return found.sort((a, b) => a.t - b.t);
};

/** What one wall costs a path, without making a record of it; the same sum as `wallHit` gives. */
const wallDb = (scene: Scene, b: Barrier, p: Spot, q: Spot, lengthM: number): number => {
  const x1 = b.xs[0] as number;
  const y1 = b.ys[0] as number;
  const t = crossAt(p.x, p.y, q.x, q.y, x1, y1, b.xs[1] as number, b.ys[1] as number);
  if (t < 0) return 0;
  const alongM = b.holes.length > 0 ? Math.hypot(p.x + (q.x - p.x) * t - x1, p.y + (q.y - p.y) * t - y1) : 0;
  return wallHit(scene, b, { t, alongM }, p, q, lengthM)?.db ?? 0;
};

/** Sum of what stands in the way, in dB; as `hitsOn`. */
export const barriersDb = (
  scene: Scene,
  p: Spot,
  q: Spot,
  floors?: ReadonlySet<Id>,
  only?: ArrayLike<number>,
): number => {
  const lengthM = pathLengthM(p, q);
  const count = only ? only.length : scene.barriers.length;
  let sum = 0;
  for (let i = 0; i < count; i++) {
    const b = scene.barriers[only ? (only[i] as number) : i];
    if (!b || (floors && !floors.has(b.floorId))) continue;
    if (b.what === 'wall') sum += wallDb(scene, b, p, q, lengthM);
    else {
      const cross = crossings(b, p, q);
      if (cross.length > 0) sum += pieceHit(scene, b, cross, p, q, lengthM)?.db ?? 0;
    }
  }
  return sum;
};
