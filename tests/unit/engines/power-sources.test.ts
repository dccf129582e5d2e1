import { describe, expect, it } from 'vitest';
import { computePower } from '../../../src/engines/power/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { findingText } from '../../../src/report/text.ts';
import { gearRig } from '../../support/gear-rig.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const household = { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] };

/** A house circuit and another source, a unit on each, so far apart. */
const pair = (slug: string, apartMm: number) => {
  const r = gearRig();
  const house = r.b.source(r.kind('wall-circuit-15'), {
    label: 'House',
    voltsV: 120,
    at: { xMm: -20_000, yMm: 0 },
  });
  const other = r.b.source(r.kind(slug), { label: 'Other', voltsV: 120, at: { xMm: 20_000, yMm: 0 } });
  r.b.fixtureKind(
    'f',
    { wattsW: 300 },
    { ...household, modes: [{ id: 'm', name: 'M', slots: 4, parts: 1 }] },
  );
  const one = r.b.fixture('f', { unit: '1', at: { xMm: 0, yMm: 0 } });
  const two = r.b.fixture('f', { unit: '2', at: { xMm: apartMm, yMm: 0 } });
  const port = (id: string): string => {
    const k = r.plan().records.get(id);
    return k?.type === 'kind' && k.family === 'source'
      ? (k.outlets.find((o) => o.connector.startsWith('nema-5'))?.id ?? '')
      : '';
  };
  r.run('cord-12-3', [house.id, '1a'], [one.id, 'in']);
  r.run('cord-12-3', [other.id, port(other.kindId)], [two.id, 'in']);
  return { ...r, house, other, one, two };
};
const found = (r: ReturnType<typeof pair>, rule: string) =>
  assess(r.plan(), { revision: 0 }).findings.filter((f) => f.rule === rule);

describe('two supplies', () => {
  it('power-two-sources: a set and a house within 2.5 m of one another are for a qualified person', () => {
    const near = found(pair('generator-2kw-1ph', 2000), 'power-two-sources');
    expect(near).toHaveLength(1);
    expect(near[0]?.severity).toBe('warn');
    const r = pair('generator-2kw-1ph', 2000);
    const [f] = found(r, 'power-two-sources');
    expect(f && findingText(r.plan(), f).todo).toMatch(/qualified person/);
    expect(found(pair('generator-2kw-1ph', 3000), 'power-two-sources')).toEqual([]);
    expect(found(pair('power-station-600w', 1000), 'power-two-sources')).toHaveLength(1);
  });

  it('power-two-sources: two circuits of one house are one supply, and so is a source with nothing on it', () => {
    expect(found(pair('wall-circuit-20', 500), 'power-two-sources')).toEqual([]);
    const r = pair('generator-2kw-1ph', 500);
    r.b.put({ ...r.two, onPacks: true });
    expect(found(r, 'power-two-sources')).toEqual([]);
  });

  it('power-shared-data: a data line between units on a set and on a house is told once, however far apart they are', () => {
    const r = pair('generator-2kw-1ph', 30_000);
    expect(found(r, 'power-shared-data')).toEqual([]);
    r.b.put({
      id: 'line',
      type: 'line',
      label: 'L1',
      from: { recordId: r.one.id, portId: 'through' },
      stops: [r.two.id],
      routes: [],
      terminated: false,
    });
    const told = found(r, 'power-shared-data');
    expect(told.map((f) => [f.severity, f.params.label])).toEqual([['warn', 'L1']]);
  });
});

describe('what a source loses by itself', () => {
  const house = (
    loopOhm: number | undefined,
    what: 'wall-circuit' | 'generator' = 'wall-circuit',
    limits: object[] = [],
  ) => {
    const b = new PlanBuilder({ limits: limits as never });
    b.sourceKind('s', {
      what,
      system: '120',
      ratedKva: 2.4,
      ratedKw: 1.92,
      ways: [{ id: '1', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] }],
      outlets: [{ id: '1', connector: 'stage-pin-20', legs: 1, neutral: true, wayId: '1' }],
    });
    b.cableKind('lead');
    b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' });
    const s = b.source('s', { voltsV: 120, ...(loopOhm === undefined ? {} : { loopOhm }) });
    const f = b.fixture('f');
    b.cable('lead', [s.id, '1'], [f.id, 'in'], 0);
    const p = computePower(b.plan());
    return { volts: p.figures.get(f.id, 'voltsV', 0), drop: p.figures.get(s.id, 'dropV', 0), p, s };
  };

  it('power-source-impedance: a measured loop of 0.4 Ω takes 4 V at 10 A, half in the leg and half in the neutral', () => {
    expect(house(0.4).volts).toBeCloseTo(116, 6);
    expect(house(0.4).drop).toBeCloseTo(4, 6);
    expect(house(undefined).volts).toBeCloseTo(120, 9);
    // The neutral at the terminals stands 2 V off earth.
    const { p, s } = house(0.4);
    const run = p.sources.get(s.id)?.setups[0]?.sweep.volts;
    expect(Math.hypot(run?.[8 + 6] ?? 0, run?.[8 + 7] ?? 0)).toBeCloseTo(2, 6);
  });

  it('power-source-impedance: a set holds its volts, but for the regulation a plan gives it', () => {
    expect(house(0.4, 'generator').volts).toBeCloseTo(120, 9);
    const limits = [{ limit: 'generator-regulation', value: 3, reason: 'old set, as measured' }];
    // 3 % of 120 V at its 20 A: 1.8 V at 10 A.
    expect(house(undefined, 'generator', limits).volts).toBeCloseTo(118.2, 6);
  });
});
