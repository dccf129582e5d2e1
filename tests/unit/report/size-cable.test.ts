import { describe, expect, it } from 'vitest';
import { gearBook } from '../../../src/gear/index.ts';
import { sizePlan } from '../../../src/report/size.ts';
import { type RunAsked, sizeRun } from '../../../src/report/size-cable.ts';
import { gearRig } from '../../support/gear-rig.ts';

const book = gearBook('north-america');

describe('sizing cable', () => {
  const asked: RunAsked = {
    amps: 200,
    neutralA: 0,
    legs: 3,
    neutral: true,
    lengthMm: 30_480,
    volts: 120,
    powerFactor: 1,
    dropPct: 3,
    breakerA: undefined,
  };
  const plan = () => gearRig().plan();

  it('power-size: takes the least copper that carries the amps, and heavier over a longer way', () => {
    expect(sizeRun(plan(), asked, book)?.kind.slug).toBe('feeder-2-0-3ph');
    const long = sizeRun(plan(), { ...asked, lengthMm: 91_440 }, book);
    // 200 A over 300 ft of 2/0 (0.0967 Ω/kft): 5.8 V; of 4/0 (0.0608): 3.65 V, 3.04 %: two sets are needed.
    expect(long?.dropPct).toBeLessThanOrEqual(3);
    expect(long && `${long.sets} × ${long.kind.slug}`).toBe('2 × feeder-2-0-3ph');
    expect(sizeRun(plan(), { ...asked, amps: 700, lengthMm: 1000 }, book)?.sets).toBeGreaterThan(1);
  });

  it('power-size: is not weaker than the breaker ahead', () => {
    expect(sizeRun(plan(), { ...asked, amps: 100, breakerA: 300 }, book)?.ampacityA).toBeGreaterThanOrEqual(
      300,
    );
  });

  it('power-size: gives nothing where no cable does', () => {
    expect(sizeRun(plan(), { ...asked, amps: 5000 }, book)).toBeUndefined();
  });

  it('power-size: of a plan names runs that are too small or larger than needed, with reasons', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('generator-100kw-3ph'), { label: 'G1' });
    const box = r.b.box(r.kind('box-400-6x100'), { label: 'D1' });
    const feeder = r.run('feeder-2-3ph', [source.id, '1'], [box.id, 'in']);
    r.b.fixtureKind(
      'f',
      { wattsW: 8000, voltsMinV: 100, voltsMaxV: 130 },
      {
        inlets: [{ id: 'in', connector: 'stage-pin-100', legs: 1, neutral: true }],
      },
    );
    for (const way of ['1', '2', '3']) {
      const f = r.b.fixture('f', { unit: way });
      r.run('pin-100-2-3', [box.id, way], [f.id, 'in']);
    }
    const rows = sizePlan(r.plan(), { book });
    const run = rows.find((x) => x.recordId === feeder.id);
    expect([run?.what, run?.now]).toEqual(['cable', 'too small']);
    // 300 A ahead of it: 4/0 carries 316 A.
    expect(run?.kind?.slug).toBe('feeder-4-0-3ph');
    expect(run?.reasons.join(' ')).toMatch(/headroom.*behind 300\.0 A.*carries 316\.0 A/);
  });

  it('power-size: a run that carries its load over too long a way is told by its volts, not as too small', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('generator-100kw-3ph'), { label: 'G1' });
    const box = r.b.box(r.kind('box-400-6x100'), { label: 'D1' });
    r.run('feeder-4-0-3ph', [source.id, '1'], [box.id, 'in']);
    r.b.fixtureKind(
      'f',
      { wattsW: 5000, voltsMinV: 60, voltsMaxV: 130 },
      { inlets: [{ id: 'in', connector: 'stage-pin-100', legs: 1, neutral: true }] },
    );
    const f = r.b.fixture('f', { unit: '1' });
    const long = r.run('pin-100-2-3', [box.id, '1'], [f.id, 'in'], 400_000);
    const run = sizePlan(r.plan(), { book }).find((x) => x.recordId === long.id);
    expect(run?.now).toBe('loses too much');
    expect(run?.reasons.join(' ')).toMatch(/this one loses .* V, .* %; no cable of the book/);
    expect(run?.reasons.join(' ')).not.toContain('carries it');
  });
});
