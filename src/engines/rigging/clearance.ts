import {
  add,
  direction,
  distanceMm,
  dot,
  nearestOnSegment,
  type Point,
  scale,
  sub,
} from '../../kernel/geometry.ts';
import { type Plan, recordsOf } from '../../plan/plan.ts';
import type { Opening, Stand, Wall } from '../../plan/records/index.ts';
import type { Base, StandUse } from './model.ts';

/** A straight part of a wall that stands on the floor. */
export interface Solid {
  readonly a: Point;
  readonly b: Point;
  readonly halfMm: number;
}

/** A door or archway on the floor. */
interface Passage {
  readonly opening: Opening;
  readonly a: Point;
  readonly b: Point;
  readonly along: Point;
}

export interface FloorPlan {
  readonly solids: readonly Solid[];
  readonly passages: readonly Passage[];
}

const onFloorLevel = (o: Opening): boolean => o.what !== 'window' && o.sillMm <= 0;

/** The walls of each floor without their doors, and the doors. */
export const floorPlans = (plan: Plan): ReadonlyMap<string, FloorPlan> => {
  const openings = new Map<string, Opening[]>();
  for (const o of recordsOf(plan, 'opening'))
    if (onFloorLevel(o)) openings.set(o.wallId, [...(openings.get(o.wallId) ?? []), o]);
  const out = new Map<string, { solids: Solid[]; passages: Passage[] }>();
  for (const w of recordsOf(plan, 'wall')) {
    const floor = out.get(w.floorId) ?? { solids: [], passages: [] };
    out.set(w.floorId, floor);
    cut(w, openings.get(w.id) ?? [], floor);
  }
  return out;
};

const cut = (w: Wall, openings: readonly Opening[], into: { solids: Solid[]; passages: Passage[] }): void => {
  const lengthMm = distanceMm(w.from, w.to);
  if (!(lengthMm > 0)) return;
  const along = scale(sub(w.to, w.from), 1 / lengthMm);
  const at = (mm: number): Point => add(w.from, scale(along, Math.min(lengthMm, Math.max(0, mm))));
  const halfMm = Math.max(0, w.thicknessMm / 2);
  let from = 0;
  for (const o of [...openings].sort((x, y) => x.offsetMm - y.offsetMm)) {
    into.passages.push({ opening: o, a: at(o.offsetMm), b: at(o.offsetMm + o.widthMm), along });
    if (o.offsetMm > from) into.solids.push({ a: at(from), b: at(o.offsetMm), halfMm });
    from = Math.max(from, o.offsetMm + o.widthMm);
  }
  if (from < lengthMm) into.solids.push({ a: at(from), b: at(lengthMm), halfMm });
};

const cross = (a: Point, b: Point): number => a.xMm * b.yMm - a.yMm * b.xMm;

/** Least distance of two straight pieces, 0 where they cross. */
export const segmentGapMm = (a: Point, b: Point, c: Point, d: Point): number => {
  const r = sub(b, a);
  const s = sub(d, c);
  const den = cross(r, s);
  if (den !== 0) {
    const t = cross(sub(c, a), s) / den;
    const u = cross(sub(c, a), r) / den;
    if (t >= 0 && t <= 1 && u >= 0 && u <= 1) return 0;
  }
  const gap = (p: Point, x: Point, y: Point): number => distanceMm(p, nearestOnSegment(p, x, y).at);
  return Math.min(gap(a, c, d), gap(b, c, d), gap(c, a, b), gap(d, a, b));
};

/** Turns that are tried for room, degrees apart. */
const TURN_STEP_DEG = 5;

/** Whether the legs of a stand find room between the walls, turned in some way. Legs are straight lines on the floor. */
export const legsFit = (use: StandUse, solids: readonly Solid[]): boolean => {
  const { at } = use.stand;
  const reach = use.kind.legCircleMm / 2;
  const legs = Math.max(3, use.kind.legs ?? 3);
  const near = solids.filter((s) => distanceMm(at, nearestOnSegment(at, s.a, s.b).at) < reach + s.halfMm);
  if (near.length === 0) return true;
  for (let turn = 0; turn < 360 / legs; turn += TURN_STEP_DEG) {
    const clear = Array.from({ length: legs }, (_, i) =>
      add(at, scale(direction(use.stand.rotationDeg + turn + (360 * i) / legs), reach)),
    ).every((tip) => near.every((s) => segmentGapMm(at, tip, s.a, s.b) >= s.halfMm));
    if (clear) return true;
  }
  return false;
};

/** Distance from a stand's column to the quarter circle that the leaf of a door sweeps; infinite without a leaf. */
export const swingGapMm = (p: Passage, at: Point): number => {
  const { swing, widthMm } = p.opening;
  if (!swing) return Infinity;
  const [hinge, inward] = swing.endsWith('start') ? [p.a, p.along] : [p.b, scale(p.along, -1)];
  const left: Point = { xMm: p.along.yMm, yMm: -p.along.xMm };
  const out = scale(left, swing.startsWith('left') ? 1 : -1);
  const d = sub(at, hinge);
  const u = dot(d, inward);
  const v = dot(d, out);
  if (u >= 0 && v >= 0) return Math.max(0, Math.hypot(u, v) - widthMm);
  const along = u >= 0 ? Math.min(u, widthMm) : 0;
  const outward = v >= 0 ? Math.min(v, widthMm) : 0;
  return Math.hypot(u - along, v - outward);
};

/** Doors whose way or leaf the circle around a stand's legs reaches into. */
export const doorsReached = (use: StandUse, floor: FloorPlan): readonly Opening[] => {
  const reach = use.kind.legCircleMm / 2;
  const { at } = use.stand;
  return floor.passages
    .filter((p) => {
      const gap = distanceMm(at, nearestOnSegment(at, p.a, p.b).at);
      return Math.min(gap, swingGapMm(p, at)) < reach;
    })
    .map((p) => p.opening);
};

/** Pairs of stands of different bases that stand so close that their legs cross however they are turned. */
export const crossedStands = (
  uses: readonly StandUse[],
  baseOf: (id: string) => Base | undefined,
): readonly (readonly [Stand, Stand])[] => {
  const out: (readonly [Stand, Stand])[] = [];
  const sorted = [...uses].sort((a, b) => a.stand.at.xMm - b.stand.at.xMm);
  const widest = uses.reduce((most, u) => Math.max(most, u.radiusMm), 0);
  sorted.forEach((a, i) => {
    for (let j = i + 1; j < sorted.length; j++) {
      const b = sorted[j];
      if (!b || b.stand.at.xMm - a.stand.at.xMm > a.radiusMm + widest) break;
      if (a.stand.floorId !== b.stand.floorId) continue;
      if (baseOf(a.stand.id) === baseOf(b.stand.id)) continue;
      if (distanceMm(a.stand.at, b.stand.at) < a.radiusMm + b.radiusMm)
        out.push(a.stand.id < b.stand.id ? [a.stand, b.stand] : [b.stand, a.stand]);
    }
  });
  return out;
};
