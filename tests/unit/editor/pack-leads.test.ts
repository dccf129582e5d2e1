import { describe, expect, test } from 'vitest';
import { clipOf, pasteClip } from '../../../src/editor/clipboard.ts';
import { command } from '../../../src/editor/commands/index.ts';
import { runBetween } from '../../../src/editor/connect.ts';
import { point } from '../../../src/kernel/geometry.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { duplicateRecords } from '../../../src/plan/edits/duplicate.ts';
import { addFloorPack, setPackFrom } from '../../../src/plan/edits/floor-packs.ts';
import { replaceKind } from '../../../src/plan/edits/kinds.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { batteryRig } from '../../support/battery-plan.ts';
import { countingIds, floorRig } from '../../support/floor.ts';
import { need } from '../../support/storage-world.ts';

const outlet = (id: string) => ({ id, connector: 'xlr-3' as const, voltsV: 14.4, maxA: 10 });

/** Units 1 to 3, of which 1 hangs in outlet a and 2 in outlet b of pack P1 on the floor; 3 has a brick on itself. */
const rig = () => {
  const r = batteryRig();
  for (const id of ['1', '2']) r.unit(id);
  r.unit('3', { kindId: r.brick.id, count: 1, joined: 'parallel' });
  const block = r.pack('block', { dcOut: [outlet('a'), outlet('b')], energyWh: 750 });
  const other = r.pack('block-2', { dcOut: [outlet('a')], energyWh: 900 });
  const bare = r.b.plan();
  const made = addFloorPack(bare, block, 'floor', point(0, 0), (p) => `${p}-1`);
  let plan = applyChanges(bare, made.changes);
  for (const [id, outletId] of [
    ['1', 'a'],
    ['2', 'b'],
  ] as const)
    plan = applyChanges(plan, setPackFrom(plan, [id], { packId: made.pack.id, outletId }));
  return { plan, packId: made.pack.id, block, other, brick: r.brick };
};

const fixture = (plan: Plan, id: string) => {
  const f = recordOf(plan, 'fixture', id);
  if (!f) throw new Error(`no unit ${id}`);
  return f;
};
/** What leads to something that is not there; the rig has no other faults of that kind. */
const loose = (plan: Plan) => referenceProblems(plan).filter((p) => JSON.stringify(p).includes('pack'));

describe('a pack on the floor that is deleted by its key', () => {
  const deleted = () => {
    const { plan, packId } = rig();
    const floor = floorRig(plan);
    floor.session.set({ selection: new Set([packId]) });
    command('delete').perform(floor.ctx);
    return { session: floor.session, packId };
  };

  test('leaves no unit leading to it, and tells which hung on it', () => {
    const { session } = deleted();
    const { plan, message } = session.getState();
    expect(fixture(plan, '1').packFrom).toBeUndefined();
    expect(fixture(plan, '2').packFrom).toBeUndefined();
    expect(loose(plan)).toEqual([]);
    expect(message).toContain('Unit 1 and unit 2 hung on it and are left without a pack');
  });

  test('comes back with its leads in one undo', () => {
    const { session, packId } = deleted();
    session.undo();
    const { plan } = session.getState();
    expect(recordOf(plan, 'pack', packId)).toBeDefined();
    expect(fixture(plan, '1').packFrom).toEqual({ packId, outletId: 'a' });
  });
});

