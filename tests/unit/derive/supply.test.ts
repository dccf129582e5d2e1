import { describe, expect, it } from 'vitest';
import { supplyTree } from '../../../src/derive/supply.ts';
import { legName, legNames } from '../../../src/derive/systems.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { generatorRig, PlanBuilder } from '../../support/plan-builder.ts';

const defects = (plan: Plan): string[] => supplyTree(plan).defects.map((d) => d.rule);
const node = (plan: Plan, key: string) => {
  const n = supplyTree(plan).byKey.get(key);
  if (!n) throw new Error(`no node ${key}`);
  return n;
};

describe('leg names', () => {
  it('power-legs: follow the practice and the system', () => {
    expect([0, 1, 2].map((l) => legName('north-america', '120/208', l))).toEqual(['A', 'B', 'C']);
    expect([0, 1].map((l) => legName('north-america', '120/240', l))).toEqual(['1', '2']);
    expect(legNames('europe', '230/400', [0, 1, 2])).toBe('L1+L2+L3');
  });
});

describe('the supply tree', () => {
  it('power-tree: maps a way’s legs through boxes up to the source', () => {
    const b = new PlanBuilder();
    const feed = 'single-pole-400-3';
    const sub = 'stage-pin-100-2';
    b.sourceKind('s', {
      system: '120/208',
      outlets: [{ id: 'out', connector: feed, legs: 3, neutral: true }],
    });
    b.cableKind('feeder', { legs: 3, plug: feed, socket: feed });
    b.cableKind('sub', { legs: 2, neutral: false, plug: sub, socket: sub });
    b.boxKind('main', {
      inlets: [{ id: 'in', connector: feed, legs: 3, neutral: true }],
      ways: [{ id: 'w', label: '1', breakerA: 100, poles: 2, curve: 'na', legs: [2, 0] }],
      outlets: [{ id: 'o', connector: sub, legs: 2, neutral: false, wayId: 'w' }],
    });
    b.boxKind('small', {
      inlets: [{ id: 'in', connector: sub, legs: 2, neutral: false }],
      ways: [
        { id: 'a', label: '1', breakerA: 20, poles: 1, curve: 'na', legs: [0] },
        { id: 'b', label: '2', breakerA: 20, poles: 1, curve: 'na', legs: [1] },
      ],
    });
    const s = b.source('s');
    const main = b.box('main', { label: 'K1' });
    const small = b.box('small', { label: 'K2' });
    b.cable('feeder', [s.id, 'out'], [main.id, 'in']);
    b.cable('sub', [main.id, 'o'], [small.id, 'in']);
    const plan = b.plan();
    expect(defects(plan)).toEqual([]);
    expect(node(plan, `${small.id}/a`).legs).toEqual([2]);
    expect(node(plan, `${small.id}/b`).legs).toEqual([0]);
    expect(node(plan, `${small.id}/b`).label).toBe('K2 way 2');
  });

  it('power-tree: a wall outlet hangs on its circuit, a fixture on the outlet', () => {
    const b = new PlanBuilder();
    b.sourceKind('panel', { what: 'house-panel', system: '120/240' });
    b.cableKind('c', { plug: 'nema-5-15', socket: 'nema-5-15' });
    b.fixtureKind('f', {}, { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] });
    const s = b.source('panel', {
      ways: [{ id: 'c7', label: 'kitchen', breakerA: 20, poles: 1, curve: 'na', legs: [1] }],
    });
    const o = b.outlet(s.id, 'c7', { label: 'W2' });
    const f = b.fixture('f');
    const c = b.cable('c', [o.id, 'out'], [f.id, 'in']);
    const tree = supplyTree(b.plan());
    expect(tree.nodes.map((n) => n.key)).toEqual([s.id, `${s.id}/c7`, o.id, c.id, f.id]);
    expect(tree.nodes.map((n) => n.legs)).toEqual([[0, 1], [1], [1], [1], [1]]);
    expect(tree.nodes[1]?.label).toBe('Source kitchen');
    expect(tree.defects).toEqual([]);
  });

  it('power-tree: a box’s own ways take the place of its kind’s, one by one', () => {
    const { b, box } = generatorRig();
    b.records.set(box.id, {
      ...box,
      ways: [{ id: '2', label: '2', breakerA: 30, poles: 1, curve: 'na', legs: [0] }],
    });
    const plan = b.plan();
    expect(node(plan, `${box.id}/2`).legs).toEqual([0]);
    expect(node(plan, `${box.id}/3`).legs).toEqual([2]);
  });

  it('power-tree: a fixture passes power on through its outlet', () => {
    const { b, plug } = generatorRig();
    b.fixtureKind('t', {}, { outlets: [{ id: 'thru', connector: 'stage-pin-20', legs: 1, neutral: true }] });
    const first = plug('t', 2);
    const second = b.fixture('t');
    b.cable('lead', [first.fixture.id, 'thru'], [second.id, 'in']);
    const plan = b.plan();
    expect(node(plan, second.id).legs).toEqual([1]);
    expect(node(plan, second.id).depth).toBe(node(plan, first.fixture.id).depth + 2);
  });

  it('power-tree: a ballast is the load of its head; the head itself is none', () => {
    const { b, box } = generatorRig();
    b.fixtureKind('head', null, { needsBallast: true, inlets: [] });
    b.ballastKind('ballast');
    const head = b.fixture('head', { unit: '12' });
    const ballast = b.ballast('ballast', head.id);
    b.cable('lead', [box.id, 'o1'], [ballast.id, 'in']);
    const plan = b.plan();
    expect(node(plan, ballast.id).label).toBe('ballast of Unit 12');
    expect(supplyTree(plan).byKey.has(head.id)).toBe(false);
    expect(defects(plan)).toEqual([]);
  });
});

