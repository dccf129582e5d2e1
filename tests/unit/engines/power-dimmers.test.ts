import { describe, expect, it } from 'vitest';
import { phaseCutThird } from '../../../src/derive/dimmers.ts';
import { cableAmpacity, computePower } from '../../../src/engines/power/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { gearRig } from '../../support/gear-rig.ts';

const lamp = (b: ReturnType<typeof gearRig>['b'], wattsW: number) =>
  b.fixtureKind(`lamp-${wattsW}`, { wattsW, model: 'constant-impedance', voltsMinV: 60, voltsMaxV: 126 });

/** A set, a feeder, a dimmer box on 19-pin multis, and 1 kW lamps on as many of its circuits as asked, at one level. */
const stage = (circuits: number, levelPct: number, feeder = 'feeder-4-0-3ph') => {
  const r = gearRig();
  const source = r.b.source(r.kind('service-400'), { label: 'S1', voltsV: 120 });
  const dimmer = r.b.box(r.kind('dimmer-12x2400w-multi'), { label: 'D1' });
  const feed = r.run(feeder, [source.id, '1'], [dimmer.id, 'in']);
  const out = r.b.box(r.kind('multi-break-out'), { label: 'F1' });
  const multi = r.run('multi-12-14', [dimmer.id, 'm1'], [out.id, 'in']);
  const setup = r.b.setup('Dimmed', 0);
  lamp(r.b, 1000);
  const units = Array.from({ length: circuits }, (_, i) => {
    const f = r.b.fixture('lamp-1000', { unit: String(i + 1) });
    r.run('pin-20-10-3', [out.id, String(i + 1)], [f.id, 'in']);
    r.b.level(setup.id, f.id, levelPct);
    return f;
  });
  return { ...r, source, dimmer, out, feed, multi, units };
};

describe('phase-cut dimmers', () => {
  it('power-dimmer-cut: the third harmonic of a cut wave is that of its Fourier series', () => {
    // Cut at 90°: b₁ = ½, a₁ = 1 ÷ π; the third's amplitude is 1 ÷ π.
    expect(phaseCutThird(0.5)).toBeCloseTo(1 / Math.PI / Math.hypot(0.5, 1 / Math.PI), 3);
    expect(phaseCutThird(1)).toBe(0);
    expect(phaseCutThird(0.1)).toBeGreaterThan(phaseCutThird(0.9));
    expect(phaseCutThird(0.0001)).toBeLessThanOrEqual(1);
  });

  it('power-dimmer-cut: at half its watts a lamp draws the root of a half of its amps', () => {
    const full = computePower(stage(1, 100).plan());
    const half = computePower(stage(1, 50).plan());
    const amps = (p: typeof full): number =>
      p.figures.get(p.tree.nodes.find((n) => n.label === 'Unit 1')?.key ?? '', 'leg0A', 0);
    expect(amps(half) / amps(full)).toBeCloseTo(Math.SQRT1_2, 1);
  });

  it('power-neutral-rms: three like lamps held down on three legs load the neutral with their thirds', () => {
    const { plan, feed } = stage(3, 50);
    const p = computePower(plan());
    const [leg, neutral] = [p.figures.get(feed.id, 'leg0A', 0), p.figures.get(feed.id, 'neutralA', 0)];
    const k = phaseCutThird(0.5);
    // 3k ÷ √(1 + k²) of a leg, nothing of it fundamental; the loss of the dimmer is a sine.
    expect(neutral / leg).toBeGreaterThan(((3 * k) / Math.sqrt(1 + k * k)) * 0.95);
    expect(neutral / leg).toBeLessThan((3 * k) / Math.sqrt(1 + k * k));
    const full = computePower(stage(3, 100).plan());
    expect(full.figures.get('cable-0003', 'neutralA', 0)).toBeLessThan(0.01);
  });

  it('power-dimmer-loss: three per cent of what is on a way turn to heat in it', () => {
    const { plan, dimmer } = stage(1, 100);
    const p = computePower(plan());
    expect(p.figures.get(`${dimmer.id}/1`, 'loadW', 0)).toBeCloseTo(1030, 6);
  });

  it('power-dimmer: a way carries its watts and no more', () => {
    const r = gearRig();
    const house = r.b.source(r.kind('wall-circuit-15'), { label: 'W', voltsV: 120 });
    const dimmer = r.b.box(r.kind('dimmer-line-300w'), { label: 'D1' });
    r.run('cord-12-3', [house.id, '1a'], [dimmer.id, 'in']);
    r.b.fixtureKind(
      'lamp',
      { wattsW: 400, model: 'tungsten', voltsMinV: 60, voltsMaxV: 126 },
      {
        inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }],
      },
    );
    const f = r.b.fixture('lamp', { unit: '1' });
    r.run('cord-12-3', [dimmer.id, '1'], [f.id, 'in']);
    const found = assess(r.plan(), { revision: 0 }).findings.find((x) => x.rule === 'power-dimmer');
    expect(found?.severity).toBe('stop');
    expect(Number(found?.params.limitA)).toBeCloseTo(2.5, 9);
  });

  it('power-dimmer-lamp: tungsten suits, a supply with electronics does not, and a relay takes both', () => {
    const on = (slug: string, model: 'tungsten' | 'constant-power', style = 'panel') => {
      const r = gearRig();
      const house = r.b.source(r.kind('wall-circuit-15'), { label: 'W', voltsV: 120 });
      const dimmer = r.b.box(r.kind(slug), { label: 'D1' });
      r.run('cord-12-3', [house.id, '1a'], [dimmer.id, 'in']);
      r.b.fixtureKind(
        'unit',
        { wattsW: 100, model, voltsMinV: 60, voltsMaxV: 250 },
        {
          style,
          inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }],
        },
      );
      const f = r.b.fixture('unit', { unit: '1' });
      r.run('cord-12-3', [dimmer.id, '1'], [f.id, 'in']);
      return assess(r.plan(), { revision: 0 }).findings.map((x) => x.rule);
    };
    expect(on('dimmer-line-300w', 'tungsten')).not.toContain('power-dimmer-lamp');
    expect(on('dimmer-line-300w', 'constant-power')).toContain('power-dimmer-lamp');
    expect(on('dimmer-line-led-150w', 'constant-power')).toContain('power-dimmer-lamp');
    expect(on('dimmer-line-led-150w', 'constant-power', 'practical')).not.toContain('power-dimmer-lamp');
  });

  it('power-dimmer-least: a way with too little on it to dim evenly is a note', () => {
    const { plan, b, out, run } = stage(0, 100);
    b.fixtureKind('small', { wattsW: 40, model: 'tungsten', voltsMinV: 60, voltsMaxV: 126 });
    const f = b.fixture('small', { unit: '1' });
    run('pin-20-10-3', [out.id, '1'], [f.id, 'in']);
    const found = assess(plan(), { revision: 0 }).findings.filter((x) => x.rule === 'power-dimmer-least');
    expect(found.map((x) => [x.severity, x.params.watts, x.params.leastW])).toEqual([['note', 40, 60]]);
  });

  it('power-dimmer-neutral: a feeder of single conductors to phase-cut dimmers wants a neutral of 130 %', () => {
    const rules = (feeder: string): readonly string[] =>
      assess(stage(3, 50, feeder).plan(), { revision: 0 }).findings.map((f) => f.rule);
    expect(rules('feeder-4-0-3ph')).toContain('power-dimmer-neutral');
    expect(rules('feeder-4-0-3ph-two-n')).not.toContain('power-dimmer-neutral');
    // 316 ÷ 237 = 133 %.
    expect(rules('feeder-2-0-3ph-large-n')).not.toContain('power-dimmer-neutral');
  });
});

