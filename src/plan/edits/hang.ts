import { add, direction, dot, type Point, point, rotate, scale, sub } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { type ChangeSet, Draft, peekChanges } from '../change-set.ts';
import type { RiggingKind } from '../kinds/kinds.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan.ts';
import type { Fixture, Rigging } from '../records/index.ts';
import { rerouteCables } from './shared.ts';

/** A tube or truss as the line that things hang along. */
export interface HangLine {
  readonly rigging: Rigging;
  /** Its end nearer to where its direction begins, and that direction. */
  readonly start: Point;
  readonly along: Point;
  readonly lengthMm: number;
}

/** A tube's or truss's own measures: it runs along the longer side of its kind, which may be the one across its facing. */
export const barSize = (
  kind: RiggingKind,
  rigging: Pick<Rigging, 'lengthMm' | 'rotationDeg'>,
): { readonly lengthMm: number; readonly thickMm: number; readonly deg: number } => {
  const { lengthMm: along, widthMm: across } = kind.sizeMm;
  return {
    lengthMm: rigging.lengthMm ?? Math.max(along, across),
    thickMm: Math.min(along, across),
    deg: rigging.rotationDeg + (across > along ? 90 : 0),
  };
};

/** The kind of a tube or truss; undefined for other rigging. */
export const barKind = (plan: Plan, rigging: Rigging): RiggingKind | undefined => {
  const kind = kindOf(plan, rigging.kindId, 'rigging');
  return kind?.what === 'pipe' || kind?.what === 'truss' ? kind : undefined;
};

/** The line of a tube or truss; undefined for points, lifts and the like. */
export const hangLine = (plan: Plan, rigging: Rigging): HangLine | undefined => {
  const kind = barKind(plan, rigging);
  if (!kind) return undefined;
  const { lengthMm, deg } = barSize(kind, rigging);
  const along = direction(deg);
  return { rigging, along, lengthMm, start: sub(rigging.at, scale(along, lengthMm / 2)) };
};

const alongLine = (line: HangLine, at: Point): number => dot(sub(at, line.start), line.along);
const onLine = (line: HangLine, mm: number): Point => {
  const p = add(line.start, scale(line.along, Math.max(0, Math.min(line.lengthMm, mm))));
  // A hundredth of a millimetre is finer than anyone hangs, and keeps the file readable.
  return point(Math.round(p.xMm * 100) / 100, Math.round(p.yMm * 100) / 100);
};

/** How far along its tube a hung fixture is, and how far beside it; undefined where it hangs on no tube. */
export const alongOf = (
  plan: Plan,
  f: Fixture,
): { readonly line: HangLine; readonly alongMm: number; readonly besideMm: number } | undefined => {
  const id = f.support.on === 'rigged' ? f.support.riggingId : undefined;
  const rigging = id === undefined ? undefined : recordOf(plan, 'rigging', id);
  const line = rigging && hangLine(plan, rigging);
  if (!line) return undefined;
  const off = sub(f.at, line.start);
  return {
    line,
    alongMm: alongLine(line, f.at),
    besideMm: Math.abs(off.xMm * line.along.yMm - off.yMm * line.along.xMm),
  };
};

/** The tube or truss nearest to a spot, within reach of it. */
export const lineUnder = (plan: Plan, floorId: Id, at: Point, reachMm: number): HangLine | undefined => {
  let found: HangLine | undefined;
  let off = reachMm;
  for (const r of recordsOf(plan, 'rigging')) {
    const line = r.floorId === floorId ? hangLine(plan, r) : undefined;
    if (!line) continue;
    const foot = onLine(line, alongLine(line, at));
    const d = Math.hypot(foot.xMm - at.xMm, foot.yMm - at.yMm);
    if (d <= off) {
      off = d;
      found = line;
    }
  }
  return found;
};

const hung = (line: HangLine, f: Fixture, at: Point): Fixture => ({
  ...f,
  at,
  heightMm: line.rigging.heightMm,
  support: { on: 'rigged', riggingId: line.rigging.id },
});

