import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkCommand } from '../../../src/cli/check.ts';
import { explainCommand } from '../../../src/cli/explain.ts';
import { figureKey, QUANTITIES } from '../../../src/derive/types.ts';
import { assess } from '../../../src/report/assess.ts';
import { cautions } from '../../../src/report/cautions.ts';
import { explain } from '../../../src/report/explain.ts';
import { assessmentJson } from '../../../src/report/json.ts';
import { supplySummary } from '../../../src/report/summary.ts';
import { findingText, wordedRules } from '../../../src/report/text.ts';
import { generatorRig } from '../../support/plan-builder.ts';

const rig = () => {
  const r = generatorRig();
  r.b.fixtureKind('f', { wattsW: 1200, powerFactor: 0.9 });
  r.b.fixtureKind('big', { wattsW: 2400 });
  const unit = r.plug('f', 1).fixture;
  const big = r.plug('big', 2).fixture;
  const [day, night] = [r.b.setup('Day', 1), r.b.setup('Night', 2)];
  r.b.level(day.id, unit.id, 100);
  r.b.level(day.id, big.id, 10);
  r.b.level(night.id, unit.id, 50);
  r.b.level(night.id, big.id, 100);
  const plan = r.b.plan();
  return { ...r, unit, big, day, night, plan, a: assess(plan, { revision: 1 }) };
};

describe('finding texts', () => {
  it('report-text: prints the figure, the limit, where it is from and what to do', () => {
    const { plan, a } = rig();
    const f = a.findings.find((x) => x.rule === 'power-breaker');
    if (!f) throw new Error('no finding');
    const t = findingText(plan, f);
    expect(t.head).toMatch(/^K1 way 2: 2\d\.\d A on a limit of 16\.0 A$/);
    expect(t.body).toContain('“Night”');
    expect(t.body).toMatch(/rated 20\.0 A, of which 16\.0 A/);
    expect(t.body).toMatch(/qualified person and the local code decide/);
    expect(t.todo).toMatch(/De-energize/);
    expect(t.citation).toMatch(/NEC 210\.20\(A\)/);
  });

  it('report-text: every finding rule of the specifications has words, and only those', () => {
    const spec = ['power', 'control', 'rigging', 'battery', 'site', 'radio']
      .map((e) => readFileSync(`src/engines/${e}/SPEC.md`, 'utf8'))
      .join('\n');
    const findings =
      spec
        .slice(spec.indexOf('## Findings'))
        .match(/`((?:power|control|rigging|battery|site|day|radio|station)-[a-z-]+)`/g) ?? [];
    const named = new Set(findings.map((x) => x.slice(1, -1)));
    for (const rule of wordedRules) if (!rule.startsWith('plan-')) expect(named, rule).toContain(rule);
    const notFindings = new Set([
      'power-over',
      ...'absolute dip footprint network timing use'.split(' ').map((r) => `control-${r}`),
      ...'mass base radius arm bags push counterweight wind-force tip-wind uplift gust'
        .split(' ')
        .map((r) => `rigging-${r}`),
      ...['day-schedule', 'day-block', 'day-hours', 'station-energy', 'station-charge'],
      ...'distance wall opening piece edge floors crowd pattern coexistence verdict link-choice chain mesh coverage spots'
        .split(' ')
        .map((r) => `radio-${r}`),
      ...'energy runtime rate temperature current charge rotation more longer bound least bays own swap-at shared air'
        .split(' ')
        .map((r) => `battery-${r}`),
    ]);
    for (const rule of named) if (!notFindings.has(rule)) expect([...wordedRules], rule).toContain(rule);
  });

  it('report-text: no text claims safety or compliance', () => {
    const files = [
      'overload',
      'volts',
      'structure',
      'control',
      'rigging',
      'protection',
      'dimmers',
      'sources',
    ].map((f) => readFileSync(`src/report/text/${f}.ts`, 'utf8'));
    const all = [
      ...files,
      ...(['north-america', 'europe'] as const).flatMap((p) => cautions(p).map((c) => c.text)),
    ].join(' ');
    expect(all).not.toMatch(/\b(safe|safely|compliant|complies|approved|permitted)\b/i);
  });
});

