import { describe, expect, it } from 'vitest';
import { colorFault, colorNoteText, readColorNote } from '../../../src/plan/color-note.ts';
import {
  cellsIn,
  cellsOfAll,
  choose,
  copyText,
  drawnOut,
  fillCells,
  fillOut,
  pasteCells,
  readLevel,
  step,
} from '../../../src/ui/day/grid-model.ts';

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
    const pasted = pasteCells(
      copyText(range(0, 0, 1, 2), at),
      choose({ row: 2, col: 0 }, size),
      size,
      readLevel,
    );
    expect(pasted).toEqual({
      ok: true,
      value: [
        { row: 2, col: 0, value: 100 },
        { row: 2, col: 1, value: 80 },
        { row: 2, col: 2, value: undefined },
        { row: 3, col: 0, value: 0 },
        { row: 3, col: 1, value: 50 },
        { row: 3, col: 2, value: 25 },
      ],
    });
  });

  it('fills a whole choice with one value, and repeats a block where it fits', () => {
    const one = pasteCells('off', range(0, 0, 1, 1), size, readLevel);
    expect(one.ok && one.value.map((c) => c.value)).toEqual([0, 0, 0, 0]);
    const twice = pasteCells('10\r\n20\r\n', range(0, 1, 3, 1), size, readLevel);
    expect(twice.ok && twice.value.map((c) => c.value)).toEqual([10, 20, 10, 20]);
  });

  it('leaves out what falls outside, and refuses all for one value that is no level, saying where', () => {
    const over = pasteCells('1\t2\n3\t4', choose({ row: 3, col: 2 }, size), size, readLevel);
    expect(over.ok && over.value).toEqual([{ row: 3, col: 2, value: 1 }]);
    const bad = pasteCells('50\t150', choose({ row: 0, col: 0 }, size), size, readLevel);
    expect(bad.ok ? '' : bad.error.where).toContain('row 1, column 2');
  });

  it('fills down from the first row and right from the first column', () => {
    expect(fillCells(range(0, 0, 2, 1), 'down', at).map((c) => c.value)).toEqual([100, 80, 100, 80, 100, 80]);
    expect(fillCells(range(1, 1, 2, 2), 'right', at).map((c) => c.value)).toEqual([50, 50, 20, 20]);
  });

  it('is drawn out one way at a time, the further one, and not at all inside', () => {
    expect(drawnOut(range(1, 1, 1, 1), { row: 3, col: 2 })).toEqual(range(1, 1, 3, 1));
    expect(drawnOut(range(0, 0, 0, 0), { row: 1, col: 2 })).toEqual(range(0, 0, 0, 2));
    expect(drawnOut(range(2, 1, 3, 2), { row: 0, col: 1 })).toEqual(range(0, 1, 3, 2));
    expect(drawnOut(range(0, 0, 2, 2), { row: 1, col: 1 })).toEqual(range(0, 0, 2, 2));
  });

  it('repeats its values over what it is drawn out to, upwards too, and leaves itself alone', () => {
    const down = fillOut(range(0, 0, 1, 0), { row: 3, col: 0 }, at);
    expect(down).toEqual([
      { row: 2, col: 0, value: 100 },
      { row: 3, col: 0, value: 0 },
    ]);
    const up = fillOut(range(1, 1, 2, 1), { row: 0, col: 1 }, at);
    expect(up).toEqual([{ row: 0, col: 1, value: 20 }]);
    expect(fillOut(range(0, 0, 0, 0), { row: 0, col: 0 }, at)).toEqual([]);
  });

  it('takes cells that are in two choices once', () => {
    expect(cellsOfAll([range(0, 0, 1, 1), range(1, 1, 2, 1)])).toHaveLength(5);
  });

  it('copies and pastes colours as it does levels', () => {
    const note = (cell: { row: number; col: number }) =>
      cell.col === 0 ? { cctK: 5600, color: 'half blue' } : cell.col === 1 ? { color: 'steel' } : undefined;
    const text = copyText(range(0, 0, 0, 2), note, colorNoteText);
    expect(text).toBe('5600 K · half blue\tsteel\t');
    const back = pasteCells(text, choose({ row: 1, col: 0 }, size), size, readColorNote);
    expect(back.ok && back.value.map((c) => c.value)).toEqual([
      { cctK: 5600, color: 'half blue' },
      { color: 'steel' },
      undefined,
    ]);
  });
});

describe('a colour note', () => {
  it.each([
    ['5600', { cctK: 5600 }],
    ['3200k', { cctK: 3200 }],
    ['4300 K, ¼ green', { cctK: 4300, color: '¼ green' }],
    ['lamp amber', { color: 'lamp amber' }],
    ['  ', undefined],
  ])('reads “%s”', (text, note) => {
    const r = readColorNote(text);
    expect(r.ok && r.value).toEqual(note);
    if (r.ok) expect(readColorNote(colorNoteText(r.value))).toEqual(r);
  });

  it('refuses a temperature that cannot be, and tells what a kind cannot make', () => {
    expect(readColorNote('560').ok).toBe(false);
    expect(readColorNote('56000 K').ok).toBe(false);
    const kind = { cct: { minK: 2700, maxK: 6500, color: false } } as never;
    expect(colorFault({ cctK: 10_000 }, kind)).toBe('its kind makes 2700 to 6500 K');
    expect(colorFault({ cctK: 5600 }, kind)).toBeUndefined();
    expect(colorFault({ color: 'steel' }, kind)).toBeUndefined();
  });
});
