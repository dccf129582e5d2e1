import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createSession } from '../../src/editor/session.ts';
import { idMaker } from '../../src/kernel/ids.ts';
import {
  applyChanges,
  type ChangeSet,
  compose,
  Draft,
  diffPlans,
  invert,
  isEmptyChange,
  peekChanges,
} from '../../src/plan/change-set.ts';
import { serialisePlan } from '../../src/plan/file.ts';
import { type Plan, recordsOf } from '../../src/plan/plan.ts';
import { type AnyRecord, type RecordType, recordSchemas } from '../../src/plan/records/index.ts';
import { recordJson, recordTypes } from '../support/json-arbitrary.ts';
import { markRecord, smallPlan } from '../support/small-plan.ts';

/** One random step of an edit: put a record under one of a few ids, or remove what is there. */
type Step = { readonly put: AnyRecord } | { readonly remove: string };

const ids = ['mark-0', 'mark-1', 'mark-2', 'a', 'b', 'c', 'd'];
const idArbitrary = fc.constantFrom(...ids);
const recordArbitrary = fc
  .tuple(fc.constantFrom<RecordType>(...recordTypes.filter((t) => t !== 'plan')), idArbitrary)
  .chain(([type, id]) =>
    recordJson(type).map((json) => recordSchemas[type].parse({ ...json, id }) as AnyRecord),
  );
const steps = fc.array(
  fc.oneof(
    recordArbitrary.map((put): Step => ({ put })),
    idArbitrary.map((remove): Step => ({ remove })),
  ),
  { maxLength: 5 },
);
const edits = (maxLength: number): fc.Arbitrary<Step[][]> => fc.array(steps, { maxLength });

const changesOf = (plan: Plan, list: readonly Step[]): ChangeSet => {
  const draft = new Draft(plan);
  for (const s of list) {
    if ('put' in s) draft.put(s.put);
    else draft.remove(s.remove);
  }
  return draft.changes();
};

