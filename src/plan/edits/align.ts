import { canonicalJson } from '../../kernel/canonical.ts';
import { add, direction, dot, type Point, point, rotate, sub } from '../../kernel/geometry.ts';
import { compareIds, type Id } from '../../kernel/ids.ts';
import { applyChanges, type ChangeSet, compose, Draft, noChanges, peekChanges } from '../change-set.ts';
import { fixturePlace, kindOf, type Plan } from '../plan.ts';
import type { AnyRecord } from '../records/index.ts';
import { facingOf, movedWith, moveRecords, tiltOf } from './arrange.ts';
import { rerouteCables } from './shared.ts';

export type AlignSide = 'left' | 'right' | 'top' | 'bottom' | 'centre-across' | 'centre-down';

/** A movable thing with its spot and its half size along the axes. */
interface Spot {
  readonly id: Id;
  readonly at: Point;
  readonly half: Point;
}

const halfAlong = (length: number, width: number, deg: number): Point => {
  const d = direction(deg);
  const [c, s] = [Math.abs(d.xMm), Math.abs(d.yMm)];
  return point((length * c + width * s) / 2, (length * s + width * c) / 2);
};

const spotOf = (plan: Plan, id: Id): Spot | undefined => {
  const r = plan.records.get(id);
  if (!r || r.locked) return undefined;
  const sized = (kindId: Id, at: Point, deg: number): Spot => {
    const size = kindOf(plan, kindId)?.sizeMm;
    return { id, at, half: halfAlong(size?.lengthMm ?? 0, size?.widthMm ?? 0, deg) };
  };
  switch (r.type) {
    case 'fixture':
      return sized(r.kindId, fixturePlace(plan, r).at, facingOf(plan, r));
    case 'ballast':
    case 'box':
    case 'charger':
    case 'pack':
    case 'source':
    case 'stand':
    case 'grip':
    case 'rigging':
      return sized(r.kindId, r.at, r.rotationDeg);
    case 'device':
      // Where it is carried by something, that is what is lined up.
      return r.standId !== undefined || r.fixtureId !== undefined
        ? undefined
        : sized(r.kindId, r.at, r.rotationDeg);
    case 'outlet':
    case 'mark':
      return { id, at: r.at, half: point(0, 0) };
    case 'setPiece':
      return {
        id,
        at: r.at,
        half:
          r.outline.shape === 'polygon'
            ? point(0, 0)
            : halfAlong(r.outline.lengthMm, r.outline.widthMm, r.rotationDeg),
      };
    default:
      return undefined;
  }
};

/** The things of a selection that can be lined up: what another one carries goes with it and is not counted. */
const spotsOf = (plan: Plan, ids: ReadonlySet<Id>): readonly Spot[] => {
  const carried = new Set<Id>();
  for (const id of ids) {
    const r = plan.records.get(id);
    if (r?.type === 'fixture' && r.support.on === 'stand') carried.add(r.support.standId);
    if (r?.type === 'grip') for (const s of r.supports) carried.add(s);
  }
  return [...ids]
    .filter((id) => !carried.has(id))
    .flatMap((id) => spotOf(plan, id) ?? [])
    .sort((a, b) => compareIds(a.id, b.id));
};

const moveEach = (plan: Plan, moves: readonly { readonly id: Id; readonly by: Point }[]): ChangeSet => {
  let at = plan;
  let all = noChanges;
  for (const { id, by } of moves) {
    if (by.xMm === 0 && by.yMm === 0) continue;
    const step = moveRecords(at, new Set([id]), by);
    at = applyChanges(at, step);
    all = compose(all, step);
  }
  return all;
};

/** Lines things up by an edge of their outlines or by their centres. */
export const alignRecords = (plan: Plan, ids: ReadonlySet<Id>, side: AlignSide): ChangeSet => {
  const spots = spotsOf(plan, ids);
  const across = side === 'left' || side === 'right' || side === 'centre-across';
  const value = (s: Spot): number => {
    const [c, h] = across ? [s.at.xMm, s.half.xMm] : [s.at.yMm, s.half.yMm];
    return side === 'left' || side === 'top' ? c - h : side === 'right' || side === 'bottom' ? c + h : c;
  };
  const values = spots.map(value);
  if (values.length < 2) return noChanges;
  const [lo, hi] = [Math.min(...values), Math.max(...values)];
  const goal =
    side === 'left' || side === 'top' ? lo : side === 'right' || side === 'bottom' ? hi : (lo + hi) / 2;
  return moveEach(
    plan,
    spots.map((s) => ({ id: s.id, by: across ? point(goal - value(s), 0) : point(0, goal - value(s)) })),
  );
};

