import { add, distanceMm, dot, lerp, type Point, point, scale, sub } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Opening, Wall } from '../records/index.ts';
import { alongWall } from './openings.ts';
import { outletsFollowWithCables } from './wall-outlets.ts';

/** What walls are made like. */
export interface WallLook {
  readonly thicknessMm: number;
  readonly heightMm: number;
  readonly material: Wall['material'];
}

export const USUAL_WALL: WallLook = { thicknessMm: 150, heightMm: 2700, material: 'plasterboard' };

/** Walls drawn one after the other. `points` run along the inside face of the room, or along the centre lines. */
export interface WallRun {
  readonly points: readonly Point[];
  readonly closed: boolean;
  readonly along: 'inside' | 'centre';
}

/** Shorter than this is no wall. */
export const LEAST_WALL_MM = 20;
/** Ends nearer than this are one corner. */
const SAME_MM = 1;

const meet = (p: Point, d: Point, q: Point, e: Point): Point | undefined => {
  const den = d.xMm * e.yMm - d.yMm * e.xMm;
  if (Math.abs(den) < 1e-6 * Math.hypot(d.xMm, d.yMm) * Math.hypot(e.xMm, e.yMm)) return undefined;
  const t = ((q.xMm - p.xMm) * e.yMm - (q.yMm - p.yMm) * e.xMm) / den;
  return add(p, scale(d, t));
};

/** Whether two stretches cross somewhere inside both, ends left out. */
export const cross = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.xMm - p.xMm) * (r.yMm - p.yMm) - (q.yMm - p.yMm) * (r.xMm - p.xMm);
  const s = [side(a, b, c), side(a, b, d), side(c, d, a), side(c, d, b)] as const;
  const tiny = 1e-6 * (distanceMm(a, b) * distanceMm(c, d) + 1);
  if (s.some((x) => Math.abs(x) <= tiny)) return false;
  return s[0] > 0 !== s[1] > 0 && s[2] > 0 !== s[3] > 0;
};

/** Which way a run turns: 1 clockwise as drawn (y runs down), −1 the other way. One stretch counts as clockwise. */
const turning = (points: readonly Point[]): 1 | -1 => {
  let sum = 0;
  for (let i = 2; i < points.length; i++) {
    const [a, b, c] = [points[i - 2], points[i - 1], points[i]];
    if (a && b && c) sum += (b.xMm - a.xMm) * (c.yMm - b.yMm) - (b.yMm - a.yMm) * (c.xMm - b.xMm);
  }
  return sum < 0 ? -1 : 1;
};

/**
 * Centre lines of the walls of a run. Along the inside the walls stand outside the drawn line, on the side that the run
 * turns away from, and meet at mitred corners; millimetres.
 */
export const runLines = (
  run: WallRun,
  thicknessMm: number,
): readonly { readonly from: Point; readonly to: Point }[] => {
  const { points, closed } = run;
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  const half =
    run.along === 'centre'
      ? 0
      : (thicknessMm / 2) * turning(closed ? [...points, ...points.slice(0, 2)] : points);
  const lines = ends.flatMap((to, i) => {
    const from = points[i];
    const l = from ? distanceMm(from, to) : 0;
    if (!from || l < SAME_MM) return [];
    const d = scale(sub(to, from), 1 / l);
    // Clockwise with y running down, the outside is to the left of the way one draws.
    const out = scale(point(d.yMm, -d.xMm), half);
    return [{ from: add(from, out), to: add(to, out), d }];
  });
  const corner = (i: number, j: number): Point | undefined => {
    const a = lines[i];
    const b = lines[j];
    return a && b ? (meet(a.from, a.d, b.from, b.d) ?? undefined) : undefined;
  };
  const last = lines.length - 1;
  return lines.map((line, i) => ({
    from: (i > 0 ? corner(i - 1, i) : closed && last > 1 ? corner(last, 0) : undefined) ?? line.from,
    to: (i < last ? corner(i, i + 1) : closed && last > 1 ? corner(last, 0) : undefined) ?? line.to,
  }));
};

