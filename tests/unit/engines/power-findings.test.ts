import { describe, expect, it } from 'vitest';
import type { EngineFinding } from '../../../src/derive/findings.ts';
import { computePower } from '../../../src/engines/power/index.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { generatorRig, PlanBuilder } from '../../support/plan-builder.ts';

const findings = (plan: Plan, rule: string): readonly EngineFinding[] =>
  computePower(plan).findings.filter((f) => f.rule === rule);
const rules = (plan: Plan): string[] => [...new Set(computePower(plan).findings.map((f) => f.rule))].sort();

describe('breakers under the load rules', () => {
  /** One constant-current load on one way of a rig without cable resistance. */
  const withAmps = (amps: number, plan: Parameters<typeof generatorRig>[0] = {}) => {
    const volts = plan?.practice === 'europe' ? 230 : 120;
    const { b, inlets, plug, box, feeder } = generatorRig(plan);
    b.records.set(feeder.id, { ...feeder, piecesMm: [0] });
    b.fixtureKind('f', { wattsW: amps * volts, model: 'constant-current' }, { inlets });
    plug('f', 1, 0);
    return { plan: b.plan(), way: `${box.id}/1` };
  };

  it('power-limit: North America: a 20 A breaker takes 16 A and not 16.1 A', () => {
    expect(findings(withAmps(16).plan, 'power-breaker')).toEqual([]);
    const { plan, way } = withAmps(16.1);
    const [f] = findings(plan, 'power-breaker');
    expect(f).toMatchObject({ severity: 'stop', about: way, params: { limitA: 16, ratingA: 20, leg: 'A' } });
    expect(f?.params.amps).toBeCloseTo(16.1, 6);
  });

  it('power-limit: Europe: a 16 A breaker takes 16 A and not 16.1 A', () => {
    expect(findings(withAmps(16, { practice: 'europe' }).plan, 'power-breaker')).toEqual([]);
    expect(findings(withAmps(16.1, { practice: 'europe' }).plan, 'power-breaker')).toHaveLength(1);
  });

  it('power-limit: an override in the plan takes the place of the table', () => {
    const limits = [{ limit: 'breaker-load-factor', value: 1, reason: 'listed for 100 %' }];
    expect(findings(withAmps(19, { limits }).plan, 'power-breaker')).toEqual([]);
    expect(findings(withAmps(20.5, { limits }).plan, 'power-breaker')).toHaveLength(1);
  });

  it('power-over: names the worst setup and all others it holds in', () => {
    const { b, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 2400 });
    const f = plug('f', 1, 0).fixture;
    const setups = [b.setup('A', 1), b.setup('B', 2), b.setup('C', 3)];
    [85, 100, 50].forEach((level, i) => {
      b.level(setups[i]?.id ?? '', f.id, level);
    });
    const [found] = findings(b.plan(), 'power-breaker');
    expect([found?.setups, found?.worstSetup]).toEqual([[0, 1], 1]);
    expect(found?.figureKey).toMatch(new RegExp(`@${setups[1]?.id}$`));
  });

  it('power-over: the inlet behind an overloaded cable is not told twice', () => {
    const { plan } = withAmps(21);
    expect(findings(plan, 'power-connector')).toHaveLength(1);
  });
});

