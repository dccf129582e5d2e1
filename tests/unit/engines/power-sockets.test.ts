import { describe, expect, it } from 'vitest';
import { computePower, placesOf } from '../../../src/engines/power/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { plugEverything } from '../../../src/report/plug-all.ts';
import { roomLeft } from '../../../src/report/room.ts';
import { findingText } from '../../../src/report/text.ts';
import { whereToPlug } from '../../../src/report/where-to-plug.ts';
import { onePoleWays, PlanBuilder } from '../../support/plan-builder.ts';

const ids = () => {
  let n = 0;
  return (prefix: string): string => `${prefix}-new-${n++}`;
};

/** A house circuit of 20 A with one wall outlet of so many sockets, and units of 600 W to plug in. */
const wall = (sockets: number | undefined, units: number, wattsW = 600, connector = 'nema-5-15') => {
  const b = new PlanBuilder();
  b.sourceKind('house', { what: 'wall-circuit', system: '120', ways: onePoleWays(1, 20, 1) });
  const house = b.source('house', { label: 'House', voltsV: 120 });
  const outlet = b.outlet(house.id, '1', {
    label: 'W1',
    connector,
    ...(sockets === undefined ? {} : { sockets }),
  });
  b.cableKind('cord', { plug: connector, socket: connector });
  b.fixtureKind('f', { wattsW }, { inlets: [{ id: 'in', connector, legs: 1, neutral: true }] });
  const fixtures = Array.from({ length: units }, () => b.fixture('f'));
  return { b, outlet, fixtures };
};
const plugged = (w: ReturnType<typeof wall>) => {
  for (const f of w.fixtures) w.b.cable('cord', [w.outlet.id, 'out'], [f.id, 'in'], 7620);
  return w.b.plan();
};

describe('wall outlets with several sockets', () => {
  it('power-outlet-shared: an outlet takes as many plugs as it has sockets, and no more', () => {
    const shared = (sockets: number | undefined, units: number, connector?: string) =>
      assess(plugged(wall(sockets, units, 200, connector)), { revision: 1 }).findings.filter(
        (f) => f.rule === 'power-outlet-shared',
      );
    expect(shared(2, 2)).toEqual([]);
    expect(shared(4, 4)).toEqual([]);
    expect(shared(1, 2)).toHaveLength(1);
    expect(shared(2, 3)).toHaveLength(1);
    // Household plates are taken for double ones where the plan does not say; others for single ones.
    expect(shared(undefined, 2)).toEqual([]);
    expect(shared(undefined, 2, 'stage-pin-20')).toHaveLength(1);
    const plan = plugged(wall(undefined, 3));
    const finding = assess(plan, { revision: 1 }).findings.find((f) => f.rule === 'power-outlet-shared');
    expect(finding && findingText(plan, finding).body).toContain('2 sockets, the usual number');
  });

  it('power-outlet-shared: what other people have plugged in takes a socket', () => {
    const w = wall(2, 2, 200);
    const before = assess(plugged(w), { revision: 1 }).findings;
    w.b.put({
      id: 'kettle',
      type: 'otherLoad',
      owner: 'Catering',
      what: 'Kettle',
      amps: 1,
      powerFactor: 1,
      on: { recordId: w.outlet.id },
    });
    const after = assess(w.b.plan(), { revision: 1 }).findings;
    const has = (l: typeof before) => l.some((f) => f.rule === 'power-outlet-shared');
    expect([has(before), has(after)]).toEqual([false, true]);
  });

  it('power-plug-all: plugs fill the sockets of a plate, then the rest stays unplugged', () => {
    const w = wall(3, 5, 200);
    const r = plugEverything(w.b.plan(), { newId: ids() });
    expect(r.steps).toHaveLength(3);
    expect(r.left).toHaveLength(2);
    expect(placesOf(computePower(w.b.plan()), w.outlet.sourceId).map((p) => p.capacity)).toEqual([3]);
    expect(recordsOf(applyChanges(w.b.plan(), r.changes), 'cable')).toHaveLength(3);
  });

  it('power-where: a plate with a free socket is offered, a full one is not', () => {
    const asked = { floorId: 'floor', at: { xMm: 0, yMm: 0 }, loadW: 300, powerFactor: 1 };
    const where = (sockets: number, units: number) => {
      const plan = plugged(wall(sockets, units, 200));
      return whereToPlug(plan, assess(plan, { revision: 1 }), { ...asked, connector: 'nema-5-15' }).length;
    };
    expect([where(2, 1), where(2, 2), where(4, 3), where(1, 1)]).toEqual([1, 0, 1, 0]);
  });

  it('power-limit: two plugs of 7.5 A on a plate of 15 A sockets are within its circuit; the room left is the circuit’s', () => {
    const plan = plugged(wall(2, 2, 900));
    const a = assess(plan, { revision: 1 });
    const outlet = recordsOf(plan, 'outlet')[0]?.id ?? '';
    expect(a.figures.get(outlet, 'leg0A', 0)).toBeGreaterThan(15);
    expect(a.findings.filter((f) => f.severity === 'stop')).toEqual([]);
    // 20 A at 80 % less what is on it: the way sets it, no socket.
    const room = roomLeft(a, outlet);
    expect(room?.limitA).toBeCloseTo(16, 9);
    expect(room?.freeA).toBeCloseTo(16 - a.figures.get(outlet, 'leg0A', 0), 9);
  });

  it('power-connector: one plug over the rating of a socket is told, also on a plate of several', () => {
    const a = assess(plugged(wall(2, 1, 1900)), { revision: 1 });
    expect(a.findings.some((f) => f.rule === 'power-connector' && f.severity === 'stop')).toBe(true);
    expect(plugEverything(wall(2, 1, 1900).b.plan(), { newId: ids() }).steps).toEqual([]);
  });

  it('power-outlet: a plate whose sockets carry more than 20 A in all is told', () => {
    const w = wall(3, 3, 900);
    w.b.sourceKind('house', { what: 'wall-circuit', system: '120', ways: onePoleWays(1, 30, 1) });
    const a = assess(plugged(w), { revision: 1 });
    const told = a.findings.find((f) => f.rule === 'power-outlet');
    expect([told?.severity, told?.params.limitA]).toEqual(['stop', 20]);
  });
});
