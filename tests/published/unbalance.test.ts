import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { negativeSequencePct, nemaUnbalancePct } from '../../src/engines/power/unbalance.ts';

describe('voltage unbalance against printed answers', () => {
  it('power-volts-unbalance: 460, 467, 450 V are 1.96 % by NEMA (tools.gera.services)', () => {
    expect(nemaUnbalancePct([460, 467, 450])).toBeCloseTo(1.96, 2);
  });

  it('power-volts-unbalance: 462, 463, 455 V are 1.1 % (eng-tips.com, wording of a department of energy sheet)', () => {
    expect(nemaUnbalancePct([462, 463, 455])).toBeCloseTo(1.1, 1);
  });

  it('power-volts-unbalance: 429, 415, 419 V are 1.9 % (aseannow.com)', () => {
    expect(nemaUnbalancePct([429, 415, 419])).toBeCloseTo(1.9, 2);
  });

  it('power-volts-unbalance: 400, 395, 388 V are 1.606 %: the 1.45 % a motor maker’s blog prints took the smaller deviation', () => {
    expect(nemaUnbalancePct([400, 395, 388])).toBeCloseTo(1.606, 3);
  });

  it('power-volts-unbalance: 220, 216, 213 V are 1.695 %: the 1.8 % a manual prints (manuals.online) rounded the mean first', () => {
    expect(nemaUnbalancePct([220, 216, 213])).toBeCloseTo(1.695, 3);
  });

  it('power-volts-unbalance: 460, 467, 450 V have a negative sequence of 2.146 %, 462, 463, 455 V of 1.091 % (computed by symmetrical components)', () => {
    expect(negativeSequencePct([460, 467, 450])).toBeCloseTo(2.146, 3);
    expect(negativeSequencePct([462, 463, 455])).toBeCloseTo(1.091, 3);
  });

  it('power-volts-unbalance: the formula from magnitudes is the ratio of the symmetrical components, for any three line volts', () => {
    const side = fc.double({ min: 350, max: 450, noNaN: true });
    fc.assert(
      fc.property(side, side, side, (ab, bc, ca) => {
        // The three line volts close a triangle: its corners are the phasors.
        const x = (ab * ab + ca * ca - bc * bc) / (2 * ab);
        const y = Math.sqrt(ca * ca - x * x);
        const lines: [number, number][] = [
          [ab, 0],
          [x - ab, y],
          [-x, -y],
        ];
        const turned = (k: number): number => {
          let re = 0;
          let im = 0;
          lines.forEach(([a, b], i) => {
            const angle = (k * i * 2 * Math.PI) / 3;
            re += a * Math.cos(angle) - b * Math.sin(angle);
            im += a * Math.sin(angle) + b * Math.cos(angle);
          });
          return Math.hypot(re, im);
        };
        const [one, two] = [turned(1), turned(-1)];
        const expected = (100 * Math.min(one, two)) / Math.max(one, two);
        expect(negativeSequencePct([ab, bc, ca])).toBeCloseTo(expected, 4);
      }),
    );
  });
});
