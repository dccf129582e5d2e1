import { describe, expect, it } from 'vitest';
import { supplyTree } from '../../../src/derive/supply.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { recordSchemas } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { daySummary } from '../../../src/report/day.ts';
import { chargeParts } from '../../../src/report/station-charge.ts';
import { findingText } from '../../../src/report/text.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const way = { id: 'w', label: '1', breakerA: 20, poles: 1, curve: 'na' as const, legs: [0] };
const out = { id: 'out', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: 'w' };

/**
 * A station of 1000 Wh with a unit of 300 W: two hours, an hour's meal, two hours. With `from` its inlet of 400 W hangs on the
 * house, on itself, or on nothing.
 */
const mealDay = (from?: 'house' | 'ps', charge = 400): Plan => {
  const b = new PlanBuilder();
  const station = b.sourceKind('station', {
    what: 'power-station',
    system: '120',
    ways: [way],
    outlets: [out, { ...out, id: 'out2' }],
    storedWh: 1000,
    inverterPct: 85,
    inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
    load: b.load({ wattsW: charge }),
  });
  const house = b.sourceKind('panel', { what: 'house-panel', system: '120', ways: [way], outlets: [out] });
  b.source(station.id, { id: 'ps', label: 'S1', voltsV: 120 });
  b.source(house.id, { id: 'house', label: 'H1', voltsV: 120 });
  b.fixture(b.fixtureKind('lamp', { wattsW: 300, standbyW: 2 }).id, { id: 'u1', unit: '1' });
  const cord = b.cableKind('cord').id;
  b.cable(cord, ['ps', 'out'], ['u1', 'in']);
  if (from) b.cable(cord, [from, from === 'ps' ? 'out2' : 'out'], ['ps', 'in']);
  b.put({ id: 's1', type: 'setup', order: 1, name: 'Day', scene: '' });
  const block = (id: string, startMin: number, endMin: number, what: 'setup' | 'meal') =>
    b.put(
      recordSchemas.block.parse({
        id,
        type: 'block',
        day: 1,
        startMin,
        endMin,
        what,
        ...(what === 'setup' ? { setupId: 's1' } : {}),
      }),
    );
  block('b1', 480, 600, 'setup');
  block('b2', 600, 660, 'meal');
  block('b3', 660, 780, 'setup');
  return b.plan();
};

const source = (plan: Plan, id: string) => daySummary(plan, 1).sources.find((s) => s.id === id);

describe('power stations charged between blocks', () => {
  it('station-charge: what goes in at the meal comes out after it, and the house gives it', () => {
    const bare = source(mealDay(), 'ps')?.station;
    const fed = source(mealDay('house'), 'ps')?.station;
    // 900 Wh at 300 W ÷ 0.85 + 15 W = 367.9 W: dark after 147 minutes of light, a little more for standby at the meal.
    expect(bare?.emptyMin).toBeDefined();
    expect((bare?.emptyMin ?? 0) - 60).toBeLessThan(480 + 147);
    expect(fed?.chargesFrom).toBe('H1');
    // 400 W × 85 % for an hour.
    expect(fed?.chargedWh).toBeCloseTo(340, 6);
    const spent = 2 * (300 / 0.85 + 15);
    expect(fed?.emptyMin).toBeCloseTo(660 + (60 * (900 - spent + 340)) / (300 / 0.85 + 15), 6);
    // 400 W into it and, through it, the 2 W of standby of the unit that is off.
    expect(source(mealDay('house'), 'house')?.energyWh).toBeCloseTo(402, 6);
    expect(source(mealDay(), 'house')?.energyWh).toBe(0);
  });

  it('station-energy: of what is charged and given nothing is lost but what inverter and charger lose', () => {
    const station = source(mealDay('house'), 'ps')?.station;
    if (!station) throw new Error('no station');
    const given = station.spans
      .filter((s) => s.state === 'gives')
      .reduce((sum, s) => sum + ((s.outW / 0.85 + 15) * (s.endMin - s.startMin)) / 60, 0);
    const taken = station.spans.reduce(
      (sum, s) => sum + (s.chargeW * 0.85 * (s.endMin - s.startMin)) / 60,
      0,
    );
    expect(station.leftWh).toBeCloseTo(900 + taken - given, 6);
    // No gap and no overlap.
    station.spans.forEach((s, i) => {
      if (i > 0) expect(s.startMin).toBeCloseTo(station.spans[i - 1]?.endMin ?? -1, 9);
      if (i > 0) expect(s.fromShare).toBeCloseTo(station.spans[i - 1]?.toShare ?? -1, 9);
    });
  });

  it('station-charge: it is a load of the circuit it hangs on, in every setup', () => {
    const plan = mealDay('house');
    const node = supplyTree(plan).byKey.get('ps/charge');
    expect(node).toMatchObject({ what: 'load', sourceId: 'house', steady: true });
    const amps = assess(plan, { revision: 1 }).figures.worst('house/w', 'leg0A').value;
    expect(amps).toBeCloseTo(400 / 120, 1);
  });

  it('station-empty: its units are dark from that minute, in their lanes and in the finding', () => {
    const plan = mealDay();
    const s = daySummary(plan, 1);
    const [lane] = s.stationLoads;
    const emptyMin = s.sources.find((x) => x.id === 'ps')?.station?.emptyMin ?? 0;
    expect(lane?.spans.at(-1)).toMatchObject({ state: 'dark', startMin: emptyMin, endMin: 780 });
    expect((lane?.burnsMin ?? 0) + (lane?.darkMin ?? 0)).toBeCloseTo(240, 9);
    const f = assess(plan, { revision: 1 }).findings.find((x) => x.rule === 'station-empty');
    expect(f?.recordIds).toContain('u1');
    expect(f && findingText(plan, f).body).toContain('dark then: Unit 1');
    // Nothing comes from it any more.
    expect(s.sources.find((x) => x.id === 'ps')?.steps.at(-1)?.lightW).toBe(0);
  });

  it('station-chain: a station plugged into itself is charged by nothing, and told', () => {
    const plan = mealDay('ps');
    expect(source(plan, 'ps')?.station?.chargesFrom).toBeUndefined();
    const f = assess(plan, { revision: 1 }).findings.find((x) => x.rule === 'station-chain');
    expect(f && findingText(plan, f).body).toContain('It is charged from itself');
  });

  it('station-charge: the last fifth goes in along a taper, whose integral is what is charged', () => {
    const c = { cellsW: 500, usableWh: 1000, changeOver: 0.8, endC: 0.05 };
    const [main, taper] = chargeParts(c, 0, 1000);
    expect(main?.toMin).toBeCloseTo((60 * 0.8 * 1000) / 500, 9);
    // τ = 0.2 × 1000 ÷ (500 − 50) h, over ln 10.
    const tau = (60 * 200) / 450;
    expect((taper?.toMin ?? 0) - (main?.toMin ?? 0)).toBeCloseTo(tau * Math.log(10), 6);
    expect(taper?.toShare).toBeCloseTo(1, 9);
    // Cut in two it comes to the same.
    const first = chargeParts(c, 0.85, 10).at(-1);
    const second = chargeParts(c, first?.toShare ?? 0, 10).at(-1);
    expect(second?.toShare).toBeCloseTo(chargeParts(c, 0.85, 20).at(-1)?.toShare ?? 0, 9);
    expect(chargeParts(c, 1, 60)).toEqual([]);
  });
});