describe('copies of units on packs', () => {
  test('hang on the copy of their pack in the same outlet, in another plan too, with kinds of packs they name', () => {
    const { plan, packId } = rig();
    const { text } = clipOf(plan, new Set(['1', '3', packId]));
    const other = floorRig();
    const put = need(
      pasteClip(other.session.getState().plan, text, other.floorId, point(0, 0), countingIds()),
    );
    const now = applyChanges(other.session.getState().plan, put.changes);
    const [pack] = recordsOf(now, 'pack');
    const leads = recordsOf(now, 'fixture').flatMap((f) => f.packFrom ?? []);
    expect(leads).toEqual([{ packId: pack?.id, outletId: 'a' }]);
    expect(loose(now)).toEqual([]);
  });

  test('without their pack hang on none in another plan, and in the next free outlet in the same', () => {
    const { plan, packId } = rig();
    const { text } = clipOf(plan, new Set(['1']));
    const other = floorRig().session.getState().plan;
    const there = need(pasteClip(other, text, 'floor-1', point(0, 0), countingIds()));
    expect(there.changes.added.find((r) => r.type === 'fixture')).not.toHaveProperty('packFrom');
    const here = need(pasteClip(plan, text, 'floor', point(0, 0), countingIds()));
    expect(here.changes.added.find((r) => r.type === 'fixture')).toMatchObject({ packFrom: { packId } });
    expect(here.changes.added.find((r) => r.type === 'fixture')).not.toHaveProperty('packFrom.outletId');
    const twin = duplicateRecords(plan, new Set(['1']), point(500, 0), countingIds()).changes.added;
    expect(twin.find((r) => r.type === 'fixture')).toMatchObject({ packFrom: { packId } });
    expect(twin.find((r) => r.type === 'fixture')).not.toHaveProperty('packFrom.outletId');
  });

  test('pasted after a cut are back in the outlet they were in', () => {
    const { plan, packId } = rig();
    const { text } = clipOf(plan, new Set(['1']));
    const floor = floorRig(plan);
    floor.session.set({ selection: new Set(['1']) });
    command('delete').perform(floor.ctx);
    const back = need(
      pasteClip(floor.session.getState().plan, text, 'floor', point(0, 0), countingIds()),
    ).changes;
    expect(back.added.find((r) => r.type === 'fixture')).toMatchObject({
      packFrom: { packId, outletId: 'a' },
    });
  });
});

describe('a kind of pack that is replaced', () => {
  test('is replaced on the units it sits on as well, and leaves nothing behind that names it', () => {
    const { plan, brick, block } = rig();
    const made = need(replaceKind(plan, brick.id, block));
    const now = applyChanges(plan, made.changes);
    expect(fixture(now, '3').packs?.kindId).toBe(block.id);
    expect(made.records).toContain('3');
    expect(loose(now)).toEqual([]);
  });

  test('tells leads whose outlet the new kind does not have', () => {
    const { plan, block, other } = rig();
    const made = need(replaceKind(plan, block.id, other));
    expect(made.unfit).toEqual(['unit 2: its lead is in outlet b, which the new pack does not have']);
  });
});

test('a run to a unit off the mains says what that runs on', () => {
  const r = batteryRig();
  r.b.boxKind('box', { outlets: [{ id: 'o1', connector: 'stage-pin-20', legs: 1, neutral: true }] });
  const box = r.b.box('box');
  r.b.fixtureKind('tube', { wattsW: 40 }, { ownCellsWh: 60, inlets: [] });
  r.b.fixtureKind('small', { wattsW: 40 }, { inlets: [] });
  r.unit('1', { kindId: r.brick.id, count: 2, joined: 'parallel' }, 'small');
  r.unit('2', undefined, 'tube');
  r.unit('3', undefined, 'small');
  const bare = r.b.plan();
  const made = addFloorPack(bare, r.brick, 'floor', point(0, 0), (p) => `${p}-1`);
  const there = applyChanges(bare, made.changes);
  const plan = applyChanges(there, setPackFrom(there, ['3'], { packId: made.pack.id }));
  const why = (id: string) => {
    const run = runBetween(plan, box.id, id, []);
    return run.ok ? 'a run' : run.error.what;
  };
  expect(why('1')).toBe('Unit 1 takes no mains: it runs on 2 × brick.');
  expect(why('2')).toBe('Unit 2 takes no mains: it runs on its own cells.');
  expect(why('3')).toBe('Unit 3 takes no mains: it runs on P1, brick.');
});
