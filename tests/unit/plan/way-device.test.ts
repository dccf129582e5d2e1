import { describe, expect, it } from 'vitest';
import { computePower } from '../../../src/engines/power/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { addCircuit } from '../../../src/plan/edits/circuits.ts';
import { changeCircuit } from '../../../src/plan/edits/outlets.ts';
import { changeWay } from '../../../src/plan/edits/ways.ts';
import { waysOf } from '../../../src/plan/ports.ts';
import { readWayDevice, wayDeviceText } from '../../../src/plan/way-device.ts';
import { generatorRig, PlanBuilder } from '../../support/plan-builder.ts';

describe('the device of a way', () => {
  it.each([
    ['C 30 mA A', { curve: 'C', rcdMa: 30, rcdType: 'A' }],
    ['b30ma ac', { curve: 'B', rcdMa: 30, rcdType: 'AC' }],
    ['B, 300 mA, type F', { curve: 'B', rcdMa: 300, rcdType: 'F' }],
    ['30 mA B', { curve: 'na', rcdMa: 30, rcdType: 'B' }],
    ['5 mA', { curve: 'na', rcdMa: 5 }],
    ['D', { curve: 'D' }],
    ['', { curve: 'na' }],
    ['none', { curve: 'na' }],
    ['0 mA', undefined],
    ['30', undefined],
    ['Z 30 mA', undefined],
  ])('reads “%s”', (text, device) => {
    const r = readWayDevice(text);
    expect(r.ok ? r.value : undefined).toEqual(device);
    if (r.ok) expect(readWayDevice(wayDeviceText(r.value))).toEqual(r);
  });

  it('a device takes the place of the one before, and a plain breaker takes it away, on a box and on a panel', () => {
    const { b, box } = generatorRig();
    const step = (plan: ReturnType<typeof b.plan>, text: string) => {
      const device = readWayDevice(text);
      const r = device.ok ? changeWay(plan, box.id, '1', { device: device.value }) : undefined;
      if (!r?.ok) throw new Error(text);
      return applyChanges(plan, r.value);
    };
    const guarded = step(b.plan(), 'C 30 mA A');
    expect(waysOf(guarded, box.id)[0]).toMatchObject({ curve: 'C', rcdMa: 30, rcdType: 'A', breakerA: 20 });
    expect(waysOf(step(guarded, 'none'), box.id)[0]).not.toHaveProperty('rcdMa');
  });

  it('power-wet: a panel’s circuit that is given a device for people is told no more', () => {
    const b = new PlanBuilder({ practice: 'europe' });
    b.sourceKind('panel', { what: 'house-panel', system: '230' });
    const s = b.source('panel');
    const added = addCircuit(b.plan(), s.id, { label: '1', breakerA: 16, leg: 0 });
    b.outlet(s.id, added.wayId, { connector: 'schuko-16', wet: true });
    const plan = applyChanges(b.plan(), added.changes);
    const wet = (p: typeof plan) => computePower(p).findings.filter((f) => f.rule === 'power-wet').length;
    expect(wet(plan)).toBe(1);
    const device = { curve: 'B' as const, rcdMa: 30, rcdType: 'A' as const };
    expect(wet(applyChanges(plan, changeCircuit(plan, s.id, added.wayId, { device })))).toBe(0);
  });
});
