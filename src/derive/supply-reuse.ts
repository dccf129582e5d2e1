import type { Id } from '../kernel/ids.ts';
import { differences } from '../plan/differences.ts';
import { type Plan, planRecord, recordsOf } from '../plan/plan.ts';
import type { AnyRecord, RecordType } from '../plan/records/index.ts';
import type { EngineFinding } from './findings.ts';
import { badLevelsOf } from './loads.ts';

/** The part of a supply tree under one source, with all it was made from. */
export interface Segment {
  readonly start: number;
  readonly end: number;
  /** Records read on the way, and those that cables of it lead to. */
  readonly reads: ReadonlySet<Id>;
  readonly defects: readonly EngineFinding[];
}

/** Types a walk reads, by what a change of one touches besides itself. */
const TYPES: readonly RecordType[] = [
  'source',
  'box',
  'outlet',
  'cable',
  'fixture',
  'ballast',
  'charger',
  'device',
  'stand',
  'rigging',
  'mark',
  'kind',
  'otherLoad',
];

/**
 * Records that a change between two plans touches, as far as the supply goes; undefined where everything may be touched.
 * A changed cable touches both its ends, an outlet its source, a ballast its head, another's load what it is plugged into.
 */
export const touchedBetween = (before: Plan, after: Plan): ReadonlySet<Id> | undefined => {
  if (before === after) return new Set();
  if (planRecord(before) !== planRecord(after)) return undefined;
  if (!sameList(recordsOf(before, 'floor'), recordsOf(after, 'floor'))) return undefined;
  if (badLevelsOf(before).size > 0 || badLevelsOf(after).size > 0) return undefined;
  if (!sameSetups(before, after)) return undefined;
  const touched = new Set<Id>();
  const touch = (r: AnyRecord): void => {
    touched.add(r.id);
    if (r.type === 'cable') {
      touched.add(r.from.recordId);
      touched.add(r.to.recordId);
    } else if (r.type === 'outlet') touched.add(r.sourceId);
    else if (r.type === 'ballast') touched.add(r.fixtureId);
    else if (r.type === 'otherLoad') touched.add(r.on.recordId);
    else if (r.type === 'box' && r.plugsInto) touched.add(r.plugsInto.recordId);
    else if (r.type === 'move') touched.add(r.recordId);
  };
  for (const type of [...TYPES, 'move'] as const)
    differences(recordsOf(before, type), recordsOf(after, type), touch);
  return touched;
};

/** What the longest cable over all setups depends on besides its ends and their moves; nothing where nothing moves. */
const sameSetups = (before: Plan, after: Plan): boolean => {
  const [was, is] = [recordsOf(before, 'move'), recordsOf(after, 'move')];
  if (was.length + is.length === 0) return true;
  const around = ['setup', 'wall', 'opening', 'setPiece'] as const;
  if (!around.every((t) => sameList(recordsOf(before, t), recordsOf(after, t)))) return false;
  // A move that turns a unit to another mark takes its arm along.
  const turns = [...was, ...is].some((m) => m.aimMarkId !== undefined);
  return !turns || (sameList(was, is) && sameList(recordsOf(before, 'mark'), recordsOf(after, 'mark')));
};

const sameList = (a: readonly AnyRecord[], b: readonly AnyRecord[]): boolean =>
  a === b || (a.length === b.length && a.every((r, i) => r === b[i]));

/** Notes what a node is made from: the record, its kind, what carries it and what its arm points at, the head of a ballast. */
export const noteReads = (plan: Plan, id: Id, reads: Set<Id>): void => {
  const r = plan.records.get(id);
  reads.add(id);
  if (!r) return;
  if ('kindId' in r && typeof r.kindId === 'string') reads.add(r.kindId);
  if (r.type === 'fixture' && r.support.on === 'stand') reads.add(r.support.standId);
  if (r.type === 'fixture' && r.support.on === 'rigged' && r.support.riggingId !== undefined)
    reads.add(r.support.riggingId);
  if (r.type === 'fixture' && r.accessories) {
    for (const kindId of r.accessories) reads.add(kindId);
    if (r.aim.at === 'mark') reads.add(r.aim.markId);
  }
  if (r.type === 'device') {
    if (r.standId !== undefined) reads.add(r.standId);
    if (r.fixtureId !== undefined && !reads.has(r.fixtureId)) noteReads(plan, r.fixtureId, reads);
  }
  if (r.type === 'ballast' && !reads.has(r.fixtureId)) noteReads(plan, r.fixtureId, reads);
};
