import { describe, expect, it } from 'vitest';
import { formatFuel, formatPct, formatVoltAmps, formatWatts } from '../../../src/kernel/units.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type Plan, planRecord } from '../../../src/plan/plan.ts';
import type { PlanRecord } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { explainSet, type SetFigure, tankHours } from '../../../src/report/explain-set.ts';
import { supplySummary } from '../../../src/report/summary.ts';
import { demoPlan } from '../../support/demo-plan.ts';

const withPlan = (plan: Plan, patch: Partial<PlanRecord>): Plan => {
  const from = planRecord(plan);
  return applyChanges(plan, { added: [], removed: [], updated: [{ from, to: { ...from, ...patch } }] });
};

/** The sets of a plan in each setup, with how to ask for a figure of one. */
const setsOf = (plan: Plan) => {
  const a = assess(plan, { revision: 0 });
  return a.setups.flatMap(({ id }) =>
    supplySummary(plan, a, id).sources.flatMap((source) =>
      source.set
        ? [{ source, set: source.set, of: (f: SetFigure) => explainSet(plan, a, source, id, f) }]
        : [],
    ),
  );
};

describe('workings of a set as a whole', () => {
  const street = demoPlan('street');
  const units = planRecord(street).lengthUnits;

  it('power-fuel: fuel and tank end in the figures of the meters, in every setup', () => {
    const sets = setsOf(street);
    expect(sets.length).toBeGreaterThan(1);
    let told = 0;
    for (const { set, of } of sets) {
      const fuel = of('fuel');
      expect(fuel?.result).toBe(
        set.fuelNowLph === undefined ? undefined : `${formatFuel(set.fuelNowLph, units)} an hour`,
      );
      expect(of('tank')?.result).toBe(set.tankNowH === undefined ? undefined : tankHours(set.tankNowH));
      if (!fuel) continue;
      told++;
      expect(fuel.steps.join()).toContain('÷');
      expect(fuel.inputs.map((i) => i.name)).toContain('rated kW');
    }
    expect(told).toBeGreaterThan(0);
    const tank = sets.find((s) => s.set.tankNowH !== undefined && s.set.tankAssumed)?.of('tank');
    expect(tank?.inputs.find((i) => i.name === 'tank')?.assumed).toBe(true);
  });

  it('power-derating: a set high up and in hot air tells both losses and their product', () => {
    // 3 % per 500 m above 1000 m, and 3 % per 5 °C above 40 °C: 0.91 × 0.94 = 0.8554.
    const sets = setsOf(withPlan(street, { altitudeM: 2500, ambientC: 50 }));
    for (const { set, of } of sets) {
      expect(of('share')?.steps).toEqual([
        'height: 1 − 3 % × 1500 m ÷ 500 m = 0.910',
        'heat: 1 − 3 % × 10 °C ÷ 5 °C = 0.940',
        '0.910 × 0.940 = 0.855',
      ]);
      expect(of('share')?.result).toBe(formatPct(100 * set.share));
      expect(of('givesW')?.result).toBe(formatWatts(set.givesW ?? Number.NaN));
      expect(of('givesVa')?.result).toBe(formatVoltAmps(set.givesVa ?? Number.NaN));
    }
    expect(sets.length).toBeGreaterThan(0);
  });

  it('power-derating: a height that is not given is marked assumed', () => {
    const from = planRecord(street);
    const { altitudeM: _, ...to } = from;
    const plan = applyChanges(street, { added: [], removed: [], updated: [{ from, to }] });
    const height = setsOf(plan)[0]
      ?.of('share')
      ?.inputs.find((i) => i.name.startsWith('height'));
    expect(height).toMatchObject({ value: '0 m', assumed: true });
  });

  it('power-generator-light: the lightest running names the setup it is in', () => {
    const a = assess(street, { revision: 0 });
    for (const { source, set, of } of setsOf(street)) {
      const w = of('lightest');
      expect(w?.result).toBe(formatPct(set.lightestPct));
      const names = a.setups.map((s) => s.name);
      expect(names.some((n) => w?.inputs[0]?.from.startsWith(n))).toBe(true);
      expect(source.watts.rated).toBeGreaterThan(0);
    }
  });
});
