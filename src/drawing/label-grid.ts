import { type Box, boxesMeet, type Point, point } from '../kernel/geometry.ts';
import { labelRaster } from './label-raster.ts';

/** What a text must not touch, in paper millimetres. Soft strokes cost, hard ones forbid. */
export interface LabelGrid {
  addBox(box: Box, owner: string): void;
  addSegment(a: Point, b: Point, hard: boolean, owner: string): void;
  /** Whether no text, thing or hard stroke is under a box, to half a millimetre on the safe side. Quick. */
  clear(minX: number, minY: number, maxX: number, maxY: number): boolean;
  /** Soft strokes under a box. */
  soft(box: Box): number;
  /** Soft strokes under a box; undefined where a text, a thing or a hard stroke of another owner is in the way. Exact. */
  cost(box: Box, ignore?: string): number | undefined;
  /** Boxes that a leader would cross, and how many strokes. */
  crossings(a: Point, b: Point, ignore: string): { readonly boxes: number; readonly strokes: number };
  /** Boxes under a box, strokes left out. */
  overlaps(box: Box): number;
}

const CELL_MM = 6;

interface Segment {
  readonly a: Point;
  readonly b: Point;
  readonly hard: boolean;
  readonly owner: string;
}
interface Owned {
  readonly box: Box;
  readonly owner: string;
}
interface Cell {
  readonly boxes: Owned[];
  readonly segments: Segment[];
}

export const segmentMeetsBox = (a: Point, b: Point, box: Box): boolean => {
  let t0 = 0;
  let t1 = 1;
  const clip = (p: number, q: number): boolean => {
    if (p === 0) return q >= 0;
    const r = q / p;
    if (p < 0) t0 = Math.max(t0, r);
    else t1 = Math.min(t1, r);
    return t0 <= t1;
  };
  const dx = b.xMm - a.xMm;
  const dy = b.yMm - a.yMm;
  return (
    clip(-dx, a.xMm - box.minX) &&
    clip(dx, box.maxX - a.xMm) &&
    clip(-dy, a.yMm - box.minY) &&
    clip(dy, box.maxY - a.yMm)
  );
};

const segmentsCross = (a: Point, b: Point, c: Point, d: Point): boolean => {
  const side = (p: Point, q: Point, r: Point): number =>
    (q.xMm - p.xMm) * (r.yMm - p.yMm) - (q.yMm - p.yMm) * (r.xMm - p.xMm);
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
};

/** `extent` is the paper that labels may be put on, in millimetres. */
export const labelGrid = (extent: Box): LabelGrid => {
  const raster = labelRaster(extent);
  const cells = new Map<number, Cell>();
  const cellOf = (ix: number, iy: number, make: boolean): Cell | undefined => {
    const key = (ix + 32768) * 65536 + (iy + 32768);
    const known = cells.get(key);
    if (known || !make) return known;
    const made: Cell = { boxes: [], segments: [] };
    cells.set(key, made);
    return made;
  };
  const over = (box: Box, make: boolean, visit: (c: Cell) => boolean | undefined): void => {
    const x1 = Math.floor(box.maxX / CELL_MM);
    const y1 = Math.floor(box.maxY / CELL_MM);
    for (let x = Math.floor(box.minX / CELL_MM); x <= x1; x++)
      for (let y = Math.floor(box.minY / CELL_MM); y <= y1; y++) {
        const cell = cellOf(x, y, make);
        if (cell && visit(cell) === false) return;
      }
  };
  /** Cells a segment passes, by stepping through columns. */
  const along = (a: Point, b: Point, make: boolean, visit: (c: Cell) => void): void => {
    const [p, q] = a.xMm <= b.xMm ? [a, b] : [b, a];
    const x0 = Math.floor(p.xMm / CELL_MM);
    const x1 = Math.floor(q.xMm / CELL_MM);
    const slope = q.xMm === p.xMm ? 0 : (q.yMm - p.yMm) / (q.xMm - p.xMm);
    for (let x = x0; x <= x1; x++) {
      const from = x === x0 ? p.yMm : p.yMm + (x * CELL_MM - p.xMm) * slope;
      const to = x === x1 ? q.yMm : p.yMm + ((x + 1) * CELL_MM - p.xMm) * slope;
      const y1 = Math.floor(Math.max(from, to) / CELL_MM);
      for (let y = Math.floor(Math.min(from, to) / CELL_MM); y <= y1; y++) {
        const cell = cellOf(x, y, make);
        if (cell) visit(cell);
      }
    }
  };
  return {
    clear: raster.clear,
    soft: (box) => {
      const seen = new Set<Segment>();
      over(box, false, (c) => {
        for (const s of c.segments) if (!s.hard && segmentMeetsBox(s.a, s.b, box)) seen.add(s);
        return undefined;
      });
      return seen.size;
    },
    addBox: (box, owner) => {
      raster.markBox(box);
      const entry = { box, owner };
      over(box, true, (c) => {
        c.boxes.push(entry);
        return undefined;
      });
    },
    addSegment: (a, b, hard, owner) => {
      if (hard) raster.markSegment(a, b);
      const entry = { a, b, hard, owner };
      along(a, b, true, (c) => c.segments.push(entry));
    },
    cost: (box, ignore) => {
      let soft = 0;
      let blocked = false;
      over(box, false, (c) => {
        if (c.boxes.some((o) => o.owner !== ignore && boxesMeet(o.box, box))) blocked = true;
        if (!blocked)
          for (const s of c.segments) {
            if (s.owner === ignore || !segmentMeetsBox(s.a, s.b, box)) continue;
            if (s.hard) {
              blocked = true;
              break;
            }
            soft++;
          }
        return blocked ? false : undefined;
      });
      return blocked ? undefined : soft;
    },
    overlaps: (box) => {
      const seen = new Set<Owned>();
      over(box, false, (c) => {
        for (const o of c.boxes) if (boxesMeet(o.box, box)) seen.add(o);
        return undefined;
      });
      return seen.size;
    },
    crossings: (a, b, ignore) => {
      const boxes = new Set<Owned>();
      const strokes = new Set<Segment>();
      along(a, b, false, (c) => {
        for (const o of c.boxes) if (o.owner !== ignore && segmentMeetsBox(a, b, o.box)) boxes.add(o);
        for (const s of c.segments)
          if (s.hard && s.owner !== ignore && segmentsCross(a, b, s.a, s.b)) strokes.add(s);
      });
      return { boxes: boxes.size, strokes: strokes.size };
    },
  };
};

export const boxAt = (c: Point, halfW: number, halfH: number): Box => ({
  minX: c.xMm - halfW,
  minY: c.yMm - halfH,
  maxX: c.xMm + halfW,
  maxY: c.yMm + halfH,
});

/** Points of a cubic at even steps, the start left out. */
export const cubicPoints = (
  p0: Point,
  c: readonly [number, number, number, number, number, number],
  steps: number,
): Point[] =>
  Array.from({ length: steps }, (_, i) => {
    const t = (i + 1) / steps;
    const u = 1 - t;
    const at = (a: number, b: number, d: number, e: number): number =>
      u * u * u * a + 3 * u * u * t * b + 3 * u * t * t * d + t * t * t * e;
    return point(at(p0.xMm, c[0], c[2], c[4]), at(p0.yMm, c[1], c[3], c[5]));
  });
