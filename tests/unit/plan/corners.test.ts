import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { moveRecords, removeRecords } from '../../../src/plan/edits/arrange.ts';
import { cornersAfter } from '../../../src/plan/edits/corners.ts';
import { setHopRoute } from '../../../src/plan/edits/lines.ts';
import { fromSetup, moveOnlyHere } from '../../../src/plan/edits/moves.ts';
import { planInSetup } from '../../../src/plan/moves.ts';
import { recordOf } from '../../../src/plan/plan.ts';
import { LineRig } from '../../support/line-rig.ts';

const at = (xMm: number, yMm: number) => ({ xMm, yMm });

describe('corners of a way laid by hand', () => {
  test('both ends gone alike take every corner along', () => {
    const d = at(300, -200);
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.integer(), fc.integer()), { maxLength: 6 }), (spots) => {
        const points = spots.map(([x, y]) => at(x, y));
        const now = cornersAfter(
          points,
          { from: at(0, 0), to: at(9, 9) },
          { from: d, to: at(9 + d.xMm, 9 + d.yMm) },
        );
        expect(now).toEqual(points.map((p) => at(p.xMm + d.xMm, p.yMm + d.yMm)));
      }),
    );
  });

  test('one end gone: the corner beside it slides so that the way leaves it square; the others stay', () => {
    const was = { from: at(0, 0), to: at(4000, 3000) };
    const points = [at(2000, 0), at(2000, 3000)];
    expect(cornersAfter(points, was, { from: at(-500, 700), to: was.to })).toEqual([
      at(2000, 700),
      at(2000, 3000),
    ]);
    expect(cornersAfter(points, was, { from: was.from, to: at(5000, 2000) })).toEqual([
      at(2000, 0),
      at(2000, 2000),
    ]);
    // A single corner square to both ends is square to both afterwards.
    expect(cornersAfter([at(4000, 0)], was, { from: at(0, 100), to: at(4200, 3000) })).toEqual([
      at(4200, 100),
    ]);
    // What lay askew stays where it was put.
    expect(cornersAfter([at(1000, 900)], was, { from: at(50, 0), to: was.to })).toEqual([at(1000, 900)]);
  });

  const laid = () => {
    const r = new LineRig();
    r.device('D1', 'desk-2', { 'out-1': 1 });
    const units = [r.unit(2), r.unit(4), r.unit(6)];
    r.line('L1', 'd-D1', 'out-1', units);
    const plan = applyChanges(
      r.b.plan(),
      setHopRoute(r.b.plan(), 'l-L1', 1, [at(2000, 1500), at(4000, 1500)]),
    );
    const corners = (p: typeof plan) => recordOf(p, 'line', 'l-L1')?.routes;
    return { plan, units, corners };
  };

  test('a hop laid by hand follows the unit that moves, and all of it goes with both its units', () => {
    const { plan, units, corners } = laid();
    expect(corners(plan)).toEqual([{ hop: 1, points: [at(2000, 1500), at(4000, 1500)] }]);
    const one = applyChanges(plan, moveRecords(plan, new Set([units[1]?.id ?? '']), at(500, 200)));
    expect(corners(one)).toEqual([{ hop: 1, points: [at(2000, 1500), at(4500, 1500)] }]);
    const both = applyChanges(
      plan,
      moveRecords(plan, new Set([units[0]?.id ?? '', units[1]?.id ?? '']), at(500, 200)),
    );
    expect(corners(both)).toEqual([{ hop: 1, points: [at(2500, 1700), at(4500, 1700)] }]);
    const other = applyChanges(plan, moveRecords(plan, new Set([units[2]?.id ?? '']), at(500, 200)));
    expect(corners(other)).toBe(corners(plan));
  });

  test('taking another stop away keeps the hops that still join the same two things', () => {
    const { plan, units, corners } = laid();
    const less = applyChanges(plan, removeRecords(plan, new Set([units[2]?.id ?? ''])));
    expect(corners(less)).toEqual(corners(plan));
    const without = applyChanges(plan, removeRecords(plan, new Set([units[1]?.id ?? ''])));
    expect(corners(without)).toEqual([]);
  });

  test('a place of one setup leaves the way laid by hand as it is in the plan', () => {
    const { plan, units, corners } = laid();
    const setup = [...plan.records.values()].find((r) => r.type === 'setup')?.id ?? '';
    const id = units[1]?.id ?? '';
    const own = applyChanges(plan, moveOnlyHere(plan, setup, [id]));
    const there = planInSetup(own, setup);
    const moved = moveRecords(there, new Set([id]), at(500, 200));
    const after = applyChanges(own, fromSetup(own, setup, moved));
    expect(corners(after)).toEqual(corners(plan));
    expect(recordOf(planInSetup(after, setup), 'fixture', id)?.at).toEqual(at(4500, 200));
  });
});
