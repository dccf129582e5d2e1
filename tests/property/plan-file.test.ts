import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PLAN_FORMAT, PLAN_VERSION, type ReadPlan, readPlan, serialisePlan } from '../../src/plan/file.ts';
import { planRecordsJson, recordJson, recordTypes } from '../support/json-arbitrary.ts';
import { need } from '../support/storage-world.ts';

const fileOf = (records: readonly unknown[], more: object = {}): string =>
  JSON.stringify({ format: PLAN_FORMAT, version: PLAN_VERSION, records, ...more });

const read = (text: string): ReadPlan => need(readPlan(text));

describe('saving and loading', () => {
  test.each(recordTypes)('is the identity for any %s that fits the published schema', (type) => {
    const plan = {
      id: 'plan',
      type: 'plan',
      title: '',
      practice: 'europe',
      lengthUnits: 'metric',
      frequencyHz: 50,
      paper: { sheet: 'A3' },
    };
    fc.assert(
      fc.property(recordJson(type), (record) => {
        const first = read(fileOf(type === 'plan' ? [record] : [plan, record]));
        expect(first.notices).toEqual([]);
        const text = serialisePlan(first.plan);
        const second = read(text);
        expect(second.plan.records).toEqual(first.plan.records);
        expect(serialisePlan(second.plan)).toBe(text);
        // Nothing that was there is changed; defaults may be added.
        expect(first.plan.records.get(String(record.id))).toMatchObject(record);
      }),
      { numRuns: 60 },
    );
  });

  test('is the identity for any plan, its unreadable records and unknown keys with it', () => {
    const odd = fc.oneof(
      fc.jsonValue({ maxDepth: 2 }),
      fc.record(
        { id: fc.string(), type: fc.constantFrom('lamp', 'fixture', 'cable') },
        { noNullPrototype: true },
      ),
    );
    fc.assert(
      fc.property(
        planRecordsJson(),
        fc.array(odd, { maxLength: 3 }),
        fc.jsonValue({ maxDepth: 2 }),
        (records, odds, more) => {
          const text = fileOf(
            [...records, ...odds.filter((o) => !JSON.stringify(o)?.includes('__proto__'))],
            { later: more },
          );
          const first = readPlan(text);
          fc.pre(first.ok);
          const saved = serialisePlan(need(first).plan);
          const second = read(saved);
          expect(serialisePlan(second.plan)).toBe(saved);
          expect(second.plan.setAside.length).toBe(need(first).plan.setAside.length);
        },
      ),
      { numRuns: 100 },
    );
  });

  test('gives the same bytes whatever order the records and their keys came in', () => {
    const turned = (v: Record<string, unknown>): Record<string, unknown> =>
      Object.fromEntries(Object.entries(v).reverse());
    fc.assert(
      fc.property(planRecordsJson(), (records) => {
        const back = [...records].reverse().map(turned);
        expect(serialisePlan(read(fileOf(back)).plan)).toBe(serialisePlan(read(fileOf(records)).plan));
      }),
      { numRuns: 60 },
    );
  });
});

describe('reading a file that was changed by accident', () => {
  test('never throws and never hangs: it reads, or says what is wrong and what to do', () => {
    const changed = planRecordsJson(4)
      .map((r) => fileOf(r))
      .chain((text) =>
        fc.tuple(
          fc.constant(text),
          fc.nat(text.length),
          fc.nat(20),
          fc.constantFrom('', '}', '"', 'null', '-1', '[[', '{"a":', '\u0000', '1e999'),
        ),
      )
      .map(([text, at, cut, put]) => text.slice(0, at) + put + text.slice(at + cut));
    fc.assert(
      fc.property(changed, (text) => {
        const r = readPlan(text);
        if (r.ok) expect(readPlan(serialisePlan(r.value.plan)).ok).toBe(true);
        else expect([r.error.what, r.error.todo]).not.toContain('');
      }),
      { numRuns: 400 },
    );
  });
});
