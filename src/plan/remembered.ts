import type { Id } from '../kernel/ids.ts';
import { differences } from './differences.ts';
import { lendLists, type Plan, planRecord, recordsOf } from './plan.ts';
import { type AnyRecord, type RecordType, recordSchemas } from './records/index.ts';

type Lists = readonly (readonly AnyRecord[])[];

/** A result with all that was asked of the plan for it. */
interface Kept<V> {
  readonly value: V;
  readonly more: readonly unknown[];
  readonly ids: readonly Id[];
  readonly records: readonly (AnyRecord | undefined)[];
  readonly types: readonly RecordType[];
  readonly lists: Lists;
}

const refuse = (): never => {
  throw new Error('what is remembered may ask for single records and for lists by type, not for all records');
};

/** The records of a plan, with a note of each that is asked for. */
class NotedRecords implements ReadonlyMap<Id, AnyRecord> {
  notes = new Map<Id, AnyRecord | undefined>();
  readonly #base: ReadonlyMap<Id, AnyRecord>;

  constructor(base: ReadonlyMap<Id, AnyRecord>) {
    this.#base = base;
  }

  get(id: Id): AnyRecord | undefined {
    const r = this.#base.get(id);
    this.notes.set(id, r);
    return r;
  }

  has(id: Id): boolean {
    return this.get(id) !== undefined;
  }

  get size(): number {
    return refuse();
  }

  entries(): never {
    return refuse();
  }

  keys(): never {
    return refuse();
  }

  values(): never {
    return refuse();
  }

  forEach(): never {
    return refuse();
  }

  [Symbol.iterator](): never {
    return refuse();
  }
}

/** Whether a plan is one that only notes what a remembered function asks of another. */
export const isNoted = (plan: Plan): boolean => plan.records instanceof NotedRecords;

/** A plan that answers as another one does and notes all it is asked. */
class Noter {
  readonly #plan: Plan;
  readonly #records: NotedRecords;
  #types: RecordType[] = [];
  #lists: (readonly AnyRecord[])[] = [];