describe('cables, connectors and neutrals', () => {
  it('power-limit: a cable over its ampacity, and less of it in warm air', () => {
    const rig = (ambientC: number) => {
      const { b, plug } = generatorRig({ ambientC });
      b.cableKind('lead', { ampacityA: 12 });
      b.fixtureKind('f', { wattsW: 1320, model: 'constant-current' });
      plug('f', 1, 0);
      return b.plan();
    };
    expect(findings(rig(30), 'power-cable')).toEqual([]);
    const [f] = findings(rig(40), 'power-cable');
    expect(f?.params.limitA).toBeCloseTo(12 * 0.82, 9);
    expect(findings(rig(60), 'power-ambient')).toHaveLength(1);
  });

  it('power-neutral-limit: the neutral is held to its full rating, not to 80 %, and no breaker guards it', () => {
    const rig = (amps: number, neutralConductor?: string) => {
      const { b, plug, feeder } = generatorRig({}, 500);
      b.records.set(feeder.id, { ...feeder, piecesMm: [0] });
      b.cableKind('feeder', {
        legs: 3,
        conductor: 'awg:2',
        ampacityA: 100,
        plug: 'single-pole-400-3',
        socket: 'single-pole-400-3',
        ...(neutralConductor ? { neutralConductor } : {}),
      });
      b.fixtureKind('f', { wattsW: amps * 60, model: 'constant-current' });
      for (const way of [1, 2, 4, 5]) plug('f', way, 0);
      return b.plan();
    };
    // Two legs of a wye at equal amps put the same amps on the neutral.
    expect(findings(rig(95), 'power-neutral')).toEqual([]);
    const [f] = findings(rig(95, 'awg:4'), 'power-neutral');
    expect(f?.params.amps).toBeCloseTo(95, 1);
    expect(f?.params.limitA).toBeCloseTo((100 * 21.2) / 33.6, 6);
  });

  it('power-neutral-limit: an inlet’s neutral is held to its connector', () => {
    const b = new PlanBuilder();
    const plug = 'nema-l21-30';
    const way = (l: number) => ({
      id: `w${l}`,
      label: String(l + 1),
      breakerA: 100,
      poles: 1,
      curve: 'na' as const,
      legs: [l],
    });
    b.sourceKind('s', { system: '120/208', outlets: [{ id: 'o', connector: plug, legs: 3, neutral: true }] });
    b.cableKind('c', { legs: 3, plug, socket: plug, ampacityA: 100, conductor: 'awg:4' });
    b.cableKind('lead');
    b.boxKind('box', {
      inlets: [{ id: 'in', connector: plug, legs: 3, neutral: true }],
      ways: [0, 1].map(way),
      outlets: [0, 1].map((l) => ({
        id: `o${l}`,
        connector: 'stage-pin-20',
        legs: 1,
        neutral: true,
        wayId: `w${l}`,
      })),
    });
    b.fixtureKind('f', { wattsW: 35 * 120, model: 'constant-current' });
    const s = b.source('s');
    const box = b.box('box');
    b.cable('c', [s.id, 'o'], [box.id, 'in'], 0);
    for (const l of [0, 1]) b.cable('lead', [box.id, `o${l}`], [b.fixture('f').id, 'in'], 0);
    const f = findings(b.plan(), 'power-neutral').find((x) => x.about === box.id);
    expect(f?.params).toMatchObject({ limitA: 30, setBy: 'connector' });
    expect(f?.params.amps).toBeCloseTo(35, 6);
  });

  it('power-weaker: a cable below the breaker ahead of it, but not a 16 AWG cord on 20 A', () => {
    const rig = (breakerA: number, ampacityA: number, conductor: string) => {
      const { b, box, plug } = generatorRig();
      b.records.set(box.id, {
        ...box,
        ways: [{ id: '1', label: '1', breakerA, poles: 1, curve: 'na', legs: [0] }],
      });
      b.cableKind('lead', { ampacityA, conductor });
      b.fixtureKind('f', { wattsW: 100 });
      plug('f', 1);
      return findings(b.plan(), 'power-weaker');
    };
    expect(rig(20, 13, 'awg:16')).toEqual([]);
    expect(rig(20, 10, 'awg:18')[0]?.params).toMatchObject({ what: 'cable', ratingA: 10, breakerA: 20 });
    expect(rig(30, 25, 'awg:12')[0]?.params).toMatchObject({ what: 'connector', ratingA: 20, breakerA: 30 });
  });

  it('power-weaker: a wall outlet below its circuit', () => {
    const b = new PlanBuilder();
    b.sourceKind('p', { what: 'house-panel', system: '120' });
    const way = (id: string, breakerA: number) => ({
      id,
      label: id,
      breakerA,
      poles: 1,
      curve: 'na' as const,
      legs: [0],
    });
    const s = b.source('p', { ways: [way('1', 20), way('2', 30)] });
    b.outlet(s.id, '1', { connector: 'nema-5-15' });
    const bad = b.outlet(s.id, '2', { connector: 'nema-5-15' });
    expect(findings(b.plan(), 'power-weaker').map((f) => f.about)).toEqual([bad.id]);
  });

  it('power-unguarded: a run from a source without any breaker', () => {
    const { b, source } = generatorRig();
    b.sourceKind('set', {
      system: '120/208',
      ratedKva: 100,
      outlets: [{ id: 'out', connector: 'single-pole-400-3', legs: 3, neutral: true }],
    });
    expect(findings(b.plan(), 'power-unguarded')[0]?.recordIds).toContain(source.id);
  });

  it('power-length: pieces chosen too short are told', () => {
    const { b, box } = generatorRig();
    b.fixtureKind('f');
    const f = b.fixture('f', { at: { xMm: 9000, yMm: 0 } });
    const c = b.cable('lead', [box.id, 'o1'], [f.id, 'in'], 7620);
    expect(findings(b.plan(), 'power-cable-short')[0]).toMatchObject({
      about: c.id,
      params: { totalMm: 7620, neededMm: 9900 },
    });
  });

  it('power-defect: two plugs in one outlet of a box, three in a wall outlet', () => {
    const { b, box, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 100 });
    plug('f', 1);
    plug('f', 1);
    expect(findings(b.plan(), 'power-outlet-shared')[0]?.about).toBe(`${box.id}/o1`);
    const p = new PlanBuilder();
    p.sourceKind('p', {
      what: 'house-panel',
      system: '120',
      ways: [{ id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
    });
    p.cableKind('c', { plug: 'nema-5-15', socket: 'nema-5-15' });
    p.fixtureKind(
      'f',
      { wattsW: 10 },
      { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] },
    );
    const s = p.source('p');
    const o = p.outlet(s.id, '1');
    for (let i = 0; i < 2; i++) p.cable('c', [o.id, 'out'], [p.fixture('f').id, 'in']);
    expect(findings(p.plan(), 'power-outlet-shared')).toEqual([]);
    p.cable('c', [o.id, 'out'], [p.fixture('f').id, 'in']);
    expect(findings(p.plan(), 'power-outlet-shared')).toHaveLength(1);
  });
});

