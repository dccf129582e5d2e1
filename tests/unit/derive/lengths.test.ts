import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cableLength } from '../../../src/derive/lengths.ts';
import { makeUp } from '../../../src/derive/stock.ts';
import { PlanBuilder } from '../../support/plan-builder.ts';

const FT = 304.8;
const feet = [25 * FT, 50 * FT, 100 * FT];

describe('making up a length of stock pieces', () => {
  const inFeet = (needed: number): number[] =>
    makeUp(needed * FT, feet).piecesMm.map((l) => Math.round(l / FT));

  it('power-stock: takes the fewest pieces that are long enough', () => {
    expect(inFeet(24)).toEqual([25]);
    expect(inFeet(26)).toEqual([50]);
    expect(inFeet(62)).toEqual([100]);
    expect(inFeet(101)).toEqual([100, 25]);
    expect(inFeet(200)).toEqual([100, 100]);
  });

  it('power-stock: takes the least length that this number of pieces can make', () => {
    expect(inFeet(130)).toEqual([100, 50]);
    expect(makeUp(68 * FT, [2 * FT, 10 * FT, 25 * FT]).piecesMm.map((l) => Math.round(l / FT))).toEqual([
      25, 25, 25,
    ]);
    expect(
      makeUp(
        68 * FT,
        [2, 10, 25, 50].map((l) => l * FT),
      ).piecesMm.map((l) => Math.round(l / FT)),
    ).toEqual([50, 25]);
    expect(makeUp(30_000, [10_000, 15_000, 5_000]).piecesMm).toEqual([15_000, 15_000]);
  });

  it('power-stock: an exact length needs nothing longer', () => {
    expect(makeUp(50 * FT, feet).totalMm).toBeCloseTo(50 * FT, 6);
  });

  it('power-stock: a run of no length still takes the shortest piece', () => {
    expect(makeUp(0, feet).piecesMm).toEqual([25 * FT]);
  });

  it('power-stock: is right for a very long run too', () => {
    const m = makeUp(5_012_000, [10_000, 15_000, 25_000]);
    expect(m.totalMm).toBe(5_015_000);
    expect(m.piecesMm.filter((p) => p === 25_000)).toHaveLength(200);
    expect(m.piecesMm).toHaveLength(201);
  });

  it('power-stock: without a usable stock length there are no pieces', () => {
    expect(makeUp(5000, [0, -3]).piecesMm).toEqual([]);
  });

  it('power-stock: no other make-up has fewer pieces, or as many and less length', () => {
    const best = (needed: number, stock: readonly number[]): [number, number] => {
      // All totals of one piece more, until one is long enough.
      let totals = new Set([0]);
      for (let n = 1; ; n++) {
        totals = new Set([...totals].flatMap((t) => stock.map((l) => t + l)));
        const enough = [...totals].filter((t) => t >= needed);
        if (enough.length > 0) return [n, Math.min(...enough)];
      }
    };
    const stocks = fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(stocks, fc.integer({ min: 1, max: 300 }), (inMetres, needed) => {
        const stock = inMetres.map((l) => l * 1000);
        const m = makeUp(needed * 500, stock);
        expect([m.piecesMm.length, m.totalMm]).toEqual(best(needed * 500, stock));
        expect(m.piecesMm.reduce((a, b) => a + b, 0)).toBe(m.totalMm);
        expect(m.piecesMm.every((p) => stock.includes(p))).toBe(true);
        expect([...m.piecesMm].sort((a, b) => b - a)).toEqual(m.piecesMm);
      }),
    );
  });
});

describe('the length of a run', () => {
  const rig = () => {
    const b = new PlanBuilder();
    b.sourceKind('panel', { what: 'house-panel', system: '120' });
    b.cableKind('lead', { stockLengthsMm: feet });
    b.fixtureKind('f');
    const s = b.source('panel');
    const outlet = b.outlet(s.id, '1', { heightMm: 400 });
    const stand = b.put({
      id: 'stand',
      type: 'stand',
      floorId: 'floor',
      kindId: 'stand-kind',
      at: { xMm: 6000, yMm: 8000 },
      rotationDeg: 0,
      heightMm: 2600,
    });
    const f = b.fixture('f', {
      support: { on: 'stand', standId: stand.id },
      at: { xMm: 99_999, yMm: 0 },
      heightMm: 50,
    });
    return { b, outlet, f };
  };

  it('power-length: drawn distance to the stand, both rises, ten per cent slack, made up of stock', () => {
    const { b, outlet, f } = rig();
    const c = b.cable('lead', [outlet.id, 'out'], [f.id, 'in']);
    const { piecesMm: _, ...auto } = c;
    const l = cableLength(b.plan(), auto);
    expect(l?.drawnMm).toBeCloseTo(10_000, 6);
    expect(l?.risesMm).toBe(3000);
    expect(l?.slackMm).toBeCloseTo(1300, 6);
    expect(l?.neededMm).toBeCloseTo(14_300, 6);
    expect(l?.totalMm).toBeCloseTo(50 * FT, 6);
    expect([l?.slackAssumed, l?.piecesAssumed, l?.couplings]).toEqual([true, true, 0]);
  });

  it('power-length: follows the points of the route', () => {
    const { b, outlet, f } = rig();
    const c = b.cable('lead', [outlet.id, 'out'], [f.id, 'in'], 1, {
      route: { auto: false, points: [{ xMm: 6000, yMm: 0 }] },
    });
    expect(cableLength(b.plan(), c)?.drawnMm).toBeCloseTo(14_000, 6);
  });

  it('power-length: short runs get the least slack, and a share of their own stands as given', () => {
    const { b, outlet } = rig();
    const f = b.fixture('f', { at: { xMm: 1000, yMm: 0 } });
    const c = b.cable('lead', [outlet.id, 'out'], [f.id, 'in']);
    expect(cableLength(b.plan(), c)?.slackMm).toBe(500);
    expect(cableLength(b.plan(), { ...c, slackPct: 0 })?.slackMm).toBe(0);
    expect(cableLength(b.plan(), { ...c, slackPct: 20 })?.slackMm).toBeCloseTo(280, 6);
  });

  it('power-length: counts the way between floors', () => {
    const { b, outlet } = rig();
    b.put({ id: 'up', type: 'floor', name: 'First floor', levelMm: 3200, northDeg: 270 });
    const f = b.fixture('f', { floorId: 'up' });
    const c = b.cable('lead', [outlet.id, 'out'], [f.id, 'in']);
    expect(cableLength(b.plan(), c)?.risesMm).toBe(3600);
  });

  it('power-length: pieces chosen by hand stand, and the couplings between them are counted', () => {
    const { b, outlet, f } = rig();
    const c = b.cable('lead', [outlet.id, 'out'], [f.id, 'in'], 0, { piecesMm: [5000, 5000, 10_000] });
    const l = cableLength(b.plan(), c);
    expect([l?.totalMm, l?.couplings, l?.piecesAssumed]).toEqual([20_000, 2, false]);
  });

  it('power-length: an end on nothing gives no length', () => {
    const { b, outlet } = rig();
    expect(cableLength(b.plan(), b.cable('lead', [outlet.id, 'out'], ['nowhere', 'in']))).toBeUndefined();
  });
});
