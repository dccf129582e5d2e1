import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contourRings, type Ring, simplerRing } from '../../../src/drawing/contours.ts';
import { COVERAGE_STEPS_DB, coverageItems, coverageTones, spotItems } from '../../../src/drawing/coverage.ts';

/** Twice the area inside a ring; positive where it runs with higher ground on its right (y down). */
const area2 = (r: Ring): number =>
  r.reduce((s, [x, y], i) => {
    const [nx, ny] = r[(i + 1) % r.length] ?? [0, 0];
    return s + x * ny - nx * y;
  }, 0);

const winding = (rings: readonly Ring[], px: number, py: number): number => {
  let n = 0;
  for (const ring of rings)
    ring.forEach(([x1, y1], i) => {
      const [x2, y2] = ring[(i + 1) % ring.length] ?? [0, 0];
      const left = (x2 - x1) * (py - y1) - (px - x1) * (y2 - y1);
      if (y1 <= py && y2 > py && left > 0) n++;
      if (y1 > py && y2 <= py && left < 0) n--;
    });
  return n;
};

describe('contours', () => {
  it('go round a hill once, and round a hollow the other way', () => {
    const ring = (c: number, r: number): number => 5 - Math.abs(Math.hypot(c - 10, r - 10) - 6);
    const values = Array.from({ length: 21 * 21 }, (_, i) => ring(i % 21, Math.floor(i / 21)));
    const rings = contourRings(values, 21, 21, 3);
    expect(rings).toHaveLength(2);
    const areas = rings.map(area2).sort((a, b) => Math.abs(b) - Math.abs(a));
    // Radii 8 and 4: π r², twice, within the step of the grid.
    expect(Math.abs(Math.abs(areas[0] ?? 0) - 2 * Math.PI * 64)).toBeLessThan(8);
    expect(Math.sign(areas[0] ?? 0)).toBe(-Math.sign(areas[1] ?? 0));
  });

  it('close along the rim', () => {
    const [only, ...more] = contourRings([1, 1, 1, 1, 1, 1], 3, 2, 0);
    expect(more).toEqual([]);
    expect(Math.abs(area2(only ?? []))).toBeCloseTo(2 * 2 * 1, 9);
  });

  it('take what is not a number as below', () => {
    expect(contourRings([Number.NaN, Number.NaN, Number.NaN, Number.NaN], 2, 2, 0)).toEqual([]);
  });

  it('hold every place at the level or above, and no other, on any grid', () => {
    const value = fc.oneof(fc.integer({ min: -20, max: 60 }), fc.constant(Number.NaN));
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 9 }),
        fc.integer({ min: 2, max: 9 }),
        fc.infiniteStream(value),
        (columns, rows, stream) => {
          const values = [...stream.take(columns * rows)];
          const level = 10.5;
          const rings = contourRings(values, columns, rows, level);
          for (let r = 0; r < rows; r++)
            for (let c = 0; c < columns; c++) {
              const v = values[r * columns + c] ?? Number.NaN;
              // A place on the rim lies on the line: look a hair inside.
              const x = Math.min(columns - 1 - 1e-6, Math.max(1e-6, c));
              const y = Math.min(rows - 1 - 1.1e-6, Math.max(1.1e-6, r));
              const alone = [-1, 1].every((d) =>
                [values[r * columns + c + d], values[(r + d) * columns + c]].every((n) => Number.isFinite(n)),
              );
              if (!alone) continue;
              expect(winding(rings, x, y) !== 0, `${c},${r} = ${v}`).toBe(v >= level);
            }
        },
      ),
      { numRuns: 200 },
    );
  });

  it('are simplified within the tolerance', () => {
    const circle: Ring = Array.from({ length: 200 }, (_, i) => {
      const a = (i * Math.PI) / 100;
      return [10 * Math.cos(a), 10 * Math.sin(a)] as const;
    });
    const simple = simplerRing(circle, 0.1);
    expect(simple.length).toBeLessThan(60);
    expect(simple.length).toBeGreaterThan(10);
    expect(area2(simple) / area2(circle)).toBeGreaterThan(0.98);
  });
});

describe('coverage picture', () => {
  const columns = 40;
  const rows = 30;
  const grid = {
    floorId: 'floor',
    originXMm: -1000,
    originYMm: 500,
    stepMm: 500,
    columns,
    rows,
    heightM: 1.5,
    sensitivityDbm: -92,
    senderIds: ['tx'],
    marginDb: Float32Array.from(
      { length: columns * rows },
      (_, i) => 55 - 3 * Math.hypot((i % columns) - 20, Math.floor(i / columns) - 15),
    ),
  };

  it('has a tone for every step that occurs, darker for less', () => {
    const items = coverageItems(grid, 20);
    const tones = items.filter((i) => i.key.startsWith('coverage:'));
    expect(tones.map((t) => t.key)).toEqual(COVERAGE_STEPS_DB.map((db) => `coverage:${db}`));
    const scales = coverageTones().map((t) => t.scale);
    expect(scales).toEqual([...scales].sort((a, b) => a - b));
    expect(items.every((i) => i.layer === 'coverage')).toBe(true);
    expect(items.flatMap((i) => i.primitives).filter((p) => p.kind === 'text')).toHaveLength(3);
  });

  it('covers each place with the tone of its margin alone', () => {
    const items = coverageItems(grid, 20);
    const toneAt = (xMm: number, yMm: number): string[] =>
      items
        .filter((i) => i.key.startsWith('coverage:'))
        .filter((i) => {
          const path = i.primitives[0];
          if (path?.kind !== 'path') return false;
          const rings: [number, number][][] = [];
          for (const c of path.d) {
            if (c[0] === 'M') rings.push([[c[1], c[2]]]);
            if (c[0] === 'L') rings.at(-1)?.push([c[1], c[2]]);
          }
          return winding(rings, xMm, yMm) !== 0;
        })
        .map((i) => i.key);
    const at = (c: number, r: number) => toneAt(grid.originXMm + c * 500 + 7, grid.originYMm + r * 500 + 7);
    expect(at(20, 15)).toEqual(['coverage:40']);
    expect(at(27, 15)).toEqual(['coverage:30']);
    expect(at(20, 4)).toEqual(['coverage:20']);
    expect(at(6, 15)).toEqual(['coverage:10']);
    expect(at(1, 15)).toEqual([]);
  });

  it('numbers places, the two of a pair alike', () => {
    const place = (xMm: number) => ({ xMm, yMm: 0, heightMm: 2500, standId: undefined });
    const c = { facingDeg: undefined, worstDb: 1, worstId: 'u', meanDb: 2, verdict: 'weak' as const };
    const items = spotItems(
      'floor',
      [
        { ...c, places: [place(0), place(9000)] },
        { ...c, places: [place(4000)] },
      ],
      50,
    );
    const texts = items.flatMap((i) => i.primitives).flatMap((p) => (p.kind === 'text' ? [p.text] : []));
    expect(texts).toEqual(['2', '1', '1']);
  });
});
