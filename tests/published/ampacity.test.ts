import { describe, expect, it } from 'vitest';
import ampacity from '../../shared/ampacity.json' with { type: 'json' };
import { sameColumnA } from '../../src/derive/conductors.ts';
import { cableAmpacity, computePower } from '../../src/engines/power/index.ts';
import { assess } from '../../src/report/assess.ts';
import { gearRig } from '../support/gear-rig.ts';
import { PlanBuilder } from '../support/plan-builder.ts';

type Row = Readonly<Record<string, unknown>>;
const row = (table: string, conductor: string): Row => {
  const found = (ampacity.rows as readonly Row[]).find((r) => r.table === table && r.conductor === conductor);
  if (!found) throw new Error(`no ${conductor} in ${table}`);
  return found;
};

describe('ampacity tables', () => {
  it('power-limit: 12 AWG cord carries 20 A with three and 25 A with two loaded, 10 AWG 25 and 30 A (NEC 400.5(A)(1), public transcription)', () => {
    const cord = (id: string) => [row('nec-400.5(A)(1)', id).loaded3A, row('nec-400.5(A)(1)', id).loaded2A];
    expect([cord('awg:12'), cord('awg:10')]).toEqual([
      [20, 25],
      [25, 30],
    ]);
  });

  it('power-limit: 4/0 at 90 °C carries 405, 361 and 316 A, 2/0 at 75 °C 265, 238 and 208 A (NEC 400.5(A)(2), set-lighting handbook, appendix D)', () => {
    const heavy = (id: string, c: string) =>
      ['SingleA', 'Two', 'Three'].map((n) => row('nec-400.5(A)(2)', id)[`${c}${n}`]);
    expect(heavy('awg:4/0', 'c90')).toEqual([405, 361, 316]);
    expect(heavy('awg:2/0', 'c75')).toEqual([265, 238, 208]);
  });

  it('power-neutral-limit: a heavier neutral counts by the column of its legs: 4/0 beside 2/0 at 90 °C, 316 A beside 237 A (same table)', () => {
    expect(sameColumnA('awg:2/0', 237, 'awg:4/0')).toBe(316);
    const r = gearRig();
    r.kind('feeder-2-0-3ph-large-n');
    const k = [...r.plan().records.values()].find(
      (x) => x.type === 'kind' && x.slug === 'feeder-2-0-3ph-large-n',
    );
    if (k?.type !== 'kind' || k.family !== 'cable') throw new Error('no cable');
    expect(cableAmpacity(r.plan(), k)).toMatchObject({ legA: 237, neutralA: 316 });
  });
});

/** A three-phase service, a feeder, and one load of a kind on each leg. */
const feeder = (practice: 'north-america' | 'europe', thirdHarmonicPct: number, ampacityA: number) => {
  const b = new PlanBuilder({ practice });
  b.sourceKind('set', {
    what: 'service',
    system: practice === 'europe' ? '230/400' : '120/208',
    mainBreakerA: 1000,
    outlets: [{ id: 'out', connector: 'single-pole-400-3', legs: 3, neutral: true }],
  });
  b.boxKind('box', {
    inlets: [{ id: 'in', connector: 'single-pole-400-3', legs: 3, neutral: true }],
    outlets: [0, 1, 2].map((i) => ({
      id: `o${i}`,
      connector: 'stage-pin-20',
      legs: 1,
      neutral: true,
      wayId: `${i}`,
    })),
    ways: [0, 1, 2].map((i) => ({
      id: `${i}`,
      label: `${i}`,
      breakerA: 1000,
      poles: 1,
      curve: 'na' as const,
      legs: [i],
    })),
  });
  const k = b.cableKind('five-wire', {
    legs: 3,
    conductor: practice === 'europe' ? 'mm2:16' : 'awg:12',
    ampacityA,
    plug: 'single-pole-400-3',
    socket: 'single-pole-400-3',
  });
  b.cableKind('lead', {});
  b.fixtureKind('f', { wattsW: 500, thirdHarmonicPct });
  const s = b.source('set', { voltsV: practice === 'europe' ? 230 : 120 });
  const box = b.box('box');
  const cable = b.cable('five-wire', [s.id, 'out'], [box.id, 'in']);
  [0, 1, 2].forEach((i) => {
    const f = b.fixture('f');
    b.cable('lead', [box.id, `o${i}`], [f.id, 'in']);
  });
  const p = computePower(b.plan());
  return { k, limitA: p.limits[p.tree.byKey.get(cable.id)?.index ?? -1]?.leg?.limitA };
};

describe('feeders whose neutral is loaded', () => {
  it('power-neutral-loaded: 12 AWG cord with four loaded conductors, 20 A × 0.80: 16.0 A (NEC 310.15, neutral of mostly non-linear loads counts, forums.mikeholt.com 95097)', () => {
    expect(feeder('north-america', 33, 20).limitA).toBeCloseTo(16, 9);
    expect(feeder('north-america', 5, 20).limitA).toBeCloseTo(20, 9);
  });

  it('power-neutral-loaded: five-core 16 mm² with more than 15 % third harmonic carries 0.86 of 63 A (IEC 60364-5-52 table E.52.1, from memory; 63 A of BS 7671 table 4F1A, cse-distributors.co.uk)', () => {
    expect(feeder('europe', 20, 63).limitA).toBeCloseTo(54.18, 9);
    expect(feeder('europe', 10, 63).limitA).toBeCloseTo(63, 9);
  });

  it('power-dimmer-neutral: beside 620 A a leg the neutral wants 806 A (NEC 520.53(O)(2), ecmweb.com code quiz: 620 A × 1.30)', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-400'), { label: 'S1', voltsV: 120 });
    const dimmer = r.b.box(r.kind('dimmer-12x2400w-multi'), { label: 'D1' });
    const cable = r.run('feeder-4-0-3ph', [source.id, '1'], [dimmer.id, 'in']);
    const k = r.plan().records.get(cable.kindId);
    if (k?.type !== 'kind' || k.family !== 'cable') throw new Error('no cable');
    r.b.put({ ...k, ampacityA: 620 });
    const found = assess(r.plan(), { revision: 0 }).findings.find((f) => f.rule === 'power-dimmer-neutral');
    expect(Number(found?.params.wantedA)).toBeCloseTo(806, 6);
  });
});

