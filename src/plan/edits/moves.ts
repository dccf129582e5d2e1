import { canonicalJson } from '../../kernel/canonical.ts';
import type { Id } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import {
  isMovable,
  type Movable,
  moveId,
  moveOf,
  movePlaceOf,
  movesIn,
  movingRecords,
  placedAt,
} from '../moves.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { AnyRecord, Move } from '../records/index.ts';
import { movedWith } from './arrange.ts';

const asMove = (r: Movable, setupId: Id, old: Move | undefined): Move => {
  const {
    at: _at,
    heightMm: _height,
    rotationDeg: _rotation,
    facingDeg: _facing,
    tiltDeg: _tilt,
    aimMarkId: _mark,
    ...rest
  } = old ?? { id: moveId(setupId, r.id), type: 'move' as const, setupId, recordId: r.id, at: r.at };
  return { ...rest, ...movePlaceOf(r) } as Move;
};

/** Gives records a place of their own in one setup, to begin with the one they have. Their stands and what they carry come along. */
export const moveOnlyHere = (plan: Plan, setupId: Id, ids: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of movedWith(plan, new Set(ids))) {
    const r = plan.records.get(id);
    if (isMovable(r) && !r.locked && !moveOf(plan, setupId, id)) draft.put(asMove(r, setupId, undefined));
  }
  return draft.changes();
};

/** Takes records' own places in a setup away: they stand there where they always do. */
export const stayHere = (plan: Plan, setupId: Id, ids: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of movedWith(plan, new Set(ids))) {
    const m = moveOf(plan, setupId, id);
    if (m) draft.remove(m.id);
  }
  return draft.changes();
};

/** Makes records' places in one setup those of every setup that has none of its own. */
export const placeEverywhere = (plan: Plan, setupId: Id, ids: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of movedWith(plan, new Set(ids))) {
    const m = moveOf(plan, setupId, id);
    const r = plan.records.get(id);
    if (!m || !isMovable(r) || r.locked) continue;
    draft.put(placedAt(r, m));
    draft.remove(m.id);
  }
  return draft.changes();
};

/** Puts records, in one setup, where they stand in another; where they have no place of their own there, where they always do. */
export const samePlaceAs = (plan: Plan, fromSetup: Id, toSetup: Id, ids: Iterable<Id>): ChangeSet => {
  const draft = new Draft(plan);
  if (fromSetup === toSetup) return draft.changes();
  for (const id of movedWith(plan, new Set(ids))) {
    const [there, here] = [moveOf(plan, fromSetup, id), moveOf(plan, toSetup, id)];
    if (there) draft.put({ ...there, id: moveId(toSetup, id), setupId: toSetup });
    else if (here) draft.remove(here.id);
  }
  return draft.changes();
};

/** Copies the places of one setup's moves to another, for a copied setup. */
export const copyMoves = (plan: Plan, draft: Draft, from: Id, to: Id): void => {
  for (const m of movesIn(plan, from)) draft.put({ ...m, id: moveId(to, m.recordId), setupId: to });
};

/**
 * Changes that were made to the plan as it stands in a setup (`planInSetup`), as changes of the plan itself: where a record
 * has its own place in the setup, its new place goes into its move and everything else into the record; where it has none,
 * it moves in every setup. With `onlyHere` every record that moves gets its own place. A cable laid anew for a place of
 * this setup keeps its route in the plan.
 */
export const fromSetup = (
  plan: Plan,
  setupId: Id | undefined,
  changes: ChangeSet,
  onlyHere = false,
): ChangeSet => {
  if (setupId === undefined || (!onlyHere && movesIn(plan, setupId).length === 0)) return changes;
  const draft = new Draft(plan);
  const moving = movingRecords(plan);
  const going = new Set(
    onlyHere ? changes.updated.flatMap(({ from, to }) => (placeDiffers(from, to) ? [to.id] : [])) : [],
  );
  const went = new Set(changes.updated.flatMap(({ from, to }) => (placeDiffers(from, to) ? [to.id] : [])));
  const hasOwn = (id: Id): boolean => going.has(id) || moveOf(plan, setupId, id) !== undefined;
  for (const r of changes.added) draft.put(r);
  for (const { to } of changes.updated) {
    const own = plan.records.get(to.id);
    if (!own) continue;
    if (isMovable(own) && isMovable(to) && hasOwn(to.id)) {
      draft.put(asMove(to, setupId, moveOf(plan, setupId, to.id)));
      const rest = keepingPlace(to, own);
      if (!sameRecord(rest, own)) draft.put(rest);
    } else if (to.type === 'cable' && own.type === 'cable' && to.route.auto) {
      const touched = [to.from.recordId, to.to.recordId].some((id) => moving.has(id) || going.has(id));
      const next = touched && own.route.auto ? { ...to, route: own.route } : to;
      if (!sameRecord(next, own)) draft.put(next);
    } else if (followsHere(to, (id) => went.has(id) && hasOwn(id))) {
      // A way laid by hand followed something that is elsewhere in this setup only.
    } else draft.put(to);
  }
  for (const r of changes.removed) {
    if (plan.records.has(r.id)) draft.remove(r.id);
    for (const m of recordsOf(plan, 'move')) if (m.recordId === r.id) draft.remove(m.id);
  }
  return draft.changes();
};

/** Whether a cable or data line has an end among what went elsewhere in this setup alone. */
const followsHere = (r: AnyRecord, wentHere: (id: Id) => boolean): boolean =>
  r.type === 'cable'
    ? wentHere(r.from.recordId) || wentHere(r.to.recordId)
    : r.type === 'line' && (wentHere(r.from.recordId) || r.stops.some(wentHere));

/** A record with the place of another state of it. */
const keepingPlace = (r: Movable, own: Movable): Movable => {
  const place: Record<string, unknown> = {};
  for (const key of ['at', 'heightMm', 'rotationDeg', 'facingDeg', 'aim'])
    if (key in own) place[key] = (own as unknown as Record<string, unknown>)[key];
  return { ...r, ...place } as Movable;
};

const sameRecord = (a: AnyRecord, b: AnyRecord): boolean => canonicalJson(a) === canonicalJson(b);

/** Whether changes put something elsewhere or point it elsewhere that has no place of its own in a setup yet. */
export const movesFreely = (plan: Plan, setupId: Id, changes: ChangeSet): boolean =>
  changes.added.length === 0 &&
  changes.removed.length === 0 &&
  changes.updated.some(({ from, to }) => placeDiffers(from, to) && !moveOf(plan, setupId, to.id));

const placeDiffers = (a: AnyRecord, b: AnyRecord): boolean =>
  isMovable(a) && isMovable(b) && JSON.stringify(movePlaceOf(a)) !== JSON.stringify(movePlaceOf(b));

/** Names of the setups in which a record, its stand or what carries it has its own place. */
export const setupsItMovesIn = (plan: Plan, id: Id): readonly Id[] => {
  const all = movedWith(plan, new Set([id]));
  return [
    ...new Set(
      recordsOf(plan, 'move').flatMap((m) =>
        all.has(m.recordId) && recordOf(plan, 'setup', m.setupId) ? [m.setupId] : [],
      ),
    ),
  ];
};
