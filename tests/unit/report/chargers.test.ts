import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { daySummary } from '../../../src/report/day.ts';
import { findingText } from '../../../src/report/text.ts';
import { batteryRig } from '../../support/battery-plan.ts';

const one = { kindId: 'brick', count: 1, joined: 'parallel' as const };

/** One unit on bricks for eight hours, a charger of two bays on a station of so many Wh, or on nothing. */
const onStation = (storedWh: number | undefined): Plan => {
  const { b, ...r } = batteryRig();
  r.unit('1', one);
  r.block(480, 960);
  r.stock('brick', 12);
  const c = r.placeCharger('C1');
  if (storedWh !== undefined) {
    const k = b.sourceKind('station', {
      what: 'power-station',
      system: '120',
      ways: [{ id: 'w', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
      outlets: [{ id: 'out', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: 'w' }],
      storedWh,
    });
    b.source(k.id, { id: 'ps', label: 'S1', voltsV: 120 });
    b.cable(b.cableKind('cord').id, ['ps', 'out'], [c.id, 'in']);
  }
  return b.plan();
};

const found = (plan: Plan, rule: string) =>
  assess(plan, { revision: 1 }).findings.find((f) => f.rule === rule);

describe('chargers and what feeds them', () => {
  it('battery-charger-off: charges counted on in bays that nothing feeds are told, and how many', () => {
    const plan = onStation(undefined);
    const charges = daySummary(plan, 1).bays.reduce((n, b) => n + b.spans.length, 0);
    expect(charges).toBeGreaterThan(3);
    const f = found(plan, 'battery-charger-off');
    expect(f?.severity).toBe('warn');
    expect(f && findingText(plan, f).head).toBe(
      `C1 is not plugged in, and ${charges} charges are counted on`,
    );
    expect(found(onStation(5000), 'battery-charger-off')).toBeUndefined();
  });

  it('station-empty: charges that end after the station of their charger is empty are told', () => {
    const plan = onStation(150);
    const emptyMin = daySummary(plan, 1).sources[0]?.station?.emptyMin ?? 0;
    expect(emptyMin).toBeGreaterThan(480);
    const late = daySummary(plan, 1).bays.flatMap((b) => b.spans.filter((s) => s.endMin > emptyMin));
    expect(late.length).toBeGreaterThan(0);
    const f = found(plan, 'station-empty');
    expect(f && findingText(plan, f).body).toContain(
      `${late.length} charges in C1 that the rotation counts on end after that and will not be done`,
    );
    expect(found(onStation(5000), 'station-empty')).toBeUndefined();
  });
});