describe('multi-circuit cables', () => {
  it('power-circuits: each circuit has its own run from its own way, with its own live and neutral', () => {
    const { plan, multi, out, dimmer } = stage(6, 100);
    const p = computePower(plan());
    for (let c = 1; c <= 6; c++) {
      const run = p.tree.byKey.get(`${multi.id}#${c}`);
      expect(p.tree.nodes[run?.parent ?? -1]?.key).toBe(`${dimmer.id}/${c}`);
      expect(run?.legs).toEqual([(c - 1) % 3]);
      const amps = p.figures.get(
        `${multi.id}#${c}`,
        (['leg0A', 'leg1A', 'leg2A'] as const)[(c - 1) % 3] ?? 'leg0A',
        0,
      );
      expect(amps).toBeGreaterThan(7.5);
      expect(amps).toBeLessThan(8.5);
      // Its own neutral carries what its leg carries.
      expect(p.figures.get(`${multi.id}#${c}`, 'neutralA', 0)).toBeCloseTo(amps, 9);
      expect(p.tree.byKey.get(`${out.id}#${c}`)?.label).toBe(`F1 circuit ${c}`);
    }
    expect(p.findings.filter((f) => f.severity === 'stop')).toEqual([]);
  });

  it('power-circuits: a fan takes a feed for each of its inlets, and passes each on as its circuit', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-400'), { label: 'S1', voltsV: 120 });
    const box = r.b.box(r.kind('box-400-6x100'), { label: 'K1' });
    r.run('feeder-4-0-3ph', [source.id, '1'], [box.id, 'in']);
    const small = r.b.boxKind('small', {
      inlets: [{ id: 'in', connector: 'stage-pin-100', legs: 1, neutral: true }],
      ways: [1, 2].map((i) => ({
        id: `${i}`,
        label: `${i}`,
        breakerA: 20,
        poles: 1,
        curve: 'na' as const,
        legs: [0],
      })),
      outlets: [1, 2].map((i) => ({
        id: `${i}`,
        connector: 'stage-pin-20',
        legs: 1,
        neutral: true,
        wayId: `${i}`,
      })),
    });
    const k2 = r.b.box(small.id, { label: 'K2' });
    r.run('pin-100-2-3', [box.id, '1'], [k2.id, 'in']);
    const fanIn = r.b.box(r.kind('multi-break-in'), { label: 'I1' });
    const fanOut = r.b.box(r.kind('multi-break-out'), { label: 'F1' });
    r.run('pin-20-10-3', [k2.id, '1'], [fanIn.id, '2']);
    r.run('pin-20-10-3', [k2.id, '2'], [fanIn.id, '5']);
    r.run('multi-12-14', [fanIn.id, 'out'], [fanOut.id, 'in']);
    lamp(r.b, 1000);
    lamp(r.b, 500);
    const [two, five] = [r.b.fixture('lamp-1000', { unit: '2' }), r.b.fixture('lamp-500', { unit: '5' })];
    r.run('pin-20-10-3', [fanOut.id, '2'], [two.id, 'in']);
    r.run('pin-20-10-3', [fanOut.id, '5'], [five.id, 'in']);
    const p = computePower(r.plan());
    expect(p.findings.filter((f) => f.severity === 'stop').map((f) => f.rule)).toEqual([]);
    expect(p.figures.get(`${k2.id}/1`, 'loadW', 0)).toBeCloseTo(1000, 6);
    expect(p.figures.get(`${k2.id}/2`, 'loadW', 0)).toBeCloseTo(500, 6);
  });

  it('power-mate: a multi cable without a fan at its end does not go into a unit', () => {
    const { plan, b, dimmer, run } = stage(0, 100);
    lamp(b, 1000);
    const f = b.fixture('lamp-1000', { unit: '9' });
    run('multi-12-14', [dimmer.id, 'm2'], [f.id, 'in']);
    const found = assess(plan(), { revision: 0 }).findings.filter((x) => x.rule === 'power-mate');
    expect(found.map((x) => x.params.label)).toEqual(['cable to Unit 9']);
  });

  it('power-limit: circuits bundled with those of another multi lose more of their ampacity', () => {
    const { plan, multi } = stage(1, 100);
    const kind = plan().records.get(multi.kindId);
    if (kind?.type !== 'kind' || kind.family !== 'cable') throw new Error('no cable');
    // 32 A count its own twelve loaded conductors (0.50); two together have 24 (0.45).
    expect(cableAmpacity(plan(), kind).legA).toBe(32);
    expect(cableAmpacity(plan(), kind, { bundled: 2 }).legA).toBeCloseTo((32 * 0.45) / 0.5, 9);
  });
});

