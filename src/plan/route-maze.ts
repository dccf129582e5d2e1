import {
  add,
  type Box,
  boxesMeet,
  boxOf,
  direction,
  distanceMm,
  dot,
  type Point,
  point,
  scale,
  sub,
} from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordsOf } from './plan.ts';
import type { Opening, SetPiece, Wall } from './records/index.ts';

/** Cables keep this far from what they go round. */
const CLEAR_MM = 60;
/** Looked at as touching, not crossing. */
export const PLAY_MM = 1;
/** Anything that stands on the floor and is no lower than this is gone round; a rug is gone over. */
const LOW_MM = 30;

/** Something no cable passes: a solid stretch of wall, a piece of furniture or scenery. A bar with its box. */
export interface Block {
  readonly from: Point;
  readonly along: Point;
  readonly lengthMm: number;
  readonly half: number;
  readonly box: Box;
  /** Whether a spot in it comes out at its nearest side, ends included, as of a piece; of a wall, at its faces. */
  readonly piece: boolean;
}

/** What routes go round on one floor, and the corners they go round by. */
export interface Maze {
  readonly blocks: readonly Block[];
  readonly corners: readonly Point[];
  /** Positions of the corners in and about a box, in their order. */
  cornersNear(box: Box): readonly number[];
  /** Whether a way from point to point is free of blocks. */
  clear(points: readonly Point[]): boolean;
  /** Blocks that a spot lies in. */
  holding(p: Point): readonly Block[];
}

const barOf = (from: Point, along: Point, lengthMm: number, half: number, piece: boolean): Block => {
  const n = scale(point(-along.yMm, along.xMm), half);
  const to = add(from, scale(along, lengthMm));
  return {
    from,
    along,
    lengthMm,
    half,
    piece,
    box: boxOf([add(from, n), sub(from, n), add(to, n), sub(to, n)]),
  };
};

/** A cable goes through doors and archways, and through windows that reach the floor. */
const isWay = (o: Opening): boolean => o.sillMm <= 0;

