import { describe, expect, it } from 'vitest';
import { whatIf } from '../../../src/report/whatif.ts';
import { gearRig } from '../../support/gear-rig.ts';
import { generatorRig } from '../../support/plan-builder.ts';

const lose = (plan: Parameters<typeof whatIf>[0], sourceId: string, leg: number) => {
  const r = whatIf(plan, { loseLeg: { sourceId, leg } });
  if (!r.ok) throw new Error(r.error.what);
  const of = (id: string | undefined) => r.value.loads.find((l) => l.key === id);
  return { ...r.value, of };
};

/** A 277/480 V service, a delta to wye transformer and lamps of so many watts on its three legs, all runs of no length. */
const studio = (watts: readonly number[], feed: 'constant-impedance' | 'constant-power') => {
  const r = gearRig();
  const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 277 });
  const t = r.b.box(r.kind('transformer-480-208-75kva'), { label: 'T1' });
  const box = r.b.box(r.kind('box-100-12x20-multi'), { label: 'K1' });
  r.run('feeder-4-0-3ph', [source.id, '1'], [t.id, 'in'], 0);
  r.run('feeder-4-0-3ph', [t.id, '1'], [box.id, 'in'], 0);
  const out = r.b.box(r.kind('multi-break-out'), { label: 'F1' });
  r.run('multi-12-14', [box.id, 'm1'], [out.id, 'in'], 0);
  const units = watts.map((w, i) => {
    const slug = `lamp-${w}`;
    r.b.fixtureKind(slug, { wattsW: w, model: feed, voltsMinV: 100, voltsMaxV: 126 });
    const f = r.b.fixture(slug, { unit: String(i + 1) });
    r.run('pin-20-10-3', [out.id, String(i + 1)], [f.id, 'in'], 0);
    return f;
  });
  return { ...r, source, t, units };
};

