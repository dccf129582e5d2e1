import { describe, expect, it } from 'vitest';
import { gearBook } from '../../../src/gear/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import type { AdapterKind } from '../../../src/plan/kinds/adapter.ts';
import type { CableKind } from '../../../src/plan/kinds/kinds.ts';
import { recordOf, recordsOf } from '../../../src/plan/plan.ts';
import { mateRemedies } from '../../../src/report/adapters.ts';
import { assess } from '../../../src/report/assess.ts';
import { balanceLegs } from '../../../src/report/balance.ts';
import { plugEverything } from '../../../src/report/plug-all.ts';
import { roomLeft } from '../../../src/report/room.ts';
import { gearRig } from '../../support/gear-rig.ts';

const ids = () => {
  let n = 0;
  return (prefix: string): string => `${prefix}-new-${n++}`;
};
const book = gearBook('north-america');
const cables = book.filter((k): k is CableKind => k.family === 'cable');
const adapters = book.filter((k): k is AdapterKind => k.family === 'adapter' && k.what !== 'data');

/** A set with two boxes of 24 ways, 5 m to either side. */
const twoBoxes = () => {
  const r = gearRig();
  const source = r.b.source(r.kind('generator-100kw-3ph'), { label: 'G1' });
  const big = r.b.box(r.kind('box-400-6x100'), { label: 'D1' });
  r.run('feeder-4-0-3ph', [source.id, '1'], [big.id, 'in']);
  const boxes = ['a', 'b'].map((x, i) => {
    const kind = r.b.boxKind(`lunch-${x}`, {
      inlets: [{ id: 'in', connector: 'stage-pin-100', legs: 1, neutral: true }],
      ways: Array.from({ length: 5 }, (_, w) => ({
        id: String(w + 1),
        label: String(w + 1),
        breakerA: 20,
        poles: 1,
        curve: 'na' as const,
        legs: [0],
      })),
      outlets: Array.from({ length: 5 }, (_, w) => ({
        id: String(w + 1),
        connector: 'nema-5-20',
        legs: 1,
        neutral: true,
        wayId: String(w + 1),
      })),
    });
    const box = r.b.box(kind.id, { label: `L${i + 1}`, at: { xMm: i === 0 ? -5000 : 5000, yMm: 0 } });
    r.run('pin-100-2-3', [big.id, String(i + 1)], [box.id, 'in']);
    return box;
  });
  return { ...r, source, boxes };
};
const household = { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] };

