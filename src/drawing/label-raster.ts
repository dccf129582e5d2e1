import { type Box, isEmptyBox, type Point } from '../kernel/geometry.ts';

/** Which small squares of the paper something hard touches. Answers “is this box clear?” in a few operations a row. */
export interface Raster {
  markBox(box: Box): void;
  markSegment(a: Point, b: Point): void;
  /** Whether no marked square lies under a box. What is outside the raster counts as clear. */
  clear(minX: number, minY: number, maxX: number, maxY: number): boolean;
}

/** Side of a square on paper, and how many there may be before squares grow. */
const CELL_MM = 0.5;
const MAX_CELLS = 16_000_000;

export const labelRaster = (extent: Box): Raster => {
  const e = isEmptyBox(extent) ? { minX: 0, minY: 0, maxX: 1, maxY: 1 } : extent;
  const area = (e.maxX - e.minX) * (e.maxY - e.minY);
  const cell = Math.max(CELL_MM, Math.sqrt(area / MAX_CELLS));
  const columns = Math.max(1, Math.ceil((e.maxX - e.minX) / cell));
  const rows = Math.max(1, Math.ceil((e.maxY - e.minY) / cell));
  const stride = (columns + 31) >>> 5;
  const words = new Uint32Array(stride * rows);
  const column = (x: number): number => Math.floor((x - e.minX) / cell);
  const row = (y: number): number => Math.floor((y - e.minY) / cell);

  /** Visits the words of one row from column a to b with the mask of the columns meant; stops when told. */
  const overWords = (
    y: number,
    a: number,
    b: number,
    visit: (index: number, mask: number) => boolean,
  ): boolean => {
    if (y < 0 || y >= rows) return true;
    const from = Math.max(0, a);
    const to = Math.min(columns - 1, b);
    if (from > to) return true;
    const last = to >>> 5;
    for (let w = from >>> 5; w <= last; w++) {
      const low = w === from >>> 5 ? from & 31 : 0;
      const high = w === last ? to & 31 : 31;
      const mask = (0xffffffff << low) & (0xffffffff >>> (31 - high));
      if (!visit(y * stride + w, mask)) return false;
    }
    return true;
  };
  const set = (index: number, mask: number): boolean => {
    words[index] = (words[index] ?? 0) | mask;
    return true;
  };
  return {
    markBox: (box) => {
      const y1 = Math.min(rows - 1, row(box.maxY));
      for (let y = Math.max(0, row(box.minY)); y <= y1; y++)
        overWords(y, column(box.minX), column(box.maxX), set);
    },
    markSegment: (a, b) => {
      const [p, q] = a.yMm <= b.yMm ? [a, b] : [b, a];
      const slope = q.yMm === p.yMm ? 0 : (q.xMm - p.xMm) / (q.yMm - p.yMm);
      const first = row(p.yMm);
      const last = row(q.yMm);
      for (let y = Math.max(0, first); y <= Math.min(rows - 1, last); y++) {
        const top = y === first ? p.xMm : p.xMm + (e.minY + y * cell - p.yMm) * slope;
        const bottom = y === last ? q.xMm : p.xMm + (e.minY + (y + 1) * cell - p.yMm) * slope;
        overWords(y, column(Math.min(top, bottom)), column(Math.max(top, bottom)), set);
      }
    },
    clear: (minX, minY, maxX, maxY) => {
      const from = Math.max(0, column(minX));
      const to = Math.min(columns - 1, column(maxX));
      if (from > to) return true;
      const first = from >>> 5;
      const last = to >>> 5;
      const head = (0xffffffff << (from & 31)) >>> 0;
      const tail = 0xffffffff >>> (31 - (to & 31));
      const y1 = Math.min(rows - 1, row(maxY));
      for (let y = Math.max(0, row(minY)); y <= y1; y++) {
        for (let w = first; w <= last; w++) {
          const mask = (w === first ? head : 0xffffffff) & (w === last ? tail : 0xffffffff);
          if (((words[y * stride + w] ?? 0) & mask) !== 0) return false;
        }
      }
      return true;
    },
  };
};
