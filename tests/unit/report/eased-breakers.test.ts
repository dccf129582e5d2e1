import { describe, expect, it } from 'vitest';
import { computePower } from '../../../src/engines/power/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import type { Plan } from '../../../src/plan/plan.ts';
import { recordSchemas } from '../../../src/plan/records/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { balanceLegs } from '../../../src/report/balance.ts';
import { roomLeft } from '../../../src/report/room.ts';
import { generatorRig } from '../../support/plan-builder.ts';

/** Two ways of two outlets: 14 A on the first for two hours, 18 A on the second all day; or all of it for two hours. */
const rig = (allShort = false) => {
  const r = generatorRig();
  const kind = r.b.records.get('box');
  if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box kind');
  const outlets = kind.outlets.filter((o) => o.wayId === '1' || o.wayId === '2');
  const second = outlets.map((o) => ({ ...o, id: `p${o.wayId}` }));
  r.b.put({ ...kind, ways: kind.ways.slice(0, 2), outlets: [...outlets, ...second] });
  const plug = (wattsW: number, port: string) => {
    r.b.fixtureKind(`f${wattsW}`, { wattsW, model: 'constant-current' }, { inlets: r.inlets });
    const f = r.b.fixture(`f${wattsW}`);
    r.b.cable('lead', [r.box.id, port], [f.id, 'in'], 7620);
    return f.id;
  };
  const short = [plug(840, 'o1'), plug(840, 'p1')];
  const long = [plug(1800, 'o2'), plug(360, 'p2')];
  const setups = [r.b.setup('One', 1), r.b.setup('Two', 2)];
  setups.forEach((s, i) => {
    for (const id of short) r.b.level(s.id, id, i === 0 ? 100 : 0);
    for (const id of long) r.b.level(s.id, id, i === 0 || !allShort ? 100 : 0);
    const at = i === 0 ? { startMin: 480, endMin: 600 } : { startMin: 600, endMin: 840 };
    const what = { id: `b${i}`, type: 'block', day: 1, what: 'setup', setupId: s.id };
    r.b.put(recordSchemas.block.parse({ ...what, ...at }));
  });
  return r;
};

const stops = (plan: Plan): number => computePower(plan).findings.filter((f) => f.severity === 'stop').length;

describe('breakers eased by the hours of what hangs on them', () => {
  it('power-balance: a swap of a long load onto a breaker that is eased now counts by the usual 80 %, so it helps nothing', () => {
    const plan = rig().b.plan();
    expect(stops(plan)).toBe(1);
    const r = balanceLegs(plan);
    expect(r.sources[0]?.after.overloads).toBe(stops(applyChanges(plan, r.changes)));
  });

  it('power-balance: where nothing burns for three hours, breakers count with their rating', () => {
    const plan = rig(true).b.plan();
    expect(stops(plan)).toBe(0);
    expect(balanceLegs(plan).sources[0]?.before.overloads).toBe(0);
  });

  it('power-room: left is what a load of any hours may take: 16 A less 14 A, not 20 A less 14 A; none where more runs by the hours', () => {
    const r = rig(true);
    const a = assess(r.b.plan(), { revision: 1 });
    expect(roomLeft(a, `${r.box.id}/1`)).toMatchObject({ limitA: 16 });
    expect(roomLeft(a, `${r.box.id}/1`)?.freeA).toBeCloseTo(2, 6);
    expect(roomLeft(a, `${r.box.id}/2`)?.freeA).toBe(0);
  });
});