describe('plugging everything in', () => {
  it('power-plug-all: a group stays together in one box, though half of it stands nearer to the other', () => {
    const { b, plan, boxes } = twoBoxes();
    b.fixtureKind('f', { wattsW: 300 }, household);
    for (const [i, xMm] of [-4000, -3000, 3000, 4000].entries())
      b.fixture('f', { unit: String(i + 1), at: { xMm, yMm: 0 }, groupId: 'pair' });
    const alone = b.fixture('f', { unit: '9', at: { xMm: 4500, yMm: 0 } });
    const r = plugEverything(plan(), { newId: ids(), book: cables, adapters });
    expect(r.left).toEqual([]);
    const after = applyChanges(plan(), r.changes);
    const owner = (id: string) => recordsOf(after, 'cable').find((c) => c.to.recordId === id)?.from.recordId;
    const group = new Set(
      recordsOf(after, 'fixture')
        .filter((f) => f.groupId === 'pair')
        .map((f) => owner(f.id)),
    );
    expect(group.size).toBe(1);
    expect(owner(alone.id)).toBe(boxes[1]?.id);
  });

  it('power-plug-all: chargers, control gear and mains supplies are plugged in as well', () => {
    const { b, plan, kind } = twoBoxes();
    const at = { xMm: 5000, yMm: 1000 };
    const common = { floorId: 'floor', at, rotationDeg: 0 };
    const slug = (family: string, more: (k: (typeof book)[number]) => boolean = () => true): string =>
      book.find((k) => k.family === family && Array.isArray(k.inlets) && k.inlets.length > 0 && more(k))
        ?.slug ?? '';
    b.put({ ...common, id: 'charger', type: 'charger', kindId: kind(slug('charger')), label: 'C1' });
    b.put({
      ...common,
      id: 'desk',
      type: 'device',
      kindId: kind(slug('node', (k) => k.family === 'node' && k.load !== undefined)),
      label: 'Desk',
      heightMm: 1000,
      ports: [],
      band: 0,
    });
    b.put({
      ...common,
      id: 'psu',
      type: 'box',
      kindId: kind(slug('converter', (k) => k.family === 'converter' && k.what === 'ac-dc')),
      label: 'P1',
    });
    const r = plugEverything(plan(), { newId: ids(), book: cables, adapters });
    expect(r.steps.map((s) => s.recordId).sort()).toEqual(['charger', 'desk', 'psu']);
    const after = assess(applyChanges(plan(), r.changes), { revision: 1 });
    expect(after.figures.get('psu', 'loadW', 0)).toBeGreaterThan(10);
    expect(after.entities.find((e) => e.key === 'psu')?.what).toBe('load');
  });

  it('power-plug-all: an adapter of the book joins what no cable joins, and the plan then holds it', () => {
    const r = gearRig();
    const house = r.b.source(r.kind('wall-circuit-20'), { label: 'W', voltsV: 120 });
    r.b.fixtureKind(
      'f',
      { wattsW: 300 },
      {
        inlets: [{ id: 'in', connector: 'nema-l5-20', legs: 1, neutral: true }],
      },
    );
    const f = r.b.fixture('f', { unit: '1' });
    const none = plugEverything(r.plan(), { newId: ids(), book: cables, adapters: [] });
    const direct = cables.some((k) => k.plug === 'nema-5-20' && k.socket === 'nema-l5-20');
    expect(none.steps.length).toBe(direct ? 1 : 0);
    const withAdapters = plugEverything(r.plan(), { newId: ids(), book: cables, adapters });
    expect(withAdapters.left).toEqual([]);
    const after = applyChanges(r.plan(), withAdapters.changes);
    const a = assess(after, { revision: 1 });
    expect(a.figures.get(f.id, 'leg0A', 0)).toBeGreaterThan(2);
    expect(a.findings.filter((x) => x.severity === 'stop')).toEqual([]);
    void house;
  });

  it('power-plug-all: behind a transformer its kVA and the breakers ahead of it count', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 277 });
    const t = r.b.box(r.kind('transformer-480-208-30kva'), { label: 'T1' });
    r.run('feeder-4-0-3ph', [source.id, '1'], [t.id, 'in']);
    const big = r.b.box(r.kind('box-400-6x100'), { label: 'D1' });
    r.run('feeder-4-0-3ph', [t.id, '1'], [big.id, 'in']);
    r.b.fixtureKind(
      'f',
      { wattsW: 4000, model: 'constant-current' },
      {
        inlets: [{ id: 'in', connector: 'stage-pin-100', legs: 1, neutral: true }],
      },
    );
    for (let i = 0; i < 6; i++) r.b.fixture('f', { unit: String(i + 1) });
    const done = plugEverything(r.plan(), { newId: ids(), book: cables, adapters });
    // 33.3 A each, 83.3 A a leg: two on each of three legs.
    expect(done.steps).toHaveLength(6);
    const after = assess(applyChanges(r.plan(), done.changes), { revision: 1 });
    expect(after.findings.map((f) => f.rule)).not.toContain('power-transformer');
    r.b.fixture('f', { unit: '7' });
    expect(plugEverything(r.plan(), { newId: ids(), book: cables, adapters }).left).toHaveLength(1);
  });
});