describe('a lost leg', () => {
  it('power-what-if: behind a delta to wye transformer the windings on the lost leg share the volts by the loads on them', () => {
    // By hand: windings A and B lie in series over legs B and C of the feed, with loads Y ∝ P − jQ on them; U_A ÷ U = Y_B ÷ (Y_A + Y_B).
    // On each stand the lamp and a third of the transformer's own 750 W at a power factor of 0.3 (250 W, 795 var).
    const own = { p: 250, q: (250 / 0.3) * Math.sqrt(1 - 0.3 ** 2) };
    const byHand = (a: number, b: number): readonly [number, number] => {
      const y = (w: number) => ({ re: w + own.p, im: -own.q });
      const sum = { re: y(a).re + y(b).re, im: y(a).im + y(b).im };
      const open = (277 * Math.sqrt(3) * 120) / 480;
      const size = (z: { re: number; im: number }) => Math.hypot(z.re, z.im);
      return [(open * size(y(b))) / size(sum), (open * size(y(a))) / size(sum)];
    };
    for (const [a, b] of [
      [500, 500],
      [1500, 500],
      [200, 1800],
    ] as const) {
      const { plan, source, units } = studio([a, b, 700], 'constant-impedance');
      const lost = lose(plan(), source.id, 0);
      const [ua, ub] = byHand(a, b);
      // The windings' own impedance, 4 % at 75 kVA, is in the answer and not in the hand calculation.
      expect(Math.abs((lost.of(units[0]?.id)?.voltsV ?? 0) / ua - 1)).toBeLessThan(0.004);
      expect(Math.abs((lost.of(units[1]?.id)?.voltsV ?? 0) / ub - 1)).toBeLessThan(0.004);
      expect(units.map((u) => lost.of(u.id)?.state)).toEqual(['wrong volts', 'wrong volts', 'as before']);
      // An impedance takes watts with the square of its volts.
      const open = (277 * Math.sqrt(3) * 120) / 480;
      expect(Math.abs((lost.of(units[0]?.id)?.wattsW ?? 0) / (a * (ua / 120) ** 2) - 1)).toBeLessThan(0.01);
      expect(open).toBeGreaterThan(119);
      // The two legs that remain of the feed carry the same amps, the lost one none.
      const amps = lost.meter?.wires.map((x) => x.afterA) ?? [];
      expect(amps[0]).toBe(0);
      expect(Math.abs((amps[1] ?? 0) - (amps[2] ?? 1))).toBeLessThan(1e-6);
    }
  });

  it('power-what-if: equal loads behind it get half of their volts each, the third leg keeps all', () => {
    const { plan, source, units } = studio([800, 800, 800], 'constant-power');
    const lost = lose(plan(), source.id, 1);
    const volts = units.map((u) => lost.of(u.id)?.voltsV ?? 0);
    // Losing leg B leaves the windings of legs B and C of the output in series.
    expect(Math.abs((volts[1] ?? 0) - 60)).toBeLessThan(0.5);
    expect(Math.abs((volts[2] ?? 0) - 60)).toBeLessThan(0.5);
    expect(Math.abs((volts[0] ?? 0) - 120)).toBeLessThan(0.5);
  });

  it('power-what-if: a load between two legs feeds back into the lost one', () => {
    // By hand: 2080 W at √3 × 120 V is 20.77 Ω, 600 W at 120 V is 24 Ω; in series over the 120 V of leg B: 120 × 24 ÷ 44.77 = 64.3 V.
    const [pairOhm, lampOhm] = [(3 * 120 ** 2) / 2080, 24];
    const { b, source, box } = generatorRig();
    b.fixtureKind('lamp', { wattsW: 600, model: 'constant-impedance', voltsMinV: 100, voltsMaxV: 130 });
    const lamp = b.fixture('lamp');
    b.cable('lead', [box.id, 'o1'], [lamp.id, 'in'], 0);
    const plug = 'single-pole-400-3';
    b.fixtureKind(
      'pair',
      { wattsW: 2080, model: 'constant-impedance', voltsMinV: 190, voltsMaxV: 250 },
      { inlets: [{ id: 'in', connector: plug, legs: 2, neutral: false }] },
    );
    const pair = b.fixture('pair');
    b.sourceKind('set', {
      ratedKva: 120,
      outlets: ['out', 'b'].map((id) => ({ id, connector: plug, legs: 3, neutral: true })),
    });
    for (const c of [...b.records.values()]) if (c.type === 'cable') b.put({ ...c, piecesMm: [0] });
    b.cable('feeder', [source.id, 'b'], [pair.id, 'in'], 0);
    const lost = lose(b.plan(), source.id, 0);
    expect(lost.of(lamp.id)?.voltsV).toBeCloseTo((120 * lampOhm) / (lampOhm + pairOhm), 6);
    expect(lost.of(lamp.id)).toMatchObject({ state: 'wrong volts' });
    expect(lost.of(pair.id)?.voltsV).toBeCloseTo((120 * pairOhm) / (lampOhm + pairOhm), 6);
    expect(lost.notes.join(' ')).toContain('feeds back');
    expect(lost.meter?.wires.map((w) => Math.round(w.afterA * 1000) / 1000)).toEqual([0, 2.68, 0, 2.68]);
  });

  it('power-what-if: what is on other legs alone keeps its volts and amps', () => {
    const { b, source, plug } = generatorRig();
    b.fixtureKind('f', { wattsW: 1200 });
    const units = [1, 2, 3].map((w) => plug('f', w).fixture);
    const lost = lose(b.plan(), source.id, 0);
    expect(units.map((u) => lost.of(u.id)?.state)).toEqual(['dark', 'as before', 'as before']);
    const [a, mid, c] = lost.meter?.wires ?? [];
    expect(a?.afterA).toBe(0);
    for (const w of [mid, c]) expect(Math.abs((w?.afterA ?? 0) / (w?.beforeA ?? 1) - 1)).toBeLessThan(0.01);
  });
});
