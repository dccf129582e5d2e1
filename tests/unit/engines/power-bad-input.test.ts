import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computePower } from '../../../src/engines/power/index.ts';
import { readPlan } from '../../../src/plan/file.ts';
import { assess } from '../../../src/report/assess.ts';
import { balanceLegs } from '../../../src/report/balance.ts';
import { disconnectionHint, faultLevels } from '../../../src/report/faults.ts';
import { assessmentJson } from '../../../src/report/json.ts';
import { findingText } from '../../../src/report/text.ts';
import { whatIf } from '../../../src/report/whatif.ts';
import { gearRig } from '../../support/gear-rig.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const rules = (b: { plan: () => Parameters<typeof assess>[0] }): readonly string[] =>
  assess(b.plan(), { revision: 0 }).findings.map((f) => f.rule);

/** A wall circuit with one unit on it. */
const wall = (slug = 'wall-circuit-15', wattsW = 500) => {
  const r = gearRig();
  const source = r.b.source(r.kind(slug), { label: 'W', voltsV: 120 });
  r.b.fixtureKind(
    'f',
    { wattsW },
    { inlets: [{ id: 'in', connector: 'nema-5-15', legs: 1, neutral: true }] },
  );
  const f = r.b.fixture('f', { unit: '1' });
  const cable = r.run('cord-12-3', [source.id, '1a'], [f.id, 'in']);
  return { ...r, source, f, cable };
};

