import { add, angleDeg, direction, type Point, scale } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { compareIds } from '../kernel/ids.ts';
import type { Kind, KindFamily, RiggingKind } from './kinds/kinds.ts';
import type { AnyRecord, PlanRecord, RecordOf, RecordType } from './records/index.ts';

/** A plan is a flat, immutable map of records. Only change-sets make a new one. */
export interface Plan {
  readonly records: ReadonlyMap<Id, AnyRecord>;
  /** What a file held that this program could not read as a record; written back as it was. */
  readonly setAside: readonly SetAside[];
  /** Top-level keys of the file this program does not know; written back as they were. */
  readonly extra: Readonly<Record<string, unknown>>;
}

export interface SetAside {
  readonly key: string;
  readonly value: unknown;
  readonly reason: string;
}

export const emptyPlan: Plan = { records: new Map(), setAside: [], extra: {} };

/** Lists of records by type. */
interface Lists {
  get(type: RecordType): readonly AnyRecord[] | undefined;
}

const indexes = new WeakMap<Plan, Lists>();

/** The same list for every type without records, so that what is remembered for a list holds for these too. */
const NONE: readonly AnyRecord[] = [];

/** Gives a plan its lists from elsewhere: for one that only looks at another. */
export const lendLists = (plan: Plan, lists: Lists): void => {
  indexes.set(plan, lists);
};

/** Puts an equal list in place of the one a plan has for a type, so that what is remembered for that list holds. */
export const replaceList = (plan: Plan, type: RecordType, list: readonly AnyRecord[]): void => {
  const lists = indexes.get(plan);
  if (lists instanceof Map) lists.set(type, list);
};

/** All records of one type, in id order. Built once per plan. */
export const recordsOf = <T extends RecordType>(plan: Plan, type: T): readonly RecordOf<T>[] => {
  let index = indexes.get(plan);
  if (!index) {
    const lists = new Map<RecordType, AnyRecord[]>();
    for (const r of plan.records.values()) {
      const list = lists.get(r.type);
      if (list) list.push(r);
      else lists.set(r.type, [r]);
    }
    for (const list of lists.values()) list.sort((a, b) => compareIds(a.id, b.id));
    index = lists;
    indexes.set(plan, index);
  }
  return (index.get(type) ?? NONE) as unknown as readonly RecordOf<T>[];
};

/**
 * Gives a plan that came from another by changes the lists the other had made: those of types without a change are the
 * same arrays, so that what is remembered for a list stays good while nothing in it changed.
 */
export const inheritLists = (
  before: Plan,
  after: Plan,
  changes: {
    readonly added: readonly AnyRecord[];
    readonly updated: readonly { readonly from: AnyRecord; readonly to: AnyRecord }[];
    readonly removed: readonly AnyRecord[];
  },
): void => {
  const old = indexes.get(before);
  if (!(old instanceof Map)) return;
  const known: ReadonlyMap<RecordType, readonly AnyRecord[]> = old;
  const gone = new Map<RecordType, Set<Id>>();
  const come = new Map<RecordType, AnyRecord[]>();
  const leave = (r: AnyRecord): void => {
    const set = gone.get(r.type);
    if (set) set.add(r.id);
    else gone.set(r.type, new Set([r.id]));
  };
  const enter = (r: AnyRecord): void => {
    const list = come.get(r.type);
    if (list) list.push(r);
    else come.set(r.type, [r]);
  };
  for (const r of changes.removed) leave(r);
  for (const r of changes.added) enter(r);
  for (const { from, to } of changes.updated) {
    leave(from);
    enter(to);
  }
  const lists = new Map(known);
  for (const type of new Set([...gone.keys(), ...come.keys()])) {
    const out = gone.get(type) ?? new Set();
    const into = new Map((come.get(type) ?? []).map((r) => [r.id, r]));
    const list = known.get(type) ?? [];
    if (out.size === into.size && [...into.keys()].every((id) => out.has(id)))
      // The same records, changed: they keep their places.
      lists.set(
        type,
        list.map((r) => into.get(r.id) ?? r),
      );
    else
      lists.set(
        type,
        [...list.filter((r) => !out.has(r.id)), ...into.values()].sort((a, b) => compareIds(a.id, b.id)),
      );
  }
  indexes.set(after, lists);
};

