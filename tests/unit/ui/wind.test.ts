import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatWind, parseWind } from '../../../src/kernel/units.ts';

const read = (t: string): number | undefined => {
  const r = parseWind(t);
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};

describe('a speed of wind', () => {
  it('is told in metres a second with the plan’s own unit beside it', () => {
    expect(formatWind(8, 'imperial')).toBe('8 m/s (18 mph)');
    expect(formatWind(8, 'metric')).toBe('8 m/s (29 km/h)');
    // EN 280 platforms: 12.5 m/s, which is printed as 45 km/h and 28 mph (from memory).
    expect(formatWind(12.5, 'metric')).toBe('12.5 m/s (45 km/h)');
    expect(formatWind(12.5, 'imperial')).toBe('12.5 m/s (28 mph)');
    expect(formatWind(Number.NaN, 'metric')).toBe('–');
  });

  it('is read in any of the three units, and as it is told', () => {
    expect(read('5')).toBe(5);
    expect(read('5,5 m/s')).toBe(5.5);
    expect(read('18 km/h')).toBeCloseTo(5, 12);
    expect(read('10 mph')).toBeCloseTo(4.4704, 12);
    expect(read(' ')).toBeUndefined();
    expect(parseWind('5 knots').ok).toBe(false);
    expect(parseWind('500 km/h').ok).toBe(false);
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1000 }),
        fc.constantFrom('imperial' as const, 'metric' as const),
        (tenths, units) => {
          expect(read(formatWind(tenths / 10, units))).toBeCloseTo(tenths / 10, 9);
        },
      ),
    );
  });
});
