import { describe, expect, it } from 'vitest';
import type { Quantity } from '../../../src/derive/types.ts';
import { computePower } from '../../../src/engines/power/index.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { explainOrWhy } from '../../../src/report/explain.ts';
import { generatorRig, PlanBuilder } from '../../support/plan-builder.ts';

const figure = (plan: Plan, key: string, q: Quantity, setup = 0): number =>
  computePower(plan).figures.get(key, q, setup);

describe('loads', () => {
  it('power-load: watts follow the level from standby to rated, volt-amperes divide by the power factor', () => {
    const { b, box, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 500, standbyW: 20, powerFactor: 0.8 });
    const f = plug('f', 1).fixture;
    const [full, half, off] = [b.setup('Full', 1), b.setup('Half', 2), b.setup('Off', 3)];
    b.level(full.id, f.id, 100);
    b.level(half.id, f.id, 50);
    b.level(off.id, f.id, 0);
    const plan = b.plan();
    expect([0, 1, 2].map((s) => figure(plan, f.id, 'loadW', s))).toEqual([500, 260, 20]);
    expect(figure(plan, f.id, 'loadVa', 1)).toBeCloseTo(325, 9);
    expect(figure(plan, box.id, 'loadW', 2)).toBe(20);
  });

  it('power-load: a fixture without a level is at full, a plan without setups is computed once', () => {
    const { b, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 700 });
    const f = plug('f', 1).fixture;
    expect(computePower(b.plan()).setups).toEqual([{ id: 'all', name: 'Everything at full' }]);
    b.setup('Night', 1);
    const r = computePower(b.plan());
    expect(r.figures.get(f.id, 'loadW', 0)).toBe(700);
    expect(r.assumedLevels).toEqual([f.id]);
  });

  it('power-load: a fixture on packs draws nothing from the mains it is plugged into', () => {
    const { b, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 700 });
    const f = plug('f', 1).fixture;
    b.records.set(f.id, { ...f, onPacks: true });
    expect(figure(b.plan(), f.id, 'loadW')).toBe(0);
    expect(figure(b.plan(), f.id, 'leg0A')).toBe(0);
  });

  it('power-load: a ballast follows the level of its head', () => {
    const { b, box } = generatorRig();
    b.fixtureKind('head', null, { needsBallast: true, inlets: [] });
    b.ballastKind('ballast', { wattsW: 1300 });
    const head = b.fixture('head');
    const ballast = b.ballast('ballast', head.id);
    b.cable('lead', [box.id, 'o1'], [ballast.id, 'in']);
    b.level(b.setup('Night', 1).id, head.id, 50);
    expect(figure(b.plan(), ballast.id, 'loadW')).toBe(650);
  });

  it('power-load: watts of the same sum but opposite vars cancel in volt-amperes', () => {
    const { b, source, plug } = generatorRig();
    b.fixtureKind('lag', { wattsW: 600, powerFactor: 0.6 });
    b.fixtureKind('leading', { wattsW: 600, powerFactor: 0.6, leading: true });
    plug('lag', 1);
    plug('leading', 4);
    expect(figure(b.plan(), source.id, 'loadW')).toBeCloseTo(1200, 9);
    expect(figure(b.plan(), source.id, 'loadVa')).toBeCloseTo(1200, 9);
  });
});

describe('how loads follow their volts', () => {
  /** Amps of a 1,200 W load on a set at a given voltage, without cable. */
  const amps = (voltsV: number, load: object): number => {
    const { b, source, box } = generatorRig();
    b.records.set(source.id, { ...source, voltsV });
    b.fixtureKind('f', { wattsW: 1200, ...load });
    const f = b.fixture('f');
    b.cable('lead', [box.id, 'o1'], [f.id, 'in'], 0);
    for (const [id, r] of b.records) if (r.type === 'cable') b.records.set(id, { ...r, piecesMm: [0] });
    return figure(b.plan(), f.id, 'leg0A');
  };

  it('power-load-model: at nine tenths of the volts each model draws what its exponent says', () => {
    expect(amps(108, { model: 'constant-power' })).toBeCloseTo(10 / 0.9, 6);
    expect(amps(108, { model: 'constant-current' })).toBeCloseTo(10, 6);
    expect(amps(108, { model: 'constant-impedance' })).toBeCloseTo(9, 6);
    expect(amps(108, { model: 'tungsten' })).toBeCloseTo(10 * 0.9 ** 0.55, 6);
    expect(amps(108, { model: 'exponential', expP: 1.5, expQ: 2 })).toBeCloseTo(10 * 0.9 ** 0.5, 6);
  });

  it('power-load-model: the tungsten exponent comes from the limits table and can be overridden', () => {
    const { b, source, plug } = generatorRig({
      limits: [{ limit: 'tungsten-current-exponent', value: 0, reason: 'test' }],
    });
    b.records.set(source.id, { ...source, voltsV: 108 });
    b.fixtureKind('f', { wattsW: 1200, model: 'tungsten' });
    const p = plug('f', 1, 0);
    expect(figure(b.plan(), p.fixture.id, 'leg0A')).toBeCloseTo(10, 6);
  });
});