/** Why a run cannot be walls, or undefined. */
const faultOf = (run: WallRun): string | undefined => {
  const { points, closed } = run;
  if (points.some((p) => !Number.isFinite(p.xMm) || !Number.isFinite(p.yMm))) return 'A wall needs a length.';
  const ends = closed ? [...points.slice(1), ...points.slice(0, 1)] : points.slice(1);
  const lines = ends.map((to, i) => [points[i] ?? to, to] as const);
  if (lines.some(([a, b]) => distanceMm(a, b) < LEAST_WALL_MM)) return 'A wall of no length is no wall.';
  for (let i = 0; i < lines.length; i++)
    for (let j = i + 1; j < lines.length; j++) {
      const [a, b] = lines[i] ?? [];
      const [c, d] = lines[j] ?? [];
      if (a && b && c && d && (cross(a, b, c, d) || backtracks(a, b, c, d)))
        return 'This wall would cross one of the same run.';
    }
  return undefined;
};

/** Whether two stretches lie on one another. */
const backtracks = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const u = sub(b, a);
  const l = Math.hypot(u.xMm, u.yMm);
  const off = (p: Point): number => Math.abs(u.xMm * (p.yMm - a.yMm) - u.yMm * (p.xMm - a.xMm)) / l;
  if (off(c) > SAME_MM || off(d) > SAME_MM) return false;
  const t = (p: Point): number => dot(sub(p, a), u) / l;
  return Math.min(l, Math.max(t(c), t(d))) - Math.max(0, Math.min(t(c), t(d))) > SAME_MM;
};

/**
 * Draws a run of walls, in place of the walls `before` that the run had so far: their ids are kept in order. A run that
 * crosses itself or has a wall of no length gives a problem and no change.
 */
export const drawRun = (
  plan: Plan,
  what: {
    readonly floorId: Id;
    readonly run: WallRun;
    readonly look: WallLook;
    readonly before?: readonly Id[];
  },
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly wallIds: readonly Id[] }> => {
  const fault = faultOf(what.run);
  if (fault)
    return fail({
      what: fault,
      todo: 'Type another length or turn another way; what was drawn so far stays.',
    });
  const draft = new Draft(plan);
  const before = what.before ?? [];
  const lines = runLines(what.run, what.look.thicknessMm);
  const wallIds = lines.map(({ from, to }, i) => {
    const known = before[i];
    const old = known === undefined ? undefined : recordOf(plan, 'wall', known);
    const id = old?.id ?? newId('wl');
    if (old && distanceMm(old.from, from) < 1e-6 && distanceMm(old.to, to) < 1e-6) return id;
    draft.put(
      old ? { ...old, from, to } : { id, type: 'wall', floorId: what.floorId, from, to, ...what.look },
    );
    return id;
  });
  for (const id of before.slice(lines.length)) if (recordOf(plan, 'wall', id)) draft.remove(id);
  return ok({ changes: draft.changes(), wallIds });
};

/** A rectangular room by its inside length and width, its inner corner top left at `at`. */
export const addRoom = (
  plan: Plan,
  what: {
    readonly floorId: Id;
    readonly at: Point;
    readonly lengthMm: number;
    readonly widthMm: number;
    readonly look: WallLook;
  },
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly wallIds: readonly Id[] }> => {
  const { at, lengthMm: l, widthMm: w } = what;
  const points = [at, point(at.xMm + l, at.yMm), point(at.xMm + l, at.yMm + w), point(at.xMm, at.yMm + w)];
  if (!(l >= LEAST_WALL_MM && w >= LEAST_WALL_MM))
    return fail({ what: 'A room needs a length and a width.', todo: `Write both, like 24' 6" and 18'.` });
  const run: WallRun = { points, closed: true, along: 'inside' };
  return drawRun(plan, { floorId: what.floorId, run, look: what.look }, newId);
};

