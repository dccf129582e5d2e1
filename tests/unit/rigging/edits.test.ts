import { describe, expect, it } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { bookOf } from '../../../src/editor/book.ts';
import { createPicker } from '../../../src/editor/picking.ts';
import { placeThere } from '../../../src/editor/placing.ts';
import { computeRigging, riggingFindings } from '../../../src/engines/rigging/index.ts';
import { gearBook, needKind } from '../../../src/gear/index.ts';
import type { Id } from '../../../src/kernel/ids.ts';
import { applyChanges, type ChangeSet, invert } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { moveRecords, removeRecords, rotateRecords } from '../../../src/plan/edits/arrange.ts';
import { duplicateRecords } from '../../../src/plan/edits/duplicate.ts';
import { addAccessory, removeAccessory, setCloth } from '../../../src/plan/edits/grip.ts';
import { readPlan, serialisePlan } from '../../../src/plan/file.ts';
import { fixturePlace, type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { RiggingRig } from '../../support/rigging-rig.ts';

const book = bookOf(gearBook('north-america'));
let next = 0;
const newId = (prefix: string): Id => `${prefix}-t${++next}`;
const at = (xMm: number, yMm: number) => ({ xMm, yMm });

const place = (plan: Plan, slug: string, where = at(0, 0), facingDeg = 0): { plan: Plan; id: Id } => {
  const made = placeThere(plan, book, { slug, floorId: 'floor', at: where, facingDeg }, newId);
  if (!made.ok) throw new Error(made.error.what);
  return { plan: applyChanges(plan, made.value.changes), id: made.value.id };
};
const empty = () => new RiggingRig({ windMps: 0 }).plan();
const one = <T>(x: T | undefined): T => {
  if (x === undefined) throw new Error('nothing there');
  return x;
};
const undoes = (plan: Plan, c: ChangeSet): void =>
  expect(serialisePlan(applyChanges(applyChanges(plan, c), invert(c)))).toBe(serialisePlan(plan));

describe('grip on a plan', () => {
  it('every grip and rigging kind of both books can be put on the floor and read back', () => {
    for (const practice of ['north-america', 'europe'] as const) {
      const own = bookOf(gearBook(practice));
      for (const k of own.kinds()) {
        if (k.family !== 'grip' && k.family !== 'rigging') continue;
        const plan = empty();
        const made = placeThere(
          plan,
          own,
          { slug: k.slug, floorId: 'floor', at: at(0, 0), facingDeg: 90 },
          newId,
        );
        const after = made.ok ? applyChanges(plan, made.value.changes) : plan;
        expect(made.ok, k.slug).toBe(true);
        expect(referenceProblems(after), k.slug).toEqual([]);
        const read = readPlan(serialisePlan(after));
        expect(read.ok && read.value.notices, k.slug).toEqual([]);
        // What comes with its usual stands fits on them, is not too heavy for them and at a height they reach.
        const bad = riggingFindings(after).filter((f) => f.severity !== 'note');
        expect(
          bad.map((f) => f.rule).filter((r) => r !== 'rigging-tilt'),
          k.slug,
        ).toEqual([]);
      }
    }
  });

  it('a frame comes with its stands at its ends and moves, turns, copies and goes with them', () => {
    const { plan, id } = place(empty(), 'frame-12x12', at(1000, 2000));
    const frame = one(recordOf(plan, 'grip', id));
    const stands = frame.supports.map((s) => one(recordOf(plan, 'stand', s)));
    expect(stands.map((s) => Math.round(s.at.yMm - 2000))).toEqual([-1979, 1979]);

    const moving = moveRecords(plan, new Set([one(stands[0]).id]), at(500, 0));
    undoes(plan, moving);
    const moved = applyChanges(plan, moving);
    expect(recordOf(moved, 'grip', id)?.at).toEqual(at(1500, 2000));
    for (const s of stands) expect(recordOf(moved, 'stand', s.id)?.at.xMm).toBeCloseTo(s.at.xMm + 500, 6);

    const turned = applyChanges(plan, rotateRecords(plan, new Set([id]), 90));
    const ends = frame.supports.map((s) => one(recordOf(turned, 'stand', s)).at);
    expect(ends.map((p) => [Math.round(p.xMm), Math.round(p.yMm)])).toEqual([
      [2979, 2000],
      [-979, 2000],
    ]);

    const { changes, copies } = duplicateRecords(plan, new Set([id]), at(0, 9000), newId);
    const both = applyChanges(plan, changes);
    expect(copies.size).toBe(3);
    const copy = one(recordsOf(both, 'grip').find((g) => g.id !== id));
    expect(copy.supports.every((s) => copies.has(s))).toBe(true);
    expect(referenceProblems(both)).toEqual([]);

    const gone = removeRecords(plan, new Set([id]));
    undoes(plan, gone);
    expect(recordsOf(applyChanges(plan, gone), 'stand')).toEqual([]);
  });

  it('a frame keeps standing on what is left when one of its stands goes', () => {
    const { plan, id } = place(empty(), 'frame-8x8');
    const [first] = one(recordOf(plan, 'grip', id)).supports;
    const after = applyChanges(plan, removeRecords(plan, new Set([one(first)])));
    expect(recordOf(after, 'grip', id)?.supports).toHaveLength(1);
    expect(referenceProblems(after)).toEqual([]);
    expect(riggingFindings(after).map((f) => f.rule)).toEqual(['rigging-frame-stands']);
  });

  it('what hangs on a tube goes with it, and stays in the air when it is taken away', () => {
    const tube = place(empty(), 'pipe-steel-6');
    const lamp = place(tube.plan, 'tungsten-fresnel-650w');
    const frame = place(lamp.plan, 'frame-6x6', at(9000, 0));
    const f = one(recordOf(frame.plan, 'fixture', lamp.id));
    const g = one(recordOf(frame.plan, 'grip', frame.id));
    const records = new Map(frame.plan.records)
      .set(f.id, { ...f, support: { on: 'rigged', riggingId: tube.id } })
      .set(g.id, { ...g, supports: [], riggingId: tube.id });
    const plan: Plan = { ...frame.plan, records };
    expect(computeRigging(plan).rigging.get(tube.id)?.fixtures).toHaveLength(1);
    const moved = applyChanges(plan, moveRecords(plan, new Set([tube.id]), at(0, 700)));
    expect(recordOf(moved, 'fixture', f.id)?.at.yMm).toBe(f.at.yMm + 700);
    expect(recordOf(moved, 'grip', g.id)?.at.yMm).toBe(g.at.yMm + 700);
    const going = removeRecords(plan, new Set([tube.id]));
    undoes(plan, going);
    const after = applyChanges(plan, going);
    expect(recordOf(after, 'fixture', f.id)?.support).toEqual({ on: 'rigged' });
    expect(recordOf(after, 'grip', g.id)).not.toHaveProperty('riggingId');
    expect(referenceProblems(after)).toEqual([]);
  });

  it('cloths and accessories bring their kinds into the plan', () => {
    const { plan, id } = place(empty(), 'frame-12x12');
    const silk = needKind('north-america', 'silk-12x12', 'grip');
    const dressed = applyChanges(plan, setCloth(plan, one(recordOf(plan, 'grip', id)), silk));
    expect(computeRigging(dressed).sails.get(id)).toMatchObject({ share: 1, shareAssumed: false });
    const bare = applyChanges(dressed, setCloth(dressed, one(recordOf(dressed, 'grip', id)), undefined));
    expect(computeRigging(bare).sails.get(id)?.shareAssumed).toBe(true);

    const lamp = place(plan, 'tungsten-fresnel-650w');
    const arm = needKind('north-america', 'arm-grip-40', 'rigging');
    const f = one(recordOf(lamp.plan, 'fixture', lamp.id));
    const armed = applyChanges(lamp.plan, addAccessory(lamp.plan, f, arm));
    expect(referenceProblems(armed)).toEqual([]);
    const g = one(recordOf(armed, 'fixture', lamp.id));
    const off = applyChanges(armed, removeAccessory(armed, g, 0));
    expect(recordOf(off, 'fixture', lamp.id)).toEqual(f);
  });

  it('references that lead nowhere are told in words', () => {
    const b = new RiggingRig();
    b.gripKind('flag');
    b.grip('flag', { supports: ['gone'], clothId: 'gone', riggingId: 'gone' });
    b.fixtureKind('lamp');
    b.fixture('lamp', { accessories: ['gone'], support: { on: 'rigged', riggingId: 'gone' } });
    const fields = referenceProblems(b.plan()).map((p) => p.field);
    expect(fields.sort()).toEqual(['accessories', 'clothId', 'riggingId', 'support.riggingId', 'supports']);
  });

  it('is drawn at true size, named, and picked on the drawing', () => {
    const { plan, id } = place(empty(), 'frame-12x12', at(0, 0), 90);
    const list = drawFloor(plan, { floorId: 'floor', setupId: undefined, nominalScale: 50 });
    const symbol = list.items.find((i) => i.key === `grip:${id}`)?.primitives[0];
    expect(symbol).toMatchObject({ kind: 'symbol', symbolId: 'frame', widthMm: 3658, rotationDeg: 90 });
    const texts = list.items
      .filter((i) => i.recordId === id && i.layer === 'labels')
      .flatMap((i) => i.primitives)
      .flatMap((p) => (p.kind === 'text' ? p.text : []));
    expect(texts).toContain('Frame, 12×12 ft');
    const picker = createPicker();
    picker.update(list, plan);
    expect(picker.pick(at(800, 0), 50)).toBe(id);
  });

  it('a lift is drawn with where its basket is', () => {
    const { plan, id } = place(empty(), 'lift-boom-18');
    const lift = one(recordOf(plan, 'rigging', id));
    const out: Plan = { ...plan, records: new Map(plan.records).set(id, { ...lift, reachMm: 9000 }) };
    const box = drawFloor(out, { floorId: 'floor', setupId: undefined, nominalScale: 100 }).items.find(
      (i) => i.key === `rigging:${id}`,
    )?.box;
    expect(box?.maxX).toBeGreaterThan(9000);
  });

  it('a first arm goes out the way its unit faces, and stays there when the unit is turned', () => {
    const stand = place(empty(), 'c-stand-40', at(1000, 1000));
    const lamp = place(stand.plan, 'led-spot-60w', at(1000, 1000), 90);
    const f = one(recordOf(lamp.plan, 'fixture', lamp.id));
    const standing = applyChanges(lamp.plan, {
      added: [],
      updated: [{ from: f, to: { ...f, support: { on: 'stand', standId: stand.id } } }],
      removed: [],
    });
    const arm = needKind('north-america', 'arm-grip-40', 'rigging');
    const armed = applyChanges(
      standing,
      addAccessory(standing, one(recordOf(standing, 'fixture', lamp.id)), arm),
    );
    const out = one(recordOf(armed, 'fixture', lamp.id));
    expect(out.arm).toMatchObject({ directionDeg: 90, overLeg: false });
    const where = fixturePlace(armed, out).at;
    expect(where).toEqual({ xMm: 1000, yMm: 1000 + one(arm.reachMm) });
    const turned = applyChanges(armed, rotateRecords(armed, new Set([lamp.id]), 45));
    expect(fixturePlace(turned, one(recordOf(turned, 'fixture', lamp.id))).at).toEqual(where);
  });
});