describe('sets', () => {
  const set = (kva: number, load: object, ways: readonly number[], kw?: number) => {
    const { b, source, plug } = generatorRig({}, kva);
    b.sourceKind('set', {
      system: '120/208',
      ratedKva: kva,
      ...(kw === undefined ? {} : { ratedKw: kw }),
      outlets: [{ id: 'out', connector: 'single-pole-400-3', legs: 3, neutral: true }],
    });
    b.fixtureKind('f', load);
    for (const w of ways) plug('f', w, 0);
    return { plan: b.plan(), source };
  };

  it('power-rating: kVA can be over while kW are not, and the other way round', () => {
    const poor = set(9, { wattsW: 1800, powerFactor: 0.5 }, [1, 2, 3], 7.2).plan;
    expect(findings(poor, 'power-generator-kva')).toHaveLength(1);
    expect(findings(poor, 'power-generator-kw')).toEqual([]);
    const good = set(9, { wattsW: 2600, powerFactor: 1 }, [1, 2, 3]).plan;
    expect(findings(good, 'power-generator-kva')).toEqual([]);
    expect(findings(good, 'power-generator-kw')[0]?.params).toMatchObject({ ratedW: 7200, derived: 'kw' });
  });

  it('power-generator-leg: one leg of a three-phase set carries a third of its kVA', () => {
    const { plan } = set(9, { wattsW: 1900, powerFactor: 1 }, [1, 4]);
    expect(findings(plan, 'power-generator-leg')[0]?.params).toMatchObject({ limitA: 25, leg: 'A' });
  });

  it('power-generator-light: below 30 % of its rating, and not where nothing runs', () => {
    const light = set(100, { wattsW: 1000 }, [1, 2, 3]).plan;
    const [f] = findings(light, 'power-generator-light');
    expect(f?.severity).toBe('warn');
    expect(f?.params.pct).toBeCloseTo(3.75, 1);
    expect(findings(set(100, { wattsW: 0 }, [1]).plan, 'power-generator-light')).toEqual([]);
    expect(findings(set(12, { wattsW: 1000 }, [1, 2, 3]).plan, 'power-generator-light')).toEqual([]);
  });

  it('power-unbalance: is judged against the rating of a leg, so that small currents raise nothing', () => {
    expect(findings(set(100, { wattsW: 1000 }, [1]).plan, 'power-unbalance')).toEqual([]);
    const [f] = findings(set(9, { wattsW: 1000 }, [1]).plan, 'power-unbalance');
    expect(f?.params).toMatchObject({ leg: 'A' });
    expect(f?.params.deviationA).toBeCloseTo((8.33 * 2) / 3, 1);
  });
});

