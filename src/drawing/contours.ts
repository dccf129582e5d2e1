/** A closed line over a grid; x counts columns, y rows, fractions between. Higher ground lies on its right. */
export type Ring = readonly (readonly [number, number])[];

/**
 * Closed lines around where a grid of values (row by row) is at a level or above, by marching squares with straight
 * interpolation. Beyond the rim, and where a value is not a number, counts as below. Outer lines and lines around hollows run
 * opposite ways, so that the plain winding rule fills them right.
 */
export const contourRings = (
  values: ArrayLike<number>,
  columns: number,
  rows: number,
  level: number,
): readonly Ring[] => {
  const low = Number.NEGATIVE_INFINITY;
  // One place more on every side, so that lines close along the rim.
  const width = columns + 2;
  const padded = new Float64Array(width * (rows + 2)).fill(low);
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++) {
      const v = values[r * columns + c] as number;
      if (!Number.isNaN(v)) padded[(r + 1) * width + c + 1] = v;
    }
  // Edges of cells by number: of a place, the one to its right (even) and the one below it (odd).
  const next = new Int32Array(padded.length * 2).fill(-1);
  for (let r = 0; r <= rows; r++)
    for (let c = 0; c <= columns; c++) {
      const p = r * width + c;
      const kind =
        ((padded[p] as number) >= level ? 1 : 0) +
        ((padded[p + 1] as number) >= level ? 2 : 0) +
        ((padded[p + width + 1] as number) >= level ? 4 : 0) +
        ((padded[p + width] as number) >= level ? 8 : 0);
      if (kind === 0 || kind === 15) continue;
      const top = p * 2;
      const right = (p + 1) * 2 + 1;
      const bottom = (p + width) * 2;
      const left = p * 2 + 1;
      // From one edge to the other with the high corners on the right hand (y runs down).
      switch (kind) {
        case 1:
          next[top] = left;
          break;
        case 2:
          next[right] = top;
          break;
        case 3:
          next[right] = left;
          break;
        case 4:
          next[bottom] = right;
          break;
        case 5:
          next[top] = left;
          next[bottom] = right;
          break;
        case 6:
          next[bottom] = top;
          break;
        case 7:
          next[bottom] = left;
          break;
        case 8:
          next[left] = bottom;
          break;
        case 9:
          next[top] = bottom;
          break;
        case 10:
          next[right] = top;
          next[left] = bottom;
          break;
        case 11:
          next[right] = bottom;
          break;
        case 12:
          next[left] = right;
          break;
        case 13:
          next[top] = right;
          break;
        case 14:
          next[left] = top;
          break;
      }
    }
  const place = (key: number): readonly [number, number] => {
    const down = key % 2;
    const p = (key - down) / 2;
    const c = (p % width) - 1;
    const r = Math.floor(p / width) - 1;
    const u = padded[p] as number;
    const v = padded[down ? p + width : p + 1] as number;
    // Against the rim the line runs through the place itself.
    const t = u === low ? 1 : v === low ? 0 : (level - u) / (v - u);
    return down ? [c, r + t] : [c + t, r];
  };
  const rings: Ring[] = [];
  for (let start = 0; start < next.length; start++) {
    if ((next[start] as number) < 0) continue;
    const ring: (readonly [number, number])[] = [];
    let key = start;
    while (key >= 0) {
      const to = next[key] as number;
      next[key] = -1;
      if (to < 0) break;
      ring.push(place(key));
      key = to;
    }
    if (ring.length > 2) rings.push(ring);
  }
  return rings;
};

/** A ring with the points left out that lie within a distance of the line without them (Douglas and Peucker). */
export const simplerRing = (ring: Ring, tolerance: number): Ring => {
  const keep = new Uint8Array(ring.length);
  // From the first point to the one farthest from it, and back.
  const [x0 = 0, y0 = 0] = ring[0] ?? [];
  let far = 0;
  let farthest = -1;
  ring.forEach(([x, y], i) => {
    const d = (x - x0) ** 2 + (y - y0) ** 2;
    if (d > farthest) {
      farthest = d;
      far = i;
    }
  });
  keep[0] = 1;
  keep[far] = 1;
  const stack: [number, number][] = [
    [0, far],
    [far, ring.length],
  ];
  for (let span = stack.pop(); span; span = stack.pop()) {
    const [from, to] = span;
    const [ax, ay] = ring[from] ?? [0, 0];
    const [bx, by] = ring[to % ring.length] ?? [0, 0];
    const length = Math.hypot(bx - ax, by - ay);
    let most = tolerance;
    let at = -1;
    for (let i = from + 1; i < to; i++) {
      const [x, y] = ring[i] ?? [0, 0];
      const off =
        length === 0
          ? Math.hypot(x - ax, y - ay)
          : Math.abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / length;
      if (off > most) {
        most = off;
        at = i;
      }
    }
    if (at < 0) continue;
    keep[at] = 1;
    stack.push([from, at], [at, to]);
  }
  return ring.filter((_, i) => keep[i] === 1);
};
