import { describe, expect, it } from 'vitest';
import { balancedV, legVoltsV, lineToLineV, systemShape } from '../../../src/derive/systems.ts';
import { computePower } from '../../../src/engines/power/index.ts';
import type { System } from '../../../src/plan/kinds/kinds.ts';
import type { LoadSpec } from '../../../src/plan/kinds/ports.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const shapeOf = (system: System) => {
  const shape = systemShape(system);
  if (!shape) throw new Error(system);
  return shape;
};

/** One way over some legs of a source of a system, with one unit on a wall outlet. */
const rig = (
  system: System,
  legs: number[],
  load: Partial<LoadSpec> = {},
  outlet: { connector?: string; legs?: number; neutral?: boolean } = {},
) => {
  const b = new PlanBuilder({ practice: system.startsWith('230') ? 'europe' : 'north-america' });
  const plug = outlet.connector ?? 'stage-pin-20';
  b.sourceKind('service', {
    what: 'service',
    system,
    ways: [{ id: 'w', label: '1', breakerA: 30, poles: legs.length, curve: 'C', legs }],
  });
  b.cableKind('c', { plug, socket: plug, conductor: 'awg:10', ampacityA: 30 });
  b.fixtureKind(
    'f',
    { wattsW: 2000, ...load },
    { inlets: [{ id: 'in', connector: plug, legs: 1, neutral: true }] },
  );
  const s = b.source('service', { voltsV: shapeOf(system).nominalV });
  const w = b.outlet(s.id, 'w', { connector: plug, ...outlet });
  const f = b.fixture('f');
  b.cable('c', [w.id, 'out'], [f.id, 'in'], 0);
  const r = computePower(b.plan());
  return { r, f, w, rules: r.findings.map((x) => `${x.severity} ${x.rule} ${x.about}`) };
};

describe('supply systems', () => {
  it('power-system: volts between legs of each system', () => {
    expect(lineToLineV(shapeOf('120/208'), 0, 1)).toBeCloseTo(207.85, 2);
    expect(lineToLineV(shapeOf('120/240'), 0, 1)).toBeCloseTo(240, 9);
    expect(lineToLineV(shapeOf('277/480'), 1, 2)).toBeCloseTo(479.8, 1);
    expect(lineToLineV(shapeOf('347/600'), 0, 2)).toBeCloseTo(601, 1);
    expect(lineToLineV(shapeOf('230-it'), 0, 1)).toBeCloseTo(230, 9);
    const delta = shapeOf('120/240-delta');
    for (const [a, b] of [
      [0, 1],
      [1, 2],
      [0, 2],
    ] as const)
      expect(lineToLineV(delta, a, b)).toBeCloseTo(240, 9);
  });

  it('power-high-leg: the high leg of a 120/240 V delta stands 208 V off the neutral (NEC 110.15 names the leg; 120 × √3 = 207.8)', () => {
    const delta = shapeOf('120/240-delta');
    expect([0, 1, 2].map((l) => Number(legVoltsV(delta, l).toFixed(1)))).toEqual([120, 207.8, 120]);
  });

  it('power-system: a balanced load of a system takes its volt-amperes over √3 times the volts between lines', () => {
    expect(balancedV(shapeOf('120/240-delta'))).toBeCloseTo(Math.sqrt(3) * 240, 6);
    expect(balancedV(shapeOf('230-it'))).toBeCloseTo(Math.sqrt(3) * 230, 6);
    expect(balancedV(shapeOf('230/400'))).toBeCloseTo(690, 6);
  });

  it('power-high-leg: 120 V kit there is a stop, told once', () => {
    const { rules, f, w } = rig('120/240-delta', [1], { voltsMaxV: 132 });
    expect(rules).toContain(`stop power-high-leg ${f.id}`);
    expect(rules).toContain(`stop power-high-leg ${w.id}`);
    expect(rules.join()).not.toContain('power-wrong-volts');
  });

  it('power-high-leg: kit that takes 208 V is a warning, and the other legs raise nothing', () => {
    const { rules, f, r } = rig('120/240-delta', [1], { voltsMaxV: 264 }, { connector: 'iec-16-1' });
    expect(rules).toContain(`warn power-high-leg ${f.id}`);
    expect(r.figures.get(f.id, 'voltsV', 0)).toBeCloseTo(207.85, 2);
    expect(rig('120/240-delta', [2], { voltsMaxV: 132 }).rules.join()).not.toContain('power-high-leg');
  });

  it('power-system: kit for 120 V on a leg of 277/480 or 347/600 V is told', () => {
    for (const system of ['277/480', '347/600'] as const)
      expect(rig(system, [0], { voltsMaxV: 264 }).rules.join()).toContain('stop power-wrong-volts');
  });

  it('power-system: without a neutral a one-leg unit lies between two lines', () => {
    const { r, f, rules } = rig('230-it', [0, 1], { wattsW: 2300 }, { connector: 'schuko-16' });
    expect(rules.filter((x) => x.startsWith('stop'))).toEqual([]);
    const at = (q: 'leg0A' | 'leg1A' | 'leg2A' | 'neutralA' | 'voltsV') => r.figures.get(f.id, q, 0);
    expect(at('leg0A')).toBeCloseTo(10, 6);
    expect(at('leg1A')).toBeCloseTo(10, 6);
    expect(at('leg2A')).toBe(0);
    expect(at('neutralA')).toBe(0);
    expect(at('voltsV')).toBeCloseTo(230, 6);
  });

  it('power-system: three one-leg units spread over the lines of an IT supply draw √3 times their amps from each', () => {
    const b = new PlanBuilder({ practice: 'europe' });
    const pairs = [
      [0, 1],
      [1, 2],
      [0, 2],
    ];
    b.sourceKind('service', {
      what: 'service',
      system: '230-it',
      ways: pairs.map((legs, i) => ({
        id: `w${i}`,
        label: `${i}`,
        breakerA: 32,
        poles: 2,
        curve: 'C',
        legs,
      })),
    });
    b.cableKind('c', { plug: 'schuko-16', socket: 'schuko-16', conductor: 'mm2:2.5' });
    b.fixtureKind(
      'f',
      { wattsW: 2300 },
      { inlets: [{ id: 'in', connector: 'schuko-16', legs: 1, neutral: true }] },
    );
    const s = b.source('service', { voltsV: 230 });
    for (const i of [0, 1, 2]) {
      const w = b.outlet(s.id, `w${i}`, { connector: 'schuko-16' });
      b.cable('c', [w.id, 'out'], [b.fixture('f').id, 'in'], 0);
    }
    const r = computePower(b.plan());
    for (const q of ['leg0A', 'leg1A', 'leg2A'] as const)
      expect(r.figures.get(s.id, q, 0)).toBeCloseTo(10 * Math.sqrt(3), 6);
  });
});
