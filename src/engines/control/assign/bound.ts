/**
 * A number of bins that no packing of these sizes goes below: the better of the plain sum and, for every threshold up to
 * half a bin, large items counted apart and what is left over shared out. After Martello and Toth's bound L2 for bin packing.
 */
export const lowerBound = (sizes: readonly number[], capacity: number): number => {
  if (sizes.length === 0) return 0;
  let best = Math.ceil(sizes.reduce((s, n) => s + n, 0) / capacity);
  for (const t of new Set([...sizes.filter((n) => n * 2 <= capacity), 0])) {
    let large = 0;
    let half = 0;
    let room = 0;
    let small = 0;
    for (const n of sizes) {
      if (n > capacity - t) large++;
      else if (n * 2 > capacity) {
        half++;
        room += capacity - n;
      } else if (n >= t) small += n;
    }
    best = Math.max(best, large + half + Math.max(0, Math.ceil((small - room) / capacity)));
  }
  return best;
};

/** Steps an exact search may take before it gives up. */
const BUDGET = 60_000;

/** What an exact search came to: a bin for each size, none possible, or not known within its budget. */
export type Fit = { readonly bins: readonly number[] } | 'none' | 'unknown';

/** Whether sizes, the largest first, fit into bins of these capacities, tried out in full within a budget of steps. */
export const fitExactly = (sizes: readonly number[], capacities: readonly number[]): Fit => {
  const left = [...capacities];
  const bins: number[] = sizes.map(() => -1);
  let steps = 0;
  let room = left.reduce((s, n) => s + n, 0);
  const rest: number[] = [];
  let sum = 0;
  for (let i = sizes.length - 1; i >= 0; i--) {
    sum += sizes[i] ?? 0;
    rest[i] = sum;
  }
  const place = (i: number): boolean | undefined => {
    const n = sizes[i];
    if (n === undefined) return true;
    if ((rest[i] ?? 0) > room) return false;
    const tried = new Set<number>();
    // A size equal to the one before need not look at earlier bins again.
    const from = i > 0 && sizes[i - 1] === n ? Math.max(0, bins[i - 1] ?? 0) : 0;
    for (let b = from; b < left.length; b++) {
      const free = left[b] ?? 0;
      if (free < n || tried.has(free)) continue;
      if (++steps > BUDGET) return undefined;
      tried.add(free);
      left[b] = free - n;
      room -= n;
      bins[i] = b;
      const done = place(i + 1);
      if (done !== false) return done;
      left[b] = free;
      room += n;
      bins[i] = -1;
    }
    return false;
  };
  const done = place(0);
  return done === true ? { bins } : done === false ? 'none' : 'unknown';
};