describe('bad input', () => {
  it('power-defect: a cable of no length loses nothing and is computed', () => {
    const { b, cable, f } = wall();
    b.put({ ...cable, piecesMm: [0] });
    const p = computePower(b.plan());
    expect(p.figures.get(f.id, 'dropV', 0)).toBe(0);
    expect(p.figures.get(f.id, 'leg0A', 0)).toBeCloseTo(500 / 120, 6);
  });

  it('power-defect: a way without a breaker, or one of 0 A, is told and what hangs on it not computed', () => {
    for (const breakerA of [0, -5, Number.NaN]) {
      const { b, source, f, plan } = wall();
      const kind = plan().records.get(source.kindId);
      if (kind?.type !== 'kind' || kind.family !== 'source') throw new Error('no source');
      b.put({ ...kind, ways: kind.ways.map((w) => ({ ...w, breakerA })) });
      const a = assess(b.plan(), { revision: 0 });
      expect(a.findings.filter((x) => x.rule === 'power-value' && x.severity === 'stop')).toHaveLength(1);
      expect(a.figures.get(f.id, 'leg0A', 0)).toBeNaN();
    }
  });

  it('power-unguarded: a run from a source with no breaker at all is told', () => {
    const b = new PlanBuilder();
    b.sourceKind('bare', {
      system: '120',
      outlets: [{ id: 'o', connector: 'stage-pin-20', legs: 1, neutral: true }],
    });
    b.cableKind('lead');
    b.fixtureKind('f');
    const s = b.source('bare');
    const f = b.fixture('f');
    b.cable('lead', [s.id, 'o'], [f.id, 'in']);
    expect(rules(b)).toContain('power-unguarded');
  });

  it('power-loop: adapters plugged into one another are a loop, told once', () => {
    const r = gearRig();
    const tee = r.kind('tee-household-3');
    const one = r.b.box(tee, { label: 'A1' });
    const two = r.b.box(tee, { label: 'A2', plugsInto: { recordId: one.id, portId: '1' } });
    r.b.put({ ...one, plugsInto: { recordId: two.id, portId: '2' } });
    const a = assess(r.plan(), { revision: 0 });
    expect(a.findings.filter((f) => f.rule === 'power-loop')).toHaveLength(1);
    expect(a.entities.find((e) => e.key === one.id)?.notComputed).toMatch(/circle/);
    // Into itself.
    r.b.records.delete(two.id);
    r.b.put({ ...one, plugsInto: { recordId: one.id, portId: '1' } });
    expect(rules(r)).toContain('power-loop');
  });

  it('power-defect: an adapter whose outlet is gone hangs on nothing', () => {
    const r = gearRig();
    r.b.box(r.kind('tee-household-3'), { label: 'A1', plugsInto: { recordId: 'gone', portId: '1' } });
    expect(rules(r)).toContain('power-box-unfed');
  });

  it('power-value: a source of 0 V is told, and nothing on it computed', () => {
    const { b, source, f } = wall();
    b.put({ ...source, voltsV: 0 });
    const a = assess(b.plan(), { revision: 0 });
    expect(a.findings.find((x) => x.rule === 'power-value')?.severity).toBe('stop');
    expect(a.figures.get(f.id, 'leg0A', 0)).toBeNaN();
  });

  it('power-unsettled: 100 kW on a 15 A circuit is a stop that names the run, never a number', () => {
    const { b, f, cable } = wall('wall-circuit-15', 100_000);
    const a = assess(b.plan(), { revision: 0 });
    const found = a.findings.find((x) => x.rule === 'power-unsettled');
    expect(found?.severity).toBe('stop');
    expect(found?.recordIds).toContain(cable.id);
    expect(a.figures.get(f.id, 'leg0A', 0)).toBeNaN();
    // On a stiff run the amps are told instead.
    b.put({ ...cable, piecesMm: [0] });
    expect(rules(b)).toContain('power-breaker');
  });

  it('plan-file: a practice this program does not know is refused in words', () => {
    const { b } = wall();
    const records = [...b.plan().records.values()].map((r) =>
      r.type === 'plan' ? { ...r, practice: 'mars' } : r,
    );
    const read = readPlan(JSON.stringify({ format: 'lampwright-plan', version: 1, records }));
    const words = read.ok
      ? read.value.notices.join(' ')
      : `${read.error.what} ${read.error.where ?? ''} ${read.error.todo}`;
    expect(words).toMatch(/practice/);
  });

  it('power-defect: transformers, dimmers, fans and adapters torn at random never crash it', () => {
    const slugs = [
      'transformer-480-208-30kva',
      'transformer-isolating',
      'dimmer-12x2400w-multi',
      'dimmer-line-300w',
      'multi-break-out',
      'multi-break-in',
      'multi-tee',
      'tee-household-3',
      'box-100-12x20-multi',
      'inverter-12v-1kw',
    ];
    const cables = ['feeder-4-0-3ph', 'multi-12-14', 'cord-12-3', 'pin-20-10-3'];
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(20), fc.nat(20), fc.nat(20), fc.nat(20), fc.boolean()), {
          minLength: 1,
          maxLength: 12,
        }),
        fc.constantFrom('service-200-480', 'service-200', 'wall-circuit-15', 'service-200-delta'),
        (draws, slug) => {
          const r = gearRig();
          const source = r.b.source(r.kind(slug), { label: 'S' });
          const ids = [source.id];
          for (const [k, onto, port, cable, straight] of draws) {
            const from = ids[onto % ids.length] ?? source.id;
            const box = r.b.box(r.kind(slugs[k % slugs.length] ?? ''), { label: `B${ids.length}` });
            ids.push(box.id);
            const records = r.plan().records;
            const portsOf = (id: string, what: 'outlets' | 'inlets'): readonly { id: string }[] => {
              const at = records.get(id);
              const kind = at && 'kindId' in at ? records.get(String(at.kindId)) : undefined;
              return kind && what in kind ? (kind[what] as readonly { id: string }[]) : [];
            };
            const out = portsOf(from, 'outlets');
            const into = portsOf(box.id, 'inlets');
            const portId = out[port % Math.max(1, out.length)]?.id ?? 'none';
            if (straight) r.b.put({ ...box, plugsInto: { recordId: from, portId } });
            else
              r.run(
                cables[cable % cables.length] ?? '',
                [from, portId],
                [box.id, into[cable % Math.max(1, into.length)]?.id ?? 'in'],
              );
          }
          const plan = r.plan();
          const a = assess(plan, { revision: 0 });
          JSON.parse(assessmentJson(plan, a));
          for (const f of a.findings) expect(findingText(plan, f).head).not.toMatch(/NaN|undefined/);
          balanceLegs(plan);
          for (const e of a.entities.filter((x) => x.what === 'source'))
            for (const leg of e.legs) {
              const lost = whatIf(plan, { loseLeg: { sourceId: e.recordId, leg } });
              if (lost.ok) for (const l of lost.value.loads) expect(l.state).toBeDefined();
            }
          for (const l of faultLevels(plan))
            expect(disconnectionHint(plan, l)).not.toMatch(/NaN|undefined|Infinity/);
        },
      ),
      { numRuns: 120 },
    );
  });
});
