import { describe, expect, it } from 'vitest';
import { setupBurnt, shootingDays } from '../../../src/derive/schedule.ts';
import { recordOf } from '../../../src/plan/plan.ts';
import { batteryRig } from '../../support/battery-plan.ts';

describe('the setup a block burns at', () => {
  it('is its own, else the one of its crew before it, as in the day itself', () => {
    const r = batteryRig();
    const night = r.b.setup('Night', 2);
    r.unit('1');
    r.block(480, 600);
    const meal = r.block(600, 660, { what: 'meal', setupId: undefined, burnsThrough: ['1'] });
    r.block(500, 590, { setupId: night.id, crew: 'rigging' });
    const plan = r.b.plan();
    const block = recordOf(plan, 'block', meal.id);
    if (!block) throw new Error('no meal');
    expect(setupBurnt(plan, block)).toBe(r.setup.id);
    expect(
      shootingDays(plan)[0]
        ?.segments.find((s) => s.startMin >= 600)
        ?.burning.get('1')?.setupId,
    ).toBe(r.setup.id);
  });
});
