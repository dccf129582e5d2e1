import { beforeEach, describe, expect, test } from 'vitest';
import { drawFloor } from '../../../src/drawing/draw-floor.ts';
import { sunnyWindows } from '../../../src/drawing/sun.ts';
import { boxOf, point } from '../../../src/kernel/geometry.ts';
import { addOpening } from '../../../src/plan/edits/openings.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { type FloorRig, floorRig } from '../../support/floor.ts';
import { need } from '../../support/storage-world.ts';

let rig: FloorRig;
const plan = (): Plan => rig.session.getState().plan;

/** A room of 6 × 5 m with north up, and a window 1 m wide from 1 to 2 m high in the middle of its south wall. */
beforeEach(() => {
  rig = floorRig(undefined, 'metric');
  const south = recordsOf(plan(), 'wall').find((w) => w.from.yMm > 5000 && w.to.yMm > 5000);
  const what = {
    wallId: south?.id ?? '',
    what: 'window' as const,
    at: point(3000, 5075),
    widthMm: 1000,
    heightMm: 1000,
    sillMm: 1000,
  };
  rig.session.commit('Window', need(addOpening(plan(), what, rig.session.newId)).changes);
});

const lit = (azimuthDeg: number, elevationDeg: number) =>
  sunnyWindows(plan(), rig.floorId, { azimuthDeg, elevationDeg });

describe('sun through windows', () => {
  test('from due south at 45° it falls as far in as its heights, as wide as the window', () => {
    const [w] = lit(180, 45);
    const box = boxOf(w?.patch ?? []);
    expect(box.minX).toBeCloseTo(2500, 3);
    expect(box.maxX).toBeCloseTo(3500, 3);
    expect(box.maxY).toBeCloseTo(4000, 3);
    expect(box.minY).toBeCloseTo(3000, 3);
    expect(w?.ontoDeg).toBeCloseTo(90, 6);
  });

  test('from the south-west it falls to the north-east; low sun stops at the room’s walls', () => {
    const box = boxOf(lit(225, 45)[0]?.patch ?? []);
    expect(box.minX).toBeGreaterThan(3000);
    const low = boxOf(lit(180, 12)[0]?.patch ?? []);
    // At 12° the light from the window's top would reach 9.4 m in; the room is 5 m deep.
    expect(low.minY).toBeCloseTo(0, 3);
    expect(lit(180, 5)[0]?.patch).toEqual([]);
  });

  test('not from the north, along the wall, or at night', () => {
    expect(lit(0, 30)).toEqual([]);
    expect(lit(90, 30)).toEqual([]);
    expect(lit(180, -3)).toEqual([]);
  });

  test('follows the north of the floor, and is drawn only when a sun is given', () => {
    const floor = recordOf(plan(), 'floor', rig.floorId);
    if (!floor) throw new Error('no floor');
    const what = { floorId: rig.floorId, setupId: undefined, nominalScale: 50 };
    const drawn = (sun?: { azimuthDeg: number; elevationDeg: number }) =>
      drawFloor(plan(), { ...what, sun }).items.filter((i) => i.key.startsWith('sun:'));
    expect(drawn()).toHaveLength(0);
    expect(drawn({ azimuthDeg: 180, elevationDeg: 45 })).toHaveLength(1);
    // North to the right: the wall below faces east.
    rig.session.commit('North', {
      added: [],
      updated: [{ from: floor, to: { ...floor, northDeg: 0 } }],
      removed: [],
    });
    expect(drawn({ azimuthDeg: 180, elevationDeg: 45 })).toHaveLength(0);
    expect(drawn({ azimuthDeg: 90, elevationDeg: 45 })).toHaveLength(1);
  });
});
