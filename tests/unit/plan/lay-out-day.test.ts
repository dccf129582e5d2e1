import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { layOutDay } from '../../../src/plan/edits/day.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const withSetups = (n: number): Plan => {
  const b = new PlanBuilder();
  for (let i = 1; i <= n; i++) b.setup(`Setup ${i}`, i);
  return b.plan();
};
let next = 0;
const blocks = (n: number, start: number) => {
  const plan = withSetups(n);
  const after = applyChanges(
    plan,
    layOutDay(plan, 1, start, (p) => `${p}-${++next}`),
  );
  return [...recordsOf(after, 'block')].sort((a, b) => a.startMin - b.startMin);
};

describe('a day laid out from the setups', () => {
  it('has a pre-light, each setup once in its order, a meal within six hours, and wrap, without gaps', () => {
    const day = blocks(4, 480);
    expect(day.map((b) => b.what)).toEqual(['pre-light', 'setup', 'setup', 'meal', 'setup', 'setup', 'wrap']);
    expect(day[3]?.startMin).toBe(780);
    for (const [i, b] of day.entries()) if (i > 0) expect(b.startMin).toBe(day[i - 1]?.endMin);
    expect(new Set(day.filter((b) => b.what === 'setup').map((b) => b.setupId)).size).toBe(4);
  });

  it('goes past midnight and stops at noon of the next day, however many setups there are', () => {
    const day = blocks(20, 1080);
    expect(Math.max(...day.map((b) => b.endMin))).toBeLessThanOrEqual(2160);
    expect(day.at(-1)?.what).toBe('wrap');
    expect(day.every((b) => b.endMin > b.startMin)).toBe(true);
  });

  it('is empty where there is no setup', () => {
    expect(blocks(0, 480)).toEqual([]);
  });
});
