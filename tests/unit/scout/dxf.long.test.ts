import { describe, expect, test } from 'vitest';
import { type DxfDrawing, readDxf } from '../../../src/import/dxf/dxf.ts';
import { likelyUnit } from '../../../src/import/dxf/units.ts';
import { lineWorkBlob, lineWorkOf } from '../../../src/plan/line-work.ts';
import { bytesOf, dxfOf, groups, insUnits, lineGroups } from '../../support/dxf-text.ts';
import { need } from '../../support/storage-world.ts';

const read = (text: string): DxfDrawing => need(readDxf(bytesOf(text), 'barn.dxf'));
const paths = (d: DxfDrawing): readonly (readonly number[])[] => d.work.layers.flatMap((l) => l.paths);
const refused = (text: string | Uint8Array): string => {
  const r = readDxf(typeof text === 'string' ? bytesOf(text) : text, 'barn.dxf');
  if (r.ok) throw new Error('it was read');
  expect(r.error.todo ?? '').not.toBe('');
  return r.error.what;
};
/** The end of a path, rounded to a tenth of a unit. */
const end = (p: readonly number[] | undefined): readonly number[] =>
  (p ?? []).slice(-2).map((v) => Math.round(v * 10) / 10);
const start = (p: readonly number[] | undefined): readonly number[] =>
  (p ?? []).slice(0, 2).map((v) => Math.round(v * 10) / 10);

