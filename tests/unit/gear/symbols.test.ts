import { describe, expect, it } from 'vitest';
import { symbolIds, symbolPath, symbolShape } from '../../../src/drawing/symbols.ts';
import { gearBook } from '../../../src/gear/index.ts';
import { difference, rasterise } from '../../support/raster.ts';

const SIZE = 24;
/**
 * Least ink, in whole black pixels of 576, that must differ between two symbols at 24 px. All symbols were set in a
 * random order without their names at 24 px and named cell by cell, by one who had drawn most of them. In the first
 * pass, with slender symbols drawn four times as long as broad, pairs below 30 made the reader hesitate, and eight of
 * 207 were named wrongly or not at all. Those were drawn anew and slender ones broadened to 1:3; in a second pass
 * all 76 slender symbols were named rightly, the nearest pair of the set then differing by 30.5.
 */
const LIMIT = 30;

const pictures = new Map(symbolIds.map((id) => [id, rasterise(symbolPath(id), SIZE)]));

describe('the set of symbols', () => {
  it('has at least 90, each with words to find it by', () => {
    expect(symbolIds.length).toBeGreaterThanOrEqual(90);
    expect(new Set(symbolIds).size).toBe(symbolIds.length);
    for (const id of symbolIds) expect(symbolShape(id).words.split(' ').length, id).toBeGreaterThan(1);
  });

  it('has no two alike in grey at 24 px', () => {
    const near: string[] = [];
    symbolIds.forEach((a, i) => {
      for (const b of symbolIds.slice(0, i)) {
        const d = difference(
          pictures.get(a) ?? new Float64Array(),
          pictures.get(b) ?? new Float64Array(),
          SIZE,
        );
        if (d < LIMIT) near.push(`${a} and ${b}: ${d.toFixed(1)}`);
      }
    });
    expect(near).toEqual([]);
  });

  it('takes a symbol moved by a pixel, and one with another dot, for the same', () => {
    const drawn = symbolPath('led-spot');
    const [x, y, w, h] = drawn.viewBox;
    const base = rasterise(drawn, SIZE);
    const moved = rasterise({ ...drawn, viewBox: [x + w / SIZE, y, w, h] }, SIZE);
    const dotted = {
      ...drawn,
      paths: [...drawn.paths, { line: 'solid' as const, d: 'M0 -15L15 0L0 15L-15 0Z' }],
    };
    expect(difference(base, moved, SIZE)).toBeLessThan(LIMIT / 10);
    expect(difference(base, rasterise(dotted, SIZE), SIZE)).toBeGreaterThan(0);
    expect(difference(base, rasterise(dotted, SIZE), SIZE)).toBeLessThan(LIMIT);
  });

  it('keeps ink and white: no symbol is a blot or a speck', () => {
    for (const [id, p] of pictures) {
      const share = p.reduce((sum, v) => sum + v, 0) / p.length;
      expect(share, id).toBeGreaterThan(0.05);
      expect(share, id).toBeLessThan(0.5);
    }
  });
});

describe('the symbols of the book', () => {
  const kinds = [...gearBook('north-america'), ...gearBook('europe')];

  it('uses at least 90 of them', () => {
    expect(new Set(kinds.map((k) => k.symbol)).size).toBeGreaterThanOrEqual(90);
  });

  it('draws fixtures in about their own proportions', () => {
    // A symbol is stretched to its unit's true size. Slender ones and bulbs, which are drawn at a least size, may stretch.
    for (const k of kinds) {
      if (k.family !== 'fixture' || k.style === 'practical') continue;
      const s = symbolShape(k.symbol);
      const own = k.sizeMm.lengthMm / k.sizeMm.widthMm;
      const drawn = s.lengthMm / s.widthMm;
      if (Math.min(own, 1 / own, drawn, 1 / drawn) < 1 / 4) continue;
      expect(Math.max(own / drawn, drawn / own), `${k.slug} as ${k.symbol}`).toBeLessThan(2.2);
    }
  });

  it('tells the source of light by the symbol', () => {
    // A symbol is of one sort of source, but for balloons, lanterns and practicals, whose shape tells what they are.
    const sources = new Map<string, Set<string>>();
    for (const k of kinds) {
      if (k.family !== 'fixture' || /balloon|lantern|practical|moving/.test(k.symbol)) continue;
      sources.set(k.symbol, (sources.get(k.symbol) ?? new Set()).add(k.source));
    }
    for (const [symbol, s] of sources) expect([...s], symbol).toHaveLength(1);
  });
});
