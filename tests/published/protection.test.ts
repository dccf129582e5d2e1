import { describe, expect, it } from 'vitest';
import { cableAmpacity, computePower } from '../../src/engines/power/index.ts';
import { kindOf } from '../../src/plan/plan.ts';
import { generatorRig, onePoleWays, PlanBuilder } from '../support/plan-builder.ts';

/** Amps a cable carries by its plan, bundle and drum counted. */
const ampacity = (
  conductor: string,
  ampacityA: number,
  cable: { bundled?: number; onDrum?: number },
  plan: ConstructorParameters<typeof PlanBuilder>[0] = {},
  legs = 1,
): number => {
  const b = new PlanBuilder(plan);
  b.cableKind('c', { conductor, ampacityA, legs });
  const p = b.plan();
  const kind = kindOf(p, 'c', 'cable');
  if (!kind) throw new Error('no kind');
  return cableAmpacity(p, kind, cable).legA;
};

describe('ampacity of bundles and drums against printed tables', () => {
  it('power-limit: four loaded conductors of 12 AWG cord carry 80 % of the 20 A of column A: 16.0 A (NEC 400.5, factors printed by ecmweb.com)', () => {
    expect(ampacity('awg:12', 25, { bundled: 2 })).toBeCloseTo(16, 9);
  });

  it('power-limit: eight loaded conductors of 14 AWG cord carry 70 % of the 15 A of column A: 10.5 A (same tables)', () => {
    expect(ampacity('awg:14', 18, { bundled: 4 })).toBeCloseTo(10.5, 9);
  });

  it('power-limit: ten to twenty loaded conductors carry half (same tables)', () => {
    expect(ampacity('awg:10', 30, { bundled: 5 })).toBeCloseTo(12.5, 9);
    expect(ampacity('awg:10', 30, { bundled: 10 })).toBeCloseTo(12.5, 9);
    expect(ampacity('awg:10', 30, { bundled: 11 })).toBeCloseTo(25 * 0.45, 9);
  });

  it('power-limit: a cable on its own keeps its two-conductor value', () => {
    expect(ampacity('awg:12', 25, {})).toBe(25);
  });

  it('power-limit: on a drum in 1, 2, 3, 4 layers cable carries 85, 65, 45, 35 % (notes to BS 7671 tables 4F1A and 4F2A)', () => {
    const europe = { practice: 'europe' } as const;
    expect(
      [1, 2, 3, 4, 7].map((onDrum) => Number(ampacity('mm2:16', 73, { onDrum }, europe).toFixed(2))),
    ).toEqual([62.05, 47.45, 32.85, 25.55, 25.55]);
  });

  it('power-limit: bundle, drum and warm air multiply (60 °C column at 40 °C: 0.82; two circuits 0.80; one layer 0.85)', () => {
    const plan = { practice: 'europe', ambientC: 40 } as const;
    expect(ampacity('mm2:2.5', 25, { bundled: 2, onDrum: 1 }, plan)).toBeCloseTo(25 * 0.82 * 0.8 * 0.85, 9);
  });
});

describe('magnetic release against printed bands', () => {
  /** One load on one 16 A way; its switch-on current lasts a whole half-wave. */
  const switched = (curve: 'B' | 'C' | 'D', amps: number) => {
    const { b, box, plug, inlets } = generatorRig({ practice: 'europe', frequencyHz: 50 });
    const kind = b.records.get('box');
    if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box');
    b.records.set('box', { ...kind, ways: onePoleWays(24, 16, 3).map((w) => ({ ...w, curve })) });
    b.fixtureKind('f', { wattsW: 230, inrushMultiple: amps, inrushMs: 10 }, { inlets });
    plug('f', 1, 0);
    return computePower(b.plan()).findings.find((f) => f.rule === 'power-inrush' && f.about === `${box.id}/1`)
      ?.severity;
  };

  it('power-inrush: C16 holds 80 A and opens at once at 160 A (IEC 60898-1: 5 and 10 times, liquisearch.com)', () => {
    expect(switched('C', 80)).toBeUndefined();
    expect(switched('C', 81)).toBe('note');
    expect(switched('C', 159)).toBe('note');
    expect(switched('C', 160)).toBe('warn');
  });

  it('power-inrush: B16 has its band from 48 to 80 A, D16 from 160 to 320 A (IEC 60898-1, liquisearch.com)', () => {
    expect([48, 49, 80].map((a) => switched('B', a))).toEqual([undefined, 'note', 'warn']);
    expect([160, 161, 320].map((a) => switched('D', a))).toEqual([undefined, 'note', 'warn']);
  });
});