describe('line work of a DXF drawing', () => {
  test('lines by layer, y turned to run down, from the upper left corner, in the unit the header names', () => {
    const d = read(
      dxfOf(lineGroups(100, 100, 500, 100, 'WALLS') + lineGroups(100, 100, 100, 400, 'GRID'), {
        header: insUnits(5),
      }),
    );
    expect(d.mmPerUnit).toBe(10);
    expect([d.widthUnits, d.heightUnits]).toEqual([400, 300]);
    expect(d.work.layers.map((l) => l.name)).toEqual(['GRID', 'WALLS']);
    // (100, 100) is the lower left corner of the drawing.
    expect(d.work.layers[1]?.paths).toEqual([[0, 300, 400, 300]]);
  });

  test('units: none, nought and unheard-of ones are not known; feet, inches and survey feet are', () => {
    const mm = (header: string): number | undefined =>
      read(dxfOf(lineGroups(0, 0, 9, 9), { header })).mmPerUnit;
    expect([mm(''), mm(insUnits(0)), mm(insUnits(77))]).toEqual([undefined, undefined, undefined]);
    expect([mm(insUnits(1)), mm(insUnits(2)), mm(insUnits(6))]).toEqual([25.4, 304.8, 1000]);
    expect(mm(insUnits(21))).toBeCloseTo((1200 / 3937) * 1000, 6);
    // A room of 24 is in feet, one of 288 in inches, one of 7.3 in metres, one of 7300 in millimetres.
    expect([
      likelyUnit(24, true),
      likelyUnit(288, true),
      likelyUnit(7.3, false),
      likelyUnit(7300, false),
    ]).toEqual(['ft', 'in', 'm', 'mm']);
  });

  test('arcs, circles and ellipses keep to their curve', () => {
    const d = read(
      dxfOf(
        groups(0, 'CIRCLE', 8, '0', 10, 50, 20, 50, 40, 50) +
          groups(0, 'ARC', 8, '0', 10, 50, 20, 50, 40, 50, 50, 270, 51, 90) +
          groups(0, 'ELLIPSE', 8, '0', 10, 50, 20, 50, 11, 0, 21, 50, 40, 0.5, 41, 0, 42, Math.PI),
      ),
    );
    const [circle, arc, ellipse] = paths(d);
    for (let i = 0; circle && i < circle.length; i += 2)
      expect(Math.hypot((circle[i] ?? 0) - 50, (circle[i + 1] ?? 0) - 50)).toBeCloseTo(50, 6);
    // From straight down over the right to straight up: counter-clockwise with y up.
    expect([start(arc), end(arc)]).toEqual([
      [50, 100],
      [50, 0],
    ]);
    expect(Math.max(...(arc ?? []).filter((_, i) => i % 2 === 0))).toBeCloseTo(100, 6);
    // Its long axis runs up; half of it, over the left, 25 away at the most.
    expect([start(ellipse), end(ellipse)]).toEqual([
      [50, 0],
      [50, 100],
    ]);
    expect(Math.min(...(ellipse ?? []).filter((_, i) => i % 2 === 0))).toBeCloseTo(25, 6);
  });

  test('a bulge of 1 is half a circle, to the right of the way with y up', () => {
    const d = read(
      dxfOf(
        groups(0, 'LWPOLYLINE', 8, '0', 90, 2, 70, 0, 10, 0, 20, 0, 42, 1, 10, 100, 20, 0) +
          lineGroups(0, 0, 100, 0) +
          groups(0, 'LWPOLYLINE', 8, '0', 90, 3, 70, 1, 10, 0, 20, 0, 10, 100, 20, 0, 10, 100, 20, -50),
      ),
    );
    const [half, , closed] = paths(d);
    expect(d.heightUnits).toBeCloseTo(50, 6);
    const lowest = Math.max(...(half ?? []).filter((_, i) => i % 2 === 1));
    expect(lowest).toBeCloseTo(50, 6);
    expect(end(half)).toEqual([100, 0]);
    expect(closed).toHaveLength(8);
    expect(end(closed)).toEqual(start(closed));
  });

  test('polylines of vertices, splines and outlines of faces', () => {
    const d = read(
      dxfOf(
        groups(0, 'POLYLINE', 8, 'A', 66, 1, 70, 1) +
          groups(0, 'VERTEX', 8, 'A', 10, 0, 20, 0) +
          groups(0, 'VERTEX', 8, 'A', 10, 100, 20, 0) +
          groups(0, 'VERTEX', 8, 'A', 10, 100, 20, 100) +
          groups(0, 'SEQEND') +
          // A spline of degree 1 is its control polygon.
          groups(
            0,
            'SPLINE',
            8,
            'A',
            71,
            1,
            40,
            0,
            40,
            0,
            40,
            1,
            40,
            2,
            40,
            2,
            10,
            0,
            20,
            0,
            10,
            50,
            20,
            80,
            10,
            100,
            20,
            0,
          ) +
          groups(0, 'SOLID', 8, 'A', 10, 0, 20, 0, 11, 10, 21, 0, 12, 0, 22, 10, 13, 10, 23, 10),
      ),
    );
    const [poly, curve, solid] = paths(d);
    expect(poly).toEqual([0, 100, 100, 100, 100, 0, 0, 100]);
    expect(
      curve?.some(
        (v, i) => i % 2 === 0 && Math.abs(v - 50) < 1e-6 && Math.abs((curve[i + 1] ?? 0) - 20) < 1e-6,
      ),
    ).toBe(true);
    // Around the square, not over its diagonals.
    expect(solid).toEqual([0, 100, 10, 100, 10, 90, 0, 90, 0, 100]);
  });

  test('blocks with their place, scale, angle, base point, rows and nesting; layer 0 in them is that of the copy', () => {
    const blocks =
      groups(0, 'BLOCK', 2, 'LEAF', 10, 10, 20, 0) +
      lineGroups(10, 0, 20, 0) +
      groups(0, 'ENDBLK') +
      groups(0, 'BLOCK', 2, 'PAIR', 10, 0, 20, 0) +
      groups(0, 'INSERT', 8, '0', 2, 'LEAF', 10, 0, 20, 0, 41, 2, 42, 2, 50, 90) +
      groups(0, 'ENDBLK');
    const d = read(
      dxfOf(
        lineGroups(0, 0, 1000, 0, 'FRAME') +
          lineGroups(0, 0, 0, 1000, 'FRAME') +
          groups(0, 'INSERT', 8, 'DOORS', 2, 'PAIR', 10, 500, 20, 500) +
          groups(0, 'INSERT', 8, 'DOORS', 2, 'LEAF', 10, 100, 20, 100, 70, 3, 71, 2, 44, 50, 45, 60),
        { blocks },
      ),
    );
    const doors = d.work.layers.find((l) => l.name === 'DOORS')?.paths ?? [];
    expect(doors).toHaveLength(1 + 6);
    // Ten long, doubled, turned a quarter: from (500, 500) straight up by 20.
    expect([start(doors[0]), end(doors[0])]).toEqual([
      [500, 500],
      [500, 480],
    ]);
    expect(doors.slice(1).map(start)).toContainEqual([200, 840]);
  });

  test('what is drawn from behind, on paper, invisible or on a layer turned off', () => {
    const tables =
      groups(0, 'LAYER', 2, 'Hidden', 70, 0, 62, -7) + groups(0, 'LAYER', 2, 'Cold', 70, 1, 62, 7);
    const d = read(
      dxfOf(
        lineGroups(-100, 0, 100, 100) +
          groups(0, 'CIRCLE', 8, '0', 10, 60, 20, 50, 40, 10, 230, -1) +
          groups(0, 'LINE', 8, '0', 67, 1, 10, 0, 20, 0, 11, 9999, 21, 0) +
          groups(0, 'LINE', 8, '0', 60, 1, 10, 0, 20, 0, 11, 9999, 21, 0) +
          lineGroups(0, 0, 9999, 0, 'HIDDEN') +
          lineGroups(0, 0, 9999, 0, 'Cold'),
        { tables },
      ),
    );
    expect(d.widthUnits).toBe(200);
    expect(paths(d)).toHaveLength(2);
    // Mirrored: its centre is at −60, that is 40 from the left edge.
    const xs = (paths(d)[1] ?? []).filter((_, i) => i % 2 === 0);
    expect((Math.min(...xs) + Math.max(...xs)) / 2).toBeCloseTo(40, 6);
    expect(d.notices.join()).toMatch(/2 layers are turned off/);
  });

  test('texts: plain, in paragraphs with formatting, and special signs; what is no line work is counted', () => {
    const d = read(
      dxfOf(
        lineGroups(0, 0, 100, 100) +
          groups(0, 'TEXT', 8, 'T', 10, 10, 20, 90, 40, 5, 1, '45%%d %%c12', 50, 90) +
          groups(
            0,
            'MTEXT',
            8,
            'T',
            10,
            10,
            20,
            50,
            40,
            5,
            1,
            '{\\fSans|b0;Room \\H2x;1}\\Pheight\\~3\\U+00B2 \\{a\\}',
          ) +
          groups(0, 'HATCH', 8, 'T') +
          groups(0, 'HATCH', 8, 'T'),
      ),
    );
    expect(d.work.texts.map((t) => t.text)).toEqual(['45° Ø12', 'Room 1', 'height 3² {a}']);
    expect(d.work.texts[0]).toMatchObject({ x: 10, y: 10, cap: 5, rotationDeg: -90 });
    expect(d.work.texts[2]?.y).toBeGreaterThan(d.work.texts[1]?.y ?? 0);
    expect(d.notices.join()).toContain('2 × hatch');
  });

  test('comes back from a plan’s part to a thousandth of a unit', () => {
    const { work } = read(dxfOf(groups(0, 'ARC', 8, '0', 10, 50, 20, 50, 40, 50, 50, 10, 51, 99)));
    const back = lineWorkOf(lineWorkBlob(work));
    if (!back.ok) throw new Error(back.error);
    back.value.layers[0]?.paths[0]?.forEach((v, i) => {
      expect(Math.abs(v - (work.layers[0]?.paths[0]?.[i] ?? 0))).toBeLessThanOrEqual(0.0005);
    });
  });
});