const wallBlocks = (walls: readonly Wall[], openings: readonly Opening[]): readonly Block[] => {
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
      out.push(barOf(add(w.from, scale(along, start)), along, end - start, half, false));
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

/** A piece as the bar that holds its outline. */
const pieceBlock = (s: SetPiece): Block => {
  const o = s.outline;
  const own = o.shape === 'polygon' ? boxOf(o.points) : undefined;
  const [minX, maxX, minY, maxY] =
    own !== undefined
      ? [own.minX, own.maxX, own.minY, own.maxY]
      : o.shape === 'polygon'
        ? [0, 0, 0, 0]
        : [-o.lengthMm / 2, o.lengthMm / 2, -o.widthMm / 2, o.widthMm / 2];
  const along = direction(s.rotationDeg);
  const n = point(-along.yMm, along.xMm);
  const from = add(s.at, add(scale(along, minX), scale(n, (minY + maxY) / 2)));
  return barOf(from, along, maxX - minX, (maxY - minY) / 2, true);
};

const isInTheWay = (s: SetPiece): boolean => s.line === 'solid' && s.heightMm >= LOW_MM;

/** How far inside a block a spot is; negative outside. */
export const depthIn = (b: Block, p: Point): number => {
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

const CELL_MM = 3000;
const cell = (mm: number): number => Math.floor(mm / CELL_MM);
/** One number for a cell: quicker to look up than a text. Floors are far smaller than where these would meet. */
const keyOf = (x: number, y: number): number => x * 1_048_576 + y;
/** Boxes over more cells than this, or farther off than this, are of a slipped figure: they are not laid into cells. */
const MOST_CELLS = 10_000;
const FARTHEST_MM = 1e10;
const fitsCells = (b: Box): boolean =>
  (cell(b.maxX) - cell(b.minX) + 1) * (cell(b.maxY) - cell(b.minY) + 1) <= MOST_CELLS &&
  Math.max(-b.minX, b.maxX, -b.minY, b.maxY) <= FARTHEST_MM;

/** Blocks by the cells of a grid they lie in, so that a look at a short way is a look at few. */
const gridOf = (blocks: readonly Block[]) => {
  const cells = new Map<number, number[]>();
  const wide: Block[] = [];
  blocks.forEach((b, i) => {
    if (!fitsCells(b.box)) {
      wide.push(b);
      return;
    }
    for (let x = cell(b.box.minX); x <= cell(b.box.maxX); x++)
      for (let y = cell(b.box.minY); y <= cell(b.box.maxY); y++) {
        const list = cells.get(keyOf(x, y));
        if (list) list.push(i);
        else cells.set(keyOf(x, y), [i]);
      }
  });
  const seen = new Uint32Array(blocks.length);
  let turn = 0;
  /** Whether any block whose box meets this one passes the test. */
  return (box: Box, test: (b: Block) => boolean): boolean => {
    const meets = (b: Block): boolean => boxesMeet(b.box, box) && test(b);
    if (!fitsCells(box)) return blocks.some(meets);
    if (wide.some(meets)) return true;
    turn++;
    for (let x = cell(box.minX); x <= cell(box.maxX); x++)
      for (let y = cell(box.minY); y <= cell(box.maxY); y++)
        for (const i of cells.get(keyOf(x, y)) ?? []) {
          const b = blocks[i];
          if (!b || seen[i] === turn) continue;
          seen[i] = turn;
          if (meets(b)) return true;
        }
    return false;
  };
};

const mazeFor = (blocks: readonly Block[]): Maze => {
  const some = gridOf(blocks);
  const at = (p: Point): Box => ({ minX: p.xMm, minY: p.yMm, maxX: p.xMm, maxY: p.yMm });
  const corners = blocks.flatMap((b) => {
    const n = scale(point(-b.along.yMm, b.along.xMm), b.half + CLEAR_MM);
    const [a, z] = [
      add(b.from, scale(b.along, -CLEAR_MM)),
      add(b.from, scale(b.along, b.lengthMm + CLEAR_MM)),
    ];
    return [add(a, n), sub(a, n), add(z, n), sub(z, n)];
  });
  const free = corners.filter((p) => !some(at(p), (b) => depthIn(b, p) > -PLAY_MM));
  const byCell = new Map<number, number[]>();
  free.forEach((p, i) => {
    const key = keyOf(cell(p.xMm), cell(p.yMm));
    const list = byCell.get(key);
    if (list) list.push(i);
    else byCell.set(key, [i]);
  });
  return {
    blocks,
    corners: free,
    cornersNear: (box) => {
      const [x0, x1, y0, y1] = [cell(box.minX), cell(box.maxX), cell(box.minY), cell(box.maxY)];
      // A box wider than the floor is quicker looked at corner by corner.
      if (!fitsCells(box) || !((x1 - x0 + 1) * (y1 - y0 + 1) < byCell.size)) return free.map((_, i) => i);
      const found: number[] = [];
      for (let x = x0; x <= x1; x++)
        for (let y = y0; y <= y1; y++) found.push(...(byCell.get(keyOf(x, y)) ?? []));
      return found.sort((a, b) => a - b);
    },
    clear: (points) => {
      for (let i = 1; i < points.length; i++) {
        const [p, q] = [points[i - 1], points[i]];
        if (p && q && some(boxOf([p, q]), (b) => cuts(b, p, q))) return false;
      }
      return true;
    },
    holding: (p) => {
      const found: Block[] = [];
      some(at(p), (b) => {
        if (depthIn(b, p) > PLAY_MM) found.push(b);
        return false;
      });
      return found;
    },
  };
};

const mazes = new WeakMap<object, { readonly deps: readonly unknown[]; readonly byFloor: Map<Id, Maze> }>();

/** The maze of a floor; the same object while no wall, opening or piece changes. */
export const mazeOf = (plan: Plan, floorId: Id): Maze => {
  // The lists stay the same arrays while nothing in them changes.
  const walls = recordsOf(plan, 'wall');
  const openings = recordsOf(plan, 'opening');
  const pieces = recordsOf(plan, 'setPiece');
  let known = mazes.get(walls);
  if (!known || known.deps[0] !== openings || known.deps[1] !== pieces) {
    known = { deps: [openings, pieces], byFloor: new Map() };
    mazes.set(walls, known);
  }
  const last = known.byFloor.get(floorId);
  if (last) return last;
  const made = mazeFor([
    ...wallBlocks(
      walls.filter((w) => w.floorId === floorId),
      openings,
    ),
    ...pieces.filter((s) => s.floorId === floorId && isInTheWay(s)).map(pieceBlock),
  ]);
  known.byFloor.set(floorId, made);
  return made;
};

/**
 * A spot in a wall, such as an outlet drawn into it, brought out to the wall's nearer face; a spot on a piece, such as a
 * lamp on a desk, to the piece's nearest side.
 */
export const outOfBlocks = (maze: Maze, p: Point, towards: Point): Point => {
  const [b] = maze.holding(p);
  if (!b) return p;
  const n = point(-b.along.yMm, b.along.xMm);
  const off = dot(sub(p, b.from), n);
  const t = dot(sub(p, b.from), b.along);
  if (b.piece && Math.min(t, b.lengthMm - t) < b.half - Math.abs(off))
    return add(p, scale(b.along, t < b.lengthMm - t ? -t : b.lengthMm - t));
  const side = Math.abs(off) < PLAY_MM ? Math.sign(dot(sub(towards, b.from), n)) || 1 : Math.sign(off);
  return add(p, scale(n, side * b.half - off));
};
