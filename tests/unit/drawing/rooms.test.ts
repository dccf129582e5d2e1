import { describe, expect, test } from 'vitest';
import { insideMeasures, roomFaces } from '../../../src/drawing/room-faces.ts';
import type { Wall } from '../../../src/plan/records/index.ts';

/** Four walls along the centre lines of a box. */
const box = (name: string, x0: number, y0: number, x1: number, y1: number, thicknessMm = 100): Wall[] => {
  const corners = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ] as const;
  return corners.map(([xMm, yMm], i) => {
    const [nx, ny] = corners[(i + 1) % 4] ?? [0, 0];
    return {
      id: `${name}-${i}`,
      type: 'wall' as const,
      floorId: 'f',
      from: { xMm, yMm },
      to: { xMm: nx, yMm: ny },
      thicknessMm,
      heightMm: 2700,
      material: 'plasterboard' as const,
    };
  });
};

const areas = (walls: readonly Wall[]): readonly number[] =>
  roomFaces(walls)
    .map((f) => Math.round(f.areaMm2))
    .sort((a, b) => b - a);

describe('areas of rooms', () => {
  test('an inner room that stands free, with its walls, is not counted in the outer one', () => {
    const walls = [...box('o', 0, 0, 10_000, 8000), ...box('i', 3000, 3000, 5000, 4000)];
    // 9.9 × 7.9 m inside, less 2.1 × 1.1 m over the inner room's walls; and 1.9 × 0.9 m in it.
    expect(areas(walls)).toEqual([9900 * 7900 - 2100 * 1100, 1900 * 900]);
  });

  test('an inner room in a corner only takes away from the outer one what it takes', () => {
    const walls = [
      ...box('o', 0, 0, 10_000, 8000),
      ...box('i', 0, 0, 3000, 2000).filter((w) => w.id === 'i-1' || w.id === 'i-2'),
    ];
    const [outer, inner] = areas(walls);
    expect(inner).toBe(2900 * 1900);
    expect(outer).toBe(9900 * 7900 - 3000 * 2000);
  });

  test('rooms within rooms each count what is left to them, and keep their inside measures', () => {
    const walls = [
      ...box('a', 0, 0, 10_000, 10_000),
      ...box('b', 2000, 2000, 8000, 8000),
      ...box('c', 4000, 4000, 6000, 6000),
    ];
    expect(areas(walls)).toEqual([9900 ** 2 - 6100 ** 2, 5900 ** 2 - 2100 ** 2, 1900 ** 2]);
    const outer = roomFaces(walls).find((f) => f.wallIds.includes('a-0'));
    expect(outer && insideMeasures(outer)).toEqual({ lengthMm: 9900, widthMm: 9900 });
  });
});