describe('change-sets', () => {
  test('lists that came from another plan, and a plan only looked at, are as if made from scratch', () => {
    fc.assert(
      fc.property(edits(4), (list) => {
        let plan = smallPlan();
        recordsOf(plan, 'mark');
        for (const one of list) {
          const before = plan;
          const c = changesOf(before, one);
          plan = applyChanges(before, c);
          const peeked = peekChanges(before, c);
          expect([...peeked.records.entries()]).toEqual([...plan.records.entries()]);
          expect(peeked.records.size).toBe(plan.records.size);
          const scratch: Plan = { ...plan, records: new Map(plan.records) };
          for (const type of recordTypes) {
            expect(recordsOf(plan, type)).toEqual(recordsOf(scratch, type));
            expect(recordsOf(peeked, type)).toEqual(recordsOf(scratch, type));
          }
        }
      }),
      { numRuns: 100 },
    );
  });

  test('an inverted change-set leads back to the same text', () => {
    fc.assert(
      fc.property(steps, (list) => {
        const plan = smallPlan();
        const c = changesOf(plan, list);
        expect(serialisePlan(applyChanges(applyChanges(plan, c), invert(c)))).toBe(serialisePlan(plan));
        expect(invert(invert(c))).toEqual(c);
      }),
      { numRuns: 200 },
    );
  });

  test('a composed change-set does what its two parts do, and so does its inverse', () => {
    fc.assert(
      fc.property(steps, steps, (first, second) => {
        const plan = smallPlan();
        const a = changesOf(plan, first);
        const middle = applyChanges(plan, a);
        const b = changesOf(middle, second);
        const both = applyChanges(middle, b);
        const c = compose(a, b);
        expect(serialisePlan(applyChanges(plan, c))).toBe(serialisePlan(both));
        expect(serialisePlan(applyChanges(both, invert(c)))).toBe(serialisePlan(plan));
        expect(isEmptyChange(compose(c, invert(c)))).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('the difference of two plans turns the one into the other', () => {
    fc.assert(
      fc.property(steps, steps, (first, second) => {
        const plan = smallPlan();
        const a = applyChanges(plan, changesOf(plan, first));
        const b = applyChanges(plan, changesOf(plan, second));
        expect(serialisePlan(applyChanges(a, diffPlans(a, b)))).toBe(serialisePlan(b));
      }),
      { numRuns: 100 },
    );
  });

  test('changes that do not fit the plan are a mistake of the program and throw', () => {
    const plan = smallPlan();
    const mark = plan.records.get('mark-0');
    if (!mark) throw new Error('no mark');
    const other = markRecord('not-there', 'Other');
    expect(() => applyChanges(plan, { added: [mark], updated: [], removed: [] })).toThrow('there already');
    expect(() => applyChanges(plan, { added: [], updated: [], removed: [other] })).toThrow('not there');
    expect(() =>
      applyChanges(plan, { added: [], updated: [{ from: other, to: other }], removed: [] }),
    ).toThrow('not there');
  });
});

describe('undo', () => {
  const session = (plan: Plan) =>
    createSession(
      plan,
      idMaker(() => 0.5),
    );

  test('undoing any edits gives the identical text at each step, and redoing them too', () => {
    fc.assert(
      fc.property(edits(8), (list) => {
        const s = session(smallPlan());
        const texts = [serialisePlan(s.getState().plan)];
        for (const e of list) {
          const changes = changesOf(s.getState().plan, e);
          s.commit('edit', changes);
          if (!isEmptyChange(changes)) texts.push(serialisePlan(s.getState().plan));
        }
        for (let i = texts.length - 2; i >= 0; i--) {
          s.undo();
          expect(serialisePlan(s.getState().plan)).toBe(texts[i]);
        }
        s.undo();
        expect(serialisePlan(s.getState().plan)).toBe(texts[0]);
        for (let i = 1; i < texts.length; i++) {
          s.redo();
          expect(serialisePlan(s.getState().plan)).toBe(texts[i]);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('any mix of edits, undos and redos keeps to a model of two stacks', () => {
    const command = fc.oneof(
      { weight: 3, arbitrary: steps },
      { weight: 2, arbitrary: fc.constant('undo' as const) },
      { weight: 1, arbitrary: fc.constant('redo' as const) },
    );
    fc.assert(
      fc.property(fc.array(command, { maxLength: 25 }), (commands) => {
        const s = session(smallPlan());
        let now = serialisePlan(s.getState().plan);
        const past: string[] = [];
        const future: string[] = [];
        for (const c of commands) {
          if (c === 'undo') {
            s.undo();
            const back = past.pop();
            if (back !== undefined) {
              future.push(now);
              now = back;
            }
          } else if (c === 'redo') {
            s.redo();
            const on = future.pop();
            if (on !== undefined) {
              past.push(now);
              now = on;
            }
          } else {
            const changes = changesOf(s.getState().plan, c);
            s.commit('edit', changes);
            if (!isEmptyChange(changes)) {
              past.push(now);
              future.length = 0;
              now = serialisePlan(s.getState().plan);
            }
          }
          expect(serialisePlan(s.getState().plan)).toBe(now);
        }
      }),
      { numRuns: 100 },
    );
  });

  test('every transaction that reaches the plan is told, and replaying them gives the same plan', () => {
    fc.assert(
      fc.property(edits(6), fc.nat(4), (list, undos) => {
        const s = session(smallPlan());
        let replica = s.getState().plan;
        s.onTransaction((t, after) => {
          replica = applyChanges(replica, t.changes);
          expect(serialisePlan(replica)).toBe(serialisePlan(after));
        });
        for (const e of list) s.commit('edit', changesOf(s.getState().plan, e));
        for (let i = 0; i < undos; i++) s.undo();
        expect(serialisePlan(replica)).toBe(serialisePlan(s.getState().plan));
      }),
      { numRuns: 60 },
    );
  });
});
