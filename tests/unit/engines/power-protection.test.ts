import { describe, expect, it } from 'vitest';
import type { EngineFinding } from '../../../src/derive/findings.ts';
import { computePower, explainPower } from '../../../src/engines/power/index.ts';
import { feltInrush } from '../../../src/engines/power/inrush.ts';
import { idMaker } from '../../../src/kernel/ids.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { referenceProblems } from '../../../src/plan/checks.ts';
import { removeRecords } from '../../../src/plan/edits/arrange.ts';
import { addOtherLoad } from '../../../src/plan/edits/other-loads.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { supplySummary } from '../../../src/report/summary.ts';
import { generatorRig, PlanBuilder } from '../../support/plan-builder.ts';

const findings = (plan: Plan, rule: string): readonly EngineFinding[] =>
  computePower(plan).findings.filter((f) => f.rule === rule);

describe('residual-current devices', () => {
  /** Units of 2 mA each on one 30 mA way. */
  const leaking = (units: number) => {
    const { b, box } = generatorRig();
    const way = { id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na' as const, legs: [0], rcdMa: 30 };
    b.records.set(box.id, { ...box, ways: [way] });
    const thru = { id: 'thru', connector: 'stage-pin-20', legs: 1, neutral: true };
    b.fixtureKind('f', { wattsW: 50, leakageMa: 2 }, { outlets: [thru] });
    let from: [string, string] = [box.id, 'o1'];
    for (let i = 0; i < units; i++) {
      const f = b.fixture('f');
      b.cable('lead', from, [f.id, 'in'], 0);
      from = [f.id, 'thru'];
    }
    return findings(b.plan(), 'power-leakage').map((f) => [f.severity, f.params.leakageMa]);
  };

  it('power-leakage: sums over all behind the device; a note above 30 %, a warning above 50 % of its trip class', () => {
    expect(leaking(4)).toEqual([]);
    expect(leaking(5)).toEqual([['note', 10]]);
    expect(leaking(7)).toEqual([['note', 14]]);
    expect(leaking(8)).toEqual([['warn', 16]]);
  });

  const typed = (
    rcdType: 'AC' | 'A' | 'F' | 'B' | undefined,
    model: 'constant-power' | 'tungsten',
    three = false,
  ) => {
    const connector = three ? 'iec-32-3' : 'iec-16-1';
    const b = new PlanBuilder({ practice: 'europe' });
    const port = { connector, legs: three ? 3 : 1, neutral: true };
    b.sourceKind('set', {
      system: '230/400',
      ways: [
        {
          id: 'w',
          label: '1',
          breakerA: 16,
          poles: three ? 3 : 1,
          curve: 'C',
          legs: three ? [0, 1, 2] : [0],
          rcdMa: 30,
          ...(rcdType ? { rcdType } : {}),
        },
      ],
      outlets: [{ ...port, id: 'o', wayId: 'w' }],
    });
    b.cableKind('lead', { plug: connector, socket: connector, legs: port.legs, conductor: 'mm2:2.5' });
    b.fixtureKind('f', { wattsW: 900, model }, { inlets: [{ ...port, id: 'in' }] });
    const s = b.source('set');
    b.cable('lead', [s.id, 'o'], [b.fixture('f').id, 'in'], 0);
    return findings(b.plan(), 'power-device-type').map((f) =>
      f.severity === 'note' ? `${f.params.wants}?` : f.params.wants,
    );
  };

  it('power-device-type: type AC ahead of electronic loads wants A, any but B ahead of three-leg ones wants B (IEC 60755, from memory)', () => {
    expect(typed('AC', 'constant-power')).toEqual(['A']);
    for (const t of ['A', 'F', 'B', undefined] as const) expect(typed(t, 'constant-power')).toEqual([]);
    expect(typed('AC', 'tungsten')).toEqual([]);
    for (const t of ['AC', 'A', 'F'] as const) expect(typed(t, 'constant-power', true)).toEqual(['B']);
    expect(typed('B', 'constant-power', true)).toEqual([]);
    expect(typed('A', 'tungsten', true)).toEqual([]);
    // Of no type in the plan: taken as A, a note.
    expect(typed(undefined, 'constant-power', true)).toEqual(['B?']);
  });

  const wetRig = (rcdMa: number | undefined, practice: 'north-america' | 'europe' = 'europe') => {
    const b = new PlanBuilder({ practice });
    const way = { id: 'w', label: '1', breakerA: 16, poles: 1, curve: 'C' as const, legs: [0] };
    b.sourceKind('panel', {
      what: 'house-panel',
      system: '230',
      ways: [{ ...way, ...(rcdMa === undefined ? {} : { rcdMa }) }],
    });
    const s = b.source('panel');
    b.outlet(s.id, 'w', { connector: 'schuko-16', wet: true });
    b.outlet(s.id, 'w', { connector: 'schuko-16' });
    return findings(b.plan(), 'power-wet');
  };

  it('power-wet: an outdoor outlet without a device that guards people is a warning, an indoor one is not', () => {
    expect(wetRig(undefined)).toHaveLength(1);
    expect(wetRig(30)).toEqual([]);
    expect(wetRig(100)[0]?.params).toMatchObject({ tripMa: 100, mostMa: 30 });
    expect(wetRig(30, 'north-america')).toHaveLength(1);
    expect(wetRig(5, 'north-america')).toEqual([]);
  });

  it('power-wet: a box outdoors is told by the ways that are used', () => {
    const { b, box, plug } = generatorRig();
    b.records.set(box.id, { ...box, wet: true });
    b.fixtureKind('f');
    plug('f', 3);
    expect(findings(b.plan(), 'power-wet')[0]?.params.places).toBe('K1 way 3');
  });
});

describe('switching on', () => {
  it('power-inrush: a short pulse counts by the root of its share of a half-wave', () => {
    expect(feltInrush(30, 0.3, 50)).toBeCloseTo(30 * Math.sqrt(0.03), 9);
    expect(feltInrush(12, 20, 50)).toBe(12);
    expect(feltInrush(12, undefined, 60)).toBe(12);
  });

  it('power-inrush: names the steps to switch on in, and judges the last breaker only', () => {
    const { b, box, plug, inlets } = generatorRig({ practice: 'europe' });
    const thru = { id: 'thru', connector: 'iec-16-1', legs: 1, neutral: true };
    b.fixtureKind('f', { wattsW: 1150, inrushMultiple: 10, inrushMs: 20 }, { inlets, outlets: [thru] });
    const first = plug('f', 1, 0).fixture;
    const second = b.fixture('f');
    b.cable('lead', [first.id, 'thru'], [second.id, 'in'], 0);
    const third = b.fixture('f');
    b.cable('lead', [second.id, 'thru'], [third.id, 'in'], 0);
    const [f, ...more] = findings(b.plan(), 'power-inrush');
    expect(more).toEqual([]);
    expect(f).toMatchObject({ about: `${box.id}/1`, severity: 'note', params: { loads: 3, steps: 2 } });
    expect(f?.params.times).toBeCloseTo(150 / 16, 6);
  });
});

describe('bundles and drums', () => {
  const rig = (cable: { bundled?: number; onDrum?: number }) => {
    const { b, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 1500, model: 'constant-current' });
    const p = plug('f', 1);
    b.records.set(p.cable.id, { ...p.cable, ...cable });
    return { plan: b.plan(), cable: p.cable };
  };

  it('power-limit: a coiled cable is over its ampacity, and the working says why', () => {
    expect(findings(rig({}).plan, 'power-cable')).toEqual([]);
    const { plan, cable } = rig({ onDrum: 3 });
    expect(findings(plan, 'power-cable')[0]?.params.limitA).toBeCloseTo(25 * 0.45, 9);
    const w = explainPower(plan, `usePct@${cable.id}@all`);
    if ('why' in w) throw new Error(w.why);
    expect(w.inputs.map((i) => `${i.name} ${i.value}`)).toContain('3 layers on a drum × 0.45');
  });

  it('power-weaker: a bundle can leave a cable below its breaker', () => {
    expect(findings(rig({ bundled: 3 }).plan, 'power-cable')).toEqual([]);
    expect(findings(rig({ bundled: 6 }).plan, 'power-cable')[0]?.params.limitA).toBe(10);
  });
});

