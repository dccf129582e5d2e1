import {
  add,
  type Box,
  boxesMeet,
  boxOf,
  distanceMm,
  dot,
  type Point,
  point,
  scale,
  sub,
} from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from './plan.ts';
import { autoRoute, type Place } from './ports.ts';
import type { Opening, Wall } from './records/index.ts';

/** Cables keep this far from the faces of walls where they go round them. */
const CLEAR_MM = 60;
/** Looked at as touching, not crossing. */
const PLAY_MM = 1;

/** A solid stretch of wall that no cable passes, with its box. */
interface Block {
  readonly from: Point;
  readonly along: Point;
  readonly lengthMm: number;
  readonly half: number;
  readonly box: Box;
}

/** What routes go round on one floor, and the corners they go round by. */
interface Maze {
  readonly blocks: readonly Block[];
  readonly corners: readonly Point[];
  /** Ways from corner to corner, found as they are asked for. */
  readonly ways: Map<number, readonly { readonly to: number; readonly leg: Leg }[]>;
}

interface Leg {
  readonly points: readonly Point[];
  readonly lengthMm: number;
}

/** A cable goes through doors and archways, and through windows that reach the floor. */
const isWay = (o: Opening): boolean => o.sillMm <= 0;

const blocksOf = (walls: readonly Wall[], openings: readonly Opening[]): readonly Block[] => {
  const byWall = new Map<Id, Opening[]>();
  for (const o of openings) {
    if (!isWay(o)) continue;
    const list = byWall.get(o.wallId);
    if (list) list.push(o);
    else byWall.set(o.wallId, [o]);
  }
  return walls.flatMap((w) => {
    const l = distanceMm(w.from, w.to);
    if (l < 1) return [];
    const along = scale(sub(w.to, w.from), 1 / l);
    const half = w.thicknessMm / 2;
    const gaps = (byWall.get(w.id) ?? []).sort((a, b) => a.offsetMm - b.offsetMm);
    const out: Block[] = [];
    const solid = (a: number, b: number): void => {
      if (b - a < 1) return;
      // Ends at corners reach into the neighbour, so that nothing slips through between two walls.
      const start = a === 0 ? -half : a;
      const end = b === l ? l + half : b;
      const from = add(w.from, scale(along, start));
      const to = add(w.from, scale(along, end));
      const n = scale(point(-along.yMm, along.xMm), half);
      out.push({
        from,
        along,
        lengthMm: end - start,
        half,
        box: boxOf([add(from, n), sub(from, n), add(to, n), sub(to, n)]),
      });
    };
    let at = 0;
    for (const g of gaps) {
      solid(at, Math.max(at, Math.min(l, g.offsetMm)));
      at = Math.max(at, Math.min(l, g.offsetMm + g.widthMm));
    }
    solid(at, l);
    return out;
  });
};

/** How far inside a block a spot is; negative outside. */
const depthIn = (b: Block, p: Point): number => {
  const d = sub(p, b.from);
  const t = dot(d, b.along);
  const off = Math.abs(d.xMm * b.along.yMm - d.yMm * b.along.xMm);
  return Math.min(t, b.lengthMm - t, b.half - off);
};

/** Whether the stretch from p to q goes through a block. */
const cuts = (b: Block, p: Point, q: Point): boolean => {
  const [dp, dq] = [sub(p, b.from), sub(q, b.from)];
  const [t0, t1] = [dot(dp, b.along), dot(dq, b.along)];
  const side = (d: Point): number => d.yMm * b.along.xMm - d.xMm * b.along.yMm;
  const [s0, s1] = [side(dp), side(dq)];
  let [lo, hi] = [0, 1];
  const clip = (a: number, z: number, min: number, max: number): boolean => {
    if (Math.abs(z - a) < 1e-9) return a > min && a < max;
    const [x, y] = [(min - a) / (z - a), (max - a) / (z - a)];
    lo = Math.max(lo, Math.min(x, y));
    hi = Math.min(hi, Math.max(x, y));
    return lo < hi;
  };
  return (
    clip(t0, t1, PLAY_MM, b.lengthMm - PLAY_MM) &&
    clip(s0, s1, -b.half + PLAY_MM, b.half - PLAY_MM) &&
    (hi - lo) * distanceMm(p, q) > PLAY_MM
  );
};

const isClear = (maze: Maze, points: readonly Point[]): boolean => {
  for (let i = 1; i < points.length; i++) {
    const [p, q] = [points[i - 1], points[i]];
    if (!p || !q) continue;
    const box = boxOf([p, q]);
    for (const b of maze.blocks) if (boxesMeet(b.box, box) && cuts(b, p, q)) return false;
  }
  return true;
};

const lengthOf = (points: readonly Point[]): number =>
  points.reduce((sum, p, i) => sum + (i === 0 ? 0 : distanceMm(points[i - 1] ?? p, p)), 0);

/** How a cable is laid between two spots in sight of one another: by a square corner where that is free, else straight. */
const legBetween = (maze: Maze, p: Point, q: Point): Leg | undefined => {
  const usual = autoRoute(p, q);
  const other = usual.map((c) => point(p.xMm + q.xMm - c.xMm, p.yMm + q.yMm - c.yMm));
  for (const corner of usual.length > 0 ? [usual, other] : [usual]) {
    const points = [p, ...corner, q];
    if (isClear(maze, points)) return { points, lengthMm: lengthOf(points) };
  }
  return isClear(maze, [p, q]) ? { points: [p, q], lengthMm: distanceMm(p, q) } : undefined;
};

