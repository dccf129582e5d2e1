import { describe, expect, it } from 'vitest';
import { daySummary } from '../../../src/report/day.ts';
import { unitHours } from '../../../src/report/unit-hours.ts';
import { batteryRig } from '../../support/battery-plan.ts';

describe('hours a unit burns', () => {
  it('are those of the blocks it is on in, its longest stretch apart; a unit that stays off is not told', () => {
    const r = batteryRig();
    for (const id of ['1', '2', '3']) r.unit(id);
    r.b.level(r.setup.id, '2', 0);
    r.block(480, 600);
    r.block(600, 660, { what: 'meal', setupId: undefined, burnsThrough: ['3'] });
    r.block(660, 780);
    const plan = r.b.plan();
    expect(unitHours(plan, 1)).toMatchObject([
      { fixtureId: '1', totalH: 4, longestH: 2 },
      { fixtureId: '3', totalH: 5, longestH: 5 },
    ]);
    expect(unitHours(plan, 2)).toEqual([]);
    // No unit burns longer than there is light at all.
    for (const u of unitHours(plan, 1)) expect(u.totalH).toBeLessThanOrEqual(daySummary(plan, 1).hoursOn);
  });
});