describe('defects of the supply', () => {
  const rig = () => {
    const r = generatorRig();
    r.b.fixtureKind('f');
    const good = r.plug('f', 1);
    return { ...r, good };
  };
  /** What is wrong is not computed, and the healthy unit still is. */
  const expectDefect = (plan: Plan, rule: string, goodKey: string, badKey: string): void => {
    expect(defects(plan)).toContain(rule);
    expect(node(plan, badKey).notComputed).toBeDefined();
    expect(node(plan, goodKey).notComputed).toBeUndefined();
  };

  it('power-defect: a circular feed is named once with all that is in it', () => {
    const { b, good } = rig();
    const inlet = { id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true };
    b.boxKind('strip', { inlets: [inlet], outlets: [{ ...inlet, id: 'out' }] });
    const [x, y] = [b.box('strip', { label: 'X' }), b.box('strip', { label: 'Y' })];
    b.cable('lead', [x.id, 'out'], [y.id, 'in']);
    b.cable('lead', [y.id, 'out'], [x.id, 'in']);
    const plan = b.plan();
    expectDefect(plan, 'power-loop', good.fixture.id, x.id);
    const loops = supplyTree(plan).defects.filter((d) => d.rule === 'power-loop');
    expect(loops).toHaveLength(1);
    expect([...(loops[0]?.recordIds ?? [])].sort()).toEqual([x.id, y.id].sort());
  });

  it('power-defect: a box plugged into itself is a loop', () => {
    const { b, good } = rig();
    const inlet = { id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true };
    b.boxKind('strip', { inlets: [inlet], outlets: [{ ...inlet, id: 'out' }] });
    const x = b.box('strip');
    b.cable('lead', [x.id, 'out'], [x.id, 'in']);
    expectDefect(b.plan(), 'power-loop', good.fixture.id, x.id);
  });

  it('power-defect: two cables into one inlet', () => {
    const { b, box, good } = rig();
    const f = b.fixture('f');
    b.cable('lead', [box.id, 'o2'], [f.id, 'in']);
    b.cable('lead', [box.id, 'o3'], [f.id, 'in']);
    const plan = b.plan();
    expectDefect(plan, 'power-two-into-one', good.fixture.id, f.id);
    expect(defects(plan).filter((r) => r === 'power-two-into-one')).toHaveLength(1);
  });

  it('power-defect: a second feed by another inlet', () => {
    const { b, box, good } = rig();
    const inlet = (id: string) => ({ id, connector: 'stage-pin-20', legs: 1, neutral: true });
    b.fixtureKind('two', {}, { inlets: [inlet('in'), inlet('in2')] });
    const f = b.fixture('two');
    b.cable('lead', [box.id, 'o2'], [f.id, 'in']);
    b.cable('lead', [box.id, 'o3'], [f.id, 'in2']);
    expectDefect(b.plan(), 'power-second-feed', good.fixture.id, f.id);
  });

  it('power-defect: a cable to and from what is not there', () => {
    const { b, box, good } = rig();
    const to = b.cable('lead', [box.id, 'o2'], ['gone', 'in']);
    expectDefect(b.plan(), 'power-cable-end', good.fixture.id, to.id);
    const f = b.fixture('f');
    b.records.delete(to.id);
    b.cable('lead', ['gone', 'o2'], [f.id, 'in']);
    expectDefect(b.plan(), 'power-cable-end', good.fixture.id, f.id);
  });

  it('power-defect: a cable from an outlet its box does not have', () => {
    const { b, box, good } = rig();
    const f = b.fixture('f');
    b.cable('lead', [box.id, 'o99'], [f.id, 'in']);
    expectDefect(b.plan(), 'power-cable-end', good.fixture.id, f.id);
  });

  it('power-defect: connectors that do not mate, at either end', () => {
    const { b, box, good } = rig();
    b.cableKind('household', { plug: 'nema-5-15', socket: 'nema-5-15' });
    const f = b.fixture('f');
    const c = b.cable('household', [box.id, 'o2'], [f.id, 'in']);
    expectDefect(b.plan(), 'power-mate', good.fixture.id, f.id);
    b.cableKind('household', { plug: 'stage-pin-20', socket: 'nema-5-15' });
    expectDefect(b.plan(), 'power-mate', good.fixture.id, c.id);
  });

  it('power-defect: a plug that the outlet takes by its table does mate', () => {
    const b = new PlanBuilder();
    b.sourceKind('s', {
      system: '120',
      outlets: [{ id: 'o', connector: 'nema-5-20', legs: 1, neutral: true }],
    });
    b.cableKind('c', { plug: 'nema-5-15', socket: 'nema-5-15' });
    b.fixtureKind('f', {}, { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] });
    const s = b.source('s');
    const f = b.fixture('f');
    b.cable('c', [s.id, 'o'], [f.id, 'in']);
    expect(defects(b.plan())).toEqual([]);
  });

  it('power-defect: a way on a leg that does not reach its box', () => {
    const { b, box, good } = rig();
    b.records.set(box.id, {
      ...box,
      ways: [{ id: '5', label: '5', breakerA: 20, poles: 1, curve: 'na', legs: [7 as 2] }],
    });
    expectDefect(b.plan(), 'power-way-legs', good.fixture.id, `${box.id}/5`);
  });

  it('power-defect: a cable brings no more legs than it has', () => {
    const { b, good } = rig();
    b.cableKind('feeder', { legs: 2, plug: 'single-pole-400-3', socket: 'single-pole-400-3' });
    const box = [...b.records.values()].find((r) => r.type === 'box');
    expectDefect(b.plan(), 'power-way-legs', good.fixture.id, `${box?.id}/3`);
    expect(node(b.plan(), `${box?.id}/2`).notComputed).toBeUndefined();
  });

  it('power-defect: a piece of no real length', () => {
    const { b, good, plug } = rig();
    const bad = plug('f', 2, Number.NaN);
    expectDefect(b.plan(), 'power-value', good.fixture.id, bad.fixture.id);
  });

  it('power-defect: a kind that is not in the plan', () => {
    const { b, box, good } = rig();
    const f = b.fixture('no-such-kind');
    b.cable('lead', [box.id, 'o2'], [f.id, 'in']);
    expect(defects(b.plan())).toContain('power-cable-end');
    const c = b.cable('no-such-cable', [box.id, 'o3'], [b.fixture('f').id, 'in']);
    expectDefect(b.plan(), 'power-kind', good.fixture.id, c.id);
  });

  it('power-defect: a wall outlet whose circuit is not there', () => {
    const { b, source, good } = rig();
    const o = b.outlet(source.id, 'no-such-way');
    expectDefect(b.plan(), 'power-outlet-way', good.fixture.id, o.id);
  });

  it('power-defect: a load whose neutral does not reach it', () => {
    const { b, box, good } = rig();
    b.cableKind('no-neutral', { plug: 'stage-pin-20', socket: 'stage-pin-20', neutral: false });
    const f = b.fixture('f');
    b.cable('no-neutral', [box.id, 'o2'], [f.id, 'in']);
    expectDefect(b.plan(), 'power-load-legs', good.fixture.id, f.id);
  });

  it.each([
    ['-5 W', { wattsW: -5 }],
    ['NaN watts', { wattsW: Number.NaN }],
    ['power factor 0', { powerFactor: 0 }],
    ['power factor 1.2', { powerFactor: 1.2 }],
    ['negative standby', { standbyW: -1 }],
    ['exponents missing', { model: 'exponential' as const }],
  ])('power-defect: %s', (_, load) => {
    const { b, plug, good } = rig();
    b.fixtureKind('bad', load);
    const bad = plug('bad', 2);
    expectDefect(b.plan(), 'power-value', good.fixture.id, bad.fixture.id);
  });

  it.each([-1, 101, Number.NaN])('power-defect: a level of %s per cent', (levelPct) => {
    const { b, plug, good } = rig();
    const bad = plug('f', 2);
    const s = b.setup('Night', 1);
    b.level(s.id, bad.fixture.id, levelPct);
    expectDefect(b.plan(), 'power-level', good.fixture.id, bad.fixture.id);
  });

  it('power-defect: 0 W is a note and is computed', () => {
    const { b, plug } = rig();
    b.fixtureKind('zero', { wattsW: 0 });
    const z = plug('zero', 2);
    const plan = b.plan();
    expect(supplyTree(plan).defects.map((d) => [d.rule, d.severity])).toEqual([['power-zero-watts', 'note']]);
    expect(node(plan, z.fixture.id).notComputed).toBeUndefined();
  });

  it('power-unplugged: a fixture without a cable warns; one on packs does not', () => {
    const { b, good } = rig();
    const f = b.fixture('f');
    expectDefect(b.plan(), 'power-unplugged', good.fixture.id, f.id);
    b.records.set(f.id, { ...f, onPacks: true });
    expect(defects(b.plan())).toEqual([]);
  });

  it('power-defect: what hangs on a bad thing says on what it hangs', () => {
    const { b, feeder, good, box } = rig();
    b.records.set(feeder.id, { ...feeder, kindId: 'gone' });
    expect(node(b.plan(), good.fixture.id).notComputed).toBe(
      'hangs on cable to K1: its kind is not in the plan',
    );
    expect(node(b.plan(), box.id).notComputed).toMatch(/^hangs on/);
  });
});