const mazes = new WeakMap<object, { readonly openings: object; readonly byFloor: Map<Id, Maze> }>();

const mazeOf = (plan: Plan, floorId: Id): Maze => {
  // The lists stay the same arrays while no wall and no opening changes.
  const walls = recordsOf(plan, 'wall');
  const openings = recordsOf(plan, 'opening');
  let known = mazes.get(walls);
  if (known?.openings !== openings) {
    known = { openings, byFloor: new Map() };
    mazes.set(walls, known);
  }
  let maze = known.byFloor.get(floorId);
  if (!maze) {
    const blocks = blocksOf(
      walls.filter((w) => w.floorId === floorId),
      openings,
    );
    const corners = blocks.flatMap((b) => {
      const out = b.half + CLEAR_MM;
      const n = scale(point(-b.along.yMm, b.along.xMm), out);
      const [a, z] = [
        add(b.from, scale(b.along, -CLEAR_MM)),
        add(b.from, scale(b.along, b.lengthMm + CLEAR_MM)),
      ];
      return [add(a, n), sub(a, n), add(z, n), sub(z, n)];
    });
    maze = {
      blocks,
      corners: corners.filter((p) => !blocks.some((b) => depthIn(b, p) > -PLAY_MM)),
      ways: new Map(),
    };
    known.byFloor.set(floorId, maze);
  }
  return maze;
};

const waysFrom = (maze: Maze, i: number): readonly { readonly to: number; readonly leg: Leg }[] => {
  const known = maze.ways.get(i);
  if (known) return known;
  const from = maze.corners[i];
  const made = maze.corners.flatMap((to, j) => {
    const leg = from && i !== j ? legBetween(maze, from, to) : undefined;
    return leg ? [{ to: j, leg }] : [];
  });
  maze.ways.set(i, made);
  return made;
};

/** A spot inside a wall, such as an outlet drawn into it, brought out to the wall's nearer face. */
const outOfWalls = (maze: Maze, p: Point, towards: Point): Point => {
  for (const b of maze.blocks) {
    if (depthIn(b, p) <= PLAY_MM) continue;
    const n = point(-b.along.yMm, b.along.xMm);
    const off = dot(sub(p, b.from), n);
    const side = Math.abs(off) < PLAY_MM ? Math.sign(dot(sub(towards, b.from), n)) || 1 : Math.sign(off);
    return add(p, scale(n, side * b.half - off));
  }
  return p;
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
 * way round walls and through doors by the corners of the walls (A* over those in sight of one another). Where walls
 * leave no way, the square corner, as if the cable went over them. Ends on different floors are joined as on one.
 */
export const routeBetween = (plan: Plan, from: Place, to: Place): readonly Point[] => {
  if (from.floorId !== to.floorId) return autoRoute(from.at, to.at);
  const maze = mazeOf(plan, from.floorId);
  const a = outOfWalls(maze, from.at, to.at);
  const z = outOfWalls(maze, to.at, from.at);
  const direct = legBetween(maze, a, z);
  if (direct) return without(direct.points, from.at, to.at);
  const path = search(maze, a, z);
  return path ? without(path, from.at, to.at) : autoRoute(from.at, to.at);
};

interface Reached {
  readonly index: number;
  readonly costMm: number;
  readonly before: Reached | undefined;
  readonly leg: Leg;
}

const search = (maze: Maze, a: Point, z: Point): readonly Point[] | undefined => {
  const rest = (p: Point): number => distanceMm(p, z);
  const open: Reached[] = [];
  const best = new Map<number, number>();
  const reach = (index: number, leg: Leg, before: Reached | undefined): void => {
    const costMm = (before?.costMm ?? 0) + leg.lengthMm;
    if (costMm >= (best.get(index) ?? Number.POSITIVE_INFINITY)) return;
    best.set(index, costMm);
    open.push({ index, costMm, before, leg });
  };
  const GOAL = -1;
  maze.corners.forEach((c, i) => {
    const leg = legBetween(maze, a, c);
    if (leg) reach(i, leg, undefined);
  });
  while (open.length > 0) {
    let least = 0;
    const full = (r: Reached | undefined): number =>
      r ? r.costMm + (r.index === GOAL ? 0 : rest(maze.corners[r.index] ?? z)) : Number.POSITIVE_INFINITY;
    for (let i = 1; i < open.length; i++) if (full(open[i]) < full(open[least])) least = i;
    const [now] = open.splice(least, 1);
    if (!now || now.costMm > (best.get(now.index) ?? 0)) continue;
    if (now.index === GOAL) {
      const legs: Leg[] = [];
      for (let r: Reached | undefined = now; r; r = r.before) legs.unshift(r.leg);
      return legs.flatMap((l, i) => (i === 0 ? l.points : l.points.slice(1)));
    }
    const here = maze.corners[now.index];
    const last = here && legBetween(maze, here, z);
    if (last) reach(GOAL, last, now);
    for (const { to, leg } of waysFrom(maze, now.index)) reach(to, leg, now);
  }
  return undefined;
};
