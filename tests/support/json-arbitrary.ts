import fc from 'fast-check';
import { planJsonSchema } from '../../src/plan/json-schema.ts';
import type { RecordType } from '../../src/plan/records/index.ts';

type Schema = Readonly<Record<string, unknown>>;

const isSchema = (v: unknown): v is Schema => typeof v === 'object' && v !== null && !Array.isArray(v);

/** Text that has broken programs before, beside plain and random text. */
const hardText = fc.constantFrom(
  '',
  'Küche',
  '🎬 Night',
  'מטבח',
  '<b onload="x">bold</b>',
  '=1+1',
  'a\u0000b',
  'line\nbreak',
  '‮right to left',
  '__proto__',
  '\ud800',
);
const text = fc.oneof(fc.string(), fc.string({ unit: 'grapheme' }), hardText);

/** A number that JSON can carry as it is: minus zero it cannot. */
const numberBetween = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true, noDefaultInfinity: true }).map((n) => n + 0);

const extraKey = fc.stringMatching(/^x-[a-z]{1,8}$/);

/** Values that fit a JSON Schema, of the subset that the plan's schema uses. */
export const arbitraryOf = (schema: Schema): fc.Arbitrary<unknown> => {
  if ('const' in schema) return fc.constant(schema.const);
  if (Array.isArray(schema.enum)) return fc.constantFrom(...schema.enum);
  const choices = schema.anyOf ?? schema.oneOf;
  if (Array.isArray(choices)) return fc.oneof(...choices.filter(isSchema).map(arbitraryOf));
  switch (schema.type) {
    case 'string':
      if (schema.contentEncoding === 'base64') return fc.base64String();
      return schema.minLength ? text.filter((s) => s.length >= Number(schema.minLength)) : text;
    case 'boolean':
      return fc.boolean();
    case 'integer':
      return fc.integer({
        min: Math.max(Number(schema.minimum ?? -1000), -1000),
        max: Math.min(Number(schema.maximum ?? 10_000), 10_000),
      });
    case 'number':
      return numberBetween(
        Number(schema.exclusiveMinimum === undefined ? (schema.minimum ?? -1e8) : 1e-6),
        Number(schema.maximum ?? 1e8),
      );
    case 'array':
      return fc.array(isSchema(schema.items) ? arbitraryOf(schema.items) : fc.jsonValue(), {
        minLength: Number(schema.minItems ?? 0),
        maxLength: Math.min(Number(schema.maxItems ?? 4), 4),
      });
    case 'object':
      return objectOf(schema);
  }
  throw new Error(`no values for ${JSON.stringify(schema)}`);
};

const objectOf = (schema: Schema): fc.Arbitrary<unknown> => {
  if (!isSchema(schema.properties)) {
    const values = isSchema(schema.additionalProperties)
      ? arbitraryOf(schema.additionalProperties)
      : fc.jsonValue();
    return fc.dictionary(
      fc.stringMatching(/^[a-z-]{1,10}$/).filter((k) => k !== 'prototype' && k !== 'constructor'),
      values,
      { maxKeys: 3 },
    );
  }
  const known = Object.fromEntries(
    Object.entries(schema.properties)
      .filter((e): e is [string, Schema] => isSchema(e[1]))
      .map(([key, s]) => [key, arbitraryOf(s)]),
  );
  const requiredKeys = Array.isArray(schema.required) ? (schema.required as string[]) : [];
  const object = fc.record(known, { requiredKeys, noNullPrototype: true });
  if (schema.additionalProperties === false) return object;
  // Keys of later versions, which must be kept.
  const extra = fc.dictionary(extraKey, fc.constantFrom<unknown>(1, 'text', [1, 'a'], { b: { c: true } }), {
    maxKeys: 1,
    noNullPrototype: true,
  });
  return fc.tuple(object, extra).map(([o, e]) => ({ ...o, ...e }));
};

const definitions = planJsonSchema().$defs as Record<RecordType, Schema>;
const arbitraries = new Map<RecordType, fc.Arbitrary<unknown>>();

/** Every record type of the published schema. */
export const recordTypes = Object.keys(definitions) as RecordType[];

/** Random JSON of one record type, made from the published schema alone. */
export const recordJson = (type: RecordType): fc.Arbitrary<Record<string, unknown>> => {
  let arbitrary = arbitraries.get(type);
  if (!arbitrary) {
    arbitrary = arbitraryOf(definitions[type]);
    arbitraries.set(type, arbitrary);
  }
  return arbitrary as fc.Arbitrary<Record<string, unknown>>;
};

/** Random records with different ids, the plan's own first. They are readable one by one and may refer to nothing. */
export const planRecordsJson = (maxLength = 12): fc.Arbitrary<Record<string, unknown>[]> =>
  fc
    .tuple(
      recordJson('plan'),
      fc.array(fc.constantFrom(...recordTypes.filter((t) => t !== 'plan')).chain(recordJson), { maxLength }),
    )
    .map(([plan, others]) => [plan, ...others.map((r, i) => ({ ...r, id: `${String(r.id)}#${i}` }))]);
