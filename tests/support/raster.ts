import { parsePath } from '../../src/drawing/symbols.ts';

type Point = readonly [number, number];

/** Curves as straight pieces; each subpath one list of points. */
const flatten = (d: string): Point[][] => {
  const out: Point[][] = [];
  let [x, y] = [0, 0];
  for (const c of parsePath(d)) {
    const line = out.at(-1) ?? [];
    if (c[0] === 'M') {
      [x, y] = [c[1], c[2]];
      out.push([[x, y]]);
    } else if (c[0] === 'L') {
      [x, y] = [c[1], c[2]];
      line.push([x, y]);
    } else if (c[0] === 'C') {
      const [, ax, ay, bx, by, ex, ey] = c;
      for (let i = 1; i <= 12; i++) {
        const t = i / 12;
        const u = 1 - t;
        line.push([
          u ** 3 * x + 3 * u * u * t * ax + 3 * u * t * t * bx + t ** 3 * ex,
          u ** 3 * y + 3 * u * u * t * ay + 3 * u * t * t * by + t ** 3 * ey,
        ]);
      }
      [x, y] = [ex, ey];
    } else {
      const first = line[0];
      if (first) {
        line.push(first);
        [x, y] = first;
      }
    }
  }
  return out;
};

const distanceTo = (px: number, py: number, [ax, ay]: Point, [bx, by]: Point): number => {
  const [dx, dy] = [bx - ax, by - ay];
  const len = dx * dx + dy * dy;
  const t = len === 0 ? 0 : Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / len));
  return Math.hypot(px - ax - t * dx, py - ay - t * dy);
};

/** Turns of a closed line round a point: not zero is inside. */
const turns = (px: number, py: number, line: readonly Point[]): number => {
  let n = 0;
  for (let i = 0; i < line.length; i++) {
    const a = line[i] ?? [0, 0];
    const b = line[(i + 1) % line.length] ?? [0, 0];
    const side = (b[0] - a[0]) * (py - a[1]) - (px - a[0]) * (b[1] - a[1]);
    if (a[1] <= py && b[1] > py && side > 0) n++;
    else if (a[1] > py && b[1] <= py && side < 0) n--;
  }
  return n;
};

export interface Drawn {
  readonly viewBox: readonly [number, number, number, number];
  readonly paths: readonly { readonly line: 'outline' | 'detail' | 'solid'; readonly d: string }[];
}

/** Samples along one side of a pixel. */
const SUB = 4;

/**
 * A symbol in black on white, `size` × `size` pixels, the view box fitted and centred: ink from 0 to 1 by pixel.
 * Outlines 1.4 and details 0.9 of a 26th of the icon, as lists draw them; each pixel is the mean of 16 samples.
 */
export const rasterise = ({ viewBox: [x0, y0, w, h], paths }: Drawn, size: number): Float64Array => {
  const n = size * SUB;
  const k = n / Math.max(w, h);
  const place = ([x, y]: Point): Point => [(x - x0) * k + (n - w * k) / 2, (y - y0) * k + (n - h * k) / 2];
  const ink = new Uint8Array(n * n);
  const paint = (lo: Point, hi: Point, inside: (x: number, y: number) => boolean): void => {
    for (let y = Math.max(0, Math.floor(lo[1])); y < Math.min(n, hi[1] + 1); y++)
      for (let x = Math.max(0, Math.floor(lo[0])); x < Math.min(n, hi[0] + 1); x++)
        if (inside(x + 0.5, y + 0.5)) ink[y * n + x] = 1;
  };
  for (const p of paths) {
    const lines = flatten(p.d).map((line) => line.map(place));
    if (p.line === 'solid') {
      const xs = lines.flat().map((q) => q[0]);
      const ys = lines.flat().map((q) => q[1]);
      paint(
        [Math.min(...xs), Math.min(...ys)],
        [Math.max(...xs), Math.max(...ys)],
        (x, y) => lines.reduce((sum, line) => sum + turns(x, y, line), 0) !== 0,
      );
      continue;
    }
    const half = ((p.line === 'outline' ? 1.4 : 0.9) * (n / 26)) / 2;
    for (const line of lines)
      line.slice(1).forEach((b, i) => {
        const a = line[i] ?? b;
        paint(
          [Math.min(a[0], b[0]) - half, Math.min(a[1], b[1]) - half],
          [Math.max(a[0], b[0]) + half, Math.max(a[1], b[1]) + half],
          (x, y) => distanceTo(x, y, a, b) <= half,
        );
      });
  }
  const out = new Float64Array(size * size);
  for (let y = 0; y < n; y++)
    for (let x = 0; x < n; x++) {
      const at = Math.floor(y / SUB) * size + Math.floor(x / SUB);
      out[at] = (out[at] ?? 0) + (ink[y * n + x] ?? 0) / (SUB * SUB);
    }
  return out;
};

/** Ink that differs between two pictures, in whole black pixels; the smallest over shifts of one pixel each way. */
export const difference = (a: Float64Array, b: Float64Array, size: number): number => {
  let least = Number.POSITIVE_INFINITY;
  for (let sy = -1; sy <= 1; sy++)
    for (let sx = -1; sx <= 1; sx++) {
      let sum = 0;
      for (let y = 0; y < size; y++)
        for (let x = 0; x < size; x++) {
          const [u, v] = [x + sx, y + sy];
          const other = u < 0 || v < 0 || u >= size || v >= size ? 0 : (b[v * size + u] ?? 0);
          sum += Math.abs((a[y * size + x] ?? 0) - other);
        }
      least = Math.min(least, sum);
    }
  return least;
};