describe('workings', () => {
  it('report-explain: every computed figure has a working whose result is the figure', () => {
    const { plan, a } = rig();
    for (const e of a.entities)
      for (const q of QUANTITIES)
        a.setups.forEach((s, i) => {
          const value = a.figures.get(e.key, q, i);
          const w = explain(plan, figureKey(q, e.key, s.id));
          if (Number.isNaN(value)) return;
          expect(w, `${q} of ${e.label}`).toBeDefined();
          expect(w?.source).toBeTruthy();
          const printed = Number.parseFloat((w?.result ?? '').replace('−', '-'));
          const scale = /k(W|VA)/.test(w?.result ?? '') ? 1000 : 1;
          expect(Math.abs(printed * scale - value), `${q} of ${e.label}: ${w?.result}`).toBeLessThan(
            Math.max(0.51, Math.abs(value) * 0.006),
          );
        });
  });

  it('report-explain: a load’s current shows rated watts, level, power factor and what was assumed', () => {
    const { plan, unit, night } = rig();
    const w = explain(plan, figureKey('leg0A', unit.id, night.id));
    expect(w?.inputs.map((i) => i.name)).toEqual(
      expect.arrayContaining(['volts at the source', 'rated watts', 'level', 'power factor']),
    );
    expect(w?.inputs.find((i) => i.name === 'volts at the source')?.assumed).toBe(true);
    expect(w?.inputs.find((i) => i.name === 'level')).toMatchObject({ value: '50 %', assumed: false });
  });

  it('report-explain: an unknown key says what is wrong', () => {
    const { plan, unit } = rig();
    expect(explain(plan, 'nonsense')).toBeUndefined();
    expect(explainCommand(plan, 'nonsense')).toMatchObject({ exitCode: 1 });
    expect(explainCommand(plan, 'leg0A@gone@x').text).toContain('gone');
    expect(explainCommand(plan, figureKey('leg0A', unit.id, 'no-setup')).text).toContain('no-setup');
    expect(explainCommand(plan, 'constructor@x@y').exitCode).toBe(1);
  });
});

describe('the supply summary', () => {
  it('report-summary: meters of this setup and of the worst, with its name', () => {
    const { plan, a, day } = rig();
    const [g] = supplySummary(plan, a, day.id).sources;
    const b = g?.legs[1];
    expect([b?.name, b?.worstSetup, b?.limitA]).toEqual(['B', 'Night', 240]);
    expect(b?.nowA).toBeLessThan(3);
    expect(b?.worstA).toBeGreaterThan(20);
    expect(b?.worstPct).toBeCloseTo(((b?.worstA ?? 0) / 240) * 100, 9);
    expect(g?.watts.rated).toBe(96_000);
    expect(g?.voltAmps.rated).toBe(120_000);
  });

  it('report-summary: every load stands on one circuit, and the unfed are listed apart', () => {
    const { b, unit, big } = rig();
    const loose = b.fixture('f');
    const plan = b.plan();
    const s = supplySummary(plan, assess(plan, { revision: 1 }));
    const on = s.sources.flatMap((x) => x.circuits.flatMap((c) => c.loads.map((l) => [l.recordId, c.label])));
    expect(on).toEqual([
      [unit.id, 'K1 way 1'],
      [big.id, 'K1 way 2'],
    ]);
    expect(s.unfed.map((l) => l.recordId)).toEqual([loose.id]);
  });

  it('report-summary: without a known setup the first one is taken', () => {
    const { plan, a, day } = rig();
    expect(supplySummary(plan, a, 'gone').setupId).toBe(day.id);
    expect(supplySummary(plan, a).setup).toBe('Day');
  });
});

describe('the commands', () => {
  it('report-check: prints legs, circuits, findings; exit 1 for an open stop, 0 once it is acknowledged', () => {
    const { b, plan, a } = rig();
    const r = checkCommand(plan, { json: false });
    expect(r.exitCode).toBe(1);
    expect(r.text).toMatch(/leg B +2\d\.\d A +of 240\.0 A +\d+(\.\d)? % +Night/);
    expect(r.text).toMatch(/K1 way 2 \[B\] +2\d\.\d A +of 16\.0 A +1\d\d % +Night/);
    expect(r.text).toMatch(/F1 stop: /);
    a.findings
      .filter((f) => f.severity === 'stop')
      .forEach((f, i) => {
        b.put({
          id: `ack${i}`,
          type: 'acknowledgement',
          findingId: f.id,
          severity: 'stop',
          reason: 'known',
          who: 'M. Ito',
          when: '2031-03-04',
        });
      });
    const after = checkCommand(b.plan(), { json: false });
    expect(after.exitCode).toBe(0);
    expect(after.text).toContain('Acknowledged by M. Ito');
    expect(after.text).toMatch(/F1 stop: /);
  });

  it('report-json: is one document, the same bytes every time, with null where not computed', () => {
    const { plan, a } = rig();
    const text = assessmentJson(plan, a);
    expect(
      checkCommand({ ...plan, records: new Map([...plan.records].reverse()) }, { json: true }).text,
    ).toBe(text);
    const doc = JSON.parse(text);
    expect(doc.format).toBe('lampwright-assessment');
    expect(doc.setups.map((s: { name: string }) => s.name)).toEqual(['Day', 'Night']);
    const box = doc.entities.find((e: { what: string }) => e.what === 'box');
    expect(box.figures.leg1A).toHaveLength(2);
    expect(Object.keys(box.figures).sort()).toEqual([...QUANTITIES].sort());
    expect(text).not.toMatch(/NaN|Infinity/);
  });
});