describe('legs behind a transformer', () => {
  it('power-balance: are balanced by themselves, and room left counts what lies ahead by the ratio', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 277 });
    const t = r.b.box(r.kind('transformer-480-208-75kva'), { label: 'T1' });
    r.run('feeder-4-0-3ph', [source.id, '1'], [t.id, 'in']);
    const box = r.b.box(r.kind('box-400-6x100'), { label: 'D1' });
    r.run('feeder-4-0-3ph', [t.id, '1'], [box.id, 'in']);
    r.b.fixtureKind(
      'f',
      { wattsW: 3000, model: 'constant-current' },
      {
        inlets: [{ id: 'in', connector: 'stage-pin-100', legs: 1, neutral: true }],
      },
    );
    for (const way of ['1', '4']) {
      const f = r.b.fixture('f', { unit: way });
      r.run('pin-100-2-3', [box.id, way], [f.id, 'in'], 0);
    }
    const done = balanceLegs(r.plan());
    expect(done.sources.map((s) => s.label)).toEqual(['T1 output']);
    expect(done.moves).toHaveLength(1);
    const after = assess(applyChanges(r.plan(), done.changes), { revision: 1 });
    expect(Math.round(after.figures.get(box.id, 'leg0A', 0) + after.figures.get(box.id, 'leg1A', 0))).toBe(
      50,
    );
    const room = roomLeft(after, `${box.id}/6`);
    // 80 A on the way; the transformer’s 208 A on a leg and the service’s 160 A × 4 leave more.
    expect(room?.freeA).toBeCloseTo(80, 0);
  });
});

describe('a joint that does not mate', () => {
  it('power-mate: a cable or an adapter with a cable is offered, makes it fit and is counted as a box', () => {
    const r = gearRig();
    const house = r.b.source(r.kind('wall-circuit-20'), { label: 'W', voltsV: 120 });
    r.b.fixtureKind(
      'f',
      { wattsW: 300 },
      {
        inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      },
    );
    const f = r.b.fixture('f', { unit: '1' });
    const cable = r.run('pin-20-10-3', [house.id, '1a'], [f.id, 'in']);
    const a = assess(r.plan(), { revision: 0 });
    const found = a.findings.find((x) => x.rule === 'power-mate');
    expect(found?.recordIds[0]).toBe(cable.id);
    if (!found) throw new Error('not found');
    const offered = mateRemedies(r.plan(), found, book, ids());
    expect(offered.length).toBeGreaterThan(0);
    for (const o of offered) {
      const after = applyChanges(r.plan(), o.changes);
      const next = assess(after, { revision: 1 });
      expect(next.findings.filter((x) => x.rule === 'power-mate')).toEqual([]);
      expect(next.figures.get(f.id, 'leg0A', 0), o.label).toBeGreaterThan(2);
    }
    const withAdapter = offered.find((o) => o.label.startsWith('Put in'));
    if (withAdapter) {
      const after = applyChanges(r.plan(), withAdapter.changes);
      const boxes = recordsOf(after, 'box');
      expect(boxes).toHaveLength(1);
      expect(recordOf(after, 'kind', boxes[0]?.kindId ?? '')?.family).toBe('adapter');
    }
  });

  it('power-mate: nothing is offered for a locked cable, nor where the book has nothing', () => {
    const r = gearRig();
    const house = r.b.source(r.kind('wall-circuit-20'), { label: 'W', voltsV: 120 });
    r.b.fixtureKind(
      'f',
      { wattsW: 300 },
      {
        inlets: [{ id: 'in', connector: 'stage-pin-20', legs: 1, neutral: true }],
      },
    );
    const f = r.b.fixture('f', { unit: '1' });
    const cable = r.run('pin-20-10-3', [house.id, '1a'], [f.id, 'in']);
    const found = { rule: 'power-mate', recordIds: [cable.id] };
    expect(mateRemedies(r.plan(), found, [], ids())).toEqual([]);
    r.b.put({ ...cable, locked: true });
    expect(mateRemedies(r.plan(), found, book, ids())).toEqual([]);
  });
});
