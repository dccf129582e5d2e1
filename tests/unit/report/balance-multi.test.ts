import { describe, expect, it } from 'vitest';
import { computePower } from '../../../src/engines/power/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import type { CableKind } from '../../../src/plan/kinds/kinds.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { balanceLegs } from '../../../src/report/balance.ts';
import { plugEverything } from '../../../src/report/plug-all.ts';
import { gearRig } from '../../support/gear-rig.ts';

/** A set, a box with a multi-circuit outlet, its multi and the fan at its end, with units of 1 kW on some circuits of it. */
const fan = (circuits: readonly string[], wattsW = 1000) => {
  const r = gearRig();
  const source = r.b.source(r.kind('generator-100kw-3ph'), { label: 'G1' });
  const box = r.b.box(r.kind('box-100-12x20-multi'), { label: 'K1' });
  r.run('feeder-4-0-3ph', [source.id, '1'], [box.id, 'in'], 0);
  const out = r.b.box(r.kind('multi-break-out'), { label: 'F1' });
  r.run('multi-12-14', [box.id, 'm1'], [out.id, 'in'], 0);
  r.b.fixtureKind('lamp', { wattsW, model: 'constant-current', voltsMinV: 100, voltsMaxV: 130 });
  const units = circuits.map((c, i) => {
    const f = r.b.fixture('lamp', { unit: String(i + 1) });
    r.run('pin-20-10-3', [out.id, c], [f.id, 'in'], 15_240);
    return f;
  });
  return { ...r, source, box, out, units };
};

const legs = (plan: Plan, key: string) =>
  (['leg0A', 'leg1A', 'leg2A'] as const).map((q) => computePower(plan).figures.get(key, q, 0));
const portOf = (plan: Plan, unit: string) =>
  recordsOf(plan, 'cable').find((c) => c.to.recordId === unit)?.from.portId;

describe('balancing between the circuits of a multi', () => {
  it('power-balance: plugs move from circuit to circuit of the same fan, to where the leg is', () => {
    // Circuits 1 and 4 lie on one leg of the box, 2 and 5 and 3 and 6 on the others.
    const { plan, source, out, units } = fan(['1', '4']);
    const before = legs(plan(), source.id);
    expect(before.map((a) => Math.round(a))).toEqual([17, 0, 0]);
    const r = balanceLegs(plan());
    expect(r.moves).toHaveLength(1);
    expect(r.sources[0]).toMatchObject({ proved: true, gapPct: 0 });
    const after = applyChanges(plan(), r.changes);
    expect(Math.max(...legs(after, source.id))).toBeLessThan(8.5);
    const [a, b] = units.map((u) => portOf(after, u.id));
    // Both are still on the fan, on circuits of different legs.
    expect(recordsOf(after, 'cable').filter((c) => c.from.recordId === out.id)).toHaveLength(2);
    expect((Number(a) - Number(b)) % 3).not.toBe(0);
    expect(assess(after, { revision: 1 }).findings.filter((f) => f.severity === 'stop')).toEqual([]);
  });

  it('power-balance: six units on six circuits are even already, and nothing moves', () => {
    const { plan } = fan(['1', '2', '3', '4', '5', '6']);
    expect(balanceLegs(plan()).moves).toEqual([]);
  });

  it('power-balance: the multi itself and its fan stay', () => {
    const { plan, box, out } = fan(['1', '4']);
    const after = applyChanges(plan(), balanceLegs(plan()).changes);
    const multi = recordsOf(after, 'cable').find((c) => c.to.recordId === out.id);
    expect(multi?.from).toEqual({ recordId: box.id, portId: 'm1' });
  });

  it('power-plug-all: units without a feed go to free circuits of a fan, spread over the legs', () => {
    const { b, plan, source, out } = fan([]);
    // Nothing but the fan has outlets these fit.
    const units = Array.from({ length: 4 }, (_, i) => b.fixture('lamp', { unit: String(i + 1) }));
    const pin = gearRig();
    const slug = pin.kind('pin-20-10-3');
    const book = recordsOf(pin.plan(), 'kind').filter(
      (k): k is CableKind => k.family === 'cable' && k.id === slug,
    );
    let n = 0;
    const r = plugEverything(plan(), { newId: (p) => `${p}-new-${n++}`, book, adapters: [] });
    const done = applyChanges(plan(), r.changes);
    expect(r.left).toEqual([]);
    expect(recordsOf(done, 'cable').filter((c) => c.from.recordId === out.id).length).toBeLessThanOrEqual(6);
    expect(units.every((u) => portOf(done, u.id) !== undefined)).toBe(true);
    expect(Math.max(...legs(done, source.id))).toBeLessThan(17.5);
  });
});