describe('how loads lie over the legs', () => {
  const on = (
    inlet: { legs: number; neutral: boolean },
    load: object,
    system: '120/208' | '120/240' = '120/208',
  ) => {
    const b = new PlanBuilder();
    const plug = 'nema-l21-30';
    const legs = inlet.legs;
    b.sourceKind('s', { system, outlets: [{ id: 'o', connector: plug, legs, neutral: inlet.neutral }] });
    b.cableKind('c', { legs, neutral: inlet.neutral, plug, socket: plug });
    b.fixtureKind('f', { wattsW: 2400, ...load }, { inlets: [{ id: 'in', connector: plug, ...inlet }] });
    const s = b.source('s', { voltsV: 120 });
    const f = b.fixture('f');
    b.cable('c', [s.id, 'o'], [f.id, 'in'], 0);
    const plan = b.plan();
    return (['leg0A', 'leg1A', 'leg2A', 'neutralA'] as const).map((q) =>
      Number(figure(plan, f.id, q).toFixed(4)),
    );
  };

  it('power-legs: two legs without neutral lie leg to leg', () => {
    const a = Number((2400 / (120 * Math.sqrt(3))).toFixed(4));
    expect(on({ legs: 2, neutral: false }, {})).toEqual([a, a, 0, 0]);
    expect(on({ legs: 2, neutral: false }, {}, '120/240')).toEqual([10, 10, 0, 0]);
  });

  it('power-legs: two legs with neutral: leg to leg where its volts allow, else half on each', () => {
    expect(on({ legs: 2, neutral: true }, { voltsMaxV: 250 }, '120/240')).toEqual([10, 10, 0, 0]);
    expect(on({ legs: 2, neutral: true }, { voltsMaxV: 130 }, '120/240')).toEqual([10, 10, 0, 0]);
    expect(on({ legs: 2, neutral: true }, { voltsMaxV: 130 })).toEqual([10, 10, 0, 10]);
  });

  it('power-legs: three legs in wye and in delta draw the same line current', () => {
    const a = Number((800 / 120).toFixed(4));
    expect(on({ legs: 3, neutral: true }, {})).toEqual([a, a, a, 0]);
    expect(on({ legs: 3, neutral: false }, {})).toEqual([a, a, a, 0]);
  });
});

describe('volts of the source', () => {
  const house = (voltsV?: number) => {
    const b = new PlanBuilder();
    b.sourceKind('panel', { what: 'house-panel', system: '120/240' });
    b.cableKind('c', { plug: 'nema-5-15', socket: 'nema-5-15' });
    b.fixtureKind(
      'f',
      { wattsW: 1200 },
      { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] },
    );
    const s = b.source('panel', {
      ways: [{ id: '1', label: '1', breakerA: 15, poles: 1, curve: 'na', legs: [0] }],
      ...(voltsV === undefined ? {} : { voltsV }),
    });
    const o = b.outlet(s.id, '1');
    const f = b.fixture('f');
    b.cable('c', [o.id, 'out'], [f.id, 'in'], 30480);
    return { plan: b.plan(), s, f };
  };

  it('power-source-volts: those of a house are not assumed: amps at nominal, the fall is known, volts are not', () => {
    const { plan, s, f } = house();
    expect(figure(plan, f.id, 'leg0A')).toBeCloseTo(10, 9);
    expect(figure(plan, f.id, 'dropV')).toBeCloseTo(3.96, 2);
    for (const q of ['voltsV', 'dropPct', 'inW', 'inVa'] as const) expect(figure(plan, f.id, q)).toBeNaN();
    expect(computePower(plan).findings.map((x) => [x.rule, x.recordIds[0]])).toContainEqual([
      'power-volts-unknown',
      s.id,
    ]);
  });

  it('power-source-volts: measured volts are used', () => {
    const { plan, f } = house(114);
    expect(figure(plan, f.id, 'voltsV')).toBeLessThan(111);
    expect(figure(plan, f.id, 'voltsV')).toBeGreaterThan(109);
    expect(figure(plan, f.id, 'leg0A')).toBeGreaterThan(10.8);
  });

  it.each([0, -120, Number.NaN])('power-defect: volts of %s are not computed with', (v) => {
    const { plan, s } = house(v);
    expect(computePower(plan).tree.byKey.get(s.id)?.notComputed).toBeDefined();
    expect(figure(plan, s.id, 'leg0A')).toBeNaN();
  });
});

