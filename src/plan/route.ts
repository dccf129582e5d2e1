import { distanceMm, type Point, point } from '../kernel/geometry.ts';
import type { Plan } from './plan.ts';
import { autoRoute, type Place } from './ports.ts';
import { type Maze, mazeOf, outOfBlocks } from './route-maze.ts';

interface Leg {
  readonly points: readonly Point[];
  readonly lengthMm: number;
}

const lengthOf = (points: readonly Point[]): number =>
  points.reduce((sum, p, i) => sum + (i === 0 ? 0 : distanceMm(points[i - 1] ?? p, p)), 0);

/** How a cable is laid between two spots in sight of one another: by a square corner where that is free, else straight. */
const legBetween = (maze: Maze, p: Point, q: Point): Leg | undefined => {
  const usual = autoRoute(p, q);
  const other = usual.map((c) => point(p.xMm + q.xMm - c.xMm, p.yMm + q.yMm - c.yMm));
  for (const corner of usual.length > 0 ? [usual, other] : [usual]) {
    const points = [p, ...corner, q];
    if (maze.clear(points)) return { points, lengthMm: lengthOf(points) };
  }
  return maze.clear([p, q]) ? { points: [p, q], lengthMm: distanceMm(p, q) } : undefined;
};

const legs = new WeakMap<Maze, Map<number, Leg | null>>();

/** The way from corner to corner, found when it is first asked for. */
const cornerLeg = (maze: Maze, i: number, j: number): Leg | null => {
  const known = legs.get(maze) ?? new Map<number, Leg | null>();
  legs.set(maze, known);
  const key = i * maze.corners.length + j;
  const last = known.get(key);
  if (last !== undefined) return last;
  const [from, to] = [maze.corners[i], maze.corners[j]];
  const made = (from && to && legBetween(maze, from, to)) ?? null;
  known.set(key, made);
  return made;
};

const without = (points: readonly Point[], from: Point, to: Point): readonly Point[] => {
  const all = [from, ...points, to];
  // Corners in a straight line say nothing.
  return all.slice(1, -1).filter((p, i) => {
    const [a, c] = [all[i], all[i + 2]];
    if (!a || !c) return true;
    const bend = Math.abs((p.xMm - a.xMm) * (c.yMm - a.yMm) - (p.yMm - a.yMm) * (c.xMm - a.xMm));
    return distanceMm(a, p) > 1 && bend > distanceMm(a, c);
  });
};

/**
 * Points between the two ends of a cable laid by itself: a square corner where nothing is in the way, else the shortest
 * way round walls, furniture and scenery and through doors, by their corners (A* over those in sight of one another).
 * Where they leave no way, the square corner, as if the cable went over them. Ends on different floors are joined as on one.
 */
export const routeBetween = (plan: Plan, from: Place, to: Place): readonly Point[] => {
  if (from.floorId !== to.floorId) return autoRoute(from.at, to.at);
  const maze = mazeOf(plan, from.floorId);
  const a = outOfBlocks(maze, from.at, to.at);
  const z = outOfBlocks(maze, to.at, from.at);
  const direct = legBetween(maze, a, z);
  if (direct) return without(direct.points, from.at, to.at);
  const path = search(maze, a, z);
  return path ? without(path, from.at, to.at) : autoRoute(from.at, to.at);
};

/** A distance to compare by: quicker than an exact one. */
const far = (p: Point, q: Point): number => {
  const [x, y] = [p.xMm - q.xMm, p.yMm - q.yMm];
  return Math.sqrt(x * x + y * y);
};

interface Reached {
  readonly index: number;
  /** Length of the way to here; of one that has not been looked at, the least it can be. */
  readonly costMm: number;
  readonly before: Reached | undefined;
  /** The last stretch; undefined until it has been looked at whether there is one. */
  readonly leg: Leg | undefined;
  /** The least that a whole way through here can be. */
  readonly leastMm: number;
}

