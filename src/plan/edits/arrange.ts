import { angleDeg, type Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft, peekChanges } from '../change-set.ts';
import type { StandKind } from '../kinds/kinds.ts';
import { fixturePlace, type Plan, recordOf, recordsOf } from '../plan.ts';
import { cablesAt, placeOf } from '../ports.ts';
import type { AnyRecord, RecordOf } from '../records/index.ts';
import { dropStrayBlobs } from './blobs.ts';
import { freeDimensions, offsetDimension } from './dimensions.ts';
import { gripMovedWith, letGo, ownSupports, turnSupports } from './grip.ts';
import { turnHung } from './hang.ts';
import { withStops } from './lines.ts';
import { slideOpening } from './openings.ts';
import { notesLetGo } from './photos.ts';
import { ensureKind, rerouteCables, shifted } from './shared.ts';
import { turned as turnedUnderlay } from './underlays.ts';
import { outletsFollow, slideOutlet } from './wall-outlets.ts';
import { cornersFollow } from './walls.ts';

/** Everything that moves when these records are moved: a fixture or frame takes its stands along, a stand what it carries. */
export const movedWith = (plan: Plan, ids: ReadonlySet<Id>): ReadonlySet<Id> => {
  const all = new Set(ids);
  for (let before = -1; before !== all.size; ) {
    before = all.size;
    for (const r of recordsOf(plan, 'fixture')) {
      if (r.support.on !== 'stand') continue;
      if (all.has(r.id)) all.add(r.support.standId);
      else if (all.has(r.support.standId)) all.add(r.id);
    }
    for (const r of recordsOf(plan, 'device')) {
      if (r.standId === undefined) continue;
      if (all.has(r.id)) all.add(r.standId);
      else if (all.has(r.standId)) all.add(r.id);
    }
    for (const r of recordsOf(plan, 'box')) if (r.plugsInto && all.has(r.plugsInto.recordId)) all.add(r.id);
    gripMovedWith(plan, all);
  }
  return all;
};

/** Moves records by a distance in millimetres. Locked ones stay. Automatic cables follow their ends. */
export const moveRecords = (plan: Plan, ids: ReadonlySet<Id>, by: Point): ChangeSet => {
  const all = movedWith(plan, ids);
  const draft = new Draft(plan);
  const moved = new Set<Id>();
  for (const id of all) {
    const r = plan.records.get(id);
    if (!r || r.locked) continue;
    if (r.type === 'opening' || r.type === 'dimension') {
      // An opening goes with its wall by itself, a dimension line with what it measures.
      const own =
        r.type === 'dimension'
          ? offsetDimension(plan, r, by)
          : all.has(r.wallId)
            ? undefined
            : slideOpening(plan, r, by);
      for (const { to } of own?.updated ?? []) draft.put(to);
      continue;
    }
    const next =
      r.type === 'outlet' && r.wallId !== undefined && !all.has(r.wallId)
        ? slideOutlet(plan, r, by)
        : shifted(r, by);
    if (next === r) continue;
    draft.put(next);
    moved.add(id);
  }
  cornersFollow(draft, plan, moved, by);
  for (const id of outletsFollow(draft, plan)) moved.add(id);
  rerouteCables(draft, peekChanges(plan, draft.changes()), moved);
  return draft.changes();
};

/** Turns records by an angle in degrees, clockwise, each about itself. A fixture that followed a mark lets go of it. */
export const rotateRecords = (plan: Plan, ids: ReadonlySet<Id>, byDeg: number): ChangeSet => {
  const draft = new Draft(plan);
  const turned = (deg: number): number => (((deg + byDeg) % 360) + 360) % 360;
  for (const id of ids) {
    const r = plan.records.get(id);
    if (!r || r.locked) continue;
    if (r.type === 'grip') turnSupports(draft, plan, r, byDeg, ids);
    if (r.type === 'rigging') turnHung(draft, plan, r, byDeg, ids);
    if (r.type === 'fixture')
      draft.put({
        ...r,
        aim: { at: 'facing', facingDeg: turned(facingOf(plan, r)), tiltDeg: tiltOf(plan, r) },
      });
    else if (r.type === 'underlay') draft.put(turnedUnderlay(r, turned(r.rotationDeg)));
    else if (r.type === 'photo') draft.put({ ...r, facingDeg: turned(r.facingDeg ?? 0) });
    else if (r.type === 'mark') draft.put({ ...r, facingDeg: turned(r.facingDeg) });
    else if ('rotationDeg' in r && typeof r.rotationDeg === 'number')
      draft.put({ ...r, rotationDeg: turned(r.rotationDeg) } as AnyRecord);
  }
  // What hangs on turned rigging went somewhere else.
  const moved = new Set(draft.changes().updated.flatMap((u) => (ids.has(u.to.id) ? [] : [u.to.id])));
  if (moved.size > 0) rerouteCables(draft, peekChanges(plan, draft.changes()), moved);
  return draft.changes();
};