/** Walls of a floor with an end at a spot, and which end. */
export const endsAt = (
  plan: Plan,
  floorId: Id,
  at: Point,
): readonly { readonly wall: Wall; readonly end: 'from' | 'to' }[] =>
  recordsOf(plan, 'wall')
    .filter((wall) => wall.floorId === floorId)
    .flatMap((wall) =>
      (['from', 'to'] as const)
        .filter((end) => distanceMm(wall[end], at) <= SAME_MM)
        .map((end) => ({ wall, end })),
    );

/** Openings of a wall that was `oldMm` long and is `newMm` long now, kept inside it; a problem where one no longer fits. */
const refit = (plan: Plan, wallId: Id, newMm: number): Result<readonly Opening[]> => {
  const out: Opening[] = [];
  for (const o of recordsOf(plan, 'opening')) {
    if (o.wallId !== wallId) continue;
    if (o.widthMm > newMm)
      return fail({
        what: `The ${o.what} in this wall is wider than the wall would be.`,
        todo: 'Move or narrow it first.',
      });
    const offsetMm = Math.max(0, Math.min(o.offsetMm, newMm - o.widthMm));
    if (offsetMm !== o.offsetMm) out.push({ ...o, offsetMm });
  }
  return ok(out);
};

/** Moves one end of a wall, and with it every other wall's end at the same corner. Openings stay inside their walls. */
export const moveCorner = (plan: Plan, wallId: Id, end: 'from' | 'to', to: Point): Result<ChangeSet> => {
  const wall = recordOf(plan, 'wall', wallId);
  if (!wall) throw new Error(`no wall ${wallId}`);
  const draft = new Draft(plan);
  for (const { wall: w, end: e } of endsAt(plan, wall.floorId, wall[end])) {
    if (w.locked) return fail({ what: 'A wall at this corner is locked.' });
    const next = { ...w, [e]: { ...w[e], xMm: to.xMm, yMm: to.yMm } };
    const length = distanceMm(next.from, next.to);
    if (length < LEAST_WALL_MM)
      return fail({ what: 'A wall of no length is no wall.', todo: 'Delete it instead.' });
    const openings = refit(plan, w.id, length);
    if (!openings.ok) return openings;
    draft.put(next);
    for (const o of openings.value) draft.put(o);
  }
  outletsFollowWithCables(draft, plan);
  return ok(draft.changes());
};

/** Gives a wall another length by moving its far end, along with the walls that meet there. */
export const setWallLength = (plan: Plan, wallId: Id, lengthMm: number): Result<ChangeSet> => {
  const wall = recordOf(plan, 'wall', wallId);
  if (!wall) throw new Error(`no wall ${wallId}`);
  if (!(lengthMm >= LEAST_WALL_MM))
    return fail({ what: 'A wall of no length is no wall.', todo: 'Delete it instead.' });
  const l = distanceMm(wall.from, wall.to) || 1;
  return moveCorner(plan, wallId, 'to', add(wall.from, scale(sub(wall.to, wall.from), lengthMm / l)));
};

/** Cuts a wall in two at a distance from its start. Openings go with their part; a cut through one gives a problem. */
export const splitWall = (
  plan: Plan,
  wallId: Id,
  atMm: number,
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly second: Id }> => {
  const wall = recordOf(plan, 'wall', wallId);
  if (!wall) throw new Error(`no wall ${wallId}`);
  const l = distanceMm(wall.from, wall.to);
  if (atMm < LEAST_WALL_MM || atMm > l - LEAST_WALL_MM)
    return fail({ what: 'The cut is at the end of the wall.', todo: 'Choose a spot further along.' });
  const cut = lerp(wall.from, wall.to, atMm / l);
  const second: Wall = { ...wall, id: newId('wl'), from: cut };
  const draft = new Draft(plan).put({ ...wall, to: cut }).put(second);
  for (const o of recordsOf(plan, 'opening')) {
    if (o.wallId !== wallId) continue;
    if (o.offsetMm < atMm && o.offsetMm + o.widthMm > atMm)
      return fail({ what: `The cut goes through a ${o.what}.`, todo: 'Choose a spot beside it.' });
    if (o.offsetMm >= atMm) draft.put({ ...o, wallId: second.id, offsetMm: o.offsetMm - atMm });
  }
  for (const o of recordsOf(plan, 'outlet'))
    if (o.wallId === wallId && (o.offsetMm ?? 0) > atMm)
      draft.put({ ...o, wallId: second.id, offsetMm: (o.offsetMm ?? 0) - atMm });
  return ok({ changes: draft.changes(), second: second.id });
};

