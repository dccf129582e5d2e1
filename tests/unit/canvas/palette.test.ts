import { describe, expect, test } from 'vitest';
import { PALETTES, type Scheme } from '../../../src/canvas/palette.ts';

/** Relative luminance and contrast as WCAG 2.2 defines them (section "relative luminance", "contrast ratio"). */
const luminance = (hex: string): number => {
  const channel = (i: number): number => {
    const c = Number.parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5);
};

const contrast = (a: string, b: string): number => {
  const [hi, lo] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return ((hi ?? 0) + 0.05) / ((lo ?? 0) + 0.05);
};

/** Roles that text is written in, and roles that only draw lines which carry meaning. */
const TEXT = [
  'ink',
  'ink-soft',
  'ink-faint',
  'gear',
  'aim',
  'dimension',
  'accent',
  'cable',
  'feeder',
  'data',
  'stop',
  'warn',
  'note',
] as const;
const LINES = ['wall', 'glass', 'stand', 'beam', 'set-piece'] as const;

describe.each(['bench', 'truck'] as Scheme[])('%s palette', (scheme) => {
  const { roles, ground } = PALETTES[scheme];

  test('the contrast formula gives the known extremes', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
  });

  test.each(TEXT)('text in %s reaches 4.5 to 1 on the ground', (role) => {
    expect(contrast(roles[role], ground)).toBeGreaterThanOrEqual(4.5);
  });

  test.each(LINES)('lines in %s reach 3 to 1 on the ground', (role) => {
    expect(contrast(roles[role], ground)).toBeGreaterThanOrEqual(3);
  });

  test('gear is filled with the ground, so that what it hides is hidden', () => {
    expect(roles['gear-fill']).toBe(ground);
    expect(roles.paper).toBe(ground);
  });
});
