import { describe, expect, it } from 'vitest';
import { computePower, sourceRating } from '../../../src/engines/power/index.ts';
import { applyChanges } from '../../../src/plan/change-set.ts';
import { kindSchema } from '../../../src/plan/kinds/kinds.ts';
import { type Plan, recordsOf } from '../../../src/plan/plan.ts';
import { assess } from '../../../src/report/assess.ts';
import { balanceLegs } from '../../../src/report/balance.ts';
import { assessmentJson } from '../../../src/report/json.ts';
import { plugEverything } from '../../../src/report/plug-all.ts';
import { supplySummary } from '../../../src/report/summary.ts';
import { findingText } from '../../../src/report/text.ts';
import { whatIf } from '../../../src/report/whatif.ts';
import { gearRig } from '../../support/gear-rig.ts';
import { generatorRig } from '../../support/plan-builder.ts';

/** An inverter of 1000 W at 12 V in a van, and units of so many watts on its outlet by one cord each. */
const van = (watts: readonly number[], more: { inrushMultiple?: number } = {}) => {
  const r = gearRig();
  const inverter = r.b.box(r.kind('inverter-12v-1kw'), { label: 'V1' });
  r.b.cableKind('cord', { plug: 'nema-5-15', socket: 'nema-5-15', conductor: 'awg:14', ampacityA: 15 });
  const strip = r.b.boxKind('strip', {
    inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }],
    outlets: watts.map((_, i) => ({ id: `o${i}`, connector: 'nema-5-15', legs: 1, neutral: true })),
  });
  const box = r.b.box(strip.id, { label: 'Strip' });
  r.b.cable('cord', [inverter.id, '1'], [box.id, 'in'], 0);
  const units = watts.map((wattsW, i) => {
    r.b.fixtureKind(
      `f${i}`,
      { wattsW, voltsMinV: 100, voltsMaxV: 250, ...more },
      { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] },
    );
    const f = r.b.fixture(`f${i}`, { unit: String(i + 1) });
    r.b.cable('cord', [box.id, `o${i}`], [f.id, 'in'], 15_240);
    return f;
  });
  return { ...r, inverter, units };
};

describe('an inverter that stands by itself', () => {
  it('power-inverter: what hangs on it is computed at its nominal volts, marked as assumed', () => {
    const { plan, inverter, units } = van([300, 200]);
    const p = computePower(plan());
    const node = p.tree.byKey.get(inverter.id);
    expect([node?.what, node?.system, node?.notComputed]).toEqual(['source', '120', undefined]);
    expect(p.figures.get(inverter.id, 'voltsV', 0)).toBeCloseTo(120, 9);
    expect(p.figures.get(inverter.id, 'leg0A', 0)).toBeGreaterThan(500 / 120);
    const at = p.figures.get(units[0]?.id ?? '', 'voltsV', 0);
    expect(at).toBeLessThan(120);
    expect(at).toBeGreaterThan(118);
    expect(sourceRating(plan(), inverter.id)).toMatchObject({ kw: 1, share: 1 });
    const a = assess(plan(), { revision: 1 });
    const [row] = supplySummary(plan(), a).sources;
    expect([row?.id, row?.what, row?.voltsBasis]).toEqual([inverter.id, 'power-station', 'set-nominal']);
    expect(a.findings.some((f) => f.rule === 'power-box-unfed' && f.recordIds[0] === inverter.id)).toBe(
      false,
    );
    JSON.parse(assessmentJson(plan(), a));
  });

  it('power-generator-kw: over its continuous watts is a stop', () => {
    const over = (w: number) =>
      assess(van([w]).plan(), { revision: 1 }).findings.filter((f) => f.rule === 'power-generator-kw');
    expect(over(950)).toEqual([]);
    expect(over(1100).map((f) => f.severity)).toEqual(['stop']);
  });

  it('station-surge: units whose switching on takes more than it gives for a moment are told', () => {
    const told = (times: number) =>
      assess(van([400, 400], { inrushMultiple: times }).plan(), { revision: 1 }).findings.filter(
        (f) => f.rule === 'station-surge',
      );
    expect(told(1.5)).toEqual([]);
    expect(told(12).map((f) => f.params.label)).toEqual(['V1']);
  });

  it('power-inverter-feed: watts over its efficiency and its own draw, in amps at its inlet', () => {
    const { plan, inverter } = van([500]);
    const a = assess(plan(), { revision: 1 });
    const f = a.findings.find((x) => x.rule === 'power-inverter-feed');
    const watts = a.figures.get(inverter.id, 'inW', 0);
    const own = Number(f?.params.idleW);
    expect(own).toBeGreaterThan(0);
    // 88 % of the book’s kind.
    expect(f?.params.amps).toBeCloseTo((watts / 0.88 + own) / 12, 9);
    expect(f?.severity).toBe('note');
    expect(f && findingText(plan(), f).body).toContain('÷ 88 %');
    const over = assess(van([1100]).plan(), { revision: 1 }).findings.find(
      (x) => x.rule === 'power-inverter-feed',
    );
    expect(over?.severity).toBe('warn');
  });

  it('power-incremental: an edit on it gives the figures from scratch', () => {
    const { b, plan, units } = van([300, 200]);
    const first = assess(plan(), { revision: 0 });
    const unit = units[1];
    if (unit) b.put({ ...unit, onPacks: true });
    const next = assess(plan(), { revision: 1, previous: first });
    expect(assessmentJson(plan(), next)).toBe(assessmentJson(plan(), assess(plan(), { revision: 1 })));
  });

  it('power-plug-all: a unit without a feed is plugged into it while its watts last', () => {
    const plugged = (watts: readonly number[]) => {
      const r = gearRig();
      const inverter = r.b.box(r.kind('inverter-12v-1kw'), { label: 'V1' });
      const cord = r.b.cableKind('cord', {
        plug: 'nema-5-15',
        socket: 'nema-5-15',
        conductor: 'awg:14',
        ampacityA: 15,
      });
      const inlets = [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }];
      watts.forEach((wattsW, i) => {
        r.b.fixtureKind(`f${i}`, { wattsW }, { inlets });
        r.b.fixture(`f${i}`, { unit: String(i + 1) });
      });
      let n = 0;
      const done = plugEverything(r.plan(), { newId: (p) => `${p}-new-${n++}`, book: [cord], adapters: [] });
      balanceLegs(applyChanges(r.plan(), done.changes));
      const [cable] = recordsOf(applyChanges(r.plan(), done.changes), 'cable');
      expect(cable === undefined || cable.from.recordId === inverter.id).toBe(true);
      return [done.steps.length, done.left.length];
    };
    expect(plugged([600])).toEqual([1, 0]);
    expect(plugged([1100])).toEqual([0, 1]);
    // It has one outlet.
    expect(plugged([300, 300])).toEqual([1, 1]);
  });

  it('power-what-if: its lost leg darkens all of it', () => {
    const { plan, inverter } = van([300, 200]);
    const lost = whatIf(plan(), { loseLeg: { sourceId: inverter.id, leg: 0 } });
    expect(lost.ok && lost.value.loads.map((l) => l.state)).toEqual(['dark', 'dark']);
  });

  it('power-defect: a cable into an inverter has no inlet to go to, and is told', () => {
    const { b, plan, inverter } = van([300]);
    // A cable into an inverter has no inlet to go to.
    b.cable('cord', [inverter.id, '1'], [inverter.id, 'in'], 0);
    // Nor has one from a source that is walked before it.
    const house = b.source(
      b.sourceKind('house', {
        what: 'wall-circuit',
        system: '120',
        outlets: [{ id: 'o', connector: 'nema-5-15', legs: 1, neutral: true }],
      }).id,
      { label: 'A' },
    );
    b.cable('cord', [house.id, 'o'], [inverter.id, 'in'], 0);
    const a = assess(plan(), { revision: 1 });
    expect(a.findings.filter((f) => f.rule === 'power-cable-end' && f.severity === 'stop')).toHaveLength(2);
    expect(a.entities.filter((e) => e.key === inverter.id).map((e) => e.what)).toEqual(['source']);
  });
});

