import { distanceMm, nearestOnSegment, type Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import type { Cable, Crossing, Feature, Opening, Wall } from '../plan/records/index.ts';
import { remembered, rememberedEach } from '../plan/remembered.ts';
import { featuresOn, onward, type Stretch, stretchesOn } from './outdoors.ts';

/** Somewhere a cable lies across a way that stays open. */
export interface CableCrossing {
  readonly cableId: Id;
  /** The road, fire lane, exit or door. */
  readonly over: Feature | Opening;
  readonly at: Point;
  readonly lengthMm: number;
  readonly deg: number;
  /** The ramp or flown crossing that takes it. */
  readonly crossing: Crossing | undefined;
}

/** Ways that stay open. */
const WAYS = ['road', 'fire-lane', 'exit'] as const;
/** A cable as near as this to a crossing lies in it. */
const IN_MM = 600;

/** A cable's run on its floor, end to end. */
export const cableLine = (
  plan: Plan,
  c: Cable,
): { readonly floorId: Id; readonly points: readonly Point[] } | undefined => {
  const from = placeOf(plan, c.from.recordId);
  const to = placeOf(plan, c.to.recordId);
  if (!from || !to || from.floorId !== to.floorId) return undefined;
  return { floorId: from.floorId, points: [from.at, ...c.route.points, to.at] };
};

const ends = (x: Crossing): readonly [Point, Point] => [
  onward(x.at, x.rotationDeg, -x.lengthMm / 2),
  onward(x.at, x.rotationDeg, x.lengthMm / 2),
];

/** Whether a stretch goes through a crossing: its middle is on it. */
const isIn = (x: Crossing, at: Point): boolean => {
  const [a, b] = ends(x);
  return distanceMm(nearestOnSegment(at, a, b).at, at) <= IN_MM;
};

/** A door or archway between its two jambs on the floor. */
interface Doorway {
  readonly o: Opening;
  readonly wall: Wall;
  readonly p: Point;
  readonly q: Point;
}

const doorway = (wall: Wall, o: Opening): Doorway | undefined => {
  if (distanceMm(wall.from, wall.to) < 1) return undefined;
  const deg = (Math.atan2(wall.to.yMm - wall.from.yMm, wall.to.xMm - wall.from.xMm) * 180) / Math.PI;
  const at = (mm: number): Point => onward(wall.from, deg, mm);
  return { o, wall, p: at(o.offsetMm), q: at(o.offsetMm + o.widthMm) };
};

/** Whether a line stays to one side of a doorway's own box, so that it cannot pass through: most of them do. */
const passesBy = ({ p, q }: Doorway, line: readonly Point[]): boolean => {
  const sides = [true, true, true, true];
  for (const u of line) {
    if (u.xMm >= Math.min(p.xMm, q.xMm)) sides[0] = false;
    if (u.xMm <= Math.max(p.xMm, q.xMm)) sides[1] = false;
    if (u.yMm >= Math.min(p.yMm, q.yMm)) sides[2] = false;
    if (u.yMm <= Math.max(p.yMm, q.yMm)) sides[3] = false;
    if (!sides[0] && !sides[1] && !sides[2] && !sides[3]) return false;
  }
  return true;
};

/** Where a cable passes through a door or archway on the floor: one stretch across the wall. */
const doorStretch = (door: Doorway, line: readonly Point[]): Stretch | undefined => {
  if (passesBy(door, line)) return undefined;
  const { wall, p, q } = door;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1], line[i]];
    if (!a || !b) continue;
    const side = (u: Point, v: Point, w: Point): number =>
      (v.xMm - u.xMm) * (w.yMm - u.yMm) - (v.yMm - u.yMm) * (w.xMm - u.xMm);
    if (side(a, b, p) > 0 === side(a, b, q) > 0 || side(p, q, a) > 0 === side(p, q, b) > 0) continue;
    const [d1, d2] = [Math.abs(side(p, q, a)), Math.abs(side(p, q, b))];
    const t = d1 / (d1 + d2 || 1);
    return {
      middle: { xMm: a.xMm + (b.xMm - a.xMm) * t, yMm: a.yMm + (b.yMm - a.yMm) * t },
      lengthMm: wall.thicknessMm + 900,
      deg: (Math.atan2(b.yMm - a.yMm, b.xMm - a.xMm) * 180) / Math.PI,
    };
  }
  return undefined;
};