/** The record with this id if it is of this type. */
export const recordOf = <T extends RecordType>(plan: Plan, type: T, id: Id): RecordOf<T> | undefined => {
  const r = plan.records.get(id);
  return r?.type === type ? (r as RecordOf<T>) : undefined;
};

/** The record about the plan as a whole. Every readable plan has one; its absence is a programmer's mistake. */
export const planRecord = (plan: Plan): PlanRecord => {
  const r = recordOf(plan, 'plan', 'plan');
  if (!r) throw new Error('a plan without its plan record');
  return r;
};

/** The kind with this id, when it is of one of these families. */
export const kindOf = <F extends KindFamily>(
  plan: Plan,
  kindId: Id,
  ...families: readonly F[]
): Extract<Kind, { family: F }> | undefined => {
  const k = recordOf(plan, 'kind', kindId);
  return k && (families.length === 0 || families.includes(k.family as F))
    ? (k as Extract<Kind, { family: F }>)
    : undefined;
};

/** Setups in their order. */
export const setupsOf = (plan: Plan): readonly RecordOf<'setup'>[] =>
  [...recordsOf(plan, 'setup')].sort((a, b) => a.order - b.order || compareIds(a.id, b.id));

export const levelId = (setupId: Id, fixtureId: Id): Id => `level:${setupId}:${fixtureId}`;

/** What a unit is at as a whole, in per cent: the mean of its parts to a tenth where they have levels of their own, else its level. */
export const wholeLevelPct = (l: Pick<RecordOf<'level'>, 'levelPct' | 'parts'>): number => {
  const parts = l.parts;
  if (!parts || parts.length === 0) return l.levelPct;
  return Math.round((parts.reduce((sum, p) => sum + p.levelPct, 0) / parts.length) * 10) / 10;
};

/** Level of a fixture in a setup, 0 to 100, and whether the plan says so or it is assumed full. */
export const levelOf = (plan: Plan, setupId: Id, fixtureId: Id): { levelPct: number; assumed: boolean } => {
  const level = recordOf(plan, 'level', levelId(setupId, fixtureId));
  return level ? { levelPct: wholeLevelPct(level), assumed: false } : { levelPct: 100, assumed: true };
};

/** The arm between a fixture and its stand: the longest among its accessories, and how far out it puts the fixture. */
export const armOf = (
  plan: Plan,
  f: RecordOf<'fixture'>,
): { readonly kind: RiggingKind; readonly outMm: number } | undefined => {
  let arm: RiggingKind | undefined;
  for (const id of f.accessories ?? []) {
    const k = kindOf(plan, id, 'rigging');
    if (k?.what === 'arm' && (!arm || (k.reachMm ?? 0) > (arm.reachMm ?? 0))) arm = k;
  }
  return arm && { kind: arm, outMm: Math.max(0, f.arm?.outMm ?? arm.reachMm ?? 0) };
};

/** Which way an arm goes out from its stand, degrees clockwise from +x: as given, else the way the fixture faces. */
export const armDirectionDeg = (plan: Plan, f: RecordOf<'fixture'>, from: Point): number => {
  if (f.arm?.directionDeg !== undefined) return f.arm.directionDeg;
  if (f.aim.at === 'facing') return f.aim.facingDeg;
  const mark = recordOf(plan, 'mark', f.aim.markId);
  return mark ? angleDeg(from, mark.at) : 0;
};

/** Where a fixture is: on its stand where it has one, and out on its arm where it has one of these too. */
export const fixturePlace = (
  plan: Plan,
  f: RecordOf<'fixture'>,
): { readonly at: Point; readonly heightMm: number } => {
  const stand = f.support.on === 'stand' ? recordOf(plan, 'stand', f.support.standId) : undefined;
  if (!stand) return { at: f.at, heightMm: f.heightMm };
  const outMm = f.accessories?.length ? (armOf(plan, f)?.outMm ?? 0) : 0;
  if (!(outMm > 0)) return { at: stand.at, heightMm: stand.heightMm };
  const at = add(stand.at, scale(direction(armDirectionDeg(plan, f, stand.at)), outMm));
  return { at: { xMm: Math.round(at.xMm), yMm: Math.round(at.yMm) }, heightMm: stand.heightMm };
};