/**
 * Hangs fixtures on a tube or truss, each on the spot of it that is nearest, at its height. A stand that carried one goes,
 * unless it carries something else. On a point or a lift they keep their place.
 */
export const hangOn = (plan: Plan, fixtureIds: Iterable<Id>, riggingId: Id): ChangeSet => {
  const draft = new Draft(plan);
  const rigging = recordOf(plan, 'rigging', riggingId);
  if (!rigging) return draft.changes();
  const line = hangLine(plan, rigging);
  const moved = new Set<Id>();
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    if (!f || f.locked) continue;
    const standId = f.support.on === 'stand' ? f.support.standId : undefined;
    const stand = standId === undefined ? undefined : recordOf(plan, 'stand', standId);
    const at = stand?.at ?? f.at;
    const others =
      stand &&
      (recordsOf(plan, 'fixture').some(
        (o) => o.id !== id && o.support.on === 'stand' && o.support.standId === stand.id,
      ) ||
        recordsOf(plan, 'grip').some((g) => g.supports.includes(stand.id)));
    if (stand && !others) draft.remove(stand.id);
    draft.put(
      line
        ? hung(line, f, onLine(line, alongLine(line, at)))
        : { ...f, at, heightMm: rigging.heightMm, support: { on: 'rigged', riggingId } },
    );
    moved.add(id);
  }
  rerouteCables(draft, peekChanges(plan, draft.changes()), moved);
  return draft.changes();
};

/** Slides a hung fixture to a place along its tube, millimetres from the tube's start. */
export const slideAlong = (plan: Plan, fixtureId: Id, alongMm: number): ChangeSet => {
  const draft = new Draft(plan);
  const f = recordOf(plan, 'fixture', fixtureId);
  const now = f && alongOf(plan, f);
  if (!f || !now || f.locked) return draft.changes();
  draft.put(hung(now.line, f, onLine(now.line, alongMm)));
  rerouteCables(draft, peekChanges(plan, draft.changes()), new Set([fixtureId]));
  return draft.changes();
};

/** Sets the height of rigging; what hangs on it goes up or down with it. */
export const setRiggingHeight = (plan: Plan, riggingId: Id, heightMm: number): ChangeSet => {
  const draft = new Draft(plan);
  const rigging = recordOf(plan, 'rigging', riggingId);
  if (!rigging) return draft.changes();
  const by = heightMm - rigging.heightMm;
  draft.put({ ...rigging, heightMm });
  for (const f of recordsOf(plan, 'fixture'))
    if (f.support.on === 'rigged' && f.support.riggingId === riggingId)
      draft.put({ ...f, heightMm: Math.max(0, f.heightMm + by) });
  for (const g of recordsOf(plan, 'grip'))
    if (g.riggingId === riggingId) draft.put({ ...g, heightMm: Math.max(0, g.heightMm + by) });
  return draft.changes();
};

/** Turns what hangs on rigging about its middle along with it. What is turned by itself is left out. */
export const turnHung = (
  draft: Draft,
  plan: Plan,
  rigging: Rigging,
  byDeg: number,
  left: ReadonlySet<Id>,
): void => {
  const place = (p: Point): Point => {
    const q = add(rigging.at, rotate(sub(p, rigging.at), byDeg));
    return point(Math.round(q.xMm * 100) / 100, Math.round(q.yMm * 100) / 100);
  };
  const turned = (deg: number): number => (((deg + byDeg) % 360) + 360) % 360;
  for (const f of recordsOf(plan, 'fixture')) {
    if (f.support.on !== 'rigged' || f.support.riggingId !== rigging.id || f.locked || left.has(f.id))
      continue;
    const aim = f.aim.at === 'facing' ? { ...f.aim, facingDeg: turned(f.aim.facingDeg) } : f.aim;
    draft.put({ ...f, at: place(f.at), aim });
  }
  for (const g of recordsOf(plan, 'grip'))
    if (g.riggingId === rigging.id && !g.locked && !left.has(g.id))
      draft.put({ ...g, at: place(g.at), rotationDeg: turned(g.rotationDeg) });
};