describe('a DXF that cannot be taken', () => {
  test('is told: no drawing, binary, cut off, empty', () => {
    expect(refused('a shopping list\nmilk\n')).toMatch(/barn.dxf is no DXF/);
    expect(refused('')).toMatch(/is no DXF/);
    expect(refused(Uint8Array.from([65, 66, 13, 10, 26, 0, 1, 2]))).toMatch(/binary/);
    expect(refused(dxfOf(''))).toMatch(/no line work/);
    const whole = dxfOf(lineGroups(0, 0, 5, 5) + lineGroups(0, 0, 9, 9));
    const cut = read(whole.slice(0, whole.lastIndexOf('LINE') + 10));
    expect(paths(cut).length).toBeGreaterThan(0);
  });

  test('a block inside itself ends with a reason', () => {
    const blocks =
      groups(0, 'BLOCK', 2, 'RING', 10, 0, 20, 0) +
      lineGroups(0, 0, 1, 1) +
      groups(0, 'INSERT', 8, '0', 2, 'RING', 10, 1, 20, 1) +
      groups(0, 'ENDBLK');
    expect(refused(dxfOf(groups(0, 'INSERT', 8, '0', 2, 'RING', 10, 0, 20, 0), { blocks }))).toMatch(
      /inside one another more than 16 deep/,
    );
  });

  test('blocks that multiply out of all bounds end with a reason', () => {
    const grid = (name: string): string =>
      groups(0, 'INSERT', 8, '0', 2, name, 10, 0, 20, 0, 70, 1000, 71, 1000, 44, 1, 45, 1);
    const blocks =
      groups(0, 'BLOCK', 2, 'A', 10, 0, 20, 0) +
      lineGroups(0, 0, 1, 1) +
      groups(0, 'ENDBLK') +
      groups(0, 'BLOCK', 2, 'B', 10, 0, 20, 0) +
      grid('A') +
      groups(0, 'ENDBLK');
    expect(refused(dxfOf(grid('B'), { blocks }))).toMatch(/copies of blocks/);
  });

  test('200,000 lines are read; more than half a million entities are refused', () => {
    const many = (n: number): string => {
      const out: string[] = [];
      for (let i = 0; i < n; i++) out.push(lineGroups(i % 977, i % 613, (i * 7) % 977, (i * 3) % 613));
      return dxfOf(out.join(''), { header: insUnits(4) });
    };
    const d = read(many(200_000));
    expect(d.entities).toBe(200_000);
    expect(paths(d)).toHaveLength(200_000);
    expect(refused(many(500_001))).toMatch(/500,000 entities/);
  });
});
