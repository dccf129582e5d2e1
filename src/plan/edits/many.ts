import type { Id } from '../../kernel/ids.ts';
import { applyChanges, type ChangeSet, compose, Draft, noChanges } from '../change-set.ts';
import { fixturePlace, type Plan } from '../plan.ts';
import type { AnyRecord } from '../records/index.ts';
import { facingOf, setHeight, tiltOf } from './arrange.ts';
import { setRiggingHeight } from './hang.ts';
import { turned } from './underlays.ts';

const each = (
  plan: Plan,
  ids: Iterable<Id>,
  change: (plan: Plan, r: AnyRecord) => ChangeSet | undefined,
): ChangeSet => {
  let at = plan;
  let all = noChanges;
  for (const id of ids) {
    const r = at.records.get(id);
    const step = r && change(at, r);
    if (!step) continue;
    at = applyChanges(at, step);
    all = compose(all, step);
  }
  return all;
};

const put = (plan: Plan, r: AnyRecord): ChangeSet => new Draft(plan).put(r).changes();

/** Height above the floor of a record that has one: of its stand, where a fixture is on one. */
export const heightOf = (plan: Plan, r: AnyRecord): number | undefined =>
  r.type === 'fixture'
    ? fixturePlace(plan, r).heightMm
    : r.type !== 'kind' && 'heightMm' in r && typeof r.heightMm === 'number'
      ? r.heightMm
      : undefined;

/** Sets the height of all that have one, stands of fixtures along. Locked ones keep theirs. */
export const setHeights = (plan: Plan, ids: Iterable<Id>, heightMm: number): ChangeSet =>
  each(plan, ids, (at, r) => {
    if (r.locked || heightOf(at, r) === undefined) return undefined;
    if (r.type === 'fixture') return setHeight(at, r.id, heightMm);
    return r.type === 'rigging'
      ? setRiggingHeight(at, r.id, heightMm)
      : put(at, { ...r, heightMm } as AnyRecord);
  });

/** Sets text fields of fixtures. */
export const setFixtureText = (
  plan: Plan,
  ids: Iterable<Id>,
  field: 'use' | 'gel' | 'channel',
  text: string,
): ChangeSet =>
  each(plan, ids, (at, r) =>
    r.type === 'fixture' && r[field] !== text ? put(at, { ...r, [field]: text }) : undefined,
  );

/** Sets where things face, degrees clockwise from +x. A fixture that follows a mark lets go of it; its tilt stays. */
export const setFacings = (plan: Plan, ids: Iterable<Id>, facingDeg: number): ChangeSet =>
  each(plan, ids, (at, r) => {
    if (r.locked) return undefined;
    if (r.type === 'fixture')
      return put(at, { ...r, aim: { at: 'facing', facingDeg, tiltDeg: tiltOf(at, r) } });
    if (r.type === 'mark' || r.type === 'photo') return put(at, { ...r, facingDeg });
    if (r.type === 'underlay') return put(at, turned(r, facingDeg));
    return 'rotationDeg' in r && typeof r.rotationDeg === 'number'
      ? put(at, { ...r, rotationDeg: facingDeg } as AnyRecord)
      : undefined;
  });

/** Sets how far fixtures are tilted, down is negative. One that follows a mark lets go of it; its facing stays. */
export const setTilts = (plan: Plan, ids: Iterable<Id>, tiltDeg: number): ChangeSet =>
  each(plan, ids, (at, r) =>
    r.type === 'fixture' && !r.locked
      ? put(at, { ...r, aim: { at: 'facing', facingDeg: facingOf(at, r), tiltDeg } })
      : undefined,
  );

/** Fixtures that follow a mark stay as they point now and follow it no more. */
export const letGoOfMarks = (plan: Plan, ids: Iterable<Id>): ChangeSet =>
  each(plan, ids, (at, r) =>
    r.type === 'fixture' && r.aim.at === 'mark' && !r.locked
      ? put(at, { ...r, aim: { at: 'facing', facingDeg: facingOf(at, r), tiltDeg: tiltOf(at, r) } })
      : undefined,
  );

/** Writes notes on records; empty ones take them away. */
export const setNotes = (plan: Plan, ids: Iterable<Id>, notes: string): ChangeSet =>
  each(plan, ids, (at, r) => {
    if (r.type === 'kind' || (r.notes ?? '') === notes) return undefined;
    const { notes: _old, ...bare } = r;
    return put(at, (notes === '' ? bare : { ...bare, notes }) as AnyRecord);
  });
