import { describe, expect, it } from 'vitest';
import { conductor, resistanceOhmPerKm } from '../../src/derive/conductors.ts';
import { largestLoopOhm } from '../../src/engines/power/index.ts';
import { disconnectionHint, faultLevels } from '../../src/report/faults.ts';
import { whatIf } from '../../src/report/whatif.ts';
import { generatorRig, PlanBuilder } from '../support/plan-builder.ts';

/** A 120/240 V box with lamps of fixed resistance on its two legs. */
const threeWire = (watts: readonly [number, number], what: 'generator' | 'house-panel' = 'generator') => {
  const b = new PlanBuilder();
  const feed = 'single-pole-400-2';
  b.sourceKind('s', {
    what,
    system: '120/240',
    outlets: [{ id: 'out', connector: feed, legs: 2, neutral: true }],
  });
  b.cableKind('feeder', { legs: 2, plug: feed, socket: feed, conductor: 'awg:2', ampacityA: 150 });
  b.cableKind('lead');
  b.boxKind('box', {
    inlets: [{ id: 'in', connector: feed, legs: 2, neutral: true }],
    ways: [0, 1].map((l) => ({
      id: `w${l}`,
      label: `${l + 1}`,
      breakerA: 20,
      poles: 1,
      curve: 'na',
      legs: [l],
    })),
    outlets: [0, 1].map((l) => ({
      id: `o${l}`,
      connector: 'stage-pin-20',
      legs: 1,
      neutral: true,
      wayId: `w${l}`,
    })),
  });
  const s = b.source('s');
  const box = b.box('box');
  const feeder = b.cable('feeder', [s.id, 'out'], [box.id, 'in'], 0);
  const units = watts.map((wattsW, l) => {
    b.fixtureKind(`f${l}`, { wattsW, model: 'constant-impedance', voltsMinV: 100, voltsMaxV: 132 });
    const f = b.fixture(`f${l}`);
    b.cable('lead', [box.id, `o${l}`], [f.id, 'in'], 0);
    return f;
  });
  return { b, s, box, feeder, units };
};

describe('a lost neutral against worked answers', () => {
  it('power-what-if: 100 W and 200 W lamps on 120/240 V see 160 V and 80 V (studylib.net 5726865 and slideshare.net 1756888 print 144 and 72 Ω; answer computed), 177.8 and 88.9 W', () => {
    const { b, feeder, units } = threeWire([100, 200]);
    const r = whatIf(b.plan(), { loseNeutral: { recordId: feeder.id } });
    if (!r.ok) throw new Error(r.error.what);
    const seen = units.map((u) => r.value.loads.find((l) => l.recordId === u.id));
    expect(seen.map((l) => Number(l?.voltsV.toFixed(2)))).toEqual([160, 80]);
    expect(seen.map((l) => Number(l?.wattsW.toFixed(1)))).toEqual([177.8, 88.9]);
    expect(seen.map((l) => l?.state)).toEqual(['wrong volts', 'wrong volts']);
  });

  it('power-what-if: the cables count: on one loop of 240 V, 72 and 144 Ω with their leads in series (Ohm’s law, computed)', () => {
    const { b, feeder, units } = threeWire([100, 200]);
    for (const r of [...b.records.values()])
      if (r.type === 'cable' && r.id !== feeder.id) b.records.set(r.id, { ...r, piecesMm: [304_800] });
    const r = whatIf(b.plan(), { loseNeutral: { recordId: feeder.id } });
    if (!r.ok) throw new Error(r.error.what);
    // Leg and neutral of two leads of 1000 ft of 12 AWG, 1.98 Ω per 1000 ft (NEC chapter 9 table 8); reactance is small.
    const amps = 240 / (144 + 72 + 4 * 1.98);
    const seen = units.map((u) => r.value.loads.find((l) => l.recordId === u.id)?.voltsV ?? 0);
    expect(Math.abs((seen[0] ?? 0) - 144 * amps)).toBeLessThan(0.02);
    expect(Math.abs((seen[1] ?? 0) - 72 * amps)).toBeLessThan(0.02);
  });

  it('power-what-if: balanced loads show nothing (Kuphaldt, Lessons in Electric Circuits II, ch. 10: the balanced star point does not move)', () => {
    const { b, feeder } = threeWire([150, 150]);
    const r = whatIf(b.plan(), { loseNeutral: { recordId: feeder.id } });
    expect(r.ok && r.value.loads.map((l) => [Number(l.voltsV.toFixed(6)), l.state])).toEqual([
      [120, 'as before'],
      [120, 'as before'],
    ]);
  });

  it('power-what-if: on a wye of 230/400 V two equal loads left on two legs see half of 400 V each (computed)', () => {
    const { b, box, plug, inlets } = generatorRig({ practice: 'europe' });
    b.fixtureKind('f', { wattsW: 1000, voltsMinV: 210, voltsMaxV: 250 }, { inlets });
    for (const way of [1, 2]) plug('f', way, 0);
    const r = whatIf(b.plan(), { loseNeutral: { recordId: box.id } });
    expect(r.ok && r.value.loads.map((l) => Number(l.voltsV.toFixed(1)))).toEqual([199.2, 199.2]);
  });
});

