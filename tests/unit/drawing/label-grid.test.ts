import { describe, expect, it } from 'vitest';
import { boxAt, labelGrid, segmentMeetsBox } from '../../../src/drawing/label-grid.ts';
import { placeLabel, takeSpot } from '../../../src/drawing/label-place.ts';
import { type Box, point } from '../../../src/kernel/geometry.ts';

const PAPER = { minX: -200, minY: -200, maxX: 200, maxY: 200 };
const ask = (x: number, y: number) => ({
  at: point(x, y),
  halfMm: [3, 2] as const,
  facingDeg: 0,
  bubbleMm: 2.7,
  lines: [{ text: 'LED spot 120 W', weight: 'semibold' as const }],
  owner: 'me',
  bounds: undefined,
  maxMm: 30,
});

describe('what labels must not touch', () => {
  it('meets a segment that only clips a box’s corner', () => {
    expect(segmentMeetsBox(point(0, 1.9), point(1.9, 0), boxAt(point(2, 2), 1.1, 1.1))).toBe(true);
    expect(segmentMeetsBox(point(0, 1.7), point(1.7, 0), boxAt(point(2, 2), 1.1, 1.1))).toBe(false);
  });

  it('counts soft strokes and forbids hard ones, over cells of the grid', () => {
    const grid = labelGrid(PAPER);
    grid.addSegment(point(-100, 0), point(100, 3), false, 'beam');
    expect(grid.cost(boxAt(point(70, 2.5), 1, 1))).toBe(1);
    expect(grid.cost(boxAt(point(70, 20), 1, 1))).toBe(0);
    grid.addSegment(point(70, -50), point(70, 50), true, 'wall');
    expect(grid.cost(boxAt(point(70, 2.5), 1, 1))).toBeUndefined();
    expect(grid.cost(boxAt(point(70, 2.5), 1, 1), 'wall')).toBe(1);
  });
});

describe('placing a label', () => {
  it('takes the clear place behind the unit first', () => {
    const spot = placeLabel(labelGrid(PAPER), ask(0, 0));
    expect(spot?.at.xMm ?? 0).toBeLessThan(0);
  });

  it('goes round what is in the way', () => {
    const grid = labelGrid(PAPER);
    grid.addBox({ minX: -60, minY: -60, maxX: -3.5, maxY: 60 }, 'block');
    const spot = placeLabel(grid, ask(0, 0));
    expect(spot).toBeDefined();
    for (const b of spot?.boxes ?? []) expect(b.minX).toBeGreaterThan(-3.5);
  });

  it('gives nothing when everything is taken', () => {
    const grid = labelGrid(PAPER);
    grid.addBox({ minX: -100, minY: -100, maxX: 100, maxY: 100 }, 'block');
    expect(placeLabel(grid, ask(0, 0))).toBeUndefined();
  });

  it('never puts two labels over one another', () => {
    const grid = labelGrid(PAPER);
    const boxes: Box[] = [];
    for (let i = 0; i < 12; i++) {
      const spot = placeLabel(grid, { ...ask((i % 4) * 9, Math.floor(i / 4) * 7), owner: `u${i}` });
      if (!spot) continue;
      takeSpot(grid, spot, `u${i}`);
      boxes.push(...spot.boxes);
    }
    boxes.forEach((a, i) => {
      boxes.slice(i + 1).forEach((b, j) => {
        // A bubble and its own text stand side by side.
        const own = i % 2 === 0 && j === 0;
        const meet = a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
        expect(meet && !own).toBe(false);
      });
    });
    expect(boxes.length).toBeGreaterThan(12);
  });

  it('keeps inside its bounds', () => {
    const spot = placeLabel(labelGrid(PAPER), {
      ...ask(0, 0),
      bounds: { minX: -8, minY: -30, maxX: 60, maxY: 30 },
    });
    for (const b of spot?.boxes ?? []) {
      expect(b.minX).toBeGreaterThanOrEqual(-8);
      expect(b.maxX).toBeLessThanOrEqual(60);
    }
    expect(spot).toBeDefined();
  });
});