/** Where a fixture faces on the floor, degrees clockwise from +x. */
export const facingOf = (plan: Plan, f: RecordOf<'fixture'>): number => {
  if (f.aim.at === 'facing') return f.aim.facingDeg;
  const mark = recordOf(plan, 'mark', f.aim.markId);
  return mark ? angleDeg(fixturePlace(plan, f).at, mark.at) : 0;
};

/** Tilt of a fixture in degrees; down is negative. Towards a mark it follows from the heights and the distance. */
export const tiltOf = (plan: Plan, f: RecordOf<'fixture'>): number => {
  if (f.aim.at === 'facing') return f.aim.tiltDeg;
  const mark = recordOf(plan, 'mark', f.aim.markId);
  if (!mark) return 0;
  const place = fixturePlace(plan, f);
  const run = Math.hypot(mark.at.xMm - place.at.xMm, mark.at.yMm - place.at.yMm);
  return (Math.atan2(mark.heightMm - place.heightMm, run) * 180) / Math.PI;
};

/** Length of the throw from a fixture to the mark it follows, millimetres in space; undefined without a mark. */
export const throwMm = (plan: Plan, f: RecordOf<'fixture'>): number | undefined => {
  const mark = f.aim.at === 'mark' ? recordOf(plan, 'mark', f.aim.markId) : undefined;
  if (!mark) return undefined;
  const place = fixturePlace(plan, f);
  return Math.hypot(mark.at.xMm - place.at.xMm, mark.at.yMm - place.at.yMm, mark.heightMm - place.heightMm);
};

/** Points fixtures at a spot on the floor. */
export const aimAtPoint = (plan: Plan, ids: Iterable<Id>, at: Point): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of ids) {
    const f = recordOf(plan, 'fixture', id);
    if (!f || f.locked) continue;
    draft.put({
      ...f,
      aim: { at: 'facing', facingDeg: angleDeg(fixturePlace(plan, f).at, at), tiltDeg: tiltOf(plan, f) },
    });
  }
  return draft.changes();
};

/** Makes fixtures follow a mark. */
export const aimAtMark = (plan: Plan, ids: Iterable<Id>, markId: Id): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of ids) {
    const f = recordOf(plan, 'fixture', id);
    if (f && !f.locked && recordOf(plan, 'mark', markId)) draft.put({ ...f, aim: { at: 'mark', markId } });
  }
  return draft.changes();
};

/** Puts a fixture on a new stand of this kind, where it stands now. The height is kept inside what the stand can do. */
export const putOnStand = (plan: Plan, fixtureId: Id, kind: StandKind, newId: NewId): ChangeSet => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) throw new Error(`no fixture ${fixtureId}`);
  const old = f.support.on === 'stand' ? recordOf(plan, 'stand', f.support.standId) : undefined;
  const place = { ...fixturePlace(plan, f), ...(old ? { at: old.at } : {}) };
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const wanted = place.heightMm > 0 ? place.heightMm : 2000;
  const standId = newId('st');
  if (f.support.on === 'stand') draft.remove(f.support.standId);
  draft.put({
    id: standId,
    type: 'stand',
    floorId: f.floorId,
    kindId: kind.id,
    at: place.at,
    rotationDeg: 0,
    heightMm: Math.min(kind.heightMaxMm, Math.max(kind.heightMinMm, wanted)),
  });
  draft.put({ ...f, at: place.at, support: { on: 'stand', standId } });
  return draft.changes();
};

/** Takes a fixture off its stand, which goes; it keeps its place and height. */
export const takeOffStand = (plan: Plan, fixtureId: Id, on: 'floor' | 'rigged' | 'held'): ChangeSet => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) throw new Error(`no fixture ${fixtureId}`);
  const place = fixturePlace(plan, f);
  const draft = new Draft(plan);
  if (f.support.on === 'stand') draft.remove(f.support.standId);
  draft.put({ ...f, at: place.at, heightMm: place.heightMm, support: { on } });
  return draft.changes();
};

