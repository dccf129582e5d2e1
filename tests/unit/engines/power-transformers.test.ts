import { describe, expect, it } from 'vitest';
import { computePower, faultLoops } from '../../../src/engines/power/index.ts';
import { assess } from '../../../src/report/assess.ts';
import { explainOrWhy } from '../../../src/report/explain.ts';
import { whatIf } from '../../../src/report/whatif.ts';
import { gearRig } from '../../support/gear-rig.ts';

/** A 277/480 V service, a transformer, a box behind it and tungsten on its ways. */
const studio = (kva = '75', watts: readonly number[] = [2000, 2000, 2000]) => {
  const r = gearRig();
  const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 277 });
  const t = r.b.box(r.kind(`transformer-480-208-${kva}kva`), { label: 'T1' });
  const box = r.b.box(r.kind('box-100-12x20-multi'), { label: 'K1' });
  r.run('feeder-4-0-3ph', [source.id, '1'], [t.id, 'in']);
  r.run('feeder-4-0-3ph', [t.id, '1'], [box.id, 'in']);
  const out = r.b.box(r.kind('multi-break-out'), { label: 'F1' });
  r.run('multi-12-14', [box.id, 'm1'], [out.id, 'in']);
  const units = watts.map((w, i) => {
    r.b.fixtureKind(`lamp-${w}`, {
      wattsW: w,
      model: 'constant-impedance',
      voltsMinV: 100,
      voltsMaxV: 126,
    });
    const f = r.b.fixture(`lamp-${w}`, { unit: String(i + 1) });
    r.run('pin-20-10-3', [out.id, String(i + 1)], [f.id, 'in']);
    return f;
  });
  return { ...r, source, t, box, out, units };
};

