import { describe, expect, it } from 'vitest';
import { applyChanges } from '../../../src/plan/change-set.ts';
import type { Acknowledgement } from '../../../src/plan/records/index.ts';
import { findingFigure } from '../../../src/report/acknowledge.ts';
import { assess, openStops } from '../../../src/report/assess.ts';
import { generatorRig } from '../../support/plan-builder.ts';

/** A rig with one overloaded way (two loads on it) and a healthy one. */
const overloaded = (wattsW = 1200) => {
  const rig = generatorRig();
  rig.b.fixtureKind('f', { wattsW });
  const strip = { id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true };
  rig.b.fixtureKind('thru', { wattsW }, { outlets: [{ ...strip, id: 'thru' }] });
  const one = rig.plug('thru', 1, 0).fixture;
  const two = rig.b.fixture('f');
  rig.b.cable('lead', [one.id, 'thru'], [two.id, 'in'], 0);
  return { ...rig, one, two };
};

describe('assess', () => {
  it('assess-order: stops come first and are numbered in order', () => {
    const { b } = overloaded();
    b.fixture('f');
    const a = assess(b.plan(), { revision: 7 });
    expect(a.revision).toBe(7);
    expect(a.findings.map((f) => f.number)).toEqual(a.findings.map((_, i) => `F${i + 1}`));
    const ranks = a.findings.map((f) => ['stop', 'warn', 'note'].indexOf(f.severity));
    expect(ranks).toEqual([...ranks].sort());
    expect(new Set(ranks).size).toBeGreaterThan(1);
  });

  it('assess-id: ids stay when something else is added', () => {
    const { b } = overloaded();
    const before = assess(b.plan(), { revision: 1 }).findings.map((f) => f.id);
    b.fixture('f');
    const after = assess(b.plan(), { revision: 2 }).findings.map((f) => f.id);
    expect(after).toEqual(expect.arrayContaining(before));
    expect(new Set(after).size).toBe(after.length);
  });

  it('assess-references: a stand that is not there is told', () => {
    const { b, one } = overloaded();
    b.records.set(one.id, { ...one, support: { on: 'stand', standId: 'gone' } });
    const a = assess(b.plan(), { revision: 1 });
    expect(a.findings.filter((f) => f.rule === 'plan-reference')[0]?.recordIds).toEqual([one.id]);
  });

  it('assess-assumptions: names what the plan does not say', () => {
    const { b } = overloaded();
    const ids = assess(b.plan(), { revision: 1 }).assumptions.map((x) => x.id);
    expect(ids).toEqual(
      expect.arrayContaining(['continuous', 'level-full', 'level-linear', 'volts:source-0001']),
    );
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('assess-assumptions: an override is listed with its reason', () => {
    const { b } = generatorRig({
      limits: [{ limit: 'drop-total', value: 8, reason: 'agreed with the gaffer' }],
    });
    const text = assess(b.plan(), { revision: 1 })
      .assumptions.map((x) => x.text)
      .join(' ');
    expect(text).toMatch(/drop-total.*8 %.*in place of 5.*agreed with the gaffer/);
  });
});

describe('acknowledgements', () => {
  const acknowledge = (b: ReturnType<typeof overloaded>['b'], more: Partial<Acknowledgement> = {}) => {
    const f = assess(b.plan(), { revision: 1 }).findings.find((x) => x.rule === 'power-breaker');
    if (!f) throw new Error('no finding');
    b.put({
      id: 'ack',
      type: 'acknowledgement',
      findingId: f.id,
      severity: f.severity,
      reason: 'short takes only',
      who: 'M. Ito',
      when: '2031-03-04',
      ...(findingFigure(f) === undefined ? {} : { figure: findingFigure(f) as number }),
      ...more,
    });
  };
  const breaker = (b: ReturnType<typeof overloaded>['b']) =>
    assess(b.plan(), { revision: 2 }).findings.find((f) => f.rule === 'power-breaker');

  it('assess-acknowledge: is listed still, with who and why, and no longer open', () => {
    const { b } = overloaded();
    const open = openStops(assess(b.plan(), { revision: 1 })).length;
    acknowledge(b);
    expect(breaker(b)?.acknowledged).toEqual({
      by: 'M. Ito',
      reason: 'short takes only',
      when: '2031-03-04',
    });
    expect(breaker(b)?.severity).toBe('stop');
    expect(openStops(assess(b.plan(), { revision: 1 })).length).toBe(open - 1);
  });

  it('assess-acknowledge: holds while the figure gets better, lapses when it gets worse', () => {
    const { b } = overloaded();
    acknowledge(b);
    b.fixtureKind('f', { wattsW: 1100 });
    expect(breaker(b)?.acknowledged).toBeDefined();
    b.fixtureKind('f', { wattsW: 1300 });
    expect(breaker(b)?.acknowledged).toBeUndefined();
  });

  it('assess-acknowledge: lapses when the severity is worse than it was', () => {
    const { b } = overloaded();
    acknowledge(b, { severity: 'warn' });
    expect(breaker(b)?.acknowledged).toBeUndefined();
  });

  it('assess-acknowledge: binds the thing: another way is not covered', () => {
    const { b } = overloaded();
    acknowledge(b, { findingId: 'power-breaker:box-0002/2' });
    expect(breaker(b)?.acknowledged).toBeUndefined();
  });
});

describe('remedies', () => {
  it('assess-remedy: an overloaded breaker offers a way with room, and taking it clears the finding', () => {
    const { b, box, plug } = generatorRig();
    b.fixtureKind('big', { wattsW: 1500 });
    b.fixtureKind('small', { wattsW: 600 });
    plug('small', 2, 0);
    // Two outlets on one way, so that one of two plugs can go.
    b.boxKind('box', {
      inlets: [{ id: 'in', connector: 'single-pole-400-3', legs: 3, neutral: true }],
      ways: [1, 2, 3].map((n) => ({
        id: String(n),
        label: String(n),
        breakerA: 20,
        poles: 1,
        curve: 'na' as const,
        legs: [n - 1],
      })),
      outlets: [
        ['1a', '1'],
        ['1b', '1'],
        ['o2', '2'],
        ['o3', '3'],
      ].map(([id, wayId]) => ({
        id: id as string,
        connector: 'stage-pin-20',
        legs: 1,
        neutral: true,
        wayId: wayId as string,
      })),
    });
    for (const port of ['1a', '1b']) {
      const f = b.fixture('big');
      b.cable('lead', [box.id, port], [f.id, 'in'], 0);
    }
    const plan = b.plan();
    const a = assess(plan, { revision: 1 });
    const f = a.findings.find((x) => x.rule === 'power-breaker');
    expect(f?.remedies.map((r) => r.label)[0]).toMatch(/^Move Unit \d+ to K1 way 3$/);
    for (const r of f?.remedies ?? []) {
      const after = assess(applyChanges(plan, r.changes), { revision: 2 });
      expect(after.findings.filter((x) => x.rule === 'power-breaker')).toEqual([]);
    }
  });

  it('assess-remedy: offers nothing where one load alone is too much, or no way has room', () => {
    const { b, plug } = generatorRig();
    b.fixtureKind('huge', { wattsW: 2500 });
    plug('huge', 1, 0);
    const f = assess(b.plan(), { revision: 1 }).findings.find((x) => x.rule === 'power-breaker');
    expect(f?.remedies).toEqual([]);
  });
});
