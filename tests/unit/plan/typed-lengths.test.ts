import { describe, expect, test } from 'vitest';
import { parseLengthMm } from '../../../src/kernel/units.ts';

describe('a length that is typed', () => {
  test.each(['999999999999', '-999999999999', '101 km', "400000'", '100001m'])(
    'of more than 100 km is refused with words, as no drawing of it would end: %s',
    (text) => {
      for (const units of ['metric', 'imperial'] as const) {
        const read = parseLengthMm(text, units);
        expect(read.ok, text).toBe(false);
        if (!read.ok) expect(read.error.todo ?? '').not.toBe('');
      }
    },
  );

  test('of 100 km is taken', () => {
    expect(parseLengthMm('100000m', 'imperial')).toEqual({ ok: true, value: 1e8 });
    expect(parseLengthMm('-100000', 'metric')).toEqual({ ok: true, value: -1e8 });
  });
});