describe('fault loops against printed tables', () => {
  it('power-fault-loop: B16, C16, B32, C32 on 230 V: 2.73, 1.37, 1.37, 0.68 Ω at most (BS 7671 table 41.3, from memory)', () => {
    const most = (amps: number, high: number) => Number(largestLoopOhm(230, amps, high, 0.95).toFixed(2));
    expect([most(16, 5), most(16, 10), most(32, 5), most(32, 10)]).toEqual([2.73, 1.37, 1.37, 0.68]);
  });

  it('power-fault-loop: 30 m of 2.5 mm² go out and back: 2 × 30 m × the table’s resistance at 60 °C', () => {
    const { b, source, feeder, plug, inlets } = generatorRig({ practice: 'europe' });
    b.records.set(feeder.id, { ...feeder, piecesMm: [0] });
    b.records.set(source.id, { ...source, loopOhm: 0.35 });
    b.fixtureKind('f', {}, { inlets });
    const p = plug('f', 1, 30_000);
    const wire = conductor('mm2:2.5');
    if (!wire) throw new Error('no conductor');
    const ohms = (2 * 30 * resistanceOhmPerKm(wire, 60)) / 1000;
    const row = faultLevels(b.plan()).find((x) => x.key === p.cable.id);
    expect(row?.runsOhm).toBeCloseTo(ohms, 2);
    expect(row?.loopOhm).toBeCloseTo(ohms + 0.35, 2);
    expect(row?.faultA).toBeCloseTo(230 / (ohms + 0.35), 0);
    expect(row?.opens).toBe('at once');
  });

  it('power-fault-loop: the hint tells what opens: at once, in the band, by heat within a band of time, or the device for faults to earth', () => {
    const hint = (loopOhm: number, rcdMa?: number) => {
      const { b, source, box, plug } = generatorRig({ practice: 'europe' });
      b.records.set(source.id, { ...source, loopOhm });
      const kind = b.records.get('box');
      if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box');
      b.put({ ...kind, ways: kind.ways.map((w) => ({ ...w, ...(rcdMa ? { rcdMa } : {}) })) });
      b.fixtureKind(
        'f',
        { wattsW: 100 },
        { inlets: [{ id: 'in', connector: 'iec-16-1', legs: 1, neutral: true }] },
      );
      const { cable } = plug('f', 1, 0);
      expect(box.kindId).toBe('box');
      const plan = b.plan();
      const row = faultLevels(plan).find((x) => x.key === cable.id);
      return row ? disconnectionHint(plan, row) : '';
    };
    // C16: at once from 160 A on; 230 V over 1, 2 and 6 Ω are 230, 115 and 38 A.
    expect(hint(1)).toMatch(/open its breaker at once/);
    expect(hint(2)).toMatch(/within the magnetic band.*opens within 1 min/);
    expect(hint(6)).toMatch(/too little for the magnetic release.*2\.\d+ times.*opens within/);
    expect(hint(6, 30)).toMatch(/A fault to earth opens its residual-current device of 30 mA/);
  });

  it('power-fault-loop: without the source’s impedance the fault current is not computed', () => {
    const { b, plug, inlets } = generatorRig({ practice: 'europe' });
    b.fixtureKind('f', {}, { inlets });
    const p = plug('f', 1, 30_000);
    const row = faultLevels(b.plan()).find((x) => x.key === p.cable.id);
    expect([row?.loopOhm, row?.faultA, row?.opens]).toEqual([undefined, undefined, 'not known']);
    expect(row?.runsOhm).toBeGreaterThan(0.5);
  });
});
