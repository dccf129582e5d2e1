import { describe, expect, it } from 'vitest';
import { computePower } from '../../../src/engines/power/index.ts';
import type { idMaker } from '../../../src/kernel/ids.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { kindOf, type Plan } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { balanceLegs } from '../../../src/report/balance.ts';
import { plugEverything } from '../../../src/report/plug-all.ts';
import { whereToPlug } from '../../../src/report/where-to-plug.ts';
import { generatorRig } from '../../support/plan-builder.ts';

const newId = (): ReturnType<typeof idMaker> => {
  let n = 0;
  return (prefix) => `${prefix}-new-${n++}`;
};

/** Six units of 10 A, all on leg A. */
const lopsided = () => {
  const r = generatorRig();
  r.b.records.set(r.feeder.id, { ...r.feeder, piecesMm: [0] });
  r.b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' });
  const plugs = [1, 4, 7, 10, 13, 16].map((way) => r.plug('f', way, 0));
  return { ...r, plugs };
};

const legs = (plan: Plan, key: string) =>
  (['leg0A', 'leg1A', 'leg2A'] as const).map((q) => Math.round(computePower(plan).figures.get(key, q, 0)));

describe('balancing legs', () => {
  it('power-balance: six like units on one leg end two on each, with four moves, proved', () => {
    const { b, source } = lopsided();
    const plan = b.plan();
    const r = balanceLegs(plan);
    expect(legs(plan, source.id)).toEqual([60, 0, 0]);
    expect(legs(applyChanges(plan, r.changes), source.id)).toEqual([20, 20, 20]);
    expect(r.sources[0]).toMatchObject({ proved: true, gapPct: 0, boundA: 20 });
    expect(r.moves).toHaveLength(4);
    expect(r.moves[0]?.fromLabel).toMatch(/^K1 way \d+$/);
  });

  it('power-balance: a cap on moves is kept, and the trade-off tells what each further move wins', () => {
    const { b, source } = lopsided();
    const plan = b.plan();
    const r = balanceLegs(plan, { moves: 2 });
    expect(r.moves).toHaveLength(2);
    expect(legs(applyChanges(plan, r.changes), source.id)).toEqual([40, 10, 10]);
    const worst = balanceLegs(plan).sources[0]?.trade.map((t) => Math.round(t.worstLegA)) ?? [];
    expect(worst.slice(0, 5)).toEqual([60, 50, 40, 30, 20]);
    expect(balanceLegs(plan, { moves: 0 }).moves).toEqual([]);
  });

  it('power-balance: locked cables stay', () => {
    const { b, plugs, source } = lopsided();
    for (const p of plugs.slice(0, 4)) b.records.set(p.cable.id, { ...p.cable, locked: true });
    const plan = b.plan();
    const r = balanceLegs(plan);
    const locked = new Set(plugs.slice(0, 4).map((p) => p.cable.id));
    expect(r.moves.some((m) => locked.has(m.cableId))).toBe(false);
    expect(legs(applyChanges(plan, r.changes), source.id)).toEqual([40, 10, 10]);
  });

  it('power-balance: an overloaded way is relieved before legs are evened out', () => {
    const { b, box, plug } = generatorRig();
    const thru = { id: 'thru', connector: 'stage-pin-20', legs: 1, neutral: true };
    b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' }, { outlets: [thru] });
    const kind = b.records.get('box');
    if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box');
    b.records.set('box', {
      ...kind,
      outlets: kind.outlets.flatMap((o) => (o.wayId === '1' ? [o, { ...o, id: 'o1b' }] : [o])),
    });
    plug('f', 1, 0);
    const second = b.fixture('f');
    b.cable('lead', [box.id, 'o1b'], [second.id, 'in'], 0);
    const plan = b.plan();
    const r = balanceLegs(plan, { moves: 1 });
    expect([r.sources[0]?.before.overloads, r.sources[0]?.after.overloads]).toEqual([1, 0]);
    const after = applyChanges(plan, r.changes);
    expect(assess(after, { revision: 1 }).findings.map((f) => f.rule)).not.toContain('power-breaker');
  });

  it('power-balance: units used in different setups count together only where they burn together', () => {
    const { b, plugs, source } = lopsided();
    const [day, night] = [b.setup('Day', 1), b.setup('Night', 2)];
    plugs.forEach((p, i) => {
      b.level(day.id, p.fixture.id, i < 3 ? 100 : 0);
      b.level(night.id, p.fixture.id, i < 3 ? 0 : 100);
    });
    const plan = b.plan();
    const after = applyChanges(plan, balanceLegs(plan).changes);
    for (const s of [0, 1])
      for (const q of ['leg0A', 'leg1A', 'leg2A'] as const)
        expect(computePower(after).figures.get(source.id, q, s)).toBeCloseTo(10, 1);
  });

  it('power-balance: feeders of boxes do not move', () => {
    const { b, feeder } = lopsided();
    expect(balanceLegs(b.plan()).moves.map((m) => m.cableId)).not.toContain(feeder.id);
  });
});

