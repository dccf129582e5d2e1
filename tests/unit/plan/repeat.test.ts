import { describe, expect, test } from 'vitest';
import { distanceMm, point } from '../../../src/kernel/geometry.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { rotateAbout } from '../../../src/plan/edits/align.ts';
import { facingOf } from '../../../src/plan/edits/arrange.ts';
import { arcPlaces, linePlaces, netPlaces, repeatAt } from '../../../src/plan/edits/repeat.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { addUnit, floorRig } from '../../support/floor.ts';

const one = () => {
  const rig = floorRig();
  const id = addUnit(rig, 'led-panel-60x60', 1000, 2500);
  return { rig, plan: rig.session.getState().plan, id };
};

const spots = (places: Parameters<typeof repeatAt>[2]) => {
  const { rig, plan, id } = one();
  const made = repeatAt(plan, new Set([id]), places, rig.session.newId);
  return recordsOf(applyChanges(plan, made.changes), 'fixture');
};

describe('copies, evenly spaced', () => {
  test('a grid has every place once', () => {
    const all = spots(netPlaces({ across: 3, down: 2, acrossMm: 500, downMm: 700 }));
    expect(new Set(all.map((f) => `${f.at.xMm},${f.at.yMm}`))).toEqual(
      new Set(['1000,2500', '1500,2500', '2000,2500', '1000,3200', '1500,3200', '2000,3200']),
    );
  });

  test('along a line the first and the last are its length apart, the gaps alike', () => {
    const all = spots(linePlaces(5, 3200, 90));
    const ys = all.map((f) => Math.round(f.at.yMm)).sort((a, b) => a - b);
    expect(ys).toEqual([2500, 3300, 4100, 4900, 5700]);
    expect(new Set(all.map((f) => f.unit)).size).toBe(5);
  });

  test('on an arc all are as far from its middle, and each faces it as the first does', () => {
    const all = spots(arcPlaces({ count: 4, radiusMm: 2000, towardsDeg: 0, sweepDeg: 90, turns: true }));
    const middle = point(3000, 2500);
    const { plan } = one();
    for (const f of all) {
      expect(distanceMm(f.at, middle)).toBeCloseTo(2000, 6);
      const to = (Math.atan2(middle.yMm - f.at.yMm, middle.xMm - f.at.xMm) * 180) / Math.PI;
      expect((((facingOf(plan, f) - to) % 360) + 360.0001) % 360).toBeLessThan(0.001);
    }
    const degs = all.map((f) => (Math.atan2(f.at.yMm - 2500, f.at.xMm - 3000) * 180) / Math.PI);
    expect(degs.map((d) => Math.round((d + 360) % 360)).sort((a, b) => a - b)).toEqual([180, 210, 240, 270]);
  });

  test('a full circle of six has none twice', () => {
    const all = spots(arcPlaces({ count: 6, radiusMm: 1000, towardsDeg: 45, sweepDeg: 360, turns: false }));
    const keys = all.map((f) => `${Math.round(f.at.xMm)},${Math.round(f.at.yMm)}`);
    expect(new Set(keys).size).toBe(6);
  });
});

describe('turning about a point', () => {
  test('keeps the distance to the point and turns what is turned', () => {
    const { plan, id } = one();
    const after = applyChanges(plan, rotateAbout(plan, new Set([id]), point(0, 0), 90));
    const f = recordsOf(after, 'fixture')[0];
    expect(f?.at.xMm).toBeCloseTo(-2500, 6);
    expect(f?.at.yMm).toBeCloseTo(1000, 6);
    expect(f && facingOf(after, f)).toBeCloseTo(90, 6);
  });
});
