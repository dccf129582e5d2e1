import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addMeasurement } from '../../../src/plan/edits/measurements.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import type { Measurement } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { measuredRows } from '../../../src/report/measured.ts';
import { findingText } from '../../../src/report/text.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const plan = samplePlan();
const before = assess(plan, { revision: 0 });
const computed = before.figures.get('bx-1', 'voltsV', 0);
const measure = (m: Partial<Measurement>): Plan =>
  applyChanges(
    plan,
    addMeasurement(plan, { on: { recordId: 'bx-1' }, by: 'T. Lund', when: '2026-03-09', ...m }, () => 'ms-1'),
  );
const found = (p: Plan) =>
  assess(p, { revision: 0 }).findings.filter((f) => f.rule.startsWith('power-measured'));

describe('a measured value', () => {
  it('power-measured-volts: is pointed out when it is further off than the table lets pass', () => {
    expect(found(measure({ setupId: 'su-1', voltsV: computed * 1.02 }))).toEqual([]);
    const [f] = found(measure({ setupId: 'su-1', voltsV: computed * 0.95 }));
    expect(f?.rule).toBe('power-measured-volts');
    expect(f?.params.pct).toBeCloseTo(5, 6);
    if (f) expect(findingText(plan, f).head).toContain('K1: measured');
  });

  it('power-measured-amps: counts on the leg it names, in its setup', () => {
    const amps = before.figures.get('bx-1', 'leg1A', 0);
    expect(found(measure({ setupId: 'su-1', leg: 1, amps }))).toEqual([]);
    expect(found(measure({ setupId: 'su-1', leg: 1, amps: amps * 1.3 }))[0]?.rule).toBe(
      'power-measured-amps',
    );
    const row = measuredRows(measure({ setupId: 'su-1', leg: 1, amps }), before)[0];
    expect(row?.amps?.least).toBe(amps);
    expect(row?.amps?.gapPct).toBe(0);
  });

  it('power-measured-neutral: stands beside the computed neutral, on its own', () => {
    const neutralA = before.figures.get('bx-1', 'neutralA', 0);
    expect(neutralA).toBeGreaterThan(0);
    expect(found(measure({ setupId: 'su-1', neutralA }))).toEqual([]);
    const rules = found(measure({ setupId: 'su-1', neutralA: neutralA * 1.5 }));
    expect(rules.map((f) => f.rule)).toEqual(['power-measured-neutral']);
    if (rules[0]) expect(findingText(plan, rules[0]).head).toContain('K1, neutral: measured');
  });

  it('power-measured-volts: without a setup may lie anywhere the setups are', () => {
    const all = before.setups.map((_, i) => before.figures.get('bx-1', 'voltsV', i));
    expect(found(measure({ voltsV: (Math.min(...all) + Math.max(...all)) / 2 }))).toEqual([]);
  });

  it('power-measured-volts: is not compared with what is not computed', () => {
    expect(found(measure({ on: { recordId: 'so-1' }, voltsV: 60 }))).toEqual([]);
  });

  it('power-measured-polarity, power-measured-device: stop', () => {
    const rules = found(measure({ polarity: 'wrong', deviceTest: 'did-not-open' }));
    expect(rules.map((f) => [f.rule, f.severity])).toEqual([
      ['power-measured-polarity', 'stop'],
      ['power-measured-device', 'stop'],
    ]);
  });

  it('changes no figure', () => {
    const after = assess(measure({ voltsV: 90, amps: 1 }), { revision: 0 });
    expect([...after.figures.values]).toEqual([...before.figures.values]);
  });
});
