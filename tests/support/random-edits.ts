import fc from 'fast-check';
import { type ChangeSet, invert } from '../../src/plan/change-set.ts';
import type { Plan } from '../../src/plan/plan.ts';
import { type AnyRecord, type RecordType, recordSchemas } from '../../src/plan/records/index.ts';

/** Numbers from which one edit of any record follows. */
export type Dice = readonly [type: number, record: number, how: number, where: number, what: number];

export const dice: fc.Arbitrary<Dice> = fc.tuple(
  fc.nat(10_000),
  fc.nat(10_000),
  fc.nat(99),
  fc.nat(10_000),
  fc.nat(10_000),
);

type Path = readonly (string | number)[];

/** Every value of a record that is no object and no list, by the way to it. */
const leaves = (value: unknown, path: Path = []): readonly { path: Path; value: unknown }[] => {
  if (Array.isArray(value)) return value.flatMap((v, i) => leaves(v, [...path, i]));
  if (typeof value === 'object' && value !== null)
    return Object.entries(value).flatMap(([k, v]) =>
      path.length === 0 && (k === 'id' || k === 'type') ? [] : leaves(v, [...path, k]),
    );
  return [{ path, value }];
};

const withValue = (value: unknown, [step, ...rest]: Path, to: unknown): unknown => {
  if (step === undefined) return to;
  if (Array.isArray(value)) return value.map((v, i) => (i === step ? withValue(v, rest, to) : v));
  const object = value as Readonly<Record<string, unknown>>;
  return { ...object, [step]: withValue(object[step], rest, to) };
};

const of = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];

/** Another value in place of one: a number near it or far from it, another record's id for an id, another text. */
const another = (plan: Plan, value: unknown, what: number): unknown => {
  if (typeof value === 'number') return of([value + 1, value * 1.5, value / 2, 0, value + 700, -value], what);
  if (typeof value === 'boolean') return !value;
  if (typeof value !== 'string') return value;
  const there = plan.records.get(value);
  if (!there) return `${value}${what % 10}`;
  const alike = [...plan.records.values()].filter((r) => r.type === there.type);
  return what % 9 === 0 ? 'gone' : of(alike, what)?.id;
};

/** A record with one value changed or one part taken out, where that is still a record of its type. */
const changed = (
  plan: Plan,
  r: AnyRecord,
  how: number,
  where: number,
  what: number,
): AnyRecord | undefined => {
  const leaf = of(leaves(r), where);
  if (!leaf) return undefined;
  const next = withValue(r, leaf.path, how % 12 === 0 ? undefined : another(plan, leaf.value, what));
  const read = recordSchemas[r.type].safeParse(JSON.parse(JSON.stringify(next)));
  return read.success ? (read.data as AnyRecord) : undefined;
};

/** One edit of any record of a plan: a value changed, the record taken away, a copy of it; or nothing. */
export const randomEdit = (plan: Plan, [type, record, how, where, what]: Dice): ChangeSet => {
  const none: ChangeSet = { added: [], updated: [], removed: [] };
  const types = [...new Set([...plan.records.values()].map((r) => r.type))].sort();
  const t: RecordType | undefined = of(types, type);
  const r = of(
    [...plan.records.values()].filter((x) => x.type === t),
    record,
  );
  if (!r) return none;
  if (how < 8 && r.type !== 'plan') return { ...none, removed: [r] };
  if (how < 14 && r.type !== 'plan') {
    const id = `${r.id}-copy${what}`;
    return plan.records.has(id) ? none : { ...none, added: [{ ...r, id } as AnyRecord] };
  }
  const to = changed(plan, r, how, where, what);
  return to ? { ...none, updated: [{ from: r, to }] } : none;
};

/** What takes an edit back. */
export const undone = invert;
