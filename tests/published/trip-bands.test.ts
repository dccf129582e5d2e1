import { describe, expect, it } from 'vitest';
import { breakerSizes, nextBreakerA } from '../../src/derive/breakers.ts';
import { tripBand, tripWords } from '../../src/engines/power/index.ts';
import { assess } from '../../src/report/assess.ts';
import { explainOrWhy } from '../../src/report/explain.ts';
import { findingText } from '../../src/report/text.ts';
import { generatorRig, PlanBuilder } from '../support/plan-builder.ts';

const europe = new PlanBuilder({ practice: 'europe', frequencyHz: 50 }).plan();
const america = new PlanBuilder().plan();
type Curve = Parameters<typeof tripBand>[1];
const band = (curve: Curve, ratingA: number, amps: number) =>
  tripBand(curve === 'na' ? america : europe, curve, ratingA, amps);

describe('thermal release against printed bands', () => {
  it('power-trip-band: 16 A of class B, C or D holds 18.08 A and opens by 23.20 A within an hour (IEC 60898-1: 1.13 and 1.45 times, manualshive.com, infralens.in)', () => {
    for (const curve of ['B', 'C', 'D'] as const) {
      expect(band(curve, 16, 18.08)?.says).toBe('holds');
      expect(band(curve, 16, 18.1)).toMatchObject({ says: 'open', mostMin: undefined, fromMin: 60 });
      expect(band(curve, 16, 23.19)?.says).toBe('open');
      expect(band(curve, 16, 23.2)).toMatchObject({ says: 'opens', mostMin: 60, leastS: 1 });
    }
  });

  it('power-trip-band: the conventional time is 1 h at 63 A and 2 h at 80 A (IEC 60898-1, manualshive.com)', () => {
    expect(band('C', 63, 63 * 1.45)?.mostMin).toBe(60);
    expect(band('C', 80, 80 * 1.45)?.mostMin).toBe(120);
  });

  it('power-trip-band: at 2.55 times the rating 32 A opens within 60 s, 40 A within 120 s (IEC 60898-1, manualshive.com)', () => {
    expect(band('C', 32, 32 * 2.55)?.mostMin).toBe(1);
    expect(band('C', 40, 40 * 2.55)?.mostMin).toBe(2);
    expect(band('C', 32, 32 * 2.54)?.mostMin).toBe(60);
  });

  it('power-trip-band: from the upper end of the magnetic band on it opens at once: C16 at 160 A, B16 at 80 A (IEC 60898-1, liquisearch.com)', () => {
    expect([band('C', 16, 159)?.says, band('C', 16, 160)?.says]).toEqual(['opens', 'at once']);
    expect([band('B', 16, 79)?.says, band('B', 16, 80)?.says]).toEqual(['opens', 'at once']);
  });

  it('power-trip-band: a moulded-case 20 A breaker holds 20 A, opens by 27 A within an hour and by 40 A within two minutes (UL 489 calibration at 100, 135 and 200 %, from memory)', () => {
    expect(band('na', 20, 20)?.says).toBe('holds');
    expect(band('na', 20, 26.9)?.says).toBe('open');
    expect(band('na', 20, 27)).toMatchObject({ says: 'opens', mostMin: 60 });
    expect(band('na', 20, 40)).toMatchObject({ says: 'opens', mostMin: 2 });
  });

  it.each([
    [50, 60, 4],
    [100, 120, 6],
    [150, 120, 8],
    [225, 120, 10],
    [400, 120, 12],
  ])(
    'power-trip-band: a moulded-case breaker of %d A: %d min at 135 %, %d min at 200 % (UL 489, from memory)',
    (ratingA, slow, fast) => {
      expect(band('na', ratingA, 1.35 * ratingA)?.mostMin).toBe(slow);
      expect(band('na', ratingA, 2 * ratingA)?.mostMin).toBe(fast);
    },
  );

  it('power-trip-band: nothing is told of a breaker of 0 A, or of no current', () => {
    for (const [rating, amps] of [
      [0, 10],
      [Number.NaN, 10],
      [16, 0],
      [16, Number.NaN],
      [16, Number.POSITIVE_INFINITY],
    ] as const)
      expect(band('C', rating, amps)).toBeUndefined();
    expect(tripWords(europe, 'C', 0, 5)).toBe('');
  });
});

describe('how long an overload would take', () => {
  const text = (wattsW: number) => {
    const { b, box, plug } = generatorRig();
    b.fixtureKind('f', { wattsW, model: 'constant-current' });
    plug('f', 1, 0);
    const plan = b.plan();
    const a = assess(plan, { revision: 1 });
    const f = a.findings.find((x) => x.rule === 'power-breaker');
    const working = explainOrWhy(plan, `usePct@${box.id}/1@all`);
    return {
      finding: f ? findingText(plan, f).body : '',
      working: working.ok ? working.value.steps.join(' ') : working.error.what,
    };
  };

  it('power-trip-band: the finding and the working of a way tell the band, never a minute', () => {
    // 20 A breaker: 18 A, 24 A, 30 A and 48 A at 120 V.
    const [over, open, slow, fast] = [2160, 2880, 3600, 5760].map(text);
    expect(over?.finding).toContain('0.90 times its rating the breaker need not open');
    expect(open?.finding).toContain(
      'may hold for hours or open: it must open within 1 h only from 1.35 times on',
    );
    expect(slow?.finding).toContain('1.50 times its rating the breaker opens within 1 h');
    expect(fast?.finding).toContain('2.40 times its rating the breaker opens within 2 min');
    for (const t of [over, open, slow, fast]) {
      expect(t?.finding).toContain('from memory');
      expect(t?.working).toContain('times its rating the breaker');
    }
  });
});

describe('standard sizes of breakers', () => {
  it('power-breaker-size: above 72 A comes 80 A, above 21 A 25 A (NEC 240.6(A), public transcription)', () => {
    expect(nextBreakerA('north-america', 72)).toBe(80);
    expect(nextBreakerA('north-america', 20.5)).toBe(25);
    expect(nextBreakerA('north-america', 20)).toBe(20);
  });

  it('power-breaker-size: 16 A continuous and 4 A other want at least 24 A, so 25 A (NEC 210.20(A) and 240.6(A))', () => {
    expect(nextBreakerA('north-america', 16 * 1.25 + 4)).toBe(25);
  });

  it('power-breaker-size: above 21 A comes 25 A, above 63 A 80 A (IEC 60898-1 preferred values, filipinoengineer.com)', () => {
    expect(nextBreakerA('europe', 21)).toBe(25);
    expect(nextBreakerA('europe', 64)).toBe(80);
    expect(breakerSizes('europe').ratingsA.slice(0, 13)).toEqual([
      6, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125,
    ]);
  });

  it('power-breaker-size: a way with a rating that is none of them is told with its neighbours', () => {
    const { b, box, plug } = generatorRig();
    const kind = b.records.get('box');
    if (kind?.type !== 'kind' || kind.family !== 'box') throw new Error('no box');
    b.put({ ...kind, ways: kind.ways.map((w) => (w.id === '2' ? { ...w, breakerA: 22 } : w)) });
    b.fixtureKind('f', { wattsW: 100 });
    plug('f', 2, 0);
    const told = assess(b.plan(), { revision: 1 }).findings.filter((f) => f.rule === 'power-breaker-size');
    expect(told.map((f) => [f.severity, f.recordIds[0], f.params.sizes])).toEqual([
      ['note', box.id, '20 A and 25 A'],
    ]);
  });
});