describe('adapters', () => {
  it('power-straight: a tee plugged straight into an outlet feeds what hangs on it, without a cable', () => {
    const r = gearRig();
    const house = r.b.source(r.kind('wall-circuit-15'), { label: 'W', voltsV: 120 });
    const tee = r.b.box(r.kind('tee-household-3'), {
      label: 'T1',
      plugsInto: { recordId: house.id, portId: '1a' },
    });
    r.b.fixtureKind(
      'lamp',
      { wattsW: 900, model: 'tungsten', voltsMinV: 60, voltsMaxV: 126 },
      {
        inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }],
      },
    );
    for (const n of ['1', '2']) {
      const f = r.b.fixture('lamp', { unit: n });
      r.run('cord-12-3', [tee.id, n], [f.id, 'in']);
    }
    const a = assess(r.plan(), { revision: 0 });
    expect(a.figures.get(tee.id, 'loadW', 0)).toBeCloseTo(1800, 6);
    expect(a.findings.some((f) => f.rule === 'power-box-unfed')).toBe(false);
    expect(a.findings.find((f) => f.rule === 'power-breaker')?.params.label).toBe('W way 1');
  });

  it('power-weaker: an adapter behind a larger breaker than it may hang behind is told', () => {
    const r = gearRig('europe');
    const source = r.b.source(r.kind('service-63'), { label: 'S1', voltsV: 230 });
    const kind = r.b.records.get(r.kind('multi-break-out'));
    if (kind?.type !== 'kind' || kind.family !== 'adapter') throw new Error('no fan');
    r.b.put({
      ...kind,
      inlets: [{ id: 'in', connector: 'iec-63-3', legs: 3, neutral: true }],
      circuits: 1,
      what: 'tails',
    });
    const fan = r.b.box(kind.id, { label: 'A1' });
    r.run('flex-16-red-63', [source.id, '1'], [fan.id, 'in']);
    const weak = assess(r.plan(), { revision: 0 }).findings.filter((f) => f.rule === 'power-weaker');
    expect(weak.map((f) => [f.params.label, f.params.ratingA, f.params.breakerA])).toContainEqual([
      'A1',
      16,
      63,
    ]);
  });
});