describe('volts between lines', () => {
  it('power-volts-unbalance: one leg loaded on a long thin feeder is told once, at the box', () => {
    const { b, box, plug, feeder } = generatorRig({}, 500);
    b.cableKind('feeder', {
      legs: 3,
      conductor: 'awg:6',
      ampacityA: 316,
      plug: 'single-pole-400-3',
      socket: 'single-pole-400-3',
    });
    b.records.set(feeder.id, { ...feeder, piecesMm: [100_000] });
    b.fixtureKind('f', { wattsW: 12_000, model: 'constant-current' });
    plug('f', 1, 0);
    const [f, ...more] = findings(b.plan(), 'power-volts-unbalance');
    expect(more).toEqual([]);
    expect(f?.recordIds).toEqual([box.id]);
    expect(f?.params.nemaPct).toBeGreaterThan(3);
  });

  it('power-volts-unbalance: balanced legs raise nothing', () => {
    const { b, plug } = generatorRig({}, 500);
    b.fixtureKind('f', { wattsW: 4000 });
    for (const way of [1, 2, 3]) plug('f', way, 0);
    expect(findings(b.plan(), 'power-volts-unbalance')).toEqual([]);
  });
});

describe('other people’s loads', () => {
  const newId = idMaker(() => 0.3);
  const withOther = (load: Omit<Parameters<typeof addOtherLoad>[1], 'owner'>) => {
    const { b, box, source, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 600, model: 'constant-current' });
    plug('f', 1, 0);
    const before = b.plan();
    const plan = applyChanges(before, addOtherLoad(before, { owner: 'Catering', ...load }, newId));
    return { plan, box, source, r: computePower(plan) };
  };

  it('power-other-load: amps on a way are added to its leg and printed as theirs', () => {
    const { plan, box, r } = withOther({
      what: 'kettle',
      amps: 10,
      on: { recordId: 'box-0002', wayId: '1' },
    });
    expect(r.figures.get(`${box.id}/1`, 'leg0A', 0)).toBeCloseTo(15, 1);
    const s = supplySummary(plan, assess(plan, { revision: 1 }));
    const way = s.sources[0]?.circuits.find((c) => c.key === `${box.id}/1`);
    expect(way?.loads.map((l) => [l.label, l.kindName])).toContainEqual(['Catering, kettle', 'other load']);
    expect(r.assumedLevels).toHaveLength(1);
  });

  it('power-other-load: amps on a three-leg port count on every leg', () => {
    const { source, r } = withOther({ amps: 20, on: { recordId: 'source-0001', portId: 'out' } });
    expect(r.figures.get(source.id, 'leg1A', 0)).toBeCloseTo(20, 6);
    expect(r.figures.get(source.id, 'leg2A', 0)).toBeCloseTo(20, 6);
  });

  it('power-other-load: watts go through the power factor', () => {
    const { r } = withOther({ wattsW: 960, powerFactor: 0.8, on: { recordId: 'box-0002', wayId: '2' } });
    expect(r.figures.get('box-0002/2', 'leg1A', 0)).toBeCloseTo(10, 1);
  });

  it('power-other-load: it can overload a breaker', () => {
    const { plan } = withOther({ amps: 12, on: { recordId: 'box-0002', wayId: '1' } });
    expect(findings(plan, 'power-breaker')).toHaveLength(1);
  });

  it('power-other-load: neither amps nor watts is told, and a way that is gone is a broken reference', () => {
    expect(
      findings(withOther({ on: { recordId: 'box-0002', wayId: '1' } }).plan, 'power-value'),
    ).toHaveLength(1);
    const { plan } = withOther({ amps: 1, on: { recordId: 'box-0002', wayId: 'x' } });
    expect(referenceProblems(plan).map((p) => p.field)).toEqual(['on']);
  });

  it('power-other-load: it goes with the box it is plugged into', () => {
    const { plan } = withOther({ amps: 1, on: { recordId: 'box-0002', wayId: '1' } });
    const after = applyChanges(plan, removeRecords(plan, new Set(['box-0002'])));
    expect([...after.records.values()].filter((x) => x.type === 'otherLoad')).toEqual([]);
  });
});