/** What cables are held against: doorways by floor, ways that stay open, and what takes cables over them. */
interface Ways {
  readonly doors: ReadonlyMap<Id, readonly Doorway[]>;
  readonly open: boolean;
  readonly crossings: readonly Crossing[];
}

const waysOf = remembered((plan, openings: readonly Opening[]): Ways => {
  const doors = new Map<Id, Doorway[]>();
  for (const o of openings) {
    const wall = o.what !== 'window' && o.sillMm <= 0 ? recordOf(plan, 'wall', o.wallId) : undefined;
    const door = wall && doorway(wall, o);
    if (!door) continue;
    const there = doors.get(door.wall.floorId);
    if (there) there.push(door);
    else doors.set(door.wall.floorId, [door]);
  }
  return {
    doors,
    open: recordsOf(plan, 'feature').length > 0,
    crossings: recordsOf(plan, 'crossing'),
  };
});

const NONE: readonly CableCrossing[] = [];

const crossingsOf = rememberedEach((plan, c: Cable, ways: Ways): readonly CableCrossing[] => {
  const line = cableLine(plan, c);
  if (!line) return NONE;
  const here = ways.crossings.filter((x) => x.floorId === line.floorId);
  const out: CableCrossing[] = [];
  const note = (over: Feature | Opening, s: Stretch): void => {
    out.push({
      cableId: c.id,
      over,
      at: s.middle,
      lengthMm: s.lengthMm,
      deg: s.deg,
      crossing: here.find((x) => isIn(x, s.middle)),
    });
  };
  if (ways.open)
    for (const f of featuresOn(plan, line.floorId, WAYS))
      for (const s of stretchesOn(f, line.points)) note(f, s);
  for (const door of ways.doors.get(line.floorId) ?? []) {
    const s = doorStretch(door, line.points);
    if (s) note(door.o, s);
  }
  return out.length > 0 ? out : NONE;
});

const known = new WeakMap<Plan, readonly CableCrossing[]>();

/**
 * Every place where a cable lies across a road, a fire lane, an exit or through a door or archway, with the ramp or
 * flown crossing that takes it there. In order of cables. Remembered per plan, each cable's from edit to edit.
 */
export const cableCrossings = (plan: Plan): readonly CableCrossing[] => {
  const before = known.get(plan);
  if (before) return before;
  const out = crossingsOf(plan, recordsOf(plan, 'cable'), waysOf(plan, recordsOf(plan, 'opening'))).flat();
  known.set(plan, out);
  return out;
};

/** Cables that go through each crossing, by its id. */
export const cablesInCrossings = (plan: Plan): ReadonlyMap<Id, ReadonlySet<Id>> => {
  const out = new Map<Id, Set<Id>>();
  for (const x of recordsOf(plan, 'crossing')) {
    const ids = new Set<Id>();
    for (const c of recordsOf(plan, 'cable')) {
      const line = cableLine(plan, c);
      if (line?.floorId !== x.floorId) continue;
      const on = line.points.slice(1).some((b, i) => {
        const a = line.points[i] ?? b;
        return distanceMm(nearestOnSegment(x.at, a, b).at, x.at) <= IN_MM;
      });
      if (on) ids.add(c.id);
    }
    out.set(x.id, ids);
  }
  return out;
};

/** Pieces of ramp that a crossing takes; each is about so long (common practice, no published source). */
export const RAMP_PIECE_MM = 900;
export const rampPieces = (x: Crossing, cables: number): number => {
  if (x.how !== 'ramp') return 0;
  const sideBySide = Math.max(1, Math.ceil(cables / x.channels));
  return sideBySide * Math.max(1, Math.ceil(x.lengthMm / RAMP_PIECE_MM - 0.05));
};