/** Makes one wall of two that run on in one line and are alike. */
export const joinWalls = (plan: Plan, firstId: Id, secondId: Id): Result<ChangeSet> => {
  const a = recordOf(plan, 'wall', firstId);
  const b = recordOf(plan, 'wall', secondId);
  if (!a || !b) throw new Error('two walls are needed');
  const [ae, be] = (['from', 'to'] as const)
    .flatMap((x) => (['from', 'to'] as const).map((y) => [x, y] as const))
    .find(([x, y]) => distanceMm(a[x], b[y]) <= SAME_MM) ?? [undefined, undefined];
  if (!ae || !be)
    return fail({ what: 'These walls do not meet.', todo: 'Choose two walls that share a corner.' });
  const far = be === 'from' ? b.to : b.from;
  const near = ae === 'from' ? a.to : a.from;
  const u = sub(a[ae], near);
  const v = sub(far, a[ae]);
  const bend =
    Math.abs(u.xMm * v.yMm - u.yMm * v.xMm) / (Math.hypot(u.xMm, u.yMm) * Math.hypot(v.xMm, v.yMm));
  if (bend > 0.01 || dot(u, v) < 0 || a.thicknessMm !== b.thicknessMm)
    return fail({ what: 'Only walls of one thickness that run on in one line can be joined.' });
  const la = distanceMm(a.from, a.to);
  const lb = distanceMm(b.from, b.to);
  const joined: Wall = { ...a, [ae]: far };
  const draft = new Draft(plan).put(joined).remove(b.id);
  // Outlets stay where they are, on the wall as it is now.
  for (const o of recordsOf(plan, 'outlet'))
    if (o.wallId === a.id || o.wallId === b.id)
      draft.put({ ...o, wallId: a.id, offsetMm: alongWall(joined, o.at) });
  for (const o of recordsOf(plan, 'opening')) {
    if (o.wallId === a.id && ae === 'from') draft.put({ ...o, offsetMm: o.offsetMm + lb });
    if (o.wallId !== b.id) continue;
    // Measured from b's own start; turned round where b runs against a.
    const along = (be === 'from') === (ae === 'to') ? o.offsetMm : lb - o.offsetMm - o.widthMm;
    draft.put({ ...o, wallId: a.id, offsetMm: ae === 'to' ? la + along : along });
  }
  return ok(draft.changes());
};

/** After walls moved, ends of other walls at their old corners go along, so that rooms stay closed. */
export const cornersFollow = (draft: Draft, plan: Plan, moved: ReadonlySet<Id>, by: Point): void => {
  for (const id of moved) {
    const wall = recordOf(plan, 'wall', id);
    if (!wall) continue;
    for (const end of ['from', 'to'] as const)
      for (const { wall: other, end: e } of endsAt(plan, wall.floorId, wall[end])) {
        if (moved.has(other.id) || other.locked) continue;
        const now = draft.get(other.id);
        if (now?.type !== 'wall') continue;
        const next = { ...now, [e]: { ...now[e], xMm: other[e].xMm + by.xMm, yMm: other[e].yMm + by.yMm } };
        draft.put(next);
        const fit = refit(plan, other.id, distanceMm(next.from, next.to));
        if (fit.ok) for (const o of fit.value) draft.put(o);
      }
  }
};