describe('an inverter that is fed with mains', () => {
  /** A back-up supply of 1000 W at 90 %, with 200 Wh, on way 1; a lamp of so many watts on it. */
  const backup = (wattsW: number, more: Record<string, unknown> = {}) => {
    const r = generatorRig();
    r.b.fixtureKind('lamp', { wattsW }, { inlets: r.inlets });
    const base = r.b.boxKind('ups', {
      inlets: r.inlets,
      outlets: r.inlets.map((i) => ({ ...i, id: 'out' })),
    });
    const { family: _f, ways: _w, ...rest } = base;
    const own = { outputW: 1000, outputV: 120, efficiencyPct: 90, storedWh: 200, ...more };
    r.b.put(kindSchema.parse({ ...rest, family: 'converter', what: 'inverter', ...own }));
    const ups = r.b.box('ups', { label: 'U1' });
    r.b.cable('lead', [r.box.id, 'o1'], [ups.id, 'in'], 0);
    const f = r.b.fixture('lamp');
    r.b.cable('lead', [ups.id, 'out'], [f.id, 'in'], 0);
    return { ...r, ups, f, plan: r.b.plan() };
  };

  it('power-bypass: what hangs on it counts on the circuit ahead, with its losses at full output, 1000 ÷ 0.9 − 1000 = 111 W', () => {
    const { plan, box, f } = backup(500);
    const p = computePower(plan);
    expect(p.tree.byKey.get(f.id)?.notComputed).toBeUndefined();
    expect(p.figures.get(`${box.id}/1`, 'loadW', 0)).toBeCloseTo(500 + 111.11, 1);
  });

  it('power-bypass: the time on its battery, 60 × 200 × 0.9 ÷ (500 ÷ 0.9 + 15) = 19 min; none where its watt-hours are not given', () => {
    const note = (plan: Plan) => computePower(plan).findings.find((x) => x.rule === 'power-bypass')?.params;
    expect(note(backup(500).plan)?.minutes).toBeCloseTo(18.9, 1);
    expect(note(backup(500, { storedWh: undefined }).plan)).not.toHaveProperty('minutes');
  });

  it('power-inverter-over: it passes no more on than its rating', () => {
    const over = (w: number) =>
      computePower(backup(w).plan).findings.filter((x) => x.rule === 'power-inverter-over').length;
    expect([over(950), over(1100)]).toEqual([0, 1]);
  });

  it('power-cable-end: what hangs on a supply that gives no mains is a stop, never left out in silence', () => {
    const { plan } = backup(500, { what: 'ac-dc' });
    expect(
      computePower(plan)
        .findings.filter((x) => x.severity === 'stop')
        .map((x) => x.rule),
    ).toEqual(['power-cable-end']);
  });
});