  constructor(plan: Plan) {
    this.#records = new NotedRecords(plan.records);
    this.#plan = { ...plan, records: this.#records };
    lendLists(this.#plan, {
      get: (type) => {
        const list = recordsOf(plan, type) as readonly AnyRecord[];
        if (!this.#types.includes(type)) {
          this.#types.push(type);
          this.#lists.push(list);
        }
        return list;
      },
    });
  }

  /** What a function gives for the plan, with all it asked for. */
  ask<V>(more: readonly unknown[], make: (p: Plan) => V): Kept<V> {
    this.#records.notes = new Map();
    this.#types = [];
    this.#lists = [];
    const value = make(this.#plan);
    const { notes } = this.#records;
    const [types, lists] = [this.#types, this.#lists];
    return { value, more, ids: [...notes.keys()], records: [...notes.values()], types, lists };
  }
}

/** What a function gave for a plan, with a note of all it asked the plan for. */
export type Noted<V> = Kept<V>;

/** Calls a function with a plan that answers as this one does, and notes all it asks for. */
export const notingReads = <V>(plan: Plan, make: (p: Plan) => V): Noted<V> => new Noter(plan).ask([], make);

/** Whether a plan would answer the same to all that was asked. */
export const stillHolds = (noted: Noted<unknown>, plan: Plan): boolean => holds(noted, plan, noted.more);

const holds = (k: Kept<unknown>, plan: Plan, more: readonly unknown[]): boolean => {
  for (let i = 0; i < more.length; i++) if (!Object.is(more[i], k.more[i])) return false;
  for (let i = 0; i < k.ids.length; i++) if (plan.records.get(k.ids[i] as Id) !== k.records[i]) return false;
  for (let i = 0; i < k.types.length; i++)
    if (recordsOf(plan, k.types[i] as RecordType) !== k.lists[i]) return false;
  return true;
};

/** Results kept for one thing: enough to go back a few steps, and for a thing that moves between setups. */
const KEPT = 8;

/**
 * Remembers what a function makes of one thing in a plan, from edit to edit: the result is given again as long as every
 * record and every list it asked the plan for is the very same one, and so are its further arguments. What it asked for
 * is noted as it asks, so that nothing has to be declared. The function must be pure, must ask for nothing but single
 * records and lists by type, and must not keep the plan it is given. Held by the thing itself: it goes when that goes.
 */
export const remembered = <K extends object, A extends readonly unknown[], V>(
  make: (plan: Plan, thing: K, ...more: A) => V,
): ((plan: Plan, thing: K, ...more: A) => V) => {
  const all = new WeakMap<K, Kept<V>[]>();
  return (plan, thing, ...more) => {
    const known = all.get(thing);
    if (known) for (const k of known) if (holds(k, plan, more)) return k.value;
    const kept = new Noter(plan).ask(more, (p) => make(p, thing, ...more));
    if (!known) all.set(thing, [kept]);
    else {
      if (known.length >= KEPT) known.pop();
      known.unshift(kept);
    }
    return kept.value;
  };
};

const TYPES = Object.keys(recordSchemas) as RecordType[];

/** Ids of records that were added, taken away or changed from one plan to another; undefined for plans that share nothing. */
export const changedIds = (before: Plan, after: Plan): ReadonlySet<Id> | undefined =>
  changeBetween(listsOf(before), listsOf(after))?.ids;

/** All lists of a plan, by type in one order. */
const listsOf = (plan: Plan): Lists => TYPES.map((t) => recordsOf(plan, t) as readonly AnyRecord[]);

/** Ids of records that were added, taken away or changed, and the types they are of. */
interface Change {
  readonly ids: ReadonlySet<Id>;
  readonly types: ReadonlySet<RecordType>;
}

const changeBetween = (before: Lists, after: Lists): Change | undefined => {
  // Two plans that are not of one history: nothing made of the one serves the other.
  if (!after.some((l, i) => l.length > 0 && l === before[i])) return undefined;
  const ids = new Set<Id>();
  const types = new Set<RecordType>();
  const touch = (r: AnyRecord): void => {
    ids.add(r.id);
  };
  TYPES.forEach((t, i) => {
    const [a, b] = [before[i] ?? [], after[i] ?? []];
    if (a === b) return;
    types.add(t);
    differences(a, b, touch);
  });
  return { ids, types };
};

/** What was made of many things in the last plan that was looked at. */
interface Batch<K, V> {
  readonly lists: Lists;
  readonly things: readonly K[];
  readonly more: readonly unknown[];
  readonly kept: readonly Kept<V>[];
  readonly values: readonly V[];
}

const NO_MORE: readonly unknown[] = [];

const stands = (k: Kept<unknown>, change: Change): boolean => {
  for (let i = 0; i < k.ids.length; i++) if (change.ids.has(k.ids[i] as Id)) return false;
  for (let i = 0; i < k.types.length; i++) if (change.types.has(k.types[i] as RecordType)) return false;
  return true;
};

/**
 * As `remembered`, for a list of things at once and quicker: only what changed since the last plan is looked up. Keeps the
 * results of that one plan; the list it gives is the very same one where no result is made anew.
 */
export const rememberedEach = <K extends object, A extends readonly unknown[], V>(
  make: (plan: Plan, thing: K, ...more: A) => V,
): ((plan: Plan, things: readonly K[], ...more: A) => readonly V[]) => {
  let last: Batch<K, V> | undefined;
  return (plan, things, ...more) => {
    if (isNoted(plan))
      throw new Error('what is remembered of many things may not be asked for in a remembered function');
    const lists = listsOf(plan);
    const change = last && sameItems(last.more, more) ? changeBetween(last.lists, lists) : undefined;
    const before = change && last;
    const inPlace = before?.things.length === things.length;
    const elsewhere =
      before && !inPlace ? new Map(before.things.map((t, i) => [t, before.kept[i]] as const)) : undefined;
    let same = inPlace;
    let noter: Noter | undefined;
    const kept: Kept<V>[] = [];
    for (let i = 0; i < things.length; i++) {
      const thing = things[i] as K;
      const there = before?.things[i] === thing ? before.kept[i] : elsewhere?.get(thing);
      if (there && change && stands(there, change)) kept.push(there);
      else {
        same = false;
        noter ??= new Noter(plan);
        kept.push(noter.ask(NO_MORE, (p) => make(p, thing, ...more)));
      }
    }
    const values = same && before ? before.values : kept.map((k) => k.value);
    last = { lists, things, more, kept, values };
    return values;
  };
};

const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((x, i) => Object.is(x, b[i]));

/** Whole results kept: a plan has one for each setup where things move. */
const KEPT_WHOLE = 24;

/**
 * Remembers what a function makes of a whole plan as long as no record changes but those of the types named, which it must
 * not look at (the tests hold it to that). The result may not keep the plan.
 */
export const whateverChangesIn = <V>(
  types: readonly RecordType[],
  make: (plan: Plan) => V,
): ((plan: Plan) => V) => {
  const asked = TYPES.filter((t) => t !== 'plan' && !types.includes(t));
  const all = new WeakMap<AnyRecord, { readonly lists: Lists; readonly value: V }[]>();
  return (plan) => {
    const record = planRecord(plan);
    const lists = asked.map((t) => recordsOf(plan, t) as readonly AnyRecord[]);
    const known = all.get(record) ?? [];
    for (const k of known) if (sameItems(lists, k.lists)) return k.value;
    const value = make(plan);
    if (known.length >= KEPT_WHOLE) known.pop();
    known.unshift({ lists, value });
    all.set(record, known);
    return value;
  };
};
