import fc from 'fast-check';
import { expect, test } from 'vitest';
import { applyChanges, Draft } from '../../src/plan/change-set.ts';
import { type AnyRecord, type RecordType, recordSchemas } from '../../src/plan/records/index.ts';
import { type MemoryShelf, memoryMedium } from '../../src/storage/memory-medium.ts';
import { recordJson, recordTypes } from '../support/json-arbitrary.ts';
import { smallPlan } from '../support/small-plan.ts';
import { need, reopened, settle, textOf, World } from '../support/storage-world.ts';

const ids = ['mark-0', 'mark-1', 'a', 'b', 'c'];
const record = fc
  .tuple(fc.constantFrom<RecordType>(...recordTypes.filter((t) => t !== 'plan')), fc.constantFrom(...ids))
  .chain(([type, id]) =>
    recordJson(type).map((json) => recordSchemas[type].parse({ ...json, id }) as AnyRecord),
  );

type Act =
  | { readonly put: AnyRecord }
  | { readonly remove: string }
  | 'write'
  | 'close and open'
  | 'the other takes over';
const act: fc.Arbitrary<Act> = fc.oneof(
  { weight: 4, arbitrary: record.map((put): Act => ({ put })) },
  { weight: 2, arbitrary: fc.constantFrom(...ids).map((remove): Act => ({ remove })) },
  { weight: 2, arbitrary: fc.constantFrom<Act>('write', 'close and open', 'the other takes over') },
);

test('after any edits, writes, closings and takings over, every tab and every later tab has the same plan', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(act, { maxLength: 20 }), async (acts) => {
      const shelf: MemoryShelf = new Map();
      const world = new World(() => memoryMedium(shelf));
      let writer = need(await world.tab().store.create(smallPlan()));
      const { planId } = writer;
      let other = need(await world.tab().store.open(planId));
      let expected = writer.plan;
      for (const a of acts) {
        if (a === 'write') await writer.flush();
        else if (a === 'the other takes over') {
          need(await other.takeOver());
          [writer, other] = [other, writer];
        } else if (a === 'close and open') {
          await writer.close();
          await settle();
          [writer, other] = [other, need(await world.tab().store.open(planId))];
        } else {
          const draft = new Draft(expected);
          if ('put' in a) draft.put(a.put);
          else draft.remove(a.remove);
          const changes = draft.changes();
          expected = applyChanges(expected, changes);
          writer.append({ label: 'edit', origin: 'user', changes }, expected);
        }
      }
      await writer.flush();
      await settle();
      expect(textOf(other.plan)).toBe(textOf(expected));
      expect(await reopened(world, planId)).toBe(textOf(expected));
    }),
    { numRuns: 60 },
  );
});