describe('volts at the ends', () => {
  it('power-volts: the neutral’s own drop counts: an unloaded leg can rise', () => {
    const { b, box, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 12_000, model: 'constant-current' });
    plug('f', 1, 0);
    const plan = b.plan();
    expect(figure(plan, `${box.id}/1`, 'voltsV')).toBeLessThan(120);
    expect(figure(plan, `${box.id}/2`, 'voltsV')).toBeGreaterThan(120);
    expect(figure(plan, `${box.id}/2`, 'dropV')).toBeLessThan(0);
  });

  it('power-impedance: two conductors in parallel halve the drop', () => {
    const drop = (parallel: number): number => {
      const { b, plug } = generatorRig();
      b.cableKind('feeder', {
        legs: 3,
        conductor: 'awg:2',
        parallel,
        plug: 'single-pole-400-3',
        socket: 'single-pole-400-3',
      });
      b.fixtureKind('f', { wattsW: 2400, model: 'constant-current' });
      const f = plug('f', 1, 0).fixture;
      return figure(b.plan(), f.id, 'dropV');
    };
    expect(drop(1) / drop(2)).toBeCloseTo(2, 3);
  });

  it('power-impedance: a thinner neutral loses more', () => {
    const drop = (neutralConductor: string): number => {
      const { b, plug } = generatorRig();
      b.cableKind('lead', { neutralConductor });
      b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' });
      const f = plug('f', 1).fixture;
      return figure(b.plan(), f.id, 'dropV');
    };
    expect(drop('awg:14')).toBeGreaterThan(drop('awg:12') * 1.2);
  });
});

describe('the worst of all setups', () => {
  it('power-worst: is the largest figure with its setup, for volts the least', () => {
    const { b, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 1000 });
    const f = plug('f', 1).fixture;
    const setups = [b.setup('A', 1), b.setup('B', 2), b.setup('C', 3)];
    [30, 90, 60].forEach((level, i) => {
      b.level(setups[i]?.id ?? '', f.id, level);
    });
    const { figures } = computePower(b.plan());
    expect(figures.worst(f.id, 'leg0A')).toEqual({ value: figures.get(f.id, 'leg0A', 1), setupIndex: 1 });
    expect(figures.worst(f.id, 'voltsV')).toEqual({ value: figures.get(f.id, 'voltsV', 1), setupIndex: 1 });
    expect(figures.worst('nothing', 'leg0A').setupIndex).toBe(-1);
  });
});

describe('how the load flow came to rest', () => {
  it('power-flow: the working of a figure tells its passes and the last change of any volt', () => {
    const { b, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 1000 });
    const f = plug('f', 1).fixture;
    const plan = b.plan();
    const { sweep } = [...computePower(plan).sources.values()][0]?.setups[0] ?? {};
    expect(sweep?.passes).toBeGreaterThan(2);
    expect(sweep?.changeV).toBeLessThan(1e-8);
    for (const q of ['dropPct', 'neutralA']) {
      const w = explainOrWhy(plan, `${q}@${f.id}@all`);
      const line = w.ok ? w.value.inputs.find((i) => i.name === 'load flow') : undefined;
      expect(line?.value).toBe(`at rest after ${sweep?.passes} passes`);
      expect(line?.from).toMatch(/1e-8 V is rest/);
    }
  });
});
