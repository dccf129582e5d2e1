import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parsePath, scaledSymbol, symbolIds, symbolPath, symbolShape } from '../../../src/drawing/symbols.ts';
import { gearBook } from '../../../src/gear/index.ts';
import { compileSymbols, moduleText } from '../../../symbols/compile.mjs';
import { metricsModule } from '../../../symbols/measure-font.mjs';
import { normalisePath, pathBox } from '../../../symbols/svg-path.mjs';

const read = (path: string): string => readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');

describe('compiled symbols', () => {
  it('are up to date with the drawings', () => {
    expect(read('src/drawing/symbols.generated.ts')).toBe(moduleText(compileSymbols()));
  });

  it('are there for every kind of both gear books', () => {
    const wanted = new Set([...gearBook('north-america'), ...gearBook('europe')].map((k) => k.symbol));
    wanted.delete('');
    const missing = [...wanted].filter((id) => !symbolIds.includes(id));
    // Cables are drawn as runs and scenery by its outline; every other kind has its own drawing.
    const families = (id: string) =>
      gearBook('north-america')
        .filter((k) => k.symbol === id)
        .map((k) => k.family);
    expect(missing.filter((id) => !families(id).every((f) => f === 'cable' || f === 'grip'))).toEqual([]);
  });

  it('stretch to the true size of a kind, the mounting point staying put', () => {
    const shape = symbolShape('tungsten-fresnel');
    const d = scaledSymbol('tungsten-fresnel', 640, 140).flatMap((p) => p.d);
    const box = pathBox(d);
    expect(box.maxX - box.minX).toBeCloseTo(640, 0);
    expect(box.maxY - box.minY).toBeCloseTo(140, 0);
    expect(box.minX).toBeCloseTo(shape.box[0] * 2, 0);
  });

  it('keep their dots round when stretched', () => {
    const dots = scaledSymbol('led-panel', 300, 1200).find((p) => p.line === 'solid');
    const first = (dots?.d ?? []).slice(0, 6);
    const box = pathBox(first);
    expect(box.maxX - box.minX).toBeCloseTo(box.maxY - box.minY, 1);
  });

  it('fall back to a plain square for an id nobody drew', () => {
    expect(symbolShape('no-such-thing').id).toBe('unit-plain');
    expect(symbolPath('no-such-thing').paths.length).toBeGreaterThan(0);
  });
});

describe('path data', () => {
  it('reads relative and absolute commands alike', () => {
    expect(normalisePath('M10,10 h20 v5 H0 z')).toEqual(normalisePath('M10 10L30 10L30 15L0 15Z'));
  });

  it('turns an arc into curves on its circle', () => {
    const half = normalisePath('M-50,0 A50,50 0 0 1 50,0');
    const box = pathBox(half);
    expect(box.minY).toBeCloseTo(-50, 1);
    expect(box.maxY).toBeCloseTo(0, 6);
    expect(half.at(-1)?.slice(-2)).toEqual([50, 0]);
  });

  it('turns a quadratic into the cubic through the same middle', () => {
    const [, curve] = normalisePath('M0,0 Q50,100 100,0');
    const box = pathBox([['M', 0, 0], curve]);
    expect(box.maxY).toBeCloseTo(50, 1);
  });

  it('survives being written and read again', () => {
    for (const id of symbolIds) {
      for (const p of symbolShape(id).paths) expect(parsePath(p.d).length).toBeGreaterThan(1);
    }
  });

  it('refuses what it cannot read', () => {
    expect(() => normalisePath('M0,0 T5,5')).toThrow(/cannot read/);
    expect(() => normalisePath('M0,0 L5')).toThrow(/too few/);
  });
});

describe('font metrics', () => {
  it('are up to date with the font files', () => {
    expect(read('src/drawing/font-metrics.generated.ts')).toBe(metricsModule());
  });
});
