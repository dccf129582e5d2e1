import type { Id } from '../kernel/ids.ts';
import { peekChanges } from './change-set.ts';
import { type Plan, recordOf, recordsOf, replaceList } from './plan.ts';
import { placeOf } from './ports.ts';
import type { AnyRecord, Cable, Move, RecordOf, RecordType } from './records/index.ts';
import { isNoted } from './remembered.ts';
import { routeBetween } from './route.ts';

/** What can stand somewhere else in another setup. Walls, openings and wall outlets stay where they are. */
export const MOVABLE = [
  'fixture',
  'stand',
  'ballast',
  'grip',
  'rigging',
  'box',
  'charger',
  'pack',
  'device',
  'source',
  'mark',
  'setPiece',
] as const;

export type Movable = RecordOf<(typeof MOVABLE)[number]>;

export const isMovable = (r: AnyRecord | undefined): r is Movable =>
  r !== undefined && (MOVABLE as readonly string[]).includes(r.type);

export const moveId = (setupId: Id, recordId: Id): Id => `move:${setupId}:${recordId}`;

/** What a move says about a place: all of a record that is about where it is and where it points. */
export type MovePlace = Pick<Move, 'at' | 'heightMm' | 'rotationDeg' | 'facingDeg' | 'tiltDeg' | 'aimMarkId'>;

/** Where a record is, as a move would say it. */
export const movePlaceOf = (r: Movable): MovePlace => ({
  at: r.at,
  ...('heightMm' in r && typeof r.heightMm === 'number' ? { heightMm: r.heightMm } : {}),
  ...('rotationDeg' in r && typeof r.rotationDeg === 'number' ? { rotationDeg: r.rotationDeg } : {}),
  ...(r.type === 'mark' ? { facingDeg: r.facingDeg } : {}),
  ...(r.type === 'fixture'
    ? r.aim.at === 'mark'
      ? { aimMarkId: r.aim.markId }
      : { facingDeg: r.aim.facingDeg, tiltDeg: r.aim.tiltDeg }
    : {}),
});

/** A record put where a move says. A fixture that neither faces nor follows anything by the move keeps its own aim. */
export const placedAt = <R extends Movable>(r: R, p: MovePlace): R => {
  const next: Record<string, unknown> = { ...r, at: p.at };
  if (p.heightMm !== undefined && 'heightMm' in r) next.heightMm = p.heightMm;
  if (p.rotationDeg !== undefined && 'rotationDeg' in r) next.rotationDeg = p.rotationDeg;
  if (p.facingDeg !== undefined && r.type === 'mark') next.facingDeg = p.facingDeg;
  if (r.type === 'fixture') {
    if (p.aimMarkId !== undefined) next.aim = { at: 'mark', markId: p.aimMarkId };
    else if (p.facingDeg !== undefined)
      next.aim = {
        at: 'facing',
        facingDeg: p.facingDeg,
        tiltDeg: p.tiltDeg ?? (r.aim.at === 'facing' ? r.aim.tiltDeg : 0),
      };
  }
  return next as unknown as R;
};

/** Moves of one setup. */
export const movesIn = (plan: Plan, setupId: Id): readonly Move[] =>
  recordsOf(plan, 'move').filter((m) => m.setupId === setupId);

/** The move of a record in a setup; undefined where it stands where it always does. */
export const moveOf = (plan: Plan, setupId: Id | undefined, recordId: Id): Move | undefined =>
  setupId === undefined ? undefined : recordOf(plan, 'move', moveId(setupId, recordId));

/** Setups in which something stands elsewhere than usual. */
export const setupsWithMoves = (plan: Plan): ReadonlySet<Id> =>
  new Set(recordsOf(plan, 'move').map((m) => m.setupId));

const NONE: ReadonlySet<Id> = new Set();
const moving = new WeakMap<Plan, ReadonlySet<Id>>();

/** Records that move in some setup, with what stands on a moving stand or is plugged into a moving fixture. */
export const movingRecords = (plan: Plan): ReadonlySet<Id> => {
  if (recordsOf(plan, 'move').length === 0) return NONE;
  const known = moving.get(plan);
  if (known) return known;
  const ids = new Set(recordsOf(plan, 'move').map((m) => m.recordId));
  moving.set(plan, ids);
  for (const f of recordsOf(plan, 'fixture'))
    if (f.support.on === 'stand' && ids.has(f.support.standId)) ids.add(f.id);
  for (const d of recordsOf(plan, 'device'))
    if ((d.standId && ids.has(d.standId)) || (d.fixtureId && ids.has(d.fixtureId))) ids.add(d.id);
  return ids;
};

/** A record as a move puts it, the same object as long as both are the same: what is drawn for it is kept by identity. */
const placed = new WeakMap<Move, { readonly from: Movable; readonly to: Movable }>();

