import { type Point, point } from '../kernel/geometry.ts';
import type { Guide } from './overlay.ts';

/** A place that makes gaps alike, and the gaps. */
export interface EvenPick {
  readonly value: number;
  readonly off: number;
  readonly gaps: readonly Guide[];
}

/** Things nearer to one another than this have no gap worth repeating. */
const LEAST_MM = 80;

/**
 * The nearest place across (`x`) or down (`y`) that makes the gap to a neighbour the same as the one between two others
 * in the same row or column, or that halves a gap. `reach` is how near the place must be, and how straight the row.
 */
export const evenPick = (
  at: Point,
  centers: readonly Point[],
  side: 'x' | 'y',
  reach: number,
): EvenPick | undefined => {
  const [u, v] = side === 'x' ? (['xMm', 'yMm'] as const) : (['yMm', 'xMm'] as const);
  const row = centers.filter((c) => Math.abs(c[v] - at[v]) <= reach).sort((a, b) => a[u] - b[u]);
  const spot = (value: number, like: Point): Point =>
    side === 'x' ? point(value, like.yMm) : point(like.xMm, value);
  let best: EvenPick | undefined;
  const offer = (
    value: number,
    gaps: (p: (value: number) => Point) => readonly Guide[],
    like: Point,
  ): void => {
    const off = Math.abs(value - at[u]);
    if (off > reach || (best && off >= best.off)) return;
    best = { value, off, gaps: gaps((x) => spot(x, like)) };
  };
  for (let i = 1; i < row.length; i++) {
    const [a, b] = [row[i - 1], row[i]];
    if (!a || !b) continue;
    const gap = b[u] - a[u];
    if (gap < LEAST_MM) continue;
    offer(
      b[u] + gap,
      (p) => [
        { from: a, to: b },
        { from: b, to: p(b[u] + gap) },
      ],
      b,
    );
    offer(
      a[u] - gap,
      (p) => [
        { from: p(a[u] - gap), to: a },
        { from: a, to: b },
      ],
      a,
    );
    const half = (a[u] + b[u]) / 2;
    if (gap >= 2 * LEAST_MM)
      offer(
        half,
        (p) => [
          { from: a, to: p(half) },
          { from: p(half), to: b },
        ],
        a,
      );
  }
  return best;
};