/** What is open, the one with the least whole way first. */
const heap = () => {
  const all: Reached[] = [];
  const least = (i: number): number => all[i]?.leastMm ?? Number.POSITIVE_INFINITY;
  const swap = (i: number, j: number): void => {
    const [a, b] = [all[i], all[j]];
    if (a && b) {
      all[i] = b;
      all[j] = a;
    }
  };
  return {
    push: (r: Reached): void => {
      let i = all.push(r) - 1;
      for (let up = (i - 1) >> 1; i > 0 && least(i) < least(up); up = (i - 1) >> 1) {
        swap(i, up);
        i = up;
      }
    },
    pop: (): Reached | undefined => {
      swap(0, all.length - 1);
      const top = all.pop();
      for (let i = 0; ; ) {
        const [l, r] = [2 * i + 1, 2 * i + 2];
        const down = least(r) < least(l) ? r : l;
        if (least(down) >= least(i)) return top;
        swap(i, down);
        i = down;
      }
    },
  };
};

/** Ways no longer than this many times the straight one, and so much more, are looked for first, then longer ones. */
const LIMITS = [
  { times: 1.5, moreMm: 4000 },
  { times: 3, moreMm: 20_000 },
] as const;

const search = (maze: Maze, a: Point, z: Point): readonly Point[] | undefined => {
  for (const { times, moreMm } of LIMITS) {
    const found = searchWithin(maze, a, z, distanceMm(a, z) * times + moreMm);
    if (found) return found;
  }
  return searchWithin(maze, a, z, Number.POSITIVE_INFINITY);
};

/** The shortest way that is no longer than a limit: corners further round than that cannot be on it. */
const searchWithin = (maze: Maze, a: Point, z: Point, limitMm: number): readonly Point[] | undefined => {
  const rest = (p: Point): number => far(p, z);
  const half = limitMm / 2;
  const [midX, midY] = [(a.xMm + z.xMm) / 2, (a.yMm + z.yMm) / 2];
  // Corners that are on a way no longer than the limit lie in an ellipse about its two ends, as wide as the limit.
  const about = { minX: midX - half, minY: midY - half, maxX: midX + half, maxY: midY + half };
  const near = maze.cornersNear(about).flatMap((index) => {
    const p = maze.corners[index];
    return p && far(a, p) + rest(p) <= limitMm ? [{ p, index }] : [];
  });
  const GOAL = -1;
  const open = heap();
  const best = new Map<number, number>();
  const spot = (index: number): Point => (index === GOAL ? z : (maze.corners[index] ?? z));
  /** Puts a corner up for being looked at: whether there is a stretch to it is found out only when it comes first. */
  const offer = (index: number, at: Point, from: Point, before: Reached | undefined): void => {
    const costMm = (before?.costMm ?? 0) + far(from, at);
    const leastMm = costMm + (index === GOAL ? 0 : rest(at));
    if (leastMm > limitMm || costMm >= (best.get(index) ?? Number.POSITIVE_INFINITY)) return;
    open.push({ index, costMm, before, leg: undefined, leastMm });
  };
  const offerAll = (from: Point, before: Reached | undefined): void => {
    offer(GOAL, z, from, before);
    for (const { p, index } of near) if (index !== before?.index) offer(index, p, from, before);
  };
  const legTo = (r: Reached): Leg | undefined | null =>
    r.before && r.index !== GOAL
      ? cornerLeg(maze, r.before.index, r.index)
      : legBetween(maze, r.before ? spot(r.before.index) : a, spot(r.index));
  offerAll(a, undefined);
  for (let now = open.pop(); now; now = open.pop()) {
    if (now.costMm >= (best.get(now.index) ?? Number.POSITIVE_INFINITY) && !now.leg) continue;
    if (!now.leg) {
      const leg = legTo(now);
      if (!leg) continue;
      const costMm = (now.before?.costMm ?? 0) + leg.lengthMm;
      if (costMm > limitMm || costMm >= (best.get(now.index) ?? Number.POSITIVE_INFINITY)) continue;
      best.set(now.index, costMm);
      const leastMm = costMm + (now.index === GOAL ? 0 : rest(spot(now.index)));
      open.push({ ...now, costMm, leg, leastMm });
      continue;
    }
    // A shorter way was found since.
    if (now.costMm > (best.get(now.index) ?? 0)) continue;
    if (now.index === GOAL) {
      const way: Leg[] = [];
      for (let r: Reached | undefined = now; r?.leg; r = r.before) way.unshift(r.leg);
      return way.flatMap((l, i) => (i === 0 ? l.points : l.points.slice(1)));
    }
    offerAll(spot(now.index), now);
  }
  return undefined;
};