describe('plugging everything in', () => {
  it('power-plug-all: every unit gets an outlet with room in every setup, legs spread', () => {
    const { b, source } = generatorRig();
    b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' });
    for (let i = 0; i < 9; i++) b.fixture('f', { at: { xMm: 3000 + i * 200, yMm: 1000 } });
    const plan = b.plan();
    const r = plugEverything(plan, { newId: newId() });
    expect(r.left).toEqual([]);
    expect(r.steps).toHaveLength(9);
    const after = applyChanges(plan, r.changes);
    expect(legs(after, source.id)).toEqual([30, 30, 30]);
    const rules = assess(after, { revision: 1 }).findings.map((f) => f.rule);
    expect(rules).not.toContain('power-unplugged');
    expect(rules).not.toContain('power-breaker');
  });

  it('power-plug-all: what does not fit is left with the reason', () => {
    const { b } = generatorRig();
    b.fixtureKind('big', { wattsW: 2300, model: 'constant-current' });
    b.fixtureKind('odd', {}, { inlets: [{ id: 'in', connector: 'schuko-16', legs: 1, neutral: true }] });
    const [big, odd] = [b.fixture('big'), b.fixture('odd')];
    const r = plugEverything(b.plan(), { newId: newId() });
    expect(r.steps).toEqual([]);
    expect(r.left.map((l) => [l.recordId, l.why.includes('room')])).toEqual([
      [big.id, true],
      [odd.id, false],
    ]);
  });

  it('power-plug-all: a unit that only burns where others do not shares their way', () => {
    const { b, box } = generatorRig();
    b.records.set(box.id, { ...box, ways: [] });
    const kind = b.records.get('box');
    if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box');
    const one = kind.ways[0];
    if (!one) throw new Error('no way');
    b.records.set('box', {
      ...kind,
      ways: [one],
      outlets: ['a', 'b'].map((id) => ({
        id,
        connector: 'stage-pin-20',
        legs: 1,
        neutral: true,
        wayId: '1',
      })),
    });
    b.fixtureKind('f', { wattsW: 1800, model: 'constant-current' });
    const [x, y] = [b.fixture('f'), b.fixture('f')];
    const [day, night] = [b.setup('Day', 1), b.setup('Night', 2)];
    b.level(day.id, x.id, 100);
    b.level(day.id, y.id, 0);
    b.level(night.id, x.id, 0);
    b.level(night.id, y.id, 100);
    expect(plugEverything(b.plan(), { newId: newId() }).left).toEqual([]);
    b.level(night.id, x.id, 50);
    expect(plugEverything(b.plan(), { newId: newId() }).left).toHaveLength(1);
  });

  it('power-plug-all: a locked unit is left alone, a plugged one is not moved', () => {
    const { b, plugs } = lopsided();
    b.fixture('f', { locked: true });
    const r = plugEverything(b.plan(), { newId: newId() });
    expect([r.steps, r.left]).toEqual([[], []]);
    expect(plugs).toHaveLength(6);
  });
});

describe('where to plug in', () => {
  const asked = {
    floorId: 'floor',
    at: { xMm: 6000, yMm: 0 },
    loadW: 1200,
    powerFactor: 1,
    connector: 'stage-pin-20',
  };

  it('power-where: gives free outlets with room in every setup, the cable to run and the volts to expect', () => {
    const { b, box } = lopsided();
    const plan = b.plan();
    const places = whereToPlug(plan, assess(plan, { revision: 1 }), asked);
    expect(places).toHaveLength(5);
    expect(places.every((p) => p.ref.recordId === box.id)).toBe(true);
    const first = places[0];
    expect(first?.loadA).toBeCloseTo(10, 6);
    expect(first?.freeAfterA).toBeCloseTo(6, 1);
    expect(first?.piecesMm).toEqual([7620]);
    expect(first?.neededMm).toBeCloseTo(6600, 6);
    const kind = kindOf(plan, 'lead', 'cable');
    expect(first?.kind).toBe(kind);
    expect(first?.voltsV).toBeLessThan(120);
    expect(first?.voltsV).toBeGreaterThan(117);
  });

  it('power-where: nothing where the room is gone, or on another floor', () => {
    const { b } = lopsided();
    const plan = b.plan();
    const a = assess(plan, { revision: 1 });
    expect(whereToPlug(plan, a, { ...asked, loadW: 2000 })).toEqual([]);
    expect(whereToPlug(plan, a, { ...asked, floorId: 'other' })).toEqual([]);
  });

  it('power-where: at a house whose volts are not known the volts are not told', () => {
    const { b } = generatorRig();
    const kind = b.records.get('set');
    if (kind?.type !== 'kind' || kind.family !== 'source') throw new Error('no set');
    b.records.set('set', { ...kind, what: 'service' });
    const plan = b.plan();
    const [first] = whereToPlug(plan, assess(plan, { revision: 1 }), asked);
    expect(first?.voltsV).toBeUndefined();
  });
});

describe('devices that guard people', () => {
  it('power-balance: a plug behind a residual-current device is not moved out of its care', () => {
    const { b, box } = lopsided();
    const kind = b.records.get('box');
    if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box');
    b.records.set('box', {
      ...kind,
      ways: kind.ways.map((w) => (Number(w.id) % 3 === 1 ? { ...w, rcdMa: 5 } : w)),
    });
    const plan = b.plan();
    expect(balanceLegs(plan).moves).toEqual([]);
    expect(box.kindId).toBe('box');
  });

  it('power-balance: nor from a device of type B to one of type A, while it may go from A to B', () => {
    const moves = (own: 'A' | 'B', others: 'A' | 'B') => {
      const { b } = lopsided();
      const kind = b.records.get('box');
      if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box');
      const ways = kind.ways.map((w) => ({
        ...w,
        rcdMa: 30,
        rcdType: Number(w.id) % 3 === 1 ? own : others,
      }));
      b.records.set('box', { ...kind, ways });
      return balanceLegs(b.plan()).moves.length;
    };
    expect([moves('B', 'A'), moves('A', 'B'), moves('B', 'B')]).toEqual([0, 4, 4]);
  });
});
