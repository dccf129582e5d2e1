import { describe, expect, test } from 'vitest';
import { boxesMeet, distanceMm, type Point, point, polylineLengthMm } from '../../../src/kernel/geometry.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import type { SetPiece } from '../../../src/plan/records/index.ts';
import { routeBetween } from '../../../src/plan/route.ts';
import { floorRig } from '../../support/floor.ts';

const piece = (floorId: string, patch: Partial<SetPiece>): SetPiece => ({
  id: 'sp-1',
  type: 'setPiece',
  floorId,
  at: { xMm: 3000, yMm: 2500 },
  rotationDeg: 0,
  outline: { shape: 'rect', lengthMm: 1000, widthMm: 2000 },
  heightMm: 750,
  label: 'Table',
  line: 'solid',
  ...patch,
});

const room = (patch?: Partial<SetPiece>): { plan: Plan; way: (a: Point, b: Point) => readonly Point[] } => {
  const rig = floorRig();
  const start = rig.session.getState().plan;
  const plan = patch
    ? applyChanges(start, { added: [piece(rig.floorId, patch)], updated: [], removed: [] })
    : start;
  const at = (p: Point) => ({ at: p, heightMm: 0, floorId: rig.floorId });
  return { plan, way: (a, b) => [a, ...routeBetween(plan, at(a), at(b)), b] };
};

/** Whether a way goes through a box, a little in from its sides. */
const passes = (way: readonly Point[], minX: number, minY: number, maxX: number, maxY: number): boolean => {
  const n = 400;
  for (let i = 1; i < way.length; i++) {
    const [a, b] = [way[i - 1], way[i]];
    if (!a || !b) continue;
    for (let k = 0; k <= n; k++) {
      const p = point(a.xMm + ((b.xMm - a.xMm) * k) / n, a.yMm + ((b.yMm - a.yMm) * k) / n);
      const spot = { minX: p.xMm, maxX: p.xMm, minY: p.yMm, maxY: p.yMm };
      if (boxesMeet(spot, { minX: minX + 5, minY: minY + 5, maxX: maxX - 5, maxY: maxY - 5 })) return true;
    }
  }
  return false;
};

const A = point(1000, 2500);
const B = point(5000, 2500);

describe('a cable laid by itself', () => {
  test('goes straight where nothing is in the way, and over a rug', () => {
    expect(room().way(A, B)).toEqual([A, B]);
    expect(room({ line: 'ground', heightMm: 0 }).way(A, B)).toEqual([A, B]);
    expect(room({ line: 'hidden', heightMm: 3000 }).way(A, B)).toEqual([A, B]);
  });

  test('goes round furniture, by the shorter side, and clear of it', () => {
    const { way } = room({ at: { xMm: 3000, yMm: 2700 } });
    const found = way(A, B);
    expect(passes(found, 2500, 1700, 3500, 3700)).toBe(false);
    expect(Math.min(...found.map((p) => p.yMm))).toBeCloseTo(1700 - 60, 0);
    expect(polylineLengthMm(found)).toBeLessThan(distanceMm(A, B) + 4 * 900);
  });

  test('goes round a turned piece and a polygon', () => {
    for (const patch of [
      { rotationDeg: 30 },
      {
        outline: {
          shape: 'polygon' as const,
          points: [point(-500, -1000), point(500, -1000), point(500, 1000), point(-500, 1000)],
        },
      },
    ]) {
      const found = room(patch).way(A, B);
      expect(found.length).toBeGreaterThan(2);
    }
  });

  test('comes off a table by its nearest side', () => {
    const { way } = room({});
    const lamp = point(3400, 2500);
    const found = way(lamp, point(5000, 2500));
    expect(polylineLengthMm(found)).toBeCloseTo(1600, 0);
    const back = way(lamp, A);
    expect(polylineLengthMm(back)).toBeGreaterThan(2400);
  });

  test('past a thing of a slipped figure is found all the same, at any size and distance', () => {
    for (const mm of [1e7, 1e10, 1e21, 1e100, 1e300]) {
      for (const slip of [
        { outline: { shape: 'rect', lengthMm: mm, widthMm: mm } },
        { at: { xMm: mm, yMm: -mm } },
      ] satisfies Partial<SetPiece>[]) {
        const { way } = room(slip);
        expect(way(point(1000, 2500), point(5000, 2500)).length).toBeGreaterThanOrEqual(2);
        expect(way(point(1000, 2500), point(mm, mm)).length).toBeGreaterThanOrEqual(2);
      }
    }
  });
});