/** Spreads the centres of three or more things evenly between the outermost two. */
export const distributeRecords = (plan: Plan, ids: ReadonlySet<Id>, way: 'across' | 'down'): ChangeSet => {
  const value = (s: Spot): number => (way === 'across' ? s.at.xMm : s.at.yMm);
  const spots = [...spotsOf(plan, ids)].sort((a, b) => value(a) - value(b) || compareIds(a.id, b.id));
  const [first, last] = [spots[0], spots.at(-1)];
  if (!first || !last || spots.length < 3) return noChanges;
  const step = (value(last) - value(first)) / (spots.length - 1);
  return moveEach(
    plan,
    spots.map((s, i) => {
      const off = value(first) + step * i - value(s);
      return { id: s.id, by: way === 'across' ? point(off, 0) : point(0, off) };
    }),
  );
};

/** The middle of a selection: of the box around its centres. */
export const selectionCentre = (plan: Plan, ids: ReadonlySet<Id>): Point | undefined => {
  const points: Point[] = [];
  for (const id of ids) {
    const r = plan.records.get(id);
    const s = spotOf(plan, id);
    if (s) points.push(s.at);
    else if (r?.type === 'wall') points.push(r.from, r.to);
  }
  if (points.length === 0) return undefined;
  const xs = points.map((p) => p.xMm);
  const ys = points.map((p) => p.yMm);
  return point((Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2);
};

/** A record carried over by a map of the floor onto itself, and its direction by a map of directions. */
const mapped = (
  plan: Plan,
  r: AnyRecord,
  place: (p: Point) => Point,
  turn: (deg: number) => number,
): AnyRecord => {
  switch (r.type) {
    case 'fixture':
      return {
        ...r,
        at: place(fixturePlace(plan, r).at),
        ...(r.arm?.directionDeg === undefined
          ? {}
          : { arm: { ...r.arm, directionDeg: turn(r.arm.directionDeg) } }),
        aim:
          r.aim.at === 'mark'
            ? r.aim
            : { at: 'facing', facingDeg: turn(facingOf(plan, r)), tiltDeg: tiltOf(plan, r) },
      };
    case 'mark':
      return { ...r, at: place(r.at), facingDeg: turn(r.facingDeg) };
    case 'wall':
      return { ...r, from: place(r.from), to: place(r.to) };
    default:
      return 'at' in r && 'rotationDeg' in r
        ? ({ ...r, at: place(r.at as Point), rotationDeg: turn(r.rotationDeg as number) } as AnyRecord)
        : r;
  }
};

const mapRecords = (
  plan: Plan,
  ids: ReadonlySet<Id>,
  place: (p: Point) => Point,
  turn: (deg: number) => number,
): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of movedWith(plan, ids)) {
    const r = plan.records.get(id);
    if (!r || r.locked) continue;
    const next = mapped(plan, r, place, turn);
    if (canonicalJson(next) !== canonicalJson(r)) draft.put(next);
  }
  const moved = new Set(draft.changes().updated.map((u) => u.to.id));
  rerouteCables(draft, peekChanges(plan, draft.changes()), moved);
  return draft.changes();
};

const norm = (deg: number): number => ((deg % 360) + 360) % 360;

/** Turns things together about a spot, degrees clockwise. Units that follow a mark keep following it. */
export const rotateAbout = (plan: Plan, ids: ReadonlySet<Id>, centre: Point, byDeg: number): ChangeSet =>
  mapRecords(
    plan,
    ids,
    (p) => add(centre, rotate(sub(p, centre), byDeg)),
    (deg) => norm(deg + byDeg),
  );

/** Mirrors things about an upright or a level line through a spot. */
export const mirrorRecords = (
  plan: Plan,
  ids: ReadonlySet<Id>,
  centre: Point,
  line: 'upright' | 'level',
): ChangeSet => {
  const n = line === 'upright' ? point(1, 0) : point(0, 1);
  return mapRecords(
    plan,
    ids,
    (p) => {
      const off = dot(sub(p, centre), n);
      return point(p.xMm - 2 * off * n.xMm, p.yMm - 2 * off * n.yMm);
    },
    (deg) => norm(line === 'upright' ? 180 - deg : -deg),
  );
};
