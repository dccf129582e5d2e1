import { describe, expect, it } from 'vitest';
import { cellsIn, choose, copyText, fillCells, pasteCells, step } from '../../../src/ui/day/grid-model.ts';

const size = { rows: 4, cols: 3 };
const levels: readonly (readonly (number | undefined)[])[] = [
  [100, 80, undefined],
  [0, 50, 25],
  [10, 20, 30],
  [undefined, undefined, undefined],
];
const at = (cell: { row: number; col: number }): number | undefined => levels[cell.row]?.[cell.col];
const range = (top: number, left: number, bottom: number, right: number) => ({
  from: { row: top, col: left },
  to: { row: bottom, col: right },
});

describe('the grid of setups', () => {
  it('moves one cell, stops at the edges, and with extend keeps where it began', () => {
    const start = choose({ row: 3, col: 9 }, size);
    expect(start.to).toEqual({ row: 3, col: 2 });
    expect(step(start, { row: 1, col: 0 }, size, false).to).toEqual({ row: 3, col: 2 });
    const wide = step(start, { row: -2, col: -1 }, size, true);
    expect(cellsIn(wide)).toHaveLength(6);
    expect(step(wide, { row: 0, col: 1 }, size, false)).toEqual(choose({ row: 1, col: 2 }, size));
  });

  it('copies values with tabs, nothing where no level is given, whichever corner the choice began at', () => {
    expect(copyText(range(0, 0, 1, 2), at)).toBe('100\t80\t\n0\t50\t25');
    expect(copyText(range(1, 2, 0, 0), at)).toBe('100\t80\t\n0\t50\t25');
  });

  it('takes back what it copied', () => {
    const pasted = pasteCells(copyText(range(0, 0, 1, 2), at), choose({ row: 2, col: 0 }, size), size);
    expect(pasted).toEqual({
      ok: true,
      value: [
        { row: 2, col: 0, levelPct: 100 },
        { row: 2, col: 1, levelPct: 80 },
        { row: 2, col: 2, levelPct: undefined },
        { row: 3, col: 0, levelPct: 0 },
        { row: 3, col: 1, levelPct: 50 },
        { row: 3, col: 2, levelPct: 25 },
      ],
    });
  });

  it('fills a whole choice with one value, and repeats a block where it fits', () => {
    const one = pasteCells('off', range(0, 0, 1, 1), size);
    expect(one.ok && one.value.map((c) => c.levelPct)).toEqual([0, 0, 0, 0]);
    const twice = pasteCells('10\r\n20\r\n', range(0, 1, 3, 1), size);
    expect(twice.ok && twice.value.map((c) => c.levelPct)).toEqual([10, 20, 10, 20]);
  });

  it('leaves out what falls outside, and refuses all for one value that is no level, saying where', () => {
    const over = pasteCells('1\t2\n3\t4', choose({ row: 3, col: 2 }, size), size);
    expect(over.ok && over.value).toEqual([{ row: 3, col: 2, levelPct: 1 }]);
    const bad = pasteCells('50\t150', choose({ row: 0, col: 0 }, size), size);
    expect(bad.ok ? '' : bad.error.where).toContain('row 1, column 2');
  });

  it('fills down from the first row and right from the first column', () => {
    expect(fillCells(range(0, 0, 2, 1), 'down', at).map((c) => c.levelPct)).toEqual([
      100, 80, 100, 80, 100, 80,
    ]);
    expect(fillCells(range(1, 1, 2, 2), 'right', at).map((c) => c.levelPct)).toEqual([50, 50, 20, 20]);
  });
});
