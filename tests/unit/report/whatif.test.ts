import { describe, expect, it } from 'vitest';
import { whatIf } from '../../../src/report/whatif.ts';
import { generatorRig } from '../../support/plan-builder.ts';

/** Three units on legs A, B, C, a discharge head with its ballast on A, and a pair over A and B. */
const rig = () => {
  const r = generatorRig();
  r.b.fixtureKind('f', { wattsW: 1200, model: 'constant-current' });
  const units = [1, 2, 3].map((way) => r.plug('f', way, 0).fixture);
  r.b.fixtureKind('head', null, { needsBallast: true, inlets: [], source: 'discharge', hotRestrikeMin: 12 });
  r.b.ballastKind('ballast', { wattsW: 600 });
  const head = r.b.fixture('head');
  const ballast = r.b.ballast('ballast', head.id);
  r.b.cable('lead', [r.box.id, 'o4'], [ballast.id, 'in'], 0);
  return { ...r, units, head, ballast };
};

const done = (r: ReturnType<typeof whatIf>) => {
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};

describe('what if', () => {
  it('power-what-if: a tripped way darkens what hangs on it and nothing else, and the source carries less', () => {
    const { b, box, units, source } = rig();
    const w = done(whatIf(b.plan(), { trip: { ownerId: box.id, wayId: '2' } }));
    expect(w.loads.filter((l) => l.state === 'dark').map((l) => l.recordId)).toEqual([units[1]?.id]);
    expect(w.loads.filter((l) => l.state === 'as before')).toHaveLength(3);
    expect(w.meter?.sourceId).toBe(source.id);
    expect(w.meter?.wires.map((x) => [x.name, Math.round(x.beforeA), Math.round(x.afterA)])).toEqual([
      ['A', 15, 15],
      ['B', 10, 0],
      ['C', 10, 10],
      ['N', 5, 13],
    ]);
  });

  it('power-what-if: a discharge head that goes dark tells its minutes to restrike, one that is off does not', () => {
    const { b, box, ballast, head } = rig();
    const trip = { trip: { ownerId: box.id, wayId: '4' } };
    expect(done(whatIf(b.plan(), trip)).loads[0]).toMatchObject({ recordId: ballast.id, restrikeMin: 12 });
    const off = b.setup('Off', 1);
    b.level(off.id, head.id, 0);
    expect(done(whatIf(b.plan(), trip, off.id)).loads[0]?.restrikeMin).toBeUndefined();
  });

  it('power-what-if: a lost leg darkens what lies on it', () => {
    const { b, source, units, ballast } = rig();
    const w = done(whatIf(b.plan(), { loseLeg: { sourceId: source.id, leg: 0 } }));
    expect(w.loads.filter((l) => l.state === 'dark').map((l) => l.recordId)).toEqual([
      units[0]?.id,
      ballast.id,
    ]);
    expect(w.meter?.wires[0]?.afterA).toBe(0);
  });

  it('power-what-if: a load over three legs stays on two, and that is warned of', () => {
    const { b, source } = generatorRig();
    const plug = 'single-pole-400-3';
    b.fixtureKind(
      'three',
      { wattsW: 9000 },
      { inlets: [{ id: 'in', connector: plug, legs: 3, neutral: true }] },
    );
    const f = b.fixture('three');
    b.sourceKind('set', {
      outlets: ['out', 'b'].map((id) => ({ id, connector: plug, legs: 3, neutral: true })),
    });
    b.cable('feeder', [source.id, 'b'], [f.id, 'in'], 0);
    const w = done(whatIf(b.plan(), { loseLeg: { sourceId: source.id, leg: 2 } }));
    expect(w.loads[0]).toMatchObject({ recordId: f.id, state: 'fewer legs' });
    expect(w.notes.join(' ')).toContain('on two legs');
  });

  it('power-what-if: the neutral of one unit’s own cable only darkens it', () => {
    const { b, units } = rig();
    const cable = [...b.records.values()].find((r) => r.type === 'cable' && r.to.recordId === units[1]?.id);
    const w = done(whatIf(b.plan(), { loseNeutral: { recordId: cable?.id ?? '' } }));
    expect(w.loads.filter((l) => l.state !== 'as before').map((l) => [l.recordId, l.state])).toEqual([
      [units[1]?.id, 'dark'],
    ]);
  });

  it('power-what-if: what is not there is told in words', () => {
    const { b, source } = rig();
    for (const fault of [
      { trip: { ownerId: 'gone', wayId: '1' } },
      { loseLeg: { sourceId: source.id, leg: 3 } },
      { loseNeutral: { recordId: 'gone' } },
    ]) {
      const r = whatIf(b.plan(), fault);
      expect(!r.ok && r.error.what).toMatch(/has no/);
    }
  });
});
