import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { canonicalJson } from '../../src/kernel/canonical.ts';
import { applyChanges } from '../../src/plan/change-set.ts';
import { readPlan, serialisePlan } from '../../src/plan/file.ts';
import { type Plan, recordsOf } from '../../src/plan/plan.ts';
import { type AnyRecord, type RecordType, recordSchemas } from '../../src/plan/records/index.ts';
import { planChanges } from '../../src/report/changes.ts';
import { demoPlan } from '../support/demo-plan.ts';
import { recordJson } from '../support/json-arbitrary.ts';
import { samplePlan } from '../support/sample-plan.ts';

const plans: Readonly<Record<string, Plan>> = {
  sample: samplePlan(),
  study: demoPlan('study'),
  street: demoPlan('street'),
  stage: demoPlan('stage'),
};

/** What is said not to be told: kinds and pictures tell by what uses them, the rest is no change of the design. */
const UNTOLD: ReadonlySet<RecordType> = new Set([
  ...(['kind', 'blob', 'view', 'labelPlace', 'tick', 'issue'] as const),
]);
const UNTOLD_FIELDS: ReadonlySet<string> = new Set(['id', 'type', 'order', 'locked', 'groupId', 'paper']);

/** Fields that count for nothing as the record is: what stands on a stand stands where that stands; some ids say what of. */
const idle = (r: AnyRecord, key: string): boolean =>
  (r.type === 'fixture' && r.support.on === 'stand' && (key === 'at' || key === 'heightMm')) ||
  ((r.type === 'level' || r.type === 'move') && /Id$/.test(key));

const replace = (p: Plan, from: AnyRecord, to: AnyRecord): Plan =>
  applyChanges(p, { added: [], removed: [], updated: [{ from, to }] });

const told = (p: Plan): readonly AnyRecord[] => [...p.records.values()].filter((r) => !UNTOLD.has(r.type));

/** As good as the same: nothing for nothing, or what is left of reckoning. */
const alike = (x: unknown, y: unknown): boolean => {
  const none = (v: unknown): boolean => v === undefined || v === '' || (Array.isArray(v) && v.length === 0);
  if (typeof x === 'number' && typeof y === 'number') return Math.abs(x - y) < 0.001;
  return (none(x) && none(y)) || canonicalJson(x ?? null) === canonicalJson(y ?? null);
};

const planOf = (name: string): Plan => {
  const plan = plans[name];
  if (!plan) throw new Error(`no plan ${name}`);
  return plan;
};

/** A record of a plan and the same record with one field as some other record of its type has it. */
const edit = fc
  .constantFrom(...Object.keys(plans))
  .chain((name) => fc.tuple(fc.constant(name), fc.constantFrom(...told(planOf(name)))))
  .chain(([name, from]) =>
    fc.tuple(recordJson(from.type), fc.nat()).map(([json, n]) => {
      const other = recordSchemas[from.type].parse({ ...json, id: from.id }) as AnyRecord;
      const [have, want] = [from, other] as unknown as [Record<string, unknown>, Record<string, unknown>];
      const keys = [...new Set([...Object.keys(have), ...Object.keys(want)])].filter(
        (k) => !UNTOLD_FIELDS.has(k) && !idle(from, k) && !alike(have[k], want[k]),
      );
      const key = keys[n % Math.max(1, keys.length)];
      if (key === undefined) return undefined;
      const to: Record<string, unknown> = { ...have, [key]: want[key] };
      if (to[key] === undefined) delete to[key];
      return { name, from, to: to as unknown as AnyRecord, key };
    }),
  )
  .filter((e) => e !== undefined);

describe('the list of changes', () => {
  test.each(Object.entries(plans))('between %s and itself, read anew, is empty', (_, plan) => {
    expect(planChanges(plan, plan)).toEqual([]);
    const again = readPlan(serialisePlan(plan));
    expect(again.ok && planChanges(plan, again.value.plan)).toEqual([]);
  });

  test('has a line for any field of anything that is set otherwise, there and back, the same each time', () => {
    fc.assert(
      fc.property(edit, ({ name, from, to, key }) => {
        const plan = planOf(name);
        const after = replace(plan, from, to);
        const lines = planChanges(plan, after);
        expect(lines.length, `${from.type} ${key}`).toBeGreaterThan(0);
        expect(planChanges(after, plan).length, `${from.type} ${key}, back`).toBeGreaterThan(0);
        expect(planChanges(plan, after)).toEqual(lines);
        for (const l of lines) {
          // Something is said of it, and nothing became no text.
          expect(l.words, `${from.type} ${key}`).not.toMatch(/undefined|NaN|\[object/);
          expect(l.words, `${from.type} ${key}`).not.toMatch(/^\S+ \S+ changed$/);
        }
      }),
      { numRuns: 400 },
    );
  });

  test('tells of each thing that is taken away, and of each that comes', () => {
    const removal = fc.constantFrom(...Object.keys(plans)).chain((name) => {
      const things = told(planOf(name)).filter((r) => !['plan', 'level', 'move'].includes(r.type));
      return fc.tuple(fc.constant(name), fc.subarray([...things], { minLength: 1, maxLength: 6 }));
    });
    fc.assert(
      fc.property(removal, ([which, gone]) => {
        const plan = planOf(which);
        const after = applyChanges(plan, { added: [], updated: [], removed: gone });
        const [there, back] = [planChanges(plan, after), planChanges(after, plan)];
        for (const r of gone) {
          const name = `${r.type} ${r.id}`;
          expect(
            there.some((c) => c.recordIds.includes(r.id)),
            name,
          ).toBe(true);
          expect(
            back.some((c) => c.recordIds.includes(r.id)),
            name,
          ).toBe(true);
        }
        for (const r of gone.filter((x) => x.type === 'fixture')) {
          expect(there.find((c) => c.recordIds[0] === r.id)?.what).toBe('removed');
          expect(back.find((c) => c.recordIds[0] === r.id)?.what).toBe('added');
        }
      }),
      { numRuns: 60 },
    );
  });

  test('tells both units when their cables are exchanged', () => {
    for (const plan of Object.values(plans)) {
      const fixtures = new Set(recordsOf(plan, 'fixture').map((f) => f.id));
      const cables = recordsOf(plan, 'cable').filter((c) => fixtures.has(c.to.recordId));
      const [a, b] = cables;
      if (!a || !b) throw new Error('the plan had two units on cables');
      const after = replace(replace(plan, a, { ...a, to: b.to }), b, { ...b, to: a.to });
      const lines = planChanges(plan, after);
      for (const c of [a, b])
        expect(lines.find((l) => l.recordIds[0] === c.to.recordId)?.words).toMatch(/now on .*, was /);
    }
  });
});
