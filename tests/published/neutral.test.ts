import { describe, expect, it } from 'vitest';
import type { System } from '../../src/plan/kinds/kinds.ts';
import { assess } from '../../src/report/assess.ts';
import { PlanBuilder } from '../support/plan-builder.ts';

interface On {
  readonly leg: number;
  readonly amps: number;
  readonly pf?: number;
  readonly leading?: boolean;
}

/** Neutral of a box whose legs carry constant currents, with runs of no length. */
const neutralA = (system: System, loads: readonly On[]): number => {
  const legs = system === '120/240' ? 2 : 3;
  const volts = system === '230/400' ? 230 : 120;
  const b = new PlanBuilder();
  const feed = legs === 2 ? 'single-pole-400-2' : 'single-pole-400-3';
  b.sourceKind('s', { system, outlets: [{ id: 'out', connector: feed, legs, neutral: true }] });
  b.cableKind('feeder', { legs, plug: feed, socket: feed, conductor: 'awg:4/0', ampacityA: 316 });
  b.cableKind('lead');
  b.boxKind('box', {
    inlets: [{ id: 'in', connector: feed, legs, neutral: true }],
    ways: [0, 1, 2]
      .slice(0, legs)
      .map((l) => ({ id: `w${l}`, label: `${l + 1}`, breakerA: 100, poles: 1, curve: 'na', legs: [l] })),
    outlets: [0, 1, 2]
      .slice(0, legs)
      .map((l) => ({ id: `o${l}`, connector: 'stage-pin-20', legs: 1, neutral: true, wayId: `w${l}` })),
  });
  const s = b.source('s', { voltsV: volts });
  const box = b.box('box');
  b.cable('feeder', [s.id, 'out'], [box.id, 'in'], 0);
  loads.forEach((l, i) => {
    const pf = l.pf ?? 1;
    b.fixtureKind(`k${i}`, {
      wattsW: l.amps * volts * pf,
      powerFactor: pf,
      leading: l.leading ?? false,
      model: 'constant-current',
    });
    const f = b.fixture(`k${i}`);
    b.cable('lead', [box.id, `o${l.leg}`], [f.id, 'in'], 0);
  });
  return assess(b.plan(), { revision: 1 }).figures.get(box.id, 'neutralA', 0);
};

const legs = (...amps: number[]): On[] => amps.map((a, leg) => ({ leg, amps: a })).filter((x) => x.amps > 0);
const cos = (deg: number): number => Math.cos((deg * Math.PI) / 180);

describe('neutral current against printed answers', () => {
  it('power-neutral-sum: 10, 15 and 20 A give 8.66 A (bit1024.com)', () => {
    expect(neutralA('120/208', legs(10, 15, 20))).toBeCloseTo(8.66, 3);
  });

  it('power-neutral-sum: 10, 10 and 5 A give 5.0 A (iee-business.com)', () => {
    expect(neutralA('230/400', legs(10, 10, 5))).toBeCloseTo(5, 6);
  });

  it('power-neutral-sum: 5 and 8 A give 7 A on two legs of 120/208 and 3 A on 120/240 (forums.mikeholt.com thread 44780)', () => {
    expect(neutralA('120/208', legs(5, 8, 0))).toBeCloseTo(7, 6);
    expect(neutralA('120/240', legs(5, 8))).toBeCloseTo(3, 6);
  });

  it('power-neutral-sum: 5, 5, 5 A give 0 and 5, 5, 0 A give 5 A (forums.mikeholt.com thread 7651)', () => {
    expect(neutralA('120/208', legs(5, 5, 5))).toBeLessThan(1e-6);
    expect(neutralA('120/208', legs(5, 5, 0))).toBeCloseTo(5, 6);
  });

  it('power-neutral-sum: two 10 kW loads on two legs of 120/208 put 83.33 A on the neutral, three put none (Kuphaldt, Lessons in Electric Circuits II, ch. 10)', () => {
    const amps = 10_000 / 120;
    expect(neutralA('120/208', legs(amps, amps, 0))).toBeCloseTo(83.33, 2);
    expect(neutralA('120/208', legs(amps, amps, amps))).toBeLessThan(1e-6);
  });

  it('power-neutral-sum: 50 A at 45° lag, 40 A at 30° lag, 40 A at 45° lead give 58.85 A, not the 10.0 A of the equal-pf shortcut (question printed by meomock.com; answer computed)', () => {
    const on: On[] = [
      { leg: 0, amps: 50, pf: cos(45) },
      { leg: 1, amps: 40, pf: cos(30) },
      { leg: 2, amps: 40, pf: cos(45), leading: true },
    ];
    expect(Math.abs(neutralA('120/208', on) - 58.85)).toBeLessThan(0.005);
  });

  it('power-neutral-sum: 10 kW at pf 1, 15 kW at 0.8 lag, 8 kW at 0.9 lead on 230/400 V give 64.0 A (question printed by mathix.co; answer computed)', () => {
    const v = 400 / Math.sqrt(3);
    const on: On[] = [
      { leg: 0, amps: 10_000 / v },
      { leg: 1, amps: 15_000 / v / 0.8, pf: 0.8 },
      { leg: 2, amps: 8000 / v / 0.9, pf: 0.9, leading: true },
    ];
    expect(neutralA('230/400', on)).toBeCloseTo(64, 1);
  });
});

describe('delta loads against printed answers', () => {
  it('power-leg-sum: a balanced delta of 83.33 A a phase draws 144.34 A a line (Kuphaldt, Lessons in Electric Circuits II, ch. 10)', () => {
    const b = new PlanBuilder();
    const plug = 'nema-l21-30';
    b.sourceKind('s', {
      system: '120/208',
      outlets: [{ id: 'out', connector: plug, legs: 3, neutral: true }],
    });
    b.cableKind('c', { legs: 3, neutral: false, plug, socket: plug });
    const ll = 120 * Math.sqrt(3);
    b.fixtureKind(
      'f',
      { wattsW: 3 * 83.3333 * ll },
      { inlets: [{ id: 'in', connector: plug, legs: 3, neutral: false }] },
    );
    const s = b.source('s', { voltsV: 120 });
    const f = b.fixture('f');
    b.cable('c', [s.id, 'out'], [f.id, 'in'], 0);
    const a = assess(b.plan(), { revision: 1 });
    expect(a.figures.get(f.id, 'leg1A', 0)).toBeCloseTo(144.34, 2);
    expect(a.figures.get(f.id, 'neutralA', 0)).toBeLessThan(1e-9);
  });
});