describe('transformers', () => {
  it('power-transformer: full-load amps of 30, 75 and 112.5 kVA at 208 V are 83.3, 208 and 312 A (tables of dry transformers, from memory; computed from kVA ÷ (√3 × V))', () => {
    for (const [slug, amps] of [
      ['transformer-480-208-30kva', 83.3],
      ['transformer-480-208-75kva', 208],
      ['transformer-480-208-112kva', 312],
    ] as const) {
      const r = gearRig();
      const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 277 });
      const t = r.b.box(r.kind(slug), { label: 'T1' });
      r.run('feeder-4-0-3ph', [source.id, '1'], [t.id, 'in']);
      const p = computePower(r.plan());
      const limit = p.limits[p.tree.byKey.get(`${t.id}/output`)?.index ?? -1]?.leg?.limitA ?? 0;
      // Legs of 120 V in place of 208 ÷ √3 V.
      expect(Math.abs(limit - amps) / amps, slug).toBeLessThan(0.003);
    }
  });

  it('power-coupling: the feed of 75 kVA at 480 V takes 90.2 A where its output gives 208 A (same tables)', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 480 / Math.sqrt(3) });
    const id = r.kind('transformer-480-208-75kva');
    const k = r.plan().records.get(id);
    if (k?.type !== 'kind' || k.family !== 'converter') throw new Error('no transformer');
    r.b.put({ ...k, efficiencyPct: 100, outputV: 208 / Math.sqrt(3) });
    const t = r.b.box(id, { label: 'T1' });
    r.run('feeder-4-0-3ph', [source.id, '1'], [t.id, 'in'], 0);
    const load = r.b.boxKind('bank', {
      inlets: [{ id: 'in', connector: 'single-pole-400-3', legs: 3, neutral: true }],
      outlets: [{ id: 'o', connector: 'single-pole-400-3', legs: 3, neutral: true }],
    });
    const bank = r.b.box(load.id, { label: 'B' });
    r.run('feeder-4-0-3ph', [t.id, '1'], [bank.id, 'in'], 0);
    r.b.put({
      id: 'other',
      type: 'otherLoad',
      owner: 'Bank',
      what: '',
      on: { recordId: bank.id, portId: 'o' },
      amps: 208.2,
      powerFactor: 1,
    });
    const p = computePower(r.plan());
    // Constant current at volts a little below nominal by its impedance: within two per cent.
    expect(p.figures.get(source.id, 'leg0A', 0) / p.figures.get(bank.id, 'leg0A', 0)).toBeCloseTo(
      90.2 / 208.2,
      3,
    );
  });
});

describe('tungsten', () => {
  it('power-load-model: at 95 % of its volts a lamp draws 0.972 of its amps and 0.924 of its watts (exponent 0.55 of en.wikipedia.org/wiki/Lamp_rerating)', () => {
    const b = new PlanBuilder();
    b.sourceKind('house', {
      what: 'wall-circuit',
      system: '120',
      ways: [{ id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
      outlets: [{ id: '1', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: '1' }],
    });
    b.cableKind('lead');
    b.fixtureKind('lamp', { wattsW: 1000, model: 'tungsten' });
    const s = b.source('house', { voltsV: 114 });
    const f = b.fixture('lamp');
    b.cable('lead', [s.id, '1'], [f.id, 'in'], 0);
    const p = computePower(b.plan());
    expect(p.figures.get(f.id, 'leg0A', 0) / (1000 / 120)).toBeCloseTo(0.9722, 4);
    expect(p.figures.get(f.id, 'inW', 0) / 1000).toBeCloseTo(0.9236, 4);
  });
});

describe('phase-cut dimmers', () => {
  it('power-dimmer-cut: cut at 90° a lamp runs on half its watts with 0.7071 of its amps (rms of a half-cut sine, any textbook of power electronics)', () => {
    const r = gearRig();
    const house = r.b.source(r.kind('wall-circuit-15'), { label: 'W', voltsV: 120 });
    const dimmer = r.b.box(r.kind('dimmer-line-1kw'), { label: 'D1' });
    r.run('cord-12-3', [house.id, '1a'], [dimmer.id, 'in'], 0);
    r.b.fixtureKind(
      'lamp',
      { wattsW: 1000, model: 'constant-impedance', voltsMinV: 60, voltsMaxV: 126 },
      {
        inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }],
      },
    );
    const f = r.b.fixture('lamp', { unit: '1' });
    r.run('cord-12-3', [dimmer.id, '1'], [f.id, 'in'], 0);
    const setup = r.b.setup('Half', 0);
    r.b.level(setup.id, f.id, 50);
    const p = computePower(r.plan());
    expect(p.figures.get(f.id, 'leg0A', 0) / (1000 / 120)).toBeCloseTo(Math.SQRT1_2, 4);
  });
});
