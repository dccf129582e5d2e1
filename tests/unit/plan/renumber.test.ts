import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { groupRecords } from '../../../src/plan/edits/groups.ts';
import { renumberUnits, type UnitRule, unitOrders } from '../../../src/plan/edits/renumber.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { addUnit, floorRig } from '../../support/floor.ts';

const RULE: UnitRule = { order: 'across', prefix: '', start: 1, step: 1, round: 0 };

/** Two rows of three; the numbers they are given are mixed up. */
const rows = () => {
  const rig = floorRig();
  const at = (x: number, y: number) => addUnit(rig, 'led-panel-60x60', x, y);
  const [c2, a1, b2, a2, b1, c1] = [
    at(5000, 4000),
    at(1000, 1000),
    at(3000, 4100),
    at(1000, 3900),
    at(3000, 1100),
    at(5000, 900),
  ];
  const plan = rig.session.getState().plan;
  return { rig, plan, all: new Set([a1, b1, c1, a2, b2, c2]), ids: { a1, b1, c1, a2, b2, c2 } };
};

const numbered = (
  plan: ReturnType<typeof rows>['plan'],
  ids: ReadonlySet<string>,
  rule: Partial<UnitRule>,
) => {
  const r = renumberUnits(plan, ids, { ...RULE, ...rule });
  if (!r.ok) throw new Error(r.error.what);
  const after = applyChanges(plan, r.value.changes);
  return {
    numbers: r.value.numbers,
    unit: (id: string) => recordsOf(after, 'fixture').find((f) => f.id === id)?.unit,
  };
};

describe('numbering units by a rule', () => {
  test('row by row gives the upper row the first numbers, from left to right', () => {
    const { plan, all, ids } = rows();
    const { numbers } = numbered(plan, all, { order: 'rows', prefix: 'A', start: 101, step: 2 });
    expect(numbers.map((n) => n.id)).toEqual([ids.a1, ids.b1, ids.c1, ids.a2, ids.b2, ids.c2]);
    expect(numbers.map((n) => n.to)).toEqual(['A101', 'A103', 'A105', 'A107', 'A109', 'A111']);
  });

  test('a path goes to the nearest one next', () => {
    const { plan, all, ids } = rows();
    const { numbers } = numbered(plan, all, { order: 'path' });
    expect(numbers.map((n) => n.id)).toEqual([ids.a1, ids.b1, ids.c1, ids.c2, ids.b2, ids.a2]);
  });

  test('groups stay together and may each begin a new ten', () => {
    const { rig, plan, all, ids } = rows();
    const grouped = applyChanges(plan, groupRecords(plan, new Set([ids.c1, ids.c2]), rig.session.newId));
    const { unit } = numbered(grouped, all, { order: 'group', start: 1, round: 10 });
    expect([unit(ids.c1), unit(ids.c2)]).toEqual(['1', '2']);
    expect(['11', '12', '13', '14']).toContain(unit(ids.a1));
  });

  test('numbers of others are passed over', () => {
    const { plan, ids } = rows();
    const { numbers } = numbered(plan, new Set([ids.a1, ids.b1]), { start: 3 });
    // The others have 1, 3, 4 and 6.
    expect(numbers.map((n) => n.to)).toEqual(['5', '7']);
  });

  test('whatever the rule, every unit of the plan has a number of its own', () => {
    const { plan, all } = rows();
    fc.assert(
      fc.property(
        fc.subarray([...all], { minLength: 1 }),
        fc.constantFrom(...unitOrders),
        fc.integer({ min: 0, max: 8 }),
        fc.integer({ min: 1, max: 3 }),
        fc.constantFrom(0, 10),
        (ids, order, start, step, round) => {
          const r = renumberUnits(plan, new Set(ids), { order, prefix: '', start, step, round });
          if (!r.ok) throw new Error(r.error.what);
          const units = recordsOf(applyChanges(plan, r.value.changes), 'fixture').map((f) => f.unit);
          expect(new Set(units).size).toBe(units.length);
        },
      ),
    );
  });

  test('a rule that makes no sense says what to write', () => {
    const { plan, all } = rows();
    for (const bad of [{ start: Number.NaN }, { step: 0 }, { start: -1 }]) {
      const r = renumberUnits(plan, all, { ...RULE, ...bad });
      expect(r.ok).toBe(false);
    }
  });
});
