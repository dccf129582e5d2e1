import { describe, expect, test } from 'vitest';
import { OPTIONS } from '../../../src/editor/options.ts';
import { snapTargets } from '../../../src/editor/snap-targets.ts';
import { turnTo } from '../../../src/editor/snap-turn.ts';
import { snapPoint } from '../../../src/editor/snapping.ts';
import { createSelectTool } from '../../../src/editor/tools/select.ts';
import { distanceMm, point } from '../../../src/kernel/geometry.ts';
import { setFacings } from '../../../src/plan/edits/many.ts';
import { recordOf } from '../../../src/plan/plan.ts';
import { addUnit, drag, floorRig } from '../../support/floor.ts';

const none = { points: [], faces: [], centers: [] };

describe('snapping', () => {
  test('a spot near a grid line lands on it, one further off stays', () => {
    expect(snapPoint(point(1010, 488), none, 20, 500).at).toEqual(point(1000, 500));
    expect(snapPoint(point(1030, 488), none, 20, 500).at).toEqual(point(1030, 500));
  });

  test('lines through other centres come before the grid, with a guide', () => {
    const targets = { ...none, centers: [point(1015, 4000)] };
    const snapped = snapPoint(point(1007, 250), targets, 20, 500);
    expect(snapped.at).toEqual(point(1015, 250));
    expect(snapped.guides).toEqual([{ from: point(1015, 4000), to: point(1015, 250) }]);
  });

  test('a wall face comes before a centre, a corner before both', () => {
    const face = { from: point(0, 100), to: point(3000, 100) };
    const targets = { points: [point(0, 100)], faces: [face], centers: [point(700, 110)] };
    expect(snapPoint(point(1500, 108), targets, 20, 0).at).toEqual(point(1500, 100));
    expect(snapPoint(point(8, 108), targets, 20, 0).at).toEqual(point(0, 100));
  });

  test('a slanting wall face is met square to it', () => {
    const face = { from: point(0, 0), to: point(1000, 1000) };
    const snapped = snapPoint(point(510, 490), { ...none, faces: [face] }, 20, 100);
    expect(snapped.at.xMm).toBeCloseTo(500, 9);
    expect(snapped.at.yMm).toBeCloseTo(500, 9);
  });

  test('the inside corner of two walls is a target', () => {
    const rig = floorRig();
    const { points } = snapTargets(rig.session.getState().plan, rig.floorId, new Set());
    expect(points.some((p) => distanceMm(p, point(0, 0)) < 0.01)).toBe(true);
    expect(points.some((p) => distanceMm(p, point(6000, 5000)) < 0.01)).toBe(true);
  });

  test.each([0.02, 0.1, 0.4, 1.5])('the reach is the same on the screen at %s px/mm', (pxPerMm) => {
    const rig = floorRig();
    const a = addUnit(rig, 'led-panel-60x60', 3000, 2512);
    addUnit(rig, 'led-panel-60x60', 1741, 1000);
    rig.session.set({ camera: { center: { xMm: 2400, yMm: 2512 }, pxPerMm } });
    const x = () => recordOf(rig.session.getState().plan, 'fixture', a)?.at.xMm ?? 0;
    const to = (px: number): void => {
      // Across, towards the line through the other unit's centre; beside it no grid line is in reach.
      drag(rig, createSelectTool(), [
        [x(), 2512],
        [1741 + px / pxPerMm, 2512],
      ]);
    };
    to(OPTIONS.snapPx - 1);
    expect(x()).toBe(1741);
    rig.session.undo();
    const off = OPTIONS.snapPx + 1;
    to(off);
    expect(x()).not.toBe(1741);
  });

  test('a place that makes the gap to a neighbour like the one before it holds, with both gaps shown', () => {
    const targets = { ...none, centers: [point(0, 1000), point(1300, 1004)] };
    const snapped = snapPoint(point(2590, 995), targets, 20, 0);
    expect(snapped.at).toEqual(point(2600, 1000));
    expect(snapped.gaps).toEqual([
      { from: point(0, 1000), to: point(1300, 1004) },
      { from: point(1300, 1004), to: point(2600, 1004) },
    ]);
    expect(snapPoint(point(640, 1000), targets, 20, 0).at.xMm).toBe(650);
    expect(snapPoint(point(2590, 1300), targets, 20, 0).at.xMm).toBe(2590);
  });

  test('the middle of a room holds, and a tube along its length', () => {
    const rig = floorRig();
    const { lines } = snapTargets(rig.session.getState().plan, rig.floorId, new Set());
    const middle = lines?.filter((l) => Math.abs(l.from.xMm - 3000) < 1 && Math.abs(l.to.xMm - 3000) < 1);
    expect(middle).toHaveLength(1);
    const tube = { from: point(0, 0), to: point(2000, 1000) };
    const snapped = snapPoint(point(1003, 496), { ...none, lines: [tube] }, 20, 0);
    expect(snapped.at.xMm / snapped.at.yMm).toBeCloseTo(2, 6);
  });

  test('the line another unit points along holds where nothing straight is near', () => {
    const targets = { ...none, rays: [{ from: point(0, 0), deg: 30 }] };
    const along = snapPoint(point(2000, 1160), targets, 20, 0);
    expect((Math.atan2(along.at.yMm, along.at.xMm) * 180) / Math.PI).toBeCloseTo(30, 6);
    expect(snapPoint(point(2000, 1300), targets, 20, 0).at).toEqual(point(2000, 1300));
  });

  test('a turn by hand takes on the angle of another unit, and not where it is held off', () => {
    const rig = floorRig();
    const a = addUnit(rig, 'led-panel-60x60', 1000, 1000);
    const b = addUnit(rig, 'led-panel-60x60', 3000, 1000);
    rig.session.commit('Turn', setFacings(rig.session.getState().plan, [b], 37));
    const { plan } = rig.session.getState();
    expect(turnTo(plan, a, 36.4, false).deg).toBeCloseTo(37, 6);
    expect(turnTo(plan, a, 126.5, false).deg).toBeCloseTo(127, 6);
    expect(turnTo(plan, a, 36.4, true).deg).toBe(36);
    expect(turnTo(plan, a, 51, false).deg).toBe(50);
  });

  test('holding Alt lets go of everything', () => {
    const rig = floorRig();
    const a = addUnit(rig, 'led-panel-60x60', 3000, 2512);
    drag(
      rig,
      createSelectTool(),
      [
        [3000, 2512],
        [613, 617],
      ],
      { alt: true },
    );
    expect(recordOf(rig.session.getState().plan, 'fixture', a)?.at).toMatchObject({ xMm: 613, yMm: 617 });
    drag(rig, createSelectTool(), [
      [613, 617],
      [615, 1000],
      [613, 617],
    ]);
    expect(recordOf(rig.session.getState().plan, 'fixture', a)?.at).not.toMatchObject({ xMm: 613, yMm: 617 });
  });
});
