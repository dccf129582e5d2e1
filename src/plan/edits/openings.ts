import { add, distanceMm, dot, type Point, point, scale, sub } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { fail, ok, type Result } from '../../kernel/result.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Opening, Wall } from '../records/index.ts';

/** What an opening is like before anything is measured. */
export const USUAL_OPENING: Readonly<
  Record<Opening['what'], { readonly widthMm: number; readonly heightMm: number; readonly sillMm: number }>
> = {
  door: { widthMm: 864, heightMm: 2032, sillMm: 0 },
  window: { widthMm: 1220, heightMm: 1220, sillMm: 900 },
  archway: { widthMm: 1220, heightMm: 2100, sillMm: 0 },
};

/** Distance along a wall from its start to the foot of a spot. Millimetres. */
export const alongWall = (wall: Wall, at: Point): number => {
  const l = distanceMm(wall.from, wall.to) || 1;
  return dot(sub(at, wall.from), scale(sub(wall.to, wall.from), 1 / l));
};

/** The middle of an opening on its wall's centre line. */
export const openingCentre = (wall: Wall, o: Pick<Opening, 'offsetMm' | 'widthMm'>): Point => {
  const l = distanceMm(wall.from, wall.to) || 1;
  return add(wall.from, scale(sub(wall.to, wall.from), (o.offsetMm + o.widthMm / 2) / l));
};

/** The free stretch of a wall nearest to where an opening of this width is wanted: its offset, or undefined without room. */
const freeOffset = (
  plan: Plan,
  wall: Wall,
  wantedMm: number,
  widthMm: number,
  except?: Id,
): number | undefined => {
  const l = distanceMm(wall.from, wall.to);
  const taken = recordsOf(plan, 'opening')
    .filter((o) => o.wallId === wall.id && o.id !== except)
    .sort((a, b) => a.offsetMm - b.offsetMm);
  let best: number | undefined;
  let from = 0;
  for (const end of [...taken, undefined]) {
    const to = (end ? end.offsetMm : l) - widthMm;
    if (to >= from - 0.5) {
      const at = Math.max(from, Math.min(wantedMm, to));
      if (best === undefined || Math.abs(at - wantedMm) < Math.abs(best - wantedMm)) best = at;
    }
    if (end) from = Math.max(from, end.offsetMm + end.widthMm);
  }
  return best;
};

const noRoom = (what: string) =>
  fail({
    what: `There is no room for this ${what} in the wall.`,
    todo: 'Make it narrower or choose another wall.',
  });

/** Puts an opening into a wall with its middle near a spot, beside the openings already there. */
export const addOpening = (
  plan: Plan,
  what: {
    readonly wallId: Id;
    readonly at: Point;
    readonly what: Opening['what'];
    readonly widthMm: number;
    readonly heightMm: number;
    readonly sillMm: number;
  },
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly opening: Opening }> => {
  const wall = recordOf(plan, 'wall', what.wallId);
  if (!wall) throw new Error(`no wall ${what.wallId}`);
  if (!(what.widthMm > 0)) return fail({ what: `A ${what.what} needs a width.` });
  const offsetMm = freeOffset(plan, wall, alongWall(wall, what.at) - what.widthMm / 2, what.widthMm);
  if (offsetMm === undefined) return noRoom(what.what);
  const opening: Opening = {
    id: newId('op'),
    type: 'opening',
    wallId: wall.id,
    what: what.what,
    offsetMm,
    widthMm: what.widthMm,
    heightMm: what.heightMm,
    sillMm: what.sillMm,
    ...(what.what === 'door' ? { swing: 'right-start' as const } : {}),
  };
  return ok({ changes: new Draft(plan).put(opening).changes(), opening });
};

/** Slides an opening along its wall by a distance on the floor; it stops at the wall's ends and at other openings. */
export const slideOpening = (plan: Plan, opening: Opening, by: Point): ChangeSet => {
  const wall = recordOf(plan, 'wall', opening.wallId);
  const draft = new Draft(plan);
  if (!wall || opening.locked) return draft.changes();
  const l = distanceMm(wall.from, wall.to) || 1;
  const d = scale(sub(wall.to, wall.from), 1 / l);
  const offsetMm = freeOffset(plan, wall, opening.offsetMm + dot(by, d), opening.widthMm, opening.id);
  return offsetMm === undefined || offsetMm === opening.offsetMm
    ? draft.changes()
    : draft.put({ ...opening, offsetMm }).changes();
};

/** Changes an opening's measures. What does not fit the wall gives a problem in words. */
export const changeOpening = (
  plan: Plan,
  opening: Opening,
  patch: Partial<Pick<Opening, 'widthMm' | 'heightMm' | 'sillMm' | 'offsetMm' | 'swing' | 'what'>>,
): Result<ChangeSet> => {
  const wall = recordOf(plan, 'wall', opening.wallId);
  const next = { ...opening, ...patch };
  if (!(next.widthMm > 0) || !(next.heightMm > 0))
    return fail({ what: `A ${next.what} needs a width and a height.` });
  if (next.sillMm < 0) return fail({ what: 'A sill cannot be below the floor.' });
  if (wall) {
    const offsetMm = freeOffset(plan, wall, next.offsetMm, next.widthMm, opening.id);
    if (offsetMm === undefined) return noRoom(next.what);
    return ok(new Draft(plan).put({ ...next, offsetMm }).changes());
  }
  return ok(new Draft(plan).put(next).changes());
};

/** The face of a wall nearest to a spot, with the direction out of the wall in degrees. */
export const faceNear = (wall: Wall, at: Point): { readonly at: Point; readonly outDeg: number } => {
  const l = distanceMm(wall.from, wall.to) || 1;
  const d = scale(sub(wall.to, wall.from), 1 / l);
  const t = Math.max(0, Math.min(l, alongWall(wall, at)));
  const foot = add(wall.from, scale(d, t));
  const n = point(d.yMm, -d.xMm);
  const side = dot(sub(at, foot), n) >= 0 ? 1 : -1;
  const out = scale(n, side);
  const deg = (Math.atan2(out.yMm, out.xMm) * 180) / Math.PI;
  return { at: add(foot, scale(out, wall.thicknessMm / 2)), outDeg: ((deg % 360) + 360) % 360 };
};
