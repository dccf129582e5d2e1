import { describe, expect, test } from 'vitest';
import { placeThere } from '../../../src/editor/placing.ts';
import { needKind } from '../../../src/gear/index.ts';
import { applyChanges, type ChangeSet } from '../../../src/plan/change-set.ts';
import { moveRecords, putOnStand, rotateRecords } from '../../../src/plan/edits/arrange.ts';
import { placeRigging } from '../../../src/plan/edits/grip.ts';
import { alongOf, hangOn, setRiggingHeight, slideAlong } from '../../../src/plan/edits/hang.ts';
import { setFacings, setHeights } from '../../../src/plan/edits/many.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { addUnit, floorRig } from '../../support/floor.ts';

/** A 6.1 m tube that runs across the room at 3 m, from x 0.95 to 7.05 m, and a unit on a stand 400 mm in front of it. */
const rigWithTube = () => {
  const rig = floorRig();
  const id = addUnit(rig, 'led-panel-60x60', 2000, 2400);
  const kind = needKind('north-america', 'pipe-steel-6', 'rigging');
  let plan: Plan = rig.session.getState().plan;
  const take = (c: ChangeSet): void => {
    plan = applyChanges(plan, c);
  };
  const tube = placeRigging(
    plan,
    { kind, floorId: rig.floorId, at: { xMm: 4000, yMm: 2000 }, rotationDeg: 270, heightMm: 3000 },
    rig.session.newId,
  );
  take(tube.changes);
  const stand = rig.book.stands()[0];
  if (!stand) throw new Error('no stand');
  take(putOnStand(plan, id, stand, rig.session.newId));
  const unit = () => {
    const f = recordOf(plan, 'fixture', id);
    if (!f) throw new Error('unit gone');
    return f;
  };
  return { rig, id, tube: tube.rigging.id, take, unit, plan: () => plan };
};

describe('a unit on a tube', () => {
  test('hangs at the nearest spot of it and at its height, and its stand goes', () => {
    const { id, tube, take, unit, plan } = rigWithTube();
    take(hangOn(plan(), [id], tube));
    expect(unit()).toMatchObject({
      at: { xMm: 2000, yMm: 2000 },
      heightMm: 3000,
      support: { on: 'rigged', riggingId: tube },
    });
    expect(recordsOf(plan(), 'stand')).toEqual([]);
    expect(alongOf(plan(), unit())?.besideMm).toBeCloseTo(0, 1);
  });

  test('slides along it, not past its ends', () => {
    const { id, tube, take, unit, plan } = rigWithTube();
    take(hangOn(plan(), [id], tube));
    take(slideAlong(plan(), id, 1000));
    const line = alongOf(plan(), unit())?.line;
    expect(unit().at.xMm).toBeCloseTo((line?.start.xMm ?? 0) + 1000, 1);
    take(slideAlong(plan(), id, 99_000));
    expect(alongOf(plan(), unit())?.alongMm).toBeCloseTo(line?.lengthMm ?? 0, 1);
  });

  test('moves, turns and rises with it', () => {
    const { id, tube, take, unit, plan } = rigWithTube();
    take(hangOn(plan(), [id], tube));
    const before = alongOf(plan(), unit())?.alongMm;
    take(moveRecords(plan(), new Set([tube]), { xMm: 100, yMm: -300 }));
    expect(unit().at).toMatchObject({ xMm: 2100, yMm: 1700 });
    take(rotateRecords(plan(), new Set([tube]), 90));
    expect(alongOf(plan(), unit())?.alongMm).toBeCloseTo(before ?? 0, 1);
    expect(alongOf(plan(), unit())?.besideMm).toBeCloseTo(0, 1);
    expect(unit().aim).toMatchObject({ facingDeg: 90 });
    take(setRiggingHeight(plan(), tube, 3600));
    expect(unit().heightMm).toBe(3600);
    take(setHeights(plan(), [tube], 3000));
    expect(unit().heightMm).toBe(3000);
  });

  test('is hung on a tube it is placed over', () => {
    const { rig, tube, plan } = rigWithTube();
    const placed = placeThere(
      plan(),
      rig.book,
      { slug: 'led-panel-60x60', floorId: rig.floorId, at: { xMm: 3000, yMm: 2050 }, facingDeg: 90 },
      rig.session.newId,
    );
    if (!placed.ok) throw new Error(placed.error.what);
    const unit = recordOf(applyChanges(plan(), placed.value.changes), 'fixture', placed.value.id);
    const fits = needKind('north-america', 'led-panel-60x60', 'fixture').mount.fits;
    if (fits.some((m) => m === 'clamp' || m === 'hung'))
      expect(unit?.support).toEqual({ on: 'rigged', riggingId: tube });
    else expect(unit?.support.on).toBe('floor');
  });
});

describe('setting one thing for many', () => {
  test('locked ones keep what they have', () => {
    const { id, take, unit, plan } = rigWithTube();
    const lockedUnit = { ...unit(), locked: true };
    take({ added: [], updated: [{ from: unit(), to: lockedUnit }], removed: [] });
    take(setFacings(plan(), [id], 45));
    take(setHeights(plan(), [id], 1234));
    expect(unit()).toEqual(lockedUnit);
  });
});
