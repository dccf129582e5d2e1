import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  CAP_PER_EM,
  emMm,
  fitText,
  MISSING,
  showable,
  textWidthMm,
  wrapText,
} from '../../../src/drawing/text.ts';
import { advances } from '../../../symbols/measure-font.mjs';

const font = new URL('../../../node_modules/@expo-google-fonts/source-sans-3/', import.meta.url);
const regular = advances(
  new Uint8Array(readFileSync(new URL('400Regular/SourceSans3_400Regular.ttf', font))),
);

describe('text widths', () => {
  it('are the sums of the font file’s advance widths', () => {
    const text = 'K1·4 23.0 A ≤ 7′-6″ Ω';
    const units = [...text].reduce((s, c) => s + (regular.get(c.codePointAt(0) ?? 0) ?? Number.NaN), 0);
    expect(textWidthMm(text, 1.8)).toBeCloseTo((units / 1000) * (1.8 / CAP_PER_EM), 9);
  });

  it('are the same for every digit, so that columns line up', () => {
    const widths = [...'0123456789'].map((d) => textWidthMm(d, 2.5));
    expect(new Set(widths).size).toBe(1);
    expect(new Set([...'0123456789'].map((d) => textWidthMm(d, 2.5, 'semibold'))).size).toBe(1);
  });

  it('grow with the capital height', () => {
    expect(textWidthMm('Lamp', 3.6)).toBeCloseTo(2 * textWidthMm('Lamp', 1.8), 9);
    expect(emMm(0.66)).toBeCloseTo(1, 9);
  });
});

describe('fitting', () => {
  const long = 'Lorem '.repeat(80).trim();

  it('leaves a text that fits alone and cuts one that does not with an ellipsis', () => {
    expect(fitText('short', 1.8, 'regular', 50)).toBe('short');
    const cut = fitText(long, 1.8, 'regular', 30);
    expect(cut.endsWith('…')).toBe(true);
    expect(textWidthMm(cut, 1.8)).toBeLessThanOrEqual(30);
    expect(textWidthMm(`${cut.slice(0, -1)}m…`, 1.8)).toBeGreaterThan(28);
  });

  it('wraps within the width, breaks words that are too long and keeps to a number of lines', () => {
    for (const line of wrapText(`${long} ${'x'.repeat(200)}`, 1.8, 'regular', 25))
      expect(textWidthMm(line, 1.8)).toBeLessThanOrEqual(25);
    const three = wrapText(long, 1.8, 'regular', 25, 3);
    expect(three).toHaveLength(3);
    expect(three[2]?.endsWith('…')).toBe(true);
    expect(wrapText('one two', 1.8, 'regular', 100, 3)).toEqual(['one two']);
  });
});

describe('characters the font lacks', () => {
  it('become a visible mark and are named', () => {
    const s = showable('灯 A 🎬');
    expect(s.text).toBe(`${MISSING} A ${MISSING}`);
    expect(s.missing).toEqual(['灯', '🎬']);
  });

  it('are not those of the trade', () => {
    expect(showable('Ω ≤ ≥ ′ ″ × · ½ ¼ ° ² µ – − … é ñ ž Ж λ').missing).toEqual([]);
  });

  it('do not let control characters through', () => {
    expect(showable('a\u0000b\tc').text).toBe('a b c');
  });
});
