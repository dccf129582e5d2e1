import { describe, expect, it } from 'vitest';
import { assess } from '../../src/report/assess.ts';
import { METRES_PER_FOOT, ohms, threePhaseDropV, twoWireDropV } from '../support/circuit.ts';
import { generatorRig, PlanBuilder } from '../support/plan-builder.ts';

const feet = (n: number): number => n * METRES_PER_FOOT;
const perKft = (ohmPerKft: number, ft: number): number => (ohmPerKft * ft) / 1000;

describe('worked examples of voltage drop', () => {
  it('power-flow: 16 AWG, 100 ft, 4 A at 24 V loses 4.0 V (electrician2.com, welding and training lesson 135)', () => {
    expect(twoWireDropV(ohms('awg:16', feet(100)), 4, 24)).toBeCloseTo(3.992, 3);
    expect(twoWireDropV(ohms('awg:16', feet(100)), 4, 24)).toBeCloseTo(4.0, 1);
  });

  it('power-flow: 10 AWG at 1.2 ohm/kft, 50 ft, 16 A loses 1.92 V (electricianpracticetests.com, voltage drop 1, Q3)', () => {
    expect(twoWireDropV(perKft(1.2, 50), 16, 115)).toBeCloseTo(1.92, 6);
  });

  it('power-flow: 12 AWG at 2 ohm/kft, 100 ft, 8 A loses 3.2 V (electricianpracticetests.com, voltage drop 1, Q4)', () => {
    expect(twoWireDropV(perKft(2, 100), 8, 120)).toBeCloseTo(3.2, 6);
  });

  it('power-flow: three-phase 208 V, 50 A, 2 AWG, 100 ft loses 1.68 V (electricianpracticetests.com, voltage drop 1, Q5)', () => {
    expect(Math.abs(threePhaseDropV(ohms('awg:2', feet(100)), 50, 208) - 1.68)).toBeLessThan(0.01);
  });

  it('power-flow: 12 AWG by K = 12.9, 100 ft, 20 A loses 7.9 V, 6.6 % (tradelicenseprep.com)', () => {
    const drop = twoWireDropV((12.9 * 100) / 6530, 20, 120);
    expect(Math.abs(drop - 7.9)).toBeLessThan(0.02);
    expect(Math.abs((100 * drop) / 120 - 6.6)).toBeLessThan(0.05);
  });

  it('power-flow: 8 AWG by K = 12.9, 100 ft, 20 A loses 3.1 V, 2.6 % (tradelicenseprep.com)', () => {
    const drop = twoWireDropV((12.9 * 100) / 16510, 20, 120);
    expect(Math.abs(drop - 3.1)).toBeLessThan(0.05);
    expect(Math.abs((100 * drop) / 120 - 2.6)).toBeLessThan(0.05);
  });

  it('power-flow: 2.5 mm² at 18 mV/A/m, 18 m, 16 A loses 5.18 V (izapp.app, C&G 2391 lesson)', () => {
    expect(Math.abs(twoWireDropV((0.018 / 2) * 18, 16, 230) - 5.18)).toBeLessThan(0.005);
  });

  it('power-flow: IEC 60364-5-52 annex G form, rho 0.0225, 2.5 mm², 18 m, 16 A loses 5.184 V (scribd.com/document/599637287)', () => {
    expect(twoWireDropV((0.0225 * 18) / 2.5, 16, 230)).toBeCloseTo(5.184, 6);
  });
});

describe('the same examples through a whole plan', () => {
  /** A source at 120 V, one outlet, one 12 AWG lead of a given length to a constant-current load. */
  const planOf = (lengthFt: number, system: '120/240', legs: 1 | 2) => {
    const b = new PlanBuilder();
    const connector = legs === 1 ? 'stage-pin-20' : 'nema-l6-20';
    b.sourceKind('s', { system, outlets: [{ id: 'out', connector, legs, neutral: legs === 1 }] });
    b.cableKind('c', { plug: connector, socket: connector, legs, neutral: legs === 1 });
    const volts = legs === 1 ? 120 : 240;
    b.fixtureKind(
      'f',
      { wattsW: 20 * volts, model: 'constant-current' },
      { inlets: [{ id: 'in', connector, legs, neutral: legs === 1 }] },
    );
    const s = b.source('s', { voltsV: 120 });
    const f = b.fixture('f');
    b.cable('c', [s.id, 'out'], [f.id, 'in'], lengthFt * 304.8);
    const a = assess(b.plan(), { revision: 1 });
    const get = (q: 'dropV' | 'dropPct' | 'leg0A') => a.figures.get(f.id, q, 0);
    return get;
  };

  it('power-volts: 12 AWG stranded (NEC ch. 9 table 8, 1.98 ohm/kft), 100 ft, 20 A loses 7.92 V, 6.6 % of 120 V (wireresult.com, fatskills.com)', () => {
    const get = planOf(100, '120/240', 1);
    expect(Math.abs(get('dropV') - 7.92)).toBeLessThan(0.005);
    expect(Math.abs(get('dropPct') - 6.6)).toBeLessThan(0.005);
  });

  it('power-volts: the same run leg to leg loses 3.3 % of 240 V (fatskills.com)', () => {
    const get = planOf(100, '120/240', 2);
    expect(Math.abs(get('dropV') - 7.92)).toBeLessThan(0.005);
    expect(Math.abs(get('dropPct') - 3.3)).toBeLessThan(0.005);
  });

  it('power-volts: the same at 25 ft loses 1.98 V, 1.65 % (wireresult.com)', () => {
    const get = planOf(25, '120/240', 1);
    expect(Math.abs(get('dropV') - 1.98)).toBeLessThan(0.002);
    expect(Math.abs(get('dropPct') - 1.65)).toBeLessThan(0.002);
  });

  it('power-impedance: tinned class 5 conductors at 60 °C give the mV/A/m of BS 7671 table 4F3B: 93, 62, 46, 32, 19, 12 (rm-electrical.com)', () => {
    const printed = { '0.5': 93, '0.75': 62, '1': 46, '1.5': 32, '2.5': 19, '4': 12 };
    for (const [size, mv] of Object.entries(printed)) {
      const { b, plug } = generatorRig({ practice: 'europe' });
      b.cableKind('lead', { plug: 'iec-16-1', socket: 'iec-16-1', conductor: `mm2:${size}` });
      b.fixtureKind(
        'f',
        { wattsW: 230, model: 'constant-current' },
        { inlets: [{ id: 'in', connector: 'iec-16-1', legs: 1, neutral: true }] },
      );
      const near = plug('f', 1, 0);
      const far = plug('f', 4, 1000);
      const a = assess(b.plan(), { revision: 1 });
      const drop = a.figures.get(far.fixture.id, 'dropV', 0) - a.figures.get(near.fixture.id, 'dropV', 0);
      expect(Math.round(drop * 1000)).toBe(mv);
    }
  });
});
