import { describe, expect, it } from 'vitest';
import type { LoadSpec } from '../../../src/plan/kinds/ports.ts';
import { assess } from '../../../src/report/assess.ts';
import { assessmentJson } from '../../../src/report/json.ts';
import { findingText } from '../../../src/report/text.ts';
import { generatorRig } from '../../support/plan-builder.ts';

/** A rig with two units on two ways; the first is spoilt. */
const rig = (load: Partial<LoadSpec> = {}) => {
  const r = generatorRig();
  r.b.fixtureKind('good', { wattsW: 1000 });
  r.b.fixtureKind('f', { wattsW: 1000, ...load });
  const first = r.plug('f', 1);
  const second = r.plug('good', 2);
  return { ...r, first, second };
};

/** The problems told, and that the other unit is computed all the same. */
const told = (r: ReturnType<typeof rig>): readonly string[] => {
  const plan = r.b.plan();
  const a = assess(plan, { revision: 1 });
  JSON.parse(assessmentJson(plan, a));
  expect(a.figures.get(r.second.fixture.id, 'leg1A', 0)).toBeGreaterThan(8);
  const stops = a.findings.filter((f) => f.rule === 'power-value');
  for (const f of stops) {
    expect(f.severity).toBe('stop');
    expect(findingText(plan, f).todo).not.toBe('');
  }
  const spoilt = a.entities.find((e) => e.key === r.first.fixture.id);
  expect(spoilt?.notComputed).toBeDefined();
  expect(a.figures.get(r.first.fixture.id, 'leg0A', 0)).toBeNaN();
  return stops.map((f) => String(f.params.problem));
};

describe('values that make no sense', () => {
  it.each<[string, Partial<LoadSpec>, RegExp]>([
    ['0 V', { voltsMinV: 0, voltsMaxV: 0 }, /takes 0 V to 0 V/],
    ['volts the wrong way round', { voltsMinV: 250, voltsMaxV: 100 }, /takes 250 V to 100 V/],
    ['negative watts', { wattsW: -5 }, /watts are -5/],
    ['no number of watts', { wattsW: Number.NaN }, /watts are NaN/],
    ['endless watts', { wattsW: Number.POSITIVE_INFINITY }, /watts are Infinity/],
    ['a power factor of 0', { powerFactor: 0 }, /power factor is 0/],
    ['negative third harmonic', { thirdHarmonicPct: -50 }, /third harmonic is -50/],
    ['leakage that is no number', { leakageMa: Number.NaN }, /leakage is NaN/],
    ['negative switch-on current', { inrushMultiple: -2 }, /switch-on current is -2/],
    ['a switch-on current of no end', { inrushMultiple: 1.7e308 }, /switch-on current is 1\.7e\+308/],
    ['wild exponents', { model: 'exponential', expP: 1e9, expQ: 0 }, /exponents between/],
  ])('power-value: a fixture with %s is told and left out, the rest is computed', (_, load, words) => {
    expect(told(rig(load)).join(' ')).toMatch(words);
  });

  it('power-value: runs whose length is none are told and left out: places, stock lengths, pieces, a slip of 1000 km', () => {
    const spoil = (change: (r: ReturnType<typeof rig>) => void): string => {
      const r = rig();
      const { piecesMm: _, ...own } = r.first.cable;
      r.b.put(own);
      change(r);
      return told(r).join(' ');
    };
    const lead = (r: ReturnType<typeof rig>) => {
      // The good unit keeps its own pieces.
      const k = r.b.records.get('lead');
      if (k?.type !== 'kind' || k.family !== 'cable') throw new Error('no lead');
      return k;
    };
    expect(spoil((r) => r.b.put({ ...r.first.fixture, at: { xMm: Number.NaN, yMm: 0 } }))).toMatch(
      /not a number/,
    );
    expect(spoil((r) => r.b.put({ ...r.first.fixture, at: { xMm: 1e15, yMm: 0 } }))).toMatch(/1000 km/);
    for (const stockLengthsMm of [[], [0], [-5000]])
      expect(spoil((r) => r.b.put({ ...lead(r), stockLengthsMm }))).toMatch(/no stock length/);
    expect(spoil((r) => r.b.put({ ...r.first.cable, piecesMm: [-1000] }))).toMatch(/-1000 mm/);
    expect(spoil((r) => r.b.put({ ...r.first.cable, piecesMm: [Number.NaN] }))).toMatch(/NaN mm/);
  });

  it('power-value: a source of endless volts or of less than no impedance is told, and nothing on it computed', () => {
    for (const [change, words] of [
      [{ voltsV: Number.POSITIVE_INFINITY }, /volts are Infinity/],
      [{ loopOhm: -4 }, /impedance is -4/],
    ] as const) {
      const { b, source } = rig();
      b.put({ ...source, ...change });
      const a = assess(b.plan(), { revision: 1 });
      expect(a.findings.map((f) => String(f.params.problem)).join(' ')).toMatch(words);
      expect(a.figures.get(source.id, 'leg0A', 0)).toBeNaN();
    }
  });

  it('power-value: a neutral conductor that is not in the table is told, not taken for the leg’s', () => {
    const { b } = rig();
    const k = b.records.get('lead');
    if (k?.type !== 'kind' || k.family !== 'cable') throw new Error('no lead');
    b.put({ ...k, neutralConductor: 'awg:999' });
    const a = assess(b.plan(), { revision: 1 });
    expect(a.findings.filter((f) => String(f.params.problem).includes('awg:999'))).toHaveLength(2);
  });
});

describe('plans without end', () => {
  it('power-figures: ten thousand loads are computed, and the overloads told', () => {
    const r = generatorRig();
    r.b.fixtureKind('f', { wattsW: 5 });
    r.b.boxKind('strip', {
      inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      outlets: Array.from({ length: 450 }, (_, i) => ({
        id: `s${i}`,
        connector: 'stage-pin-20',
        legs: 1,
        neutral: true,
      })),
    });
    let units = 0;
    for (let way = 1; way <= 24; way++) {
      const strip = r.b.box('strip', { label: `S${way}` });
      r.b.cable('lead', [r.box.id, `o${way}`], [strip.id, 'in'], 1000);
      for (let i = 0; i < 417 && units < 10_000; i++, units++) {
        const f = r.b.fixture('f');
        r.b.cable('lead', [strip.id, `s${i}`], [f.id, 'in'], 1000);
      }
    }
    const a = assess(r.b.plan(), { revision: 1 });
    expect(a.figures.get(r.source.id, 'loadW', 0)).toBe(50_000);
    // 417 × 5 W on 120 V are 17.4 A on 16 A.
    expect(a.findings.filter((f) => f.rule === 'power-breaker').length).toBeGreaterThanOrEqual(23);
  });

  it('power-value: ten thousand units plugged one into another are told, and never a crash', () => {
    const r = generatorRig();
    const through = [{ id: 't', connector: 'stage-pin-20', legs: 1, neutral: true }];
    r.b.fixtureKind('f', { wattsW: 0.1 }, { outlets: through });
    let from: readonly [string, string] = [r.box.id, 'o1'];
    for (let i = 0; i < 10_000; i++) {
      const f = r.b.fixture('f');
      r.b.cable('lead', from, [f.id, 'in'], 1000);
      from = [f.id, 't'];
    }
    const a = assess(r.b.plan(), { revision: 1 });
    expect(
      a.findings.some((f) => f.severity === 'stop' && String(f.params.problem).includes('hang one on')),
    ).toBe(true);
    expect(a.figures.get(r.source.id, 'leg0A', 0)).toBeGreaterThan(0);
  });
});
