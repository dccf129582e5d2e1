import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readPlan, serialisePlan } from '../../src/plan/file.ts';
import { recordSchemas } from '../../src/plan/records/index.ts';
import { floorRig } from '../support/floor.ts';

const base = JSON.parse(serialisePlan(floorRig().session.getState().plan)) as { records: unknown[] };

/** A level by and large, some of its fields of the wrong sort, missing or more than there are. */
const levels = fc.record(
  {
    id: fc.oneof(fc.constantFrom('level:a:b', 'level:c:d', ''), fc.integer()),
    type: fc.constant('level'),
    setupId: fc.oneof(fc.constant('su-1'), fc.constant(null), fc.integer()),
    fixtureId: fc.oneof(fc.constant('fx-1'), fc.boolean()),
    levelPct: fc.oneof(fc.double({ min: 0, max: 100, noNaN: true }), fc.constantFrom(null, '50', -5, 1e9)),
    color: fc.constantFrom('blue', 7),
    locked: fc.boolean(),
    other: fc.string(),
  },
  { requiredKeys: ['type'] },
);

describe('reading levels by their plain fields', () => {
  test('takes and refuses what the schema takes and refuses, and gives the same record', () => {
    fc.assert(
      fc.property(levels, (level) => {
        const read = readPlan(JSON.stringify({ ...base, records: [...base.records, level] }));
        if (!read.ok) throw new Error(read.error.what);
        const bySchema = recordSchemas.level.safeParse(JSON.parse(JSON.stringify(level)));
        const found = typeof level.id === 'string' ? read.value.plan.records.get(level.id) : undefined;
        expect(found !== undefined).toBe(bySchema.success);
        if (bySchema.success) expect(found).toEqual(bySchema.data);
      }),
    );
  });
});
