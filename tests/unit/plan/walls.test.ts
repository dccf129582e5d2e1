import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { insideMeasures, roomFaces } from '../../../src/drawing/room-faces.ts';
import { distanceMm, polylineLengthMm } from '../../../src/kernel/geometry.ts';
import { applyChanges, type ChangeSet } from '../../../src/plan/change-set.ts';
import { moveRecords } from '../../../src/plan/edits/arrange.ts';
import { addDimension, anchorAt, anchorPoint } from '../../../src/plan/edits/dimensions.ts';
import { newPlan } from '../../../src/plan/edits/new-plan.ts';
import { addOpening, changeOpening, slideOpening, USUAL_OPENING } from '../../../src/plan/edits/openings.ts';
import {
  addRoom,
  drawRun,
  joinWalls,
  moveCorner,
  setWallLength,
  splitWall,
  USUAL_WALL,
} from '../../../src/plan/edits/walls.ts';
import { type Plan, recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { routeBetween } from '../../../src/plan/route.ts';
import { countingIds } from '../../support/floor.ts';

const start = () => {
  const newId = countingIds();
  const plan = newPlan({ title: 'P', production: 'P', practice: 'europe', lengthUnits: 'metric' }, newId);
  return { plan, newId, floorId: recordsOf(plan, 'floor')[0]?.id ?? '' };
};

const need = <T>(r: { ok: true; value: T } | { ok: false; error: { what: string } }): T => {
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};

const room = (lengthMm: number, widthMm: number) => {
  const s = start();
  const made = need(
    addRoom(s.plan, { ...s, at: { xMm: 0, yMm: 0 }, lengthMm, widthMm, look: USUAL_WALL }, s.newId),
  );
  return { ...s, plan: applyChanges(s.plan, made.changes), wallIds: made.wallIds };
};

const facesOf = (plan: Plan) => roomFaces(recordsOf(plan, 'wall'));

describe('rooms', () => {
  test('a room by two lengths measures them on the inside', () => {
    fc.assert(
      fc.property(fc.integer({ min: 500, max: 40_000 }), fc.integer({ min: 500, max: 40_000 }), (l, w) => {
        const [face, ...more] = facesOf(room(l, w).plan);
        expect(more).toEqual([]);
        expect(face && insideMeasures(face)?.lengthMm).toBeCloseTo(l, 6);
        expect(face && insideMeasures(face)?.widthMm).toBeCloseTo(w, 6);
        expect(face?.areaMm2).toBeCloseTo(l * w, 1);
      }),
    );
  });

  test('a run drawn either way round along the inside encloses the same room', () => {
    const corners = [
      { xMm: 0, yMm: 0 },
      { xMm: 5000, yMm: 0 },
      { xMm: 5000, yMm: 3000 },
      { xMm: 2000, yMm: 3000 },
      { xMm: 2000, yMm: 4000 },
      { xMm: 0, yMm: 4000 },
    ];
    for (const points of [corners, [...corners].reverse()]) {
      const s = start();
      const made = need(
        drawRun(s.plan, { ...s, run: { points, closed: true, along: 'inside' }, look: USUAL_WALL }, s.newId),
      );
      const [face] = facesOf(applyChanges(s.plan, made.changes));
      expect(face?.areaMm2).toBeCloseTo(5000 * 3000 + 2000 * 1000, 1);
    }
  });

  test('a wall across makes two rooms, and one that leads nowhere none', () => {
    const { plan, newId, floorId } = room(6000, 4000);
    const across = (to: number) => {
      const points = [
        { xMm: 3000, yMm: -75 },
        { xMm: 3000, yMm: to },
      ];
      const made = need(
        drawRun(plan, { floorId, run: { points, closed: false, along: 'centre' }, look: USUAL_WALL }, newId),
      );
      return facesOf(applyChanges(plan, made.changes));
    };
    expect(across(4075).map((f) => Math.round(f.areaMm2))).toEqual([2925 * 4000, 2925 * 4000]);
    expect(across(2000)).toHaveLength(1);
  });

  test.each([
    [
      'no length',
      [
        [0, 0],
        [0, 0],
      ],
    ],
    [
      'not a number',
      [
        [0, 0],
        [Number.NaN, 0],
      ],
    ],
    [
      'crosses itself',
      [
        [0, 0],
        [4000, 0],
        [4000, 2000],
        [2000, 2000],
        [2000, -1000],
      ],
    ],
    [
      'runs back over itself',
      [
        [0, 0],
        [4000, 0],
        [1000, 0],
      ],
    ],
  ])('a run that %s is refused in words', (_what, spots) => {
    const s = start();
    const points = spots.map(([xMm = 0, yMm = 0]) => ({ xMm, yMm }));
    const made = drawRun(
      s.plan,
      { ...s, run: { points, closed: false, along: 'inside' }, look: USUAL_WALL },
      s.newId,
    );
    expect(made.ok).toBe(false);
    expect(!made.ok && made.error.what).toMatch(/wall/);
  });
});

describe('walls', () => {
  test('moving a corner moves both walls, and a longer wall takes its neighbours along', () => {
    const { plan, wallIds } = room(6000, 4000);
    const moved = applyChanges(plan, need(moveCorner(plan, wallIds[0] ?? '', 'to', { xMm: 7000, yMm: -75 })));
    const [a, b] = wallIds.map((id) => recordOf(moved, 'wall', id));
    expect(a?.to).toEqual(b?.from);
    const long = applyChanges(plan, need(setWallLength(plan, wallIds[0] ?? '', 8000)));
    const [c, d] = wallIds.map((id) => recordOf(long, 'wall', id));
    expect(c && distanceMm(c.from, c.to)).toBeCloseTo(8000, 6);
    expect(d?.from).toEqual(c?.to);
  });

  test('dragging a wall keeps the room closed', () => {
    const { plan, wallIds } = room(6000, 4000);
    const moved = applyChanges(plan, moveRecords(plan, new Set([wallIds[1] ?? '']), { xMm: 500, yMm: 0 }));
    const [face] = facesOf(moved);
    expect(face?.areaMm2).toBeCloseTo(6500 * 4000, 1);
  });

  test('cutting a wall and joining it again gives the wall and its openings back', () => {
    const { plan: bare, wallIds, newId } = room(6000, 4000);
    const [wallId = ''] = wallIds;
    let plan = bare;
    for (const x of [1000, 4500]) {
      const added = need(
        addOpening(plan, { wallId, at: { xMm: x, yMm: 0 }, what: 'door', ...USUAL_OPENING.door }, newId),
      );
      plan = applyChanges(plan, added.changes);
    }
    const cut = need(splitWall(plan, wallId, 3000, newId));
    const two = applyChanges(plan, cut.changes);
    expect(
      recordsOf(two, 'opening')
        .map((o) => o.wallId)
        .sort(),
    ).toEqual([wallId, cut.second].sort());
    const joined = applyChanges(two, need(joinWalls(two, wallId, cut.second)));
    expect(recordOf(joined, 'wall', wallId)).toEqual(recordOf(plan, 'wall', wallId));
    expect(recordsOf(joined, 'opening')).toEqual(recordsOf(plan, 'opening'));
    expect(splitWall(plan, wallId, 1000, newId).ok).toBe(false);
  });
});

describe('openings', () => {
  test('slide along their wall, stop at its ends and at other openings', () => {
    const { plan: bare, wallIds, newId } = room(6000, 4000);
    const [wallId = ''] = wallIds;
    const first = need(
      addOpening(bare, { wallId, at: { xMm: 1000, yMm: 0 }, what: 'window', ...USUAL_OPENING.window }, newId),
    );
    const plan = applyChanges(bare, first.changes);
    const slid = (xMm: number): Plan =>
      applyChanges(plan, slideOpening(plan, first.opening, { xMm, yMm: 900 }));
    expect(recordOf(slid(500), 'opening', first.opening.id)?.offsetMm).toBeCloseTo(
      first.opening.offsetMm + 500,
      6,
    );
    expect(recordOf(slid(-9000), 'opening', first.opening.id)?.offsetMm).toBe(0);
    const second = need(
      addOpening(plan, { wallId, at: { xMm: 1100, yMm: 0 }, what: 'window', ...USUAL_OPENING.window }, newId),
    );
    expect(Math.abs(second.opening.offsetMm - first.opening.offsetMm)).toBeGreaterThanOrEqual(1220);
    const wide = changeOpening(plan, first.opening, { widthMm: 9000 });
    expect(!wide.ok && wide.error.what).toMatch(/no room/);
  });
});

describe('dimension lines', () => {
  test('follow what they measure, and stay where they were when it goes', () => {
    const { plan: bare, floorId, wallIds, newId } = room(6000, 4000);
    const at = { xMm: 0, yMm: 0 };
    const made = need(
      addDimension(
        bare,
        { floorId, from: anchorAt(bare, floorId, at), to: anchorAt(bare, floorId, { xMm: 6000, yMm: 0 }) },
        newId,
      ),
    );
    const plan = applyChanges(bare, made.changes);
    const move: ChangeSet = moveRecords(plan, new Set([wallIds[1] ?? '']), { xMm: 500, yMm: 0 });
    const after = applyChanges(plan, move);
    const d = recordsOf(after, 'dimension')[0];
    expect(d && anchorPoint(after, d.from)).toEqual(at);
    expect(d && anchorPoint(after, d.to).xMm).toBeCloseTo(6500, 6);
    expect(addDimension(bare, { floorId, from: { at }, to: { at } }, newId).ok).toBe(false);
  });
});

describe('cable routes', () => {
  const place = (floorId: string, xMm: number, yMm: number) => ({ floorId, heightMm: 0, at: { xMm, yMm } });

  test('a square corner where nothing is in the way', () => {
    const { plan, floorId } = room(6000, 4000);
    expect(routeBetween(plan, place(floorId, 1000, 1000), place(floorId, 5000, 2000))).toEqual([
      { xMm: 5000, yMm: 1000 },
    ]);
  });

  test('through the door, never through a wall', () => {
    const { plan: bare, floorId, wallIds, newId } = room(6000, 4000);
    const door = need(
      addOpening(
        bare,
        { wallId: wallIds[0] ?? '', at: { xMm: 5000, yMm: 0 }, what: 'door', ...USUAL_OPENING.door },
        newId,
      ),
    );
    const plan = applyChanges(bare, door.changes);
    const [a, z] = [place(floorId, 1000, 3000), place(floorId, 1000, -2000)];
    const all = [a.at, ...routeBetween(plan, a, z), z.at];
    const crossings = all.slice(1).flatMap((q, i) => {
      const p = all[i] ?? q;
      if (p.yMm > -75 === q.yMm > -75) return [];
      return [p.xMm + ((q.xMm - p.xMm) * (-75 - p.yMm)) / (q.yMm - p.yMm)];
    });
    expect(crossings).toHaveLength(1);
    expect(crossings[0]).toBeGreaterThan(5000 - 432);
    expect(crossings[0]).toBeLessThan(5000 + 432);
    // Along the axes no shorter way leads to the door's near post and back.
    expect(polylineLengthMm(all)).toBeLessThan(2 * (5000 - 432 - 1000) + 5000 + 4 * 75 + 1);
  });

  test('where walls leave no way, as if there were none', () => {
    const { plan, floorId } = room(6000, 4000);
    expect(routeBetween(plan, place(floorId, 1000, 1000), place(floorId, 9000, 2000))).toEqual([
      { xMm: 9000, yMm: 1000 },
    ]);
  });
});