describe('a three-phase transformer', () => {
  it('power-transformer-system: gives three legs of 120 V behind it, whose neutral carries nothing of the feed', () => {
    const { plan, t, source, box } = studio('75', [2000]);
    const p = computePower(plan());
    const output = p.tree.byKey.get(`${t.id}/output`);
    expect([output?.system, output?.legs, output?.neutral, output?.label]).toEqual([
      '120/208',
      [0, 1, 2],
      true,
      'T1 output',
    ]);
    const fig = (key: string, q: Parameters<typeof p.figures.get>[1]): number => p.figures.get(key, q, 0);
    // 2 kW between leg A and neutral: 16.6 A there, 120/480 of it in two legs of the feed.
    // less what 30 m of cable lose of its volts.
    expect(fig(box.id, 'leg0A')).toBeGreaterThan(15.8);
    expect(fig(box.id, 'neutralA')).toBeCloseTo(fig(box.id, 'leg0A'), 6);
    expect(fig(box.id, 'leg1A')).toBeCloseTo(0, 6);
    expect(fig(source.id, 'neutralA')).toBeCloseTo(0, 6);
    const own = 750 / 0.3 / (480 * Math.sqrt(3));
    expect(Math.abs(fig(source.id, 'leg0A') - fig(box.id, 'leg0A') / 4)).toBeLessThan(own + 0.01);
    expect(Math.abs(fig(source.id, 'leg2A') - fig(box.id, 'leg0A') / 4)).toBeLessThan(own + 0.01);
    expect(fig(source.id, 'leg1A')).toBeLessThan(own + 0.01);
  });

  it('power-transformer-loss: what the source gives is the loads, the losses of runs and windings, and what it draws by itself', () => {
    const { plan, t, source, units } = studio('75', [2400, 2400, 2400, 2400, 2400, 2400]);
    const p = computePower(plan());
    const fig = (key: string): number => p.figures.get(key, 'inW', 0);
    const drawn = units.reduce((sum, u) => sum + fig(u.id), 0);
    // 75 kVA of 98 %: 750 W always, and as much again at full load, with the square of the share it carries.
    const share = fig(`${t.id}/output`) / 75_000;
    const windings = 750 * share ** 2;
    expect(fig(t.id) - fig(`${t.id}/output`)).toBeGreaterThan(745);
    expect(fig(t.id) - fig(`${t.id}/output`)).toBeLessThan(765);
    const run = p.tree.nodes.find((n) => n.label === 'cable to K1');
    expect(Math.abs(fig(`${t.id}/output`) - fig(run?.key ?? '') - windings)).toBeLessThan(windings * 0.02);
    expect(fig(source.id)).toBeGreaterThan(drawn + 750 + windings);
  });

  it('power-transformer: is over by the share of its kVA on a leg of its output', () => {
    const { plan, b, out, kind, run } = studio('30', []);
    // Three units of 3.8 kW on circuits 1 and 4 would be on leg A: two circuits, 63 A; a third by the plain outlets.
    b.fixtureKind('big', { wattsW: 6000, voltsMinV: 100, voltsMaxV: 130 });
    for (const circuit of ['1', '4']) {
      const f = b.fixture('big', { unit: circuit });
      run('pin-20-10-3', [out.id, circuit], [f.id, 'in']);
    }
    void kind;
    const a = assess(plan(), { revision: 0 });
    const found = a.findings.find((f) => f.rule === 'power-transformer');
    expect(found?.severity).toBe('stop');
    expect(found?.params.leg).toBe('A');
    expect(Number(found?.params.limitA)).toBeCloseTo(30_000 / 360, 6);
  });

  it('power-unguarded: the run behind it has no breaker that guards it, its box has', () => {
    const { plan, box } = studio();
    const a = assess(plan(), { revision: 0 });
    const open = a.findings.filter((f) => f.rule === 'power-unguarded');
    expect(open.map((f) => f.params.label)).toEqual(['cable to K1']);
    expect(a.findings.some((f) => f.rule === 'power-weaker' && f.recordIds.includes(box.id))).toBe(false);
  });

  it('power-volts: volts fall by its impedance, told against its open volts', () => {
    const { plan, units, t } = studio('30', [2400, 2400, 2400]);
    const p = computePower(plan());
    const at = (key: string) => p.figures.get(key, 'voltsV', 0);
    const open = (277 * Math.sqrt(3) * 120) / 480;
    expect(at(`${t.id}/output`)).toBeLessThan(open);
    // 20 A of 83 A rated, 1.5 % of it resistance.
    expect(p.figures.get(`${t.id}/output`, 'dropPct', 0)).toBeGreaterThan(0.3);
    expect(p.figures.get(`${t.id}/output`, 'dropPct', 0)).toBeLessThan(0.5);
    expect(at(units[0]?.id ?? '')).toBeLessThan(at(`${t.id}/output`));
  });

  it('power-fault-loop: scales what lies ahead of it and adds its own windings', () => {
    const { plan, source, b } = studio('75', [2000]);
    b.put({ ...source, loopOhm: 0.03 });
    const p = computePower(plan());
    const loops = new Map(faultLoops(plan(), p.tree).map((l) => [l.key, l]));
    const behind = [...loops.values()].find((l) => l.label === 'cable to K1');
    const ahead = [...loops.values()].find((l) => l.label === 'cable to T1');
    const base = 120 ** 2 / 25_000;
    const [r, x] = [base * 0.01, base * Math.sqrt(0.04 ** 2 - 0.01 ** 2)];
    expect(behind?.loopOhm).toBeGreaterThan(Math.hypot(r, x));
    expect(behind?.loopOhm).toBeLessThan(Math.hypot(r, x) + (ahead?.loopOhm ?? 0) / 48 + 0.02);
    expect(behind?.breakerLabel).toBeUndefined();
  });

  it('power-what-if: a lost leg of the feed leaves two windings in series over the other two, a lost neutral floats only its own side', () => {
    const { plan, source, box, units } = studio('75', [2000, 1000, 500]);
    const lost = whatIf(plan(), { loseLeg: { sourceId: source.id, leg: 0 } });
    if (!lost.ok) throw new Error(lost.error.what);
    const state = (id: string | undefined) => lost.value.loads.find((l) => l.key === id);
    expect(units.map((u) => state(u.id)?.state)).toEqual(['wrong volts', 'wrong volts', 'as before']);
    // 120 V over 2000 W and 1000 W in series, with the windings' own 250 W and 795 var each: 46.2 and 74.4 V, of which
    // the runs take about 3 %.
    for (const [i, byHand] of [46.2, 74.4].entries()) {
      const share = (state(units[i]?.id)?.voltsV ?? 0) / byHand;
      expect(share).toBeLessThan(1);
      expect(share).toBeGreaterThan(0.96);
    }
    const neutral = whatIf(plan(), { loseNeutral: { recordId: box.id } });
    if (!neutral.ok) throw new Error(neutral.error.what);
    // The least load gets the most volts.
    const volts = units.map((u) => neutral.value.loads.find((l) => l.key === u.id)?.voltsV ?? 0);
    expect(volts[2]).toBeGreaterThan(140);
    expect(volts[0]).toBeLessThan(100);
  });

  it('power-incremental: an edit behind it gives the figures from scratch, and every figure has a working', () => {
    const { plan, b, units } = studio('75', [2000, 1000]);
    const first = assess(plan(), { revision: 0 });
    const unit = units[1];
    if (unit) b.put({ ...unit, at: { xMm: 4000, yMm: 0 } });
    b.fixtureKind('lamp-1000', { wattsW: 1200, model: 'constant-impedance', voltsMinV: 100, voltsMaxV: 126 });
    const next = assess(plan(), { revision: 1, previous: first });
    const scratch = assess(plan(), { revision: 1 });
    expect(Array.from(next.figures.values)).toEqual(Array.from(scratch.figures.values));
    for (const e of scratch.entities)
      for (const q of ['leg0A', 'leg1A', 'neutralA', 'voltsV', 'dropV', 'usePct', 'inW', 'loadVa']) {
        const w = explainOrWhy(plan(), `${q}@${e.key}@all`);
        if (w.ok)
          expect(`${w.value.title} ${w.value.result} ${w.value.steps.join(' ')}`).not.toMatch(
            /NaN|undefined/,
          );
      }
  });
});

