import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitRail, switchWidth } from '../../../src/ui/shell/rail-fit.ts';

const panel = (id: string, widthPx: number, pct = Number.NaN) => ({ id, widthPx, pct });
const two = [panel('G1', 466, 62), panel('P1', 262, 91), panel('fullest', 262), panel('volts', 214)];

describe('blocks of the meter rail', () => {
  it('are all shown where there is room, without a switch', () => {
    expect(fitRail(two, 1300, undefined)).toEqual({
      shown: new Set(['G1', 'P1', 'fullest', 'volts']),
      folded: false,
    });
  });

  it('fold to the fullest source where there is not, and to the picked one before it', () => {
    expect([...fitRail(two, 480, undefined).shown]).toEqual(['P1']);
    expect([...fitRail(two, 640, 'G1').shown]).toEqual(['G1']);
    expect([...fitRail(two, 660, 'volts').shown]).toEqual(['volts', 'P1']);
  });

  it('always show one, and never more than the width holds', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 200, max: 480 }), fc.option(fc.integer({ min: 0, max: 150 }))), {
          minLength: 1,
          maxLength: 8,
        }),
        fc.integer({ min: 700, max: 2000 }),
        fc.integer({ min: 0, max: 7 }),
        (list, width, pick) => {
          const panels = list.map(([w, pct], i) => panel(`${i}`, w, pct ?? Number.NaN));
          const { shown, folded } = fitRail(panels, width, `${pick}`);
          expect(shown.size).toBeGreaterThan(0);
          if (pick < panels.length) expect(shown.has(`${pick}`)).toBe(true);
          const used = panels.filter((p) => shown.has(p.id)).reduce((sum, p) => sum + p.widthPx + 16, -16);
          const beside = folded ? switchWidth(panels.length) + 16 : 0;
          if (shown.size > 1) expect(used + beside).toBeLessThanOrEqual(width);
          if (!folded) expect(shown.size).toBe(panels.length);
        },
      ),
    );
  });
});
