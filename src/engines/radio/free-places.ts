import { nearestOnSegment, type Point, point } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordsOf } from '../../plan/plan.ts';
import { floorBoxM } from './coverage.ts';
import { inside } from './path.ts';
import { type Barrier, sceneOf } from './scene.ts';

/** A place where a transmitter could stand. */
export interface FreePlace {
  readonly xMm: number;
  readonly yMm: number;
  readonly heightMm: number;
  /** The stand it would go up on, where one stands there with nothing on it. */
  readonly standId: Id | undefined;
}

/** Room kept from walls and from what stands on the floor, metres. */
const FROM_WALL_M = 0.4;
const FROM_GEAR_M = 0.7;
const FROM_MARK_M = 1;

const wallsOf = (scene: readonly Barrier[]): readonly (readonly [Point, Point])[] =>
  scene.flatMap((b) =>
    b.what === 'wall'
      ? [[point(b.xs[0] ?? 0, b.ys[0] ?? 0), point(b.xs[1] ?? 0, b.ys[1] ?? 0)] as const]
      : [],
  );

const cross = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const side = (p: Point, q: Point, r: Point): boolean =>
    (q.xMm - p.xMm) * (r.yMm - p.yMm) - (q.yMm - p.yMm) * (r.xMm - p.xMm) > 0;
  return side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b);
};

/** Cells of a grid that can be reached from its rim without crossing a wall: what is outside of all rooms. */
const outsideCells = (
  columns: number,
  rows: number,
  at: (c: number, r: number) => Point,
  walls: readonly (readonly [Point, Point])[],
): Uint8Array => {
  const out = new Uint8Array(columns * rows);
  const queue: number[] = [];
  const take = (c: number, r: number): void => {
    const i = r * columns + c;
    if (out[i] === 1) return;
    out[i] = 1;
    queue.push(i);
  };
  for (let c = 0; c < columns; c++) {
    take(c, 0);
    take(c, rows - 1);
  }
  for (let r = 0; r < rows; r++) {
    take(0, r);
    take(columns - 1, r);
  }
  for (let k = 0; k < queue.length; k++) {
    const i = queue[k] ?? 0;
    const c = i % columns;
    const r = Math.floor(i / columns);
    const here = at(c, r);
    for (const [dc, dr] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      const nc = c + dc;
      const nr = r + dr;
      if (nc < 0 || nr < 0 || nc >= columns || nr >= rows || out[nr * columns + nc] === 1) continue;
      const there = at(nc, nr);
      if (!walls.some(([a, b]) => cross(here, there, a, b))) take(nc, nr);
    }
  }
  return out;
};

/** Stands of a floor with nothing on them. */
const emptyStands = (plan: Plan, floorId: Id) => {
  const taken = new Set<Id>();
  for (const f of recordsOf(plan, 'fixture')) if (f.support.on === 'stand') taken.add(f.support.standId);
  for (const g of recordsOf(plan, 'grip')) for (const id of g.supports) taken.add(id);
  for (const d of recordsOf(plan, 'device')) if (d.standId !== undefined) taken.add(d.standId);
  return recordsOf(plan, 'stand').filter((s) => s.floorId === floorId && !taken.has(s.id));
};

/**
 * Places on a floor where a transmitter could stand: a grid of so many at most over what is inside the rooms (all of the
 * floor where one of the `targets`, in metres, is outside), clear of walls, set pieces, gear and marks; and stands with nothing on
 * them.
 */
export const freePlaces = (
  plan: Plan,
  floorId: Id,
  what: {
    readonly heightMm: number;
    readonly most: number;
    readonly targets: readonly { readonly x: number; readonly y: number }[];
    readonly ownId?: Id | undefined;
  },
): readonly FreePlace[] => {
  const box = floorBoxM(plan, floorId);
  if (!box) return [];
  const barriers = sceneOf(plan, 2400).barriers.filter((b) => b.floorId === floorId);
  const pieces = barriers.filter((b) => b.what === 'setPiece');
  const walls = wallsOf(barriers);
  const pad = 1;
  const width = box.maxX - box.minX + 2 * pad;
  const height = box.maxY - box.minY + 2 * pad;
  const step = Math.max(0.5, Math.sqrt((width * height) / Math.max(4, what.most)));
  const columns = Math.max(2, Math.floor(width / step) + 1);
  const rows = Math.max(2, Math.floor(height / step) + 1);
  const at = (c: number, r: number): Point => point(box.minX - pad + c * step, box.minY - pad + r * step);
  const cells = outsideCells(columns, rows, at, walls);
  const outdoors = what.targets.some((t) => {
    const c = Math.round((t.x - box.minX + pad) / step);
    const r = Math.round((t.y - box.minY + pad) / step);
    return cells[r * columns + c] !== 0;
  });
  const outside = outdoors || cells.every((x) => x === 1) ? undefined : cells;
  const own = plan.records.get(what.ownId ?? '');
  const ownStand = own?.type === 'device' ? own.standId : undefined;
  const gear = (['fixture', 'stand', 'device', 'box', 'source', 'grip'] as const)
    .flatMap((t) => [...recordsOf(plan, t)] as { id: Id; floorId: Id; at: Point }[])
    .filter((r) => r.floorId === floorId && r.id !== what.ownId && r.id !== ownStand)
    .map((r) => point(r.at.xMm / 1000, r.at.yMm / 1000));
  const marks = recordsOf(plan, 'mark')
    .filter((m) => m.floorId === floorId && m.what !== 'note')
    .map((m) => point(m.at.xMm / 1000, m.at.yMm / 1000));
  const near = (p: Point, list: readonly Point[], m: number): boolean =>
    list.some((q) => Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm) < m);
  const free = (p: Point): boolean =>
    !pieces.some((b) => inside(b, p.xMm, p.yMm)) &&
    !near(p, gear, FROM_GEAR_M) &&
    !near(p, marks, FROM_MARK_M) &&
    !walls.some(([a, b]) => {
      const n = nearestOnSegment(p, a, b).at;
      return Math.hypot(p.xMm - n.xMm, p.yMm - n.yMm) < FROM_WALL_M;
    });
  const out: FreePlace[] = [];
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      if (outside && outside[r * columns + c] === 1) continue;
      const p = at(c, r);
      if (free(p))
        out.push({
          xMm: Math.round(p.xMm * 1000),
          yMm: Math.round(p.yMm * 1000),
          heightMm: what.heightMm,
          standId: undefined,
        });
    }
  for (const s of emptyStands(plan, floorId))
    out.push({ xMm: s.at.xMm, yMm: s.at.yMm, heightMm: s.heightMm, standId: s.id });
  return out;
};
