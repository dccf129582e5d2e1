import { describe, expect, it } from 'vitest';
import type { PathCommand } from '../../../src/drawing/display-list.ts';
import { hatchLines } from '../../../src/drawing/hatch.ts';

const square = (x: number, y: number, side: number): PathCommand[] => [
  ['M', x, y],
  ['L', x + side, y],
  ['L', x + side, y + side],
  ['L', x, y + side],
  ['Z'],
];

describe('hatching', () => {
  it('covers an area as lines of total length area over spacing', () => {
    const lines = hatchLines(square(0, 0, 100), 45, 0.5);
    const total = lines.reduce((s, [a, b]) => s + Math.hypot(a.xMm - b.xMm, a.yMm - b.yMm), 0);
    expect(total).toBeCloseTo((100 * 100) / 0.5, -2);
  });

  it('stays inside and leaves holes out', () => {
    const lines = hatchLines([...square(0, 0, 100), ...square(25, 25, 50)], 0, 1);
    for (const [a, b] of lines) {
      expect(Math.min(a.xMm, b.xMm)).toBeGreaterThanOrEqual(-1e-6);
      const mid = (a.xMm + b.xMm) / 2;
      const inHole = a.yMm > 25 && a.yMm < 75 && mid > 25 && mid < 75;
      expect(inHole).toBe(false);
    }
  });

  it('keeps one phase over neighbours', () => {
    const ys = (x: number): number[] => hatchLines(square(x, 0.3, 10), 0, 1).map(([a]) => a.yMm);
    expect(ys(0)).toEqual(ys(10));
  });

  it('gives nothing for a line', () => {
    expect(
      hatchLines(
        [
          ['M', 0, 0],
          ['L', 5, 5],
        ],
        45,
        1,
      ).length,
    ).toBeLessThanOrEqual(1);
  });
});
