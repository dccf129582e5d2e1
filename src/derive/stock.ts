/** How a needed length is made up of stock pieces. */
export interface MadeUp {
  readonly piecesMm: readonly number[];
  readonly totalMm: number;
}

/** What shorter pieces take off a run of longest pieces, in units of the greatest common divisor of all lengths. */
interface Table {
  readonly unitMm: number;
  readonly longest: number;
  /** Fewest shorter pieces that together are just this much shorter than as many of the longest; NONE where none are. */
  readonly fewest: Uint16Array;
  /** How much the last of these pieces is shorter than the longest. */
  readonly last: Int32Array;
}

const NONE = 0xffff;
/** The longest run that is made up, in mm: 1000 km. A longer one is a slip, and would be a list without end. */
const MOST_MM = 1e9;

const tables = new WeakMap<readonly number[], Table>();

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

const tableOf = (stock: readonly number[]): Table => {
  const known = tables.get(stock);
  if (known) return known;
  const whole = [...new Set(stock.map(Math.round).filter((l) => l > 0 && l <= MOST_MM))].sort(
    (a, b) => b - a,
  );
  const unitMm = whole.reduce(gcd, 0);
  const longest = unitMm > 0 ? (whole[0] ?? 0) / unitMm : 0;
  const shorterBy = whole.slice(1).map((l) => longest - l / unitMm);
  // A run with the fewest pieces is never a whole longest piece too long, so the table ends there.
  const fewest = new Uint16Array(longest).fill(NONE);
  const last = new Int32Array(longest);
  fewest[0] = 0;
  for (let sum = 1; sum < longest; sum++)
    for (const d of shorterBy) {
      const before = sum >= d ? (fewest[sum - d] ?? NONE) : NONE;
      if (before !== NONE && before + 1 < (fewest[sum] ?? NONE)) {
        fewest[sum] = before + 1;
        last[sum] = d;
      }
    }
  const table = { unitMm, longest, fewest, last };
  tables.set(stock, table);
  return table;
};

/**
 * Makes up a length in mm of stock pieces as a crew does: the fewest pieces that are long enough, for every coupling is one
 * more place to fail; of these the least total, and of these the most of the longest piece. Longest first.
 * Common practice, no published source. Exact: the number of pieces is that of the longest alone, and a knapsack over how
 * much shorter the others are finds the most length that this number can do without.
 * Gives no pieces where there is no stock length above zero, or where the length is none or beyond 1000 km.
 */
export const makeUp = (neededMm: number, stockMm: readonly number[]): MadeUp => {
  const { unitMm, longest, fewest, last } = tableOf(stockMm);
  if (longest === 0 || !(neededMm <= MOST_MM)) return { piecesMm: [], totalMm: 0 };
  const needed = Math.max(1, Math.ceil(neededMm / unitMm - 1e-9));
  const count = Math.ceil(needed / longest);
  let less = count * longest - needed;
  while ((fewest[less] ?? 0) > count) less--;
  const shorter: number[] = [];
  for (let d = less; d > 0; d -= last[d] ?? d) shorter.push((longest - (last[d] ?? 0)) * unitMm);
  const piecesMm = [
    ...Array.from({ length: count - shorter.length }, () => longest * unitMm),
    ...shorter.sort((a, b) => b - a),
  ];
  return { piecesMm, totalMm: (count * longest - less) * unitMm };
};