describe('volts', () => {
  it('power-wrong-volts: a 120 V lamp leg to leg on 208 V', () => {
    const b = new PlanBuilder();
    b.sourceKind('s', {
      system: '120/208',
      outlets: [{ id: 'o', connector: 'nema-l6-20', legs: 2, neutral: false }],
    });
    b.cableKind('c', { legs: 2, neutral: false, plug: 'nema-l6-20', socket: 'nema-l6-20' });
    b.fixtureKind(
      'f',
      { voltsMaxV: 130 },
      { inlets: [{ id: 'in', connector: 'nema-l6-20', legs: 2, neutral: false }] },
    );
    const s = b.source('s');
    const f = b.fixture('f');
    b.cable('c', [s.id, 'o'], [f.id, 'in'], 0);
    expect(findings(b.plan(), 'power-wrong-volts')[0]).toMatchObject({ severity: 'stop', about: f.id });
    expect(rules(b.plan())).not.toContain('power-volts-high');
  });

  it('power-volts: under the kind’s least warns, over its most stops', () => {
    const rig = (voltsV: number) => {
      const { b, source, plug } = generatorRig();
      b.records.set(source.id, { ...source, voltsV });
      b.fixtureKind('f', { wattsW: 100, voltsMinV: 110, voltsMaxV: 125 });
      plug('f', 1, 0);
      return b.plan();
    };
    expect(findings(rig(109), 'power-volts-low')[0]?.severity).toBe('warn');
    expect(findings(rig(126), 'power-volts-high')[0]?.severity).toBe('stop');
    expect(rules(rig(118)).filter((r) => r.startsWith('power-volts'))).toEqual([]);
  });

  it('power-drop: 3 % in the branch is a note, 5 % in all a warning, told once for a circuit', () => {
    const rig = (lengthFt: number) => {
      const { b, plug } = generatorRig();
      b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' });
      plug('f', 1, lengthFt * 304.8);
      plug('f', 1, 1);
      return findings(b.plan(), 'power-drop');
    };
    expect(rig(50)).toEqual([]);
    expect(rig(100).map((f) => [f.severity, f.params.part])).toEqual([['note', 'branch']]);
    expect(rig(160).map((f) => [f.severity, f.params.part])).toEqual([['warn', 'total']]);
  });

  it('power-drop: Europe: 3 % on a public supply, 6 % on a set', () => {
    const rig = (what: 'generator' | 'service') => {
      const { b, inlets, source, plug } = generatorRig({ practice: 'europe' });
      b.sourceKind('set', {
        what,
        system: '230/400',
        mainBreakerA: 400,
        outlets: [{ id: 'out', connector: 'single-pole-400-eu-3', legs: 3, neutral: true }],
      });
      b.records.set(source.id, { ...source, voltsV: 230 });
      b.fixtureKind('f', { wattsW: 2300, model: 'constant-current' }, { inlets });
      plug('f', 1, 50_000);
      return findings(b.plan(), 'power-drop');
    };
    expect(rig('generator')).toEqual([]);
    expect(rig('service')[0]?.params).toMatchObject({ limitPct: 3 });
  });

  it('power-flow: a network without a solution is a stop that names the run, and leaves no figure', () => {
    const { b, plug, source } = generatorRig();
    b.cableKind('thin', { conductor: 'awg:18', ampacityA: 7 });
    b.fixtureKind('f', { wattsW: 6000 });
    const p = plug('f', 1);
    b.records.set(p.cable.id, { ...p.cable, kindId: 'thin', piecesMm: [300_000], label: 'W9' });
    const plan = b.plan();
    const [f] = findings(plan, 'power-unsettled');
    expect(f).toMatchObject({ severity: 'stop', params: { run: 'W9' } });
    expect(f?.recordIds).toEqual([p.cable.id, source.id]);
    expect(computePower(plan).figures.get(source.id, 'leg0A', 0)).toBeNaN();
  });

  it('power-flow: one setup without a solution does not take the others with it', () => {
    const { b, plug, source } = generatorRig();
    b.fixtureKind('f', { wattsW: 6000 });
    const p = plug('f', 1, 300_000);
    const [full, low] = [b.setup('Full', 1), b.setup('Low', 2)];
    b.level(full.id, p.fixture.id, 100);
    b.level(low.id, p.fixture.id, 5);
    const { figures, findings: found } = computePower(b.plan());
    expect(figures.get(source.id, 'leg0A', 0)).toBeNaN();
    expect(figures.get(source.id, 'leg0A', 1)).toBeGreaterThan(2);
    expect(found.find((f) => f.rule === 'power-unsettled')?.setups).toEqual([0]);
  });
});
