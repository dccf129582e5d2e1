import fc from 'fast-check';
import { expect, it } from 'vitest';
import { supplyTree } from '../../src/derive/supply.ts';
import { computePower } from '../../src/engines/power/index.ts';
import type { Plan } from '../../src/plan/plan.ts';
import type { AnyRecord } from '../../src/plan/records/index.ts';
import { onePoleWays, PlanBuilder } from '../support/plan-builder.ts';

const OUT = 'stage-pin-20';

/** Three house panels with wall outlets, a box each, units, ballasts, units on stands, and someone else's load. */
const threePanels = (): Plan => {
  const b = new PlanBuilder();
  const ways = onePoleWays(4, 20, 2);
  b.sourceKind('panel', { what: 'house-panel', system: '120/240', ways });
  b.boxKind('box', {
    inlets: [{ id: 'in', connector: OUT, legs: 1, neutral: true }],
    ways: onePoleWays(3, 15, 1),
    outlets: [1, 2, 3].map((w) => ({ id: `o${w}`, connector: OUT, legs: 1, neutral: true, wayId: `${w}` })),
  });
  b.cableKind('lead');
  b.cableKind('other', { conductor: 'awg:10' });
  b.fixtureKind('f', { wattsW: 300, leakageMa: 1 });
  b.fixtureKind('head', null, { needsBallast: true, inlets: [] });
  b.ballastKind('ballast', { wattsW: 500 });
  b.put({
    id: 'stand-kind',
    type: 'kind',
    family: 'stand',
    slug: 'stand-kind',
    name: 'stand',
    also: [],
    sizeMm: { lengthMm: 1, widthMm: 1 },
    massKg: 1,
    symbol: 's',
    basis: {},
    origin: { book: 'user', version: '1' },
    receives: ['spigot-28'],
    ratedLoadKg: 10,
    heightMinMm: 1000,
    heightMaxMm: 3000,
    legCircleMm: 900,
  });
  for (let i = 0; i < 3; i++) {
    const s = b.source('panel', { label: `P${i}` });
    const walls = ['1', '2', '3'].map((w) => b.outlet(s.id, w, { connector: OUT, label: `W${i}${w}` }));
    const box = b.box('box', { label: `K${i}` });
    const stand = b.put({
      id: `stand-${i}`,
      type: 'stand',
      floorId: 'floor',
      kindId: 'stand-kind',
      at: { xMm: i * 100, yMm: 0 },
      rotationDeg: 0,
      heightMm: 2000,
    });
    const units = [
      b.fixture('f', { support: { on: 'stand', standId: stand.id } }),
      b.fixture('f'),
      b.fixture('f'),
    ];
    const head = b.fixture('head');
    const ballast = b.ballast('ballast', head.id);
    const plug = (from: [string, string], to: string): void => {
      const c = b.cable('lead', from, [to, 'in'], 5000);
      const { piecesMm: _, ...free } = c;
      b.put(free);
    };
    plug([walls[0]?.id ?? '', 'out'], box.id);
    plug([box.id, 'o1'], units[0]?.id ?? '');
    plug([box.id, 'o2'], ballast.id);
    plug([walls[1]?.id ?? '', 'out'], units[1]?.id ?? '');
    b.put({
      id: `other-${i}`,
      type: 'otherLoad',
      owner: 'Catering',
      what: '',
      amps: 2,
      powerFactor: 1,
      on: { recordId: walls[2]?.id ?? '' },
    });
  }
  const setups = [b.setup('Day', 1), b.setup('Night', 2)];
  for (const r of [...b.records.values()])
    if (r.type === 'fixture') for (const s of setups) b.level(s.id, r.id, 100);
  setups.forEach((s, i) => {
    b.put({
      id: `block-${i}`,
      type: 'block',
      day: 1,
      startMin: 480 + i * 120,
      endMin: 570 + i * 120,
      what: 'setup',
      setupId: s.id,
      label: '',
      burnsThrough: [],
      crew: 'shooting',
    });
  });
  return b.plan();
};