/** Sets the height of a fixture, on its stand where it has one. Millimetres above the floor. */
export const setHeight = (plan: Plan, fixtureId: Id, heightMm: number): ChangeSet => {
  const f = recordOf(plan, 'fixture', fixtureId);
  if (!f) throw new Error(`no fixture ${fixtureId}`);
  const draft = new Draft(plan).put({ ...f, heightMm });
  const stand = f.support.on === 'stand' ? recordOf(plan, 'stand', f.support.standId) : undefined;
  if (stand) draft.put({ ...stand, heightMm });
  return draft.changes();
};

/** Removes records and what makes no sense without them: cables at their ends, levels, ballasts, a lone stand, openings. */
export const removeRecords = (plan: Plan, ids: ReadonlySet<Id>): ChangeSet => {
  const gone = new Set<Id>();
  const take = (id: Id): void => {
    const r = plan.records.get(id);
    if (!r || gone.has(id) || r.type === 'plan') return;
    gone.add(id);
    for (const c of cablesAt(plan, id)) take(c.id);
    for (const other of plan.records.values()) if (dependsOn(other, r)) take(other.id);
    if (r.type === 'fixture' && r.support.on === 'stand') take(r.support.standId);
    if (r.type === 'grip') for (const s of ownSupports(plan, r)) take(s);
  };
  for (const id of ids) if (!plan.records.get(id)?.locked) take(id);
  const draft = new Draft(plan);
  for (const id of gone) draft.remove(id);
  dropStrayBlobs(draft, plan, gone);
  notesLetGo(draft, plan, gone);
  outletsFollow(draft, plan);
  for (const r of plan.records.values()) {
    if (r.type === 'block' && !gone.has(r.id) && r.burnsThrough.some((id) => gone.has(id)))
      draft.put({ ...r, burnsThrough: r.burnsThrough.filter((id) => !gone.has(id)) });
    if (r.type === 'line' && !gone.has(r.id) && r.stops.some((id) => gone.has(id)))
      draft.put(
        withStops(
          r,
          r.stops.filter((id) => !gone.has(id)),
        ),
      );
    if (r.type === 'box' && !gone.has(r.id) && r.plugsInto && gone.has(r.plugsInto.recordId)) {
      const { plugsInto: _, ...rest } = r;
      draft.put(rest as typeof r);
    }
    if (r.type === 'device' && !gone.has(r.id)) {
      const { standId, fixtureId, listensToId, ...rest } = r;
      const keep = (id: Id | undefined): boolean => id !== undefined && !gone.has(id);
      const place = placeOf(plan, r.id);
      if ([standId, fixtureId, listensToId].some((id) => id !== undefined && gone.has(id)))
        draft.put({
          ...rest,
          ...(place ? { at: place.at, heightMm: place.heightMm } : {}),
          ...(keep(standId) ? { standId } : {}),
          ...(keep(fixtureId) ? { fixtureId } : {}),
          ...(keep(listensToId) ? { listensToId } : {}),
        } as typeof r);
    }
    if (r.type !== 'fixture' || gone.has(r.id)) continue;
    const place = fixturePlace(plan, r);
    let next = r;
    if (r.packFrom && gone.has(r.packFrom.packId)) {
      const { packFrom: _, ...rest } = r;
      next = rest as typeof r;
    }
    if (r.support.on === 'stand' && gone.has(r.support.standId))
      next = { ...next, at: place.at, heightMm: place.heightMm, support: { on: 'floor' } };
    if (r.aim.at === 'mark' && gone.has(r.aim.markId))
      next = { ...next, aim: { at: 'facing', facingDeg: facingOf(plan, r), tiltDeg: tiltOf(plan, r) } };
    if (next !== r) draft.put(next);
  }
  letGo(draft, plan, gone);
  freeDimensions(draft, plan, gone);
  return draft.changes();
};

const dependsOn = (other: AnyRecord, r: AnyRecord): boolean => {
  switch (other.type) {
    case 'level':
      return other.fixtureId === r.id || other.setupId === r.id;
    case 'ballast':
      return other.fixtureId === r.id;
    case 'opening':
      return other.wallId === r.id;
    case 'outlet':
      return other.sourceId === r.id;
    case 'tick':
      return other.fixtureId === r.id;
    case 'labelPlace':
      return other.recordId === r.id;
    case 'move':
      return other.recordId === r.id || other.setupId === r.id;
    case 'line':
      return other.from.recordId === r.id;
    case 'otherLoad':
    case 'measurement':
      return other.on.recordId === r.id;
    default:
      return false;
  }
};
