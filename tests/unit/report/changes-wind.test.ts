import { expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { type Plan, planRecord } from '../../../src/plan/plan.ts';
import { planChanges } from '../../../src/report/changes.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const withWind = (windMps: number, lengthUnits: 'imperial' | 'metric'): Plan => {
  const plan = samplePlan();
  const from = planRecord(plan);
  return applyChanges(plan, {
    added: [],
    removed: [],
    updated: [{ from, to: { ...from, lengthUnits, windMps } }],
  });
};
const words = (from: number, to: number, units: 'imperial' | 'metric'): readonly string[] =>
  planChanges(withWind(from, units), withWind(to, units)).map((c) => c.words);

it('tells a change of the wind in the units of the plan', () => {
  expect(words(8, 12.5, 'imperial')).toEqual([
    'Wind to reckon with now 12.5 m/s (28 mph), was 8 m/s (18 mph)',
  ]);
  expect(words(8, 12.5, 'metric')).toEqual([
    'Wind to reckon with now 12.5 m/s (45 km/h), was 8 m/s (29 km/h)',
  ]);
});

it('tells of a change too small to read', () => {
  expect(words(8, 8.01, 'metric')).toEqual(['Wind to reckon with set otherwise, still 8 m/s (29 km/h)']);
});
