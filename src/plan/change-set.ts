import type { Id } from '../kernel/ids.ts';
import { inheritLists, type Plan } from './plan.ts';
import type { AnyRecord } from './records/index.ts';

/**
 * What changed between two plans. The one type that serves undo, autosave, tabs, the spatial index and the engines.
 * `from` in an update and the removed records are whole, so that a change-set can be inverted without the plan.
 */
export interface ChangeSet {
  readonly added: readonly AnyRecord[];
  readonly updated: readonly { readonly from: AnyRecord; readonly to: AnyRecord }[];
  readonly removed: readonly AnyRecord[];
}

/** A change-set with the words the user sees in the undo list, and where it came from. */
export interface Transaction {
  readonly label: string;
  readonly origin: 'user' | 'load' | 'other-tab';
  readonly changes: ChangeSet;
}

export const noChanges: ChangeSet = { added: [], updated: [], removed: [] };

export const isEmptyChange = (c: ChangeSet): boolean =>
  c.added.length === 0 && c.updated.length === 0 && c.removed.length === 0;

export const invert = (c: ChangeSet): ChangeSet => ({
  added: c.removed,
  updated: c.updated.map(({ from, to }) => ({ from: to, to: from })),
  removed: c.added,
});

/** The plan after the changes. Throws when they do not fit the plan: that is a programmer's mistake. */
export const applyChanges = (plan: Plan, c: ChangeSet): Plan => {
  if (isEmptyChange(c)) return plan;
  const records = new Map(plan.records);
  for (const r of c.removed)
    if (!records.delete(r.id)) throw new Error(`cannot remove ${r.id}: it is not there`);
  for (const { from, to } of c.updated) {
    if (from.id !== to.id || !records.has(from.id))
      throw new Error(`cannot update ${from.id}: it is not there`);
    records.set(to.id, to);
  }
  for (const r of c.added) {
    if (records.has(r.id)) throw new Error(`cannot add ${r.id}: it is there already`);
    records.set(r.id, r);
  }
  const after = { ...plan, records };
  inheritLists(plan, after, c);
  return after;
};

/** A map of records as another one with a few changed: made without copying, for plans that live for one frame. */
class LayeredRecords implements ReadonlyMap<Id, AnyRecord> {
  readonly #base: ReadonlyMap<Id, AnyRecord>;
  readonly #over: ReadonlyMap<Id, AnyRecord | undefined>;
  readonly size: number;

  constructor(base: ReadonlyMap<Id, AnyRecord>, c: ChangeSet) {
    const over = new Map<Id, AnyRecord | undefined>();
    for (const r of c.removed) over.set(r.id, undefined);
    for (const { to } of c.updated) over.set(to.id, to);
    for (const r of c.added) over.set(r.id, r);
    this.#base = base;
    this.#over = over;
    this.size = base.size + c.added.length - c.removed.length;
  }

  get(id: Id): AnyRecord | undefined {
    return this.#over.has(id) ? this.#over.get(id) : this.#base.get(id);
  }

  has(id: Id): boolean {
    return this.get(id) !== undefined;
  }

  *entries(): MapIterator<[Id, AnyRecord]> {
    for (const [id, r] of this.#base) {
      const now = this.#over.has(id) ? this.#over.get(id) : r;
      if (now) yield [id, now];
    }
    for (const [id, r] of this.#over) if (r && !this.#base.has(id)) yield [id, r];
    return undefined;
  }

  *keys(): MapIterator<Id> {
    for (const [id] of this.entries()) yield id;
    return undefined;
  }

  *values(): MapIterator<AnyRecord> {
    for (const [, r] of this.entries()) yield r;
    return undefined;
  }

  forEach(visit: (value: AnyRecord, key: Id, map: ReadonlyMap<Id, AnyRecord>) => void): void {
    for (const [id, r] of this.entries()) visit(r, id, this);
  }

  [Symbol.iterator](): MapIterator<[Id, AnyRecord]> {
    return this.entries();
  }
}

/**
 * The plan as it would be after changes, without a copy of its records: for what is looked at during one frame of a
 * drag. The changes must fit the plan; they are not checked.
 */
export const peekChanges = (plan: Plan, c: ChangeSet): Plan => {
  if (isEmptyChange(c)) return plan;
  const after = { ...plan, records: new LayeredRecords(plan.records, c) };
  inheritLists(plan, after, c);
  return after;
};

/** One change-set that does what `a` and then `b` do. */
export const compose = (a: ChangeSet, b: ChangeSet): ChangeSet => {
  const ids = new Map<Id, { before: AnyRecord | undefined; after: AnyRecord | undefined }>();
  const note = (id: Id, before: AnyRecord | undefined, after: AnyRecord | undefined): void => {
    const known = ids.get(id);
    if (known) known.after = after;
    else ids.set(id, { before, after });
  };
  for (const c of [a, b]) {
    for (const r of c.removed) note(r.id, r, undefined);
    for (const { from, to } of c.updated) note(to.id, from, to);
    for (const r of c.added) note(r.id, undefined, r);
  }
  return fromPairs(ids.values());
};

/** What turns `before` into `after`, by record identity. */
export const diffPlans = (before: Plan, after: Plan): ChangeSet => {
  const pairs: { before: AnyRecord | undefined; after: AnyRecord | undefined }[] = [];
  for (const [id, r] of before.records) {
    const now = after.records.get(id);
    if (now !== r) pairs.push({ before: r, after: now });
  }
  for (const [id, r] of after.records)
    if (!before.records.has(id)) pairs.push({ before: undefined, after: r });
  return fromPairs(pairs);
};

const fromPairs = (
  pairs: Iterable<{ before: AnyRecord | undefined; after: AnyRecord | undefined }>,
): ChangeSet => {
  const added: AnyRecord[] = [];
  const updated: { from: AnyRecord; to: AnyRecord }[] = [];
  const removed: AnyRecord[] = [];
  for (const { before, after } of pairs) {
    if (before && after) {
      if (before !== after) updated.push({ from: before, to: after });
    } else if (after) added.push(after);
    else if (before) removed.push(before);
  }
  return { added, updated, removed };
};

/** Collects puts and removals against a plan and gives them as one change-set. Edits are written with it. */
export class Draft {
  readonly #base: Plan;
  readonly #touched = new Map<Id, AnyRecord | undefined>();

  constructor(base: Plan) {
    this.#base = base;
  }

  /** The plan the changes are made to. */
  get base(): Plan {
    return this.#base;
  }

  get(id: Id): AnyRecord | undefined {
    return this.#touched.has(id) ? this.#touched.get(id) : this.#base.records.get(id);
  }

  put(record: AnyRecord): this {
    this.#touched.set(record.id, record);
    return this;
  }

  remove(id: Id): this {
    this.#touched.set(id, undefined);
    return this;
  }

  changes(): ChangeSet {
    return fromPairs(
      [...this.#touched].map(([id, after]) => ({ before: this.#base.records.get(id), after })),
    );
  }
}
