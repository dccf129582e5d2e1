import { describe, expect, it } from 'vitest';
import { balancedNeutralRatio, splitRms } from '../../src/engines/power/harmonics.ts';
import { computePower, explainPower } from '../../src/engines/power/index.ts';
import type { System } from '../../src/plan/kinds/kinds.ts';
import { generatorRig } from '../support/plan-builder.ts';

/** Leg and neutral amps of a box fed without loss, with a like load of so many rms amps and third harmonic on each leg. */
const onLegs = (amps: readonly number[], thirdHarmonicPct: number, system: System = '120/208') => {
  const { b, box, inlets } = generatorRig();
  for (const [id, r] of b.records) {
    if (r.type === 'cable') b.records.set(id, { ...r, piecesMm: [0] });
    if (r.type === 'kind' && r.family === 'source' && system === '120/240')
      b.records.set(id, { ...r, system, outlets: r.outlets.map((o) => ({ ...o, legs: 2 })) });
  }
  amps.forEach((a, leg) => {
    b.fixtureKind(`f${leg}`, { wattsW: a * 120, model: 'constant-current', thirdHarmonicPct }, { inlets });
    const f = b.fixture(`f${leg}`);
    b.cable('lead', [box.id, `o${leg + 1}`], [f.id, 'in'], 0);
  });
  const plan = b.plan();
  const r = computePower(plan);
  return {
    plan,
    box,
    neutralA: r.figures.get(box.id, 'neutralA', 0),
    legA: r.figures.get(box.id, 'leg0A', 0),
  };
};

describe('third harmonics in the neutral against printed answers', () => {
  it('power-neutral-rms: four harmonics of 49.9 mA on a fundamental of 119.8 mA: the third stands in the neutral at 149.3 mA, the fundamental at nearly nothing (Kuphaldt, Lessons in Electric Circuits II, ch. 10)', () => {
    const share = 49.9 / 119.8;
    const rms = 0.1198 * Math.sqrt(1 + share ** 2);
    const { neutralA } = onLegs([rms, rms, rms], share * 100);
    // Printed from a simulation whose legs differ in the third digit.
    expect(Math.abs(1000 * neutralA - 149.3)).toBeLessThan(0.5);
  });

  it('power-neutral-rms: the same waveform holds 83.33 % distortion, so its rms is 1.3017 times its fundamental (Kuphaldt ch. 10: THD printed 83.33 %)', () => {
    const printed = 0.8333;
    const { first, third } = splitRms(1, Math.sqrt(4) * (49.9 / 119.8));
    expect(third / first).toBeCloseTo(printed, 3);
    expect(1 / first).toBeCloseTo(Math.sqrt(1 + printed ** 2), 3);
  });

  it('power-neutral-rms: a distortion of 150 % makes the rms 1.803 times the fundamental, a power factor of 0.555 (electrical installation guide 2009, page N33 prints 150 % and 0.55)', () => {
    expect(1 / splitRms(1, 1.5).first).toBeCloseTo(1.803, 3);
    expect(splitRms(1, 1.5).first).toBeCloseTo(0.555, 3);
  });

  it('power-neutral-rms: a balanced set of pulse-type supplies puts up to 173 % of the leg current on the neutral (ecmag.com “173% of the phase current”: third harmonic 0.707 of the fundamental)', () => {
    const { neutralA, legA } = onLegs([10, 10, 10], 100 * Math.SQRT1_2);
    expect(neutralA / legA).toBeCloseTo(1.73, 2);
  });

  it('power-neutral-rms: a third harmonic of one third of the fundamental gives a neutral about equal to the fundamental of a leg (newsletter 475 of Mike Holt)', () => {
    const first = 10 / Math.sqrt(1 + 1 / 9);
    expect(onLegs([10, 10, 10], 100 / 3).neutralA).toBeCloseTo(first, 6);
  });

  it('power-neutral-rms: a third of half the fundamental gives 1.342 times the leg current (computed from 3k ÷ √(1 + k²))', () => {
    const { neutralA, legA } = onLegs([10, 10, 10], 50);
    expect(neutralA / legA).toBeCloseTo(1.342, 3);
    expect(balancedNeutralRatio(0.5)).toBeCloseTo(1.342, 3);
  });
});

describe('third harmonics in the neutral, rules', () => {
  it('power-neutral-rms: on a three-wire supply whose legs oppose one another the thirds cancel with the fundamentals', () => {
    expect(onLegs([10, 10], 60, '120/240').neutralA).toBeLessThan(1e-9);
  });

  it('power-neutral-rms: what runs on one leg has the same current in leg and neutral', () => {
    const { plan, box, legA } = onLegs([10], 60);
    const r = computePower(plan);
    expect(r.figures.get(`${box.id}/1`, 'neutralA', 0)).toBeCloseTo(legA, 9);
  });

  it('power-neutral-rms: without harmonics the neutral is the phasor sum', () => {
    expect(onLegs([10, 8, 6], 0).neutralA).toBeCloseTo(Math.sqrt(12), 9);
  });

  it('power-neutral-rms: the working tells fundamentals, thirds and the kinds they come from', () => {
    const { plan, box, neutralA } = onLegs([10, 10, 10], 50);
    const w = explainPower(plan, `neutralA@${box.id}@all`);
    if ('why' in w) throw new Error(w.why);
    expect(w.rule).toBe('power-neutral-rms');
    expect(w.inputs.map((i) => i.name).join()).toContain('third harmonic of f2');
    expect(w.steps.at(-1)).toContain(`${neutralA.toFixed(1)} A`);
  });

  it('power-neutral-limit: balanced legs with third harmonics overload the neutral of a feeder, a connector and the set itself', () => {
    const { b, plug, box, feeder } = generatorRig({}, 36);
    b.records.set(feeder.id, { ...feeder, piecesMm: [0] });
    b.fixtureKind('f', { wattsW: 3600, model: 'constant-current', thirdHarmonicPct: 75 });
    for (const way of [1, 2, 3, 4, 5, 6]) plug('f', way, 0);
    b.cableKind('feeder', {
      legs: 3,
      conductor: 'awg:4',
      ampacityA: 70,
      plug: 'single-pole-400-3',
      socket: 'single-pole-400-3',
    });
    const found = computePower(b.plan()).findings.filter((f) => f.rule === 'power-neutral');
    const neutral = 3 * 0.75 * (60 / Math.sqrt(1 + 0.75 ** 2));
    expect(found.map((f) => [f.about, f.params.setBy])).toEqual([
      ['source-0001', 'generator'],
      [feeder.id, 'cable'],
    ]);
    expect(found[0]?.params.amps).toBeCloseTo(neutral, 6);
    expect(found[0]?.params.thirdA).toBeCloseTo(neutral, 6);
    expect(computePower(b.plan()).figures.get(box.id, 'neutralA', 0)).toBeCloseTo(108, 6);
  });
});

describe('a breaker close to what it may carry', () => {
  const closeAt = (amps: number) => {
    const { b, plug, inlets } = generatorRig();
    b.fixtureKind('f', { wattsW: amps * 120, model: 'constant-current' }, { inlets });
    plug('f', 1, 0);
    return computePower(b.plan()).findings.filter((f) => f.rule === 'power-close');
  };

  it('power-close: from 90 % of the allowed load on, and no longer once it is over', () => {
    expect(closeAt(14.3)).toEqual([]);
    expect(closeAt(14.4)).toHaveLength(1);
    expect(closeAt(16)[0]?.params.pct).toBeCloseTo(100, 6);
    expect(closeAt(16.2)).toEqual([]);
  });
});