/** One change of one record: taken away, moved, renamed, re-plugged, another kind, changed ways. */
const change = (plan: Plan, pick: number, how: number): Plan => {
  const ids = [...plan.records.keys()].filter((id) => id !== 'plan');
  const r = plan.records.get(ids[pick % ids.length] ?? '');
  const records = new Map(plan.records);
  const put = (next: AnyRecord): void => {
    records.set(next.id, next);
  };
  const all = (type: AnyRecord['type']) => [...plan.records.values()].filter((x) => x.type === type);
  const someone = (type: AnyRecord['type']): string =>
    all(type)[how % Math.max(1, all(type).length)]?.id ?? 'gone';
  if (!r || r.type === 'floor') return plan;
  if (how % 11 === 0 && r.type !== 'kind') records.delete(r.id);
  else if (how % 11 === 1) put({ ...r, id: `${r.id}-copy` } as AnyRecord);
  else if (r.type === 'cable')
    put(
      how % 3 === 0
        ? { ...r, from: { recordId: someone('outlet'), portId: 'out' } }
        : how % 3 === 1
          ? { ...r, to: { recordId: someone(how % 2 ? 'fixture' : 'box'), portId: 'in' } }
          : { ...r, kindId: r.kindId === 'lead' ? 'other' : 'lead' },
    );
  else if (r.type === 'fixture')
    put({ ...r, at: { xMm: how * 10, yMm: 0 }, unit: String(how), onPacks: how % 5 === 0 });
  else if (r.type === 'stand') put({ ...r, at: { xMm: how * 10, yMm: 50 } });
  else if (r.type === 'source') put({ ...r, label: `P${how}`, ...(how % 2 ? { voltsV: 118 } : {}) });
  else if (r.type === 'box') put({ ...r, label: `K${how}`, at: { xMm: how, yMm: 0 } });
  else if (r.type === 'outlet') put({ ...r, wayId: String(how % 6), sourceId: someone('source') });
  else if (r.type === 'ballast') put({ ...r, fixtureId: someone('fixture') });
  else if (r.type === 'level') put({ ...r, levelPct: (how * 7) % 104 });
  else if (r.type === 'block') put({ ...r, endMin: r.startMin + how });
  else if (r.type === 'otherLoad') put({ ...r, on: { recordId: someone('outlet') } });
  else if (r.type === 'kind' && r.family === 'fixture' && r.load)
    put({ ...r, load: { ...r.load, wattsW: how } });
  else if (r.type === 'kind' && r.family === 'box') put({ ...r, outlets: r.outlets.slice(0, how % 4) });
  return { ...plan, records };
};

it('power-incremental: a supply tree made with an earlier one is the tree made from nothing, after any changes', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(fc.nat(200), fc.nat(300)), { minLength: 1, maxLength: 12 }), (changes) => {
      let plan = threePanels();
      let tree = supplyTree(plan);
      let power = computePower(plan);
      for (const [pick, how] of changes) {
        plan = change(plan, pick, how);
        const scratch = { ...plan, records: new Map(plan.records) };
        power = computePower(plan, power);
        tree = supplyTree(plan);
        const other = supplyTree(scratch);
        expect(tree.nodes).toEqual(other.nodes);
        expect(tree.defects).toEqual(other.defects);
        expect(tree.children).toEqual(other.children);
        const fresh = computePower(scratch);
        expect(power.limits).toEqual(fresh.limits);
        expect(power.entities).toEqual(fresh.entities);
        expect(power.findings).toEqual(fresh.findings);
        expect(
          Buffer.from(power.figures.values.buffer).equals(Buffer.from(fresh.figures.values.buffer)),
        ).toBe(true);
      }
    }),
    { numRuns: 150 },
  );
});

it('power-incremental: sources that an edit does not touch keep their nodes', () => {
  const plan = threePanels();
  const before = computePower(plan);
  const unit = [...plan.records.values()].find((r) => r.type === 'fixture');
  if (unit?.type !== 'fixture') throw new Error('no unit');
  const moved: Plan = {
    ...plan,
    records: new Map(plan.records).set(unit.id, { ...unit, at: { xMm: 9, yMm: 9 } }),
  };
  const after = computePower(moved, before);
  const kept = after.tree.nodes.filter((n, i) => before.tree.nodes[i] === n).map((n) => n.sourceId);
  expect([...new Set(kept)]).toHaveLength(2);
});