const placedOnce = (r: Movable, m: Move): Movable => {
  const known = placed.get(m);
  if (known?.from === r) return known.to;
  const to = placedAt(r, m);
  placed.set(m, { from: r, to });
  return to;
};

const memo = new WeakMap<Plan, Map<Id, Plan>>();
const bases = new WeakMap<Plan, Plan>();

/**
 * The plan as it stands in one setup: what moves is where it is then, automatic cables of what moves are laid anew, and the
 * moves of this setup are used up (asked again, it gives itself). The very same plan where nothing moves in the setup, so
 * that everything remembered for it stays good. Drawing, lines of sight and everything else that asks where a thing is in
 * a setup goes through this; lengths do not, for a cable is cut once (see `cableLength`).
 */
export const planInSetup = (plan: Plan, setupId: Id | undefined): Plan => {
  if (setupId === undefined || recordsOf(plan, 'move').length === 0) return plan;
  let known = memo.get(plan);
  if (!known) {
    known = new Map();
    memo.set(plan, known);
  }
  let made = known.get(setupId);
  if (!made) {
    made = make(plan, setupId);
    known.set(setupId, made);
    if (made !== plan) bases.set(made, plan);
  }
  return made;
};

/** The plan that a plan of one setup was made from; any other plan itself. */
export const wholePlan = (plan: Plan): Plan => {
  if (isNoted(plan)) throw new Error('what is remembered may not ask for the whole plan of a setup');
  return bases.get(plan) ?? plan;
};

const make = (plan: Plan, setupId: Id): Plan => {
  const moves = movesIn(plan, setupId).filter((m) => isMovable(plan.records.get(m.recordId)));
  if (moves.length === 0) return plan;
  const updated: { from: AnyRecord; to: AnyRecord }[] = [];
  for (const m of moves) {
    const from = plan.records.get(m.recordId);
    if (isMovable(from)) updated.push({ from, to: placedOnce(from, m) });
  }
  const placed = peekChanges(plan, { added: [], updated, removed: moves });
  const cables = reroutedCables(placed, new Set(moves.map((m) => m.recordId)));
  const made =
    cables.length > 0
      ? peekChanges(plan, { added: [], updated: [...updated, ...cables], removed: moves })
      : placed;
  const setup = recordOf(plan, 'setup', setupId);
  if (setup) keepLists(made, setup);
  return made;
};

/** Types of which a plan of one setup has lists of its own. */
const OWN_LISTS = [...MOVABLE, 'cable', 'move'] as const;

const listsBefore = new WeakMap<RecordOf<'setup'>, Map<RecordType, readonly AnyRecord[]>>();

/** Gives a plan of one setup the very lists of the last one of this setup that have the very same records in them. */
const keepLists = (made: Plan, setup: RecordOf<'setup'>): void => {
  const before = listsBefore.get(setup) ?? new Map<RecordType, readonly AnyRecord[]>();
  for (const type of OWN_LISTS) {
    const now: readonly AnyRecord[] = recordsOf(made, type);
    const old = before.get(type);
    if (old?.length === now.length && old.every((r, i) => r === now[i])) replaceList(made, type, old);
    else before.set(type, now);
  }
  listsBefore.set(setup, before);
};

const onMoved = (plan: Plan, ids: ReadonlySet<Id>): ReadonlySet<Id> => {
  const all = new Set(ids);
  for (const f of recordsOf(plan, 'fixture'))
    if (f.support.on === 'stand' && ids.has(f.support.standId)) all.add(f.id);
  for (const d of recordsOf(plan, 'device'))
    if ((d.standId && all.has(d.standId)) || (d.fixtureId && all.has(d.fixtureId))) all.add(d.id);
  return all;
};

const routes = new WeakMap<Cable, { readonly key: string; readonly walls: object; readonly to: Cable }>();

const reroutedCables = (plan: Plan, moved: ReadonlySet<Id>): { from: Cable; to: Cable }[] => {
  const ends = onMoved(plan, moved);
  const walls = recordsOf(plan, 'wall');
  return recordsOf(plan, 'cable').flatMap((c) => {
    if (!c.route.auto || !(ends.has(c.from.recordId) || ends.has(c.to.recordId))) return [];
    const a = placeOf(plan, c.from.recordId);
    const z = placeOf(plan, c.to.recordId);
    if (!a || !z) return [];
    const key = JSON.stringify([a, z]);
    const known = routes.get(c);
    if (known?.key === key && known.walls === walls) return [{ from: c, to: known.to }];
    const to = { ...c, route: { ...c.route, points: [...routeBetween(plan, a, z)] } };
    routes.set(c, { key, walls, to });
    return [{ from: c, to }];
  });
};
