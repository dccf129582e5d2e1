import { fail, ok, type Result } from '../../kernel/result.ts';
import { parseLevel } from '../common/parse.ts';

/** A cell of the grid: a unit's row, a setup's column. */
export interface Cell {
  readonly row: number;
  readonly col: number;
}

/** What is chosen: from the cell the choosing began at to the one it ends at, which has the focus. */
export interface Choice {
  readonly from: Cell;
  readonly to: Cell;
}

export interface GridSize {
  readonly rows: number;
  readonly cols: number;
}

/** A value for a cell; `undefined` takes what is there away. */
export interface CellValue<V> extends Cell {
  readonly value: V | undefined;
}

export type ValueAt<V> = (cell: Cell) => V | undefined;
export type ReadValue<V> = (text: string) => Result<V | undefined>;

const within = (n: number, count: number): number => Math.max(0, Math.min(count - 1, n));

/** One cell chosen, kept inside the grid. */
export const choose = (cell: Cell, size: GridSize): Choice => {
  const at = { row: within(cell.row, size.rows), col: within(cell.col, size.cols) };
  return { from: at, to: at };
};

/** The choice after a step; with `extend` its far end moves, else it becomes one cell. */
export const step = (
  c: Choice,
  by: { row: number; col: number },
  size: GridSize,
  extend: boolean,
): Choice => {
  const to = { row: within(c.to.row + by.row, size.rows), col: within(c.to.col + by.col, size.cols) };
  return extend ? { from: c.from, to } : { from: to, to };
};

/** First and last row and column of a choice. */
export const bounds = (c: Choice) => ({
  top: Math.min(c.from.row, c.to.row),
  bottom: Math.max(c.from.row, c.to.row),
  left: Math.min(c.from.col, c.to.col),
  right: Math.max(c.from.col, c.to.col),
});

export const holds = (c: Choice, cell: Cell): boolean => {
  const b = bounds(c);
  return cell.row >= b.top && cell.row <= b.bottom && cell.col >= b.left && cell.col <= b.right;
};

/** All cells of a choice, row by row. */
export const cellsIn = (c: Choice): readonly Cell[] => {
  const b = bounds(c);
  const out: Cell[] = [];
  for (let row = b.top; row <= b.bottom; row++)
    for (let col = b.left; col <= b.right; col++) out.push({ row, col });
  return out;
};

/** The chosen cells as rows of values with tabs between, as spreadsheets take them; nothing where there is no value. */
export const copyText = <V>(c: Choice, at: ValueAt<V>, text: (value: V) => string = String): string => {
  const b = bounds(c);
  const rows: string[] = [];
  for (let row = b.top; row <= b.bottom; row++) {
    const values: string[] = [];
    for (let col = b.left; col <= b.right; col++) {
      const value = at({ row, col });
      values.push(value === undefined ? '' : text(value));
    }
    rows.push(values.join('\t'));
  }
  return rows.join('\n');
};

/** A typed or pasted level: a number, `off`, `full`, or nothing for no level. */
export const readLevel: ReadValue<number> = (text) => (text.trim() === '' ? ok(undefined) : parseLevel(text));

/**
 * Pasted text on a choice: one value fills all of it; a block of values goes in from its upper left, once, or over and over where
 * the choice is a whole multiple of it. What falls outside the grid is left out. A value that cannot be read refuses it all.
 */
export const pasteCells = <V>(
  text: string,
  c: Choice,
  size: GridSize,
  read: ReadValue<V>,
): Result<readonly CellValue<V>[]> => {
  const rows = text
    .replace(/\r\n?/g, '\n')
    .replace(/\n$/, '')
    .split('\n')
    .map((r) => r.split('\t'));
  const values: (V | undefined)[][] = [];
  for (const [i, row] of rows.entries()) {
    const line: (V | undefined)[] = [];
    for (const [k, text] of row.entries()) {
      const value = read(text);
      if (!value.ok)
        return fail({ ...value.error, where: `row ${i + 1}, column ${k + 1} of what was pasted` });
      line.push(value.value);
    }
    values.push(line);
  }
  const b = bounds(c);
  const [height, width] = [values.length, Math.max(...values.map((v) => v.length))];
  const [chosenH, chosenW] = [b.bottom - b.top + 1, b.right - b.left + 1];
  const tallH = chosenH % height === 0 ? chosenH : height;
  const wideW = chosenW % width === 0 ? chosenW : width;
  const out: CellValue<V>[] = [];
  for (let r = 0; r < tallH; r++)
    for (let k = 0; k < wideW; k++) {
      const cell = { row: b.top + r, col: b.left + k };
      if (cell.row < size.rows && cell.col < size.cols)
        out.push({ ...cell, value: values[r % height]?.[k % width] });
    }
  return ok(out);
};

/** The first row of a choice copied down over it, or its first column to the right. */
export const fillCells = <V>(c: Choice, way: 'down' | 'right', at: ValueAt<V>): readonly CellValue<V>[] => {
  const b = bounds(c);
  return cellsIn(c).map((cell) => ({
    ...cell,
    value: at(way === 'down' ? { row: b.top, col: cell.col } : { row: cell.row, col: b.left }),
  }));
};

/** All cells of several choices, each once, row by row within a choice. */
export const cellsOfAll = (all: readonly Choice[]): readonly Cell[] => {
  const seen = new Set<string>();
  return all.flatMap(cellsIn).filter((c) => {
    const key = `${c.row},${c.col}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
};

/** A choice drawn out to a cell outside it, down or up or sideways, whichever is further; the choice itself where it is inside. */
export const drawnOut = (c: Choice, to: Cell): Choice => {
  const b = bounds(c);
  const rows = Math.max(to.row - b.bottom, b.top - to.row, 0);
  const cols = Math.max(to.col - b.right, b.left - to.col, 0);
  if (rows === 0 && cols === 0) return c;
  const down = rows >= cols;
  return {
    from: { row: down ? Math.min(b.top, to.row) : b.top, col: down ? b.left : Math.min(b.left, to.col) },
    to: {
      row: down ? Math.max(b.bottom, to.row) : b.bottom,
      col: down ? b.right : Math.max(b.right, to.col),
    },
  };
};

/** A choice filled over what it was drawn out to: its values over and over, counted from its own upper left. */
export const fillOut = <V>(c: Choice, to: Cell, at: ValueAt<V>): readonly CellValue<V>[] => {
  const b = bounds(c);
  const [tall, wide] = [b.bottom - b.top + 1, b.right - b.left + 1];
  const turn = (n: number, size: number): number => ((n % size) + size) % size;
  return cellsIn(drawnOut(c, to))
    .filter((cell) => !holds(c, cell))
    .map((cell) => ({
      ...cell,
      value: at({ row: b.top + turn(cell.row - b.top, tall), col: b.left + turn(cell.col - b.left, wide) }),
    }));
};
