import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cutPool } from '../../../src/drawing/cut-pool.ts';
import { poolOf } from '../../../src/drawing/pools.ts';

const WIDE = { leftDeg: 90, rightDeg: 90 };
const tan = (deg: number): number => Math.tan((deg * Math.PI) / 180);

describe('a patch of light behind barn doors', () => {
  it('ends at the top and begins at the bottom leaf, on lines across the throw at h / tan of the leaf’s angle down', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 500, max: 9000, noNaN: true }),
        fc.double({ min: 35, max: 80, noNaN: true }),
        fc.double({ min: 10, max: 24, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (h, tau, beta, top, bottom) => {
          const cut =
            cutPool(h, -tau, 2 * beta, { ...WIDE, topDeg: top * beta, bottomDeg: bottom * beta }) ?? [];
          const out = cut.map((p) => p.outMm / h);
          expect(Math.max(...out)).toBeCloseTo(1 / tan(tau - top * beta), 6);
          expect(Math.min(...out)).toBeCloseTo(1 / tan(tau + bottom * beta), 6);
          const whole = poolOf(h, -tau, 2 * beta);
          if (!whole) throw new Error('the whole cone comes down');
          for (const p of cut)
            expect(
              ((p.outMm - whole.outMm) / whole.alongMm) ** 2 + (p.rightMm / whole.acrossMm) ** 2,
            ).toBeLessThan(1 + 1e-6);
        },
      ),
    );
  });

  it('straight down a side leaf cuts at h times the tangent of its angle, on its own side only', () => {
    const right = (cutPool(3000, -90, 60, { leftDeg: 90, rightDeg: 10 }) ?? []).map((p) => p.rightMm);
    expect(Math.max(...right)).toBeCloseTo(3000 * tan(10), 6);
    expect(Math.min(...right)).toBeCloseTo(-3000 * tan(30), 0);
  });

  it('a top leaf makes a patch of a beam whose upper edge would not come down', () => {
    expect(poolOf(3000, -25, 60)).toBeUndefined();
    expect(cutPool(3000, -25, 60, WIDE)).toBeUndefined();
    const cut = cutPool(3000, -25, 60, { ...WIDE, topDeg: 0 }) ?? [];
    expect(Math.max(...cut.map((p) => p.outMm))).toBeCloseTo(3000 / tan(25), 6);
  });

  it('leaves wider than the beam change nothing, and leaves that meet let nothing through', () => {
    expect(cutPool(3000, -50, 30, { leftDeg: 20, rightDeg: 20, topDeg: 15, bottomDeg: 40 })).toBeUndefined();
    expect(cutPool(3000, -50, 30, { ...WIDE, topDeg: -3, bottomDeg: 2 })).toEqual([]);
  });
});
