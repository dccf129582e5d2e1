import { describe, expect, it } from 'vitest';
import { fuelLitresPerH, LITRES_PER_GALLON } from '../../src/derive/fuel.ts';
import { computePower, deratingShare, sourceRating } from '../../src/engines/power/index.ts';
import { assess } from '../../src/report/assess.ts';
import { supplySummary } from '../../src/report/summary.ts';
import { generatorRig, PlanBuilder } from '../support/plan-builder.ts';

const plan = new PlanBuilder().plan();

describe('derating of sets against printed tables', () => {
  it('power-derating: 1500 m gives 0.97 and 4000 m 0.82 (portable set manuals, manualarchiveguide.com and easymanua.ls)', () => {
    expect(deratingShare(plan, 1500, 25)).toBeCloseTo(0.97, 9);
    expect(deratingShare(plan, 4000, 25)).toBeCloseTo(0.82, 9);
  });

  it('power-derating: 45 °C gives 0.97 and 60 °C 0.88 (the same manuals)', () => {
    expect(deratingShare(plan, 0, 45)).toBeCloseTo(0.97, 9);
    expect(deratingShare(plan, 0, 60)).toBeCloseTo(0.88, 9);
  });

  it('power-derating: height and heat multiply; up to 1000 m and 40 °C a set gives its rating (alternator sheet, scribd.com 379385487)', () => {
    expect(deratingShare(plan, 1000, 40)).toBe(1);
    expect(deratingShare(plan, 2000, 50)).toBeCloseTo(0.94 * 0.94, 9);
  });

  it('power-derating: kilowatts, kVA and the leg of a plan 2000 m up are judged against what the set gives', () => {
    const { b, source, plug } = generatorRig({ altitudeM: 2000 }, 36);
    b.fixtureKind('f', { wattsW: 9200, model: 'constant-current' });
    for (const way of [1, 2, 3]) plug('f', way, 0);
    const r = computePower(b.plan());
    const rules = r.findings.filter((f) => f.about === source.id).map((f) => f.rule);
    // 27.6 kW on 28.8 kW × 0.94 = 27.07 kW; 76.7 A on 100 A × 0.94.
    expect(rules).toContain('power-generator-kw');
    expect(rules).not.toContain('power-generator-leg');
    expect(r.limits[0]?.leg?.limitA).toBeCloseTo(94, 6);
    expect(r.findings.find((f) => f.rule === 'power-generator-kw')?.params.ratedW).toBeCloseTo(27_072, 0);
  });

  it('power-derating: a share given in the plan goes before the table', () => {
    const { b, source } = generatorRig({ altitudeM: 4000 });
    b.records.set(source.id, { ...source, ratingShare: 0.9 });
    expect(sourceRating(b.plan(), source.id)).toMatchObject({ share: 0.9, shareFrom: 'plan' });
  });
});

describe('fuel against a printed chart', () => {
  it('power-fuel: 100 kW at half load takes 15.5 L/h (oer.enviraj.com), printed as 4.1 gal (aagenpro.com)', () => {
    expect(fuelLitresPerH(100, 50)).toBeCloseTo(15.5, 9);
    expect((fuelLitresPerH(100, 50) ?? 0) / LITRES_PER_GALLON).toBeCloseTo(4.1, 1);
  });

  it('power-fuel: 200 kW at three quarters takes 41.6 L/h, printed as 11.0 gal', () => {
    expect(fuelLitresPerH(200, 150)).toBeCloseTo(41.6, 9);
    expect((fuelLitresPerH(200, 150) ?? 0) / LITRES_PER_GALLON).toBeCloseTo(11.0, 1);
  });

  it('power-fuel: 75 kW at full load takes 6.1 gal, not the 6.4 that some copies misprint', () => {
    expect((fuelLitresPerH(75, 75) ?? 0) / LITRES_PER_GALLON).toBeCloseTo(6.1, 1);
  });

  it('power-fuel: between loads and sizes it is on the straight line', () => {
    expect(fuelLitresPerH(100, 62.5)).toBeCloseTo((15.5 + 22) / 2, 9);
    expect(fuelLitresPerH(50, 25)).toBeCloseTo((8.7 + 11) / 2, 9);
  });

  it('power-fuel: below a quarter the quarter’s figure holds; outside the chart nothing is told', () => {
    expect(fuelLitresPerH(100, 5)).toBeCloseTo(9.8, 9);
    expect(fuelLitresPerH(100, 0)).toBe(0);
    expect(fuelLitresPerH(6, 3)).toBeUndefined();
    expect(fuelLitresPerH(100, 101)).toBeUndefined();
  });
});

describe('one leg and one pair of a set', () => {
  it('power-limit: a 100 kVA three-phase set carries 33.3 kVA on one leg and 57.7 kVA between two (computed: a third, and 1 ÷ √3)', () => {
    const { b } = generatorRig({}, 100);
    const p = b.plan();
    const set = supplySummary(p, assess(p, { revision: 1 })).sources[0]?.set;
    expect(((set?.legA ?? 0) * 120) / 1000).toBeCloseTo(33.3, 1);
    expect((set?.pairVa ?? 0) / 1000).toBeCloseTo(57.7, 1);
  });

  it('power-step: the largest unit, or the rise to the next setup, is told with the set', () => {
    const { b, plug } = generatorRig({}, 25);
    b.fixtureKind('f', { wattsW: 6000, model: 'constant-current' });
    const units = [1, 2].map((way) => plug('f', way, 0).fixture);
    const [off, on] = [b.setup('Dark', 1), b.setup('Bright', 2)];
    for (const u of units) {
      b.level(off.id, u.id, 0);
      b.level(on.id, u.id, 100);
    }
    const p = b.plan();
    const a = assess(p, { revision: 1 });
    const set = supplySummary(p, a, on.id).sources[0]?.set;
    expect(set?.stepOf).toBe('going to “Bright”');
    expect((set?.stepW ?? 0) / 1000).toBeCloseTo(12, 0);
    expect(a.findings.map((f) => f.rule)).toContain('power-generator-step');
    expect(set?.fuelNowLph).toBeGreaterThan(2);
    expect(set?.lightestPct).toBeGreaterThan(50);
  });
});
