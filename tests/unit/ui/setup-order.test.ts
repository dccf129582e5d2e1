import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { moveSetup } from '../../../src/plan/edits/day.ts';
import { setupsOf } from '../../../src/plan/plan.ts';
import { gapAt, indexInGap } from '../../../src/ui/day/use-setup-drag.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

describe('a setup dragged by the head of its column', () => {
  const plan = () => {
    const b = new PlanBuilder();
    for (const [i, name] of ['A', 'B', 'C', 'D'].entries()) b.setup(name, i + 1);
    return b.plan();
  };
  const order = (from: number, xPx: number) => {
    const p = plan();
    const id = setupsOf(p)[from]?.id ?? '';
    const moved = moveSetup(p, id, indexInGap(from, gapAt(xPx, 100, 4)));
    return setupsOf(applyChanges(p, moved))
      .map((s) => s.name)
      .join('');
  };
  it('goes into the gap it is let go over, whichever way it came', () => {
    expect(order(0, 190)).toBe('BACD');
    expect(order(0, 400)).toBe('BCDA');
    expect(order(3, 90)).toBe('ADBC');
    expect(order(2, -50)).toBe('CABD');
  });
  it('stays where it is over its own edges', () => {
    expect(order(1, 110)).toBe('ABCD');
    expect(order(1, 190)).toBe('ABCD');
  });
});
