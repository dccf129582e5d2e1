import fc from 'fast-check';

/** Numbers that a slip of the hand or a broken program writes. */
const NUMBERS = [
  0, 1, -1, 0.5, 1e-9, 100, 360, 512, 1440, 65_535, 99_999, 1e6, 1e8, -1e8, 1e9, 1e15, 1e21, 1e100, -1e300,
];
const TEXTS = [
  '',
  ' ',
  'Küche',
  '<b>',
  '=1+1',
  'a\u0000b',
  '\u202eright',
  '__proto__',
  '2026-13-45',
  '25:99',
];

type Json = Record<string, unknown>;
export type Tear = readonly [record: number, how: number, where: number, what: number];

export const tear: fc.Arbitrary<Tear> = fc.tuple(fc.nat(99_999), fc.nat(99), fc.nat(99_999), fc.nat(99_999));

const of = <T>(list: readonly T[], n: number): T | undefined => list[n % Math.max(1, list.length)];

/** Objects and lists of a record with the keys in them, but for what the record is. */
const places = (value: unknown, top = true): readonly (readonly [holder: Json, key: string])[] =>
  typeof value !== 'object' || value === null
    ? []
    : Object.entries(value).flatMap(([key, v]) =>
        top && (key === 'id' || key === 'type') ? [] : [[value as Json, key] as const, ...places(v, false)],
      );

const another = (records: readonly Json[], own: Json, value: unknown, what: number): unknown => {
  if (typeof value === 'number') return of(NUMBERS, what);
  if (typeof value === 'boolean') return !value;
  if (Array.isArray(value)) return what % 3 === 0 ? [] : [...value, ...value];
  if (typeof value !== 'string') return value;
  const there = records.find((r) => r.id === value);
  if (!there) return of(TEXTS, what);
  // Another of its sort, of any sort, or the record itself: nothing hinders a file from that.
  if (what % 7 === 0) return own.id;
  return of(what % 7 === 1 ? records : records.filter((r) => r.type === there.type), what)?.id;
};

/** The text of a plan file after some things in it were taken out, doubled, exchanged or overwritten. */
export const tornText = (text: string, tears: readonly Tear[]): string => {
  const file = JSON.parse(text) as { records: Json[] };
  for (const [record, how, where, what] of tears) {
    // By types, so that the few sources and floors are torn as often as the many levels.
    const types = [...new Set(file.records.map((r) => r.type))];
    const type = of(types, record);
    const r = of(
      file.records.filter((x) => x.type === type),
      where,
    );
    if (!r) continue;
    if (how < 12 && type !== 'plan') file.records = file.records.filter((x) => x !== r);
    else if (how < 16 && type !== 'plan') file.records = file.records.filter((x) => x.type !== type);
    else if (how < 24) file.records.push({ ...structuredClone(r), id: `${String(r.id)}-${what}` });
    else {
      const [holder, key] = of(places(r), what) ?? [];
      if (!holder || key === undefined) continue;
      if (how < 34) delete holder[key];
      else holder[key] = another(file.records, r, holder[key], record + what);
    }
  }
  return JSON.stringify(file);
};