describe('a transformer with one winding', () => {
  it('power-wrong-volts: of 240 V on two legs of a 120/208 V supply is told, and gives 104 V', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-200'), { label: 'S1', voltsV: 120 });
    const box = r.b.box(r.kind('box-400-two-leg'), { label: 'K1' });
    r.run('feeder-4-0-3ph', [source.id, '1'], [box.id, 'in']);
    const t = r.b.box(r.kind('transformer-240-120-7kva'), { label: 'T1' });
    r.run('pin-60-2-6-3', [box.id, '4'], [t.id, 'in']);
    const a = assess(r.plan(), { revision: 0 });
    expect(a.findings.filter((f) => f.rule === 'power-wrong-volts').map((f) => f.params.label)).toEqual([
      'T1',
    ]);
    expect(a.figures.get(`${t.id}/output`, 'voltsV', 0)).toBeCloseTo(104, 0);
  });

  it('power-transformer-system: a two-leg output lies about an earthed middle, and a breaker ahead guards a one-leg one by its ratio', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 277 });
    const t = r.b.box(r.kind('transformer-480-240-25kva'), { label: 'T1' });
    r.run('feeder-4-0-1ph', [source.id, '2'], [t.id, 'in']);
    const p = computePower(r.plan());
    const out = p.tree.byKey.get(`${t.id}/output`);
    expect([out?.system, out?.legs]).toEqual(['120/240', [0, 1]]);
    expect(p.figures.get(`${t.id}/output`, 'voltsV', 0)).toBeCloseTo((277 * Math.sqrt(3)) / 4, 2);
    expect(p.limits[out?.index ?? -1]?.leg?.limitA).toBeCloseTo(25_000 / 240, 6);
    expect(p.limits[out?.index ?? -1]?.aheadA).toBeUndefined();
    const iso = gearRig();
    const house = iso.b.source(iso.kind('wall-circuit-20'), { label: 'W', voltsV: 120 });
    const small = iso.b.box(iso.kind('transformer-isolating'), { label: 'T2' });
    iso.run('cord-12-3-20', [house.id, '1a'], [small.id, 'in']);
    const q = computePower(iso.plan());
    expect(q.limits[q.tree.byKey.get(`${small.id}/output`)?.index ?? -1]?.aheadA).toBeCloseTo(20, 9);
  });

  it('power-connector-volts: kit for 120 V straight on a 277 V leg stops twice: by its connector and by its volts', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('service-200-480'), { label: 'S1', voltsV: 277 });
    const box = r.b.box(r.kind('box-100-12x20-multi'), { label: 'K1' });
    r.run('feeder-4-0-3ph', [source.id, '1'], [box.id, 'in']);
    const out = r.b.box(r.kind('multi-break-out'), { label: 'F1' });
    r.run('multi-12-14', [box.id, 'm1'], [out.id, 'in']);
    r.b.fixtureKind('lamp', { wattsW: 1000, voltsMinV: 108, voltsMaxV: 126 });
    const f = r.b.fixture('lamp', { unit: '1' });
    r.run('pin-20-10-3', [out.id, '1'], [f.id, 'in']);
    const a = assess(r.plan(), { revision: 0 });
    expect(a.findings.filter((x) => x.rule === 'power-wrong-volts').map((x) => x.severity)).toEqual(['stop']);
    const told = a.findings.filter((x) => x.rule === 'power-connector-volts');
    expect(told.length).toBeGreaterThan(0);
    expect(told.every((x) => x.severity === 'stop' && x.params.nominalV === 277)).toBe(true);
    // Once for each run, not again on what hangs on it.
    expect(told.some((x) => x.params.label === 'Unit 1')).toBe(false);
  });

  it('power-defect: a three-leg output from a one-leg inlet, or no kVA, is told and not computed', () => {
    const r = gearRig();
    const source = r.b.source(r.kind('wall-circuit-20'), { label: 'W', voltsV: 120 });
    const id = r.kind('transformer-isolating');
    const k = r.b.records.get(id);
    if (k?.type !== 'kind' || k.family !== 'converter') throw new Error('no converter');
    const { ratedKva: _, ...bare } = k;
    r.b.records.set(id, bare);
    const t = r.b.box(id, { label: 'T1' });
    r.run('cord-12-3-20', [source.id, '1a'], [t.id, 'in']);
    expect(
      assess(r.plan(), { revision: 0 }).findings.find((f) => f.rule === 'power-value')?.params.problem,
    ).toBe('its kVA are not given');
    r.b.records.set(id, { ...k, outputSystem: '120/208' });
    expect(
      assess(r.plan(), { revision: 0 }).findings.find((f) => f.rule === 'power-value')?.params.problem,
    ).toBe('its output has three legs and its inlet has not');
  });
});
