import { expect, it } from 'vitest';
import { issueOptions } from '../../../src/papers/issue-options.ts';
import { paperSet } from '../../../src/papers/paper-set.ts';
import { assess } from '../../../src/report/assess.ts';
import { universeUse } from '../../../src/report/control.ts';
import { demoPlan } from '../../support/demo-plan.ts';

const PER_ROW = 128;

/** Widths of the filled blocks of a lane's height on the maps, and the width of a whole lane. */
const blocksOf = (name: 'study' | 'street' | 'stage') => {
  const plan = demoPlan(name);
  const options = { ...issueOptions(plan, { programVersion: '0' }), sheets: ['universes'] };
  const rects = paperSet(plan, assess(plan, { revision: 0 }), options).pages.flatMap((page) =>
    page.items.flatMap((i) => {
      if (i.kind !== 'path') return [];
      const points = i.d.flatMap((c) =>
        c[0] === 'Z' ? [] : [[Number(c.at(-2)), Number(c.at(-1))] as const],
      );
      const [xs, ys] = [points.map((p) => p[0]), points.map((p) => p[1])];
      const w = Math.max(...xs) - Math.min(...xs);
      return Math.abs(Math.max(...ys) - Math.min(...ys) - 6.4) < 0.01
        ? [{ w, filled: i.fill?.role === 'paper' }]
        : [];
    }),
  );
  return {
    rows: universeUse(plan).flatMap((u) => u.rows.filter((r) => r.slots > 0)),
    widths: rects.filter((r) => r.filled).map((r) => r.w),
    laneMm: Math.max(...rects.map((r) => r.w)),
  };
};

it.each(['street', 'stage'] as const)(
  'on the universe maps of the %s every patched slot has its block',
  (name) => {
    const { rows, widths, laneMm } = blocksOf(name);
    const lanes = rows.map(
      (r) => Math.floor((r.last - 1) / PER_ROW) - Math.floor((r.address - 1) / PER_ROW) + 1,
    );
    expect(widths).toHaveLength(lanes.reduce((sum, n) => sum + n, 0));
    const slots = rows.reduce((sum, r) => sum + r.slots, 0);
    expect(slots).toBeGreaterThan(50);
    expect((widths.reduce((sum, w) => sum + w, 0) / laneMm) * PER_ROW).toBeCloseTo(slots, 3);
  },
);
