/** How a needed length is made up of stock pieces. */
export interface MadeUp {
  readonly piecesMm: readonly number[];
  readonly totalMm: number;
}

/** Fewest pieces for every sum of stock lengths, in units of their greatest common divisor. */
interface Table {
  readonly unitMm: number;
  readonly lengths: readonly number[];
  readonly fewest: Uint16Array;
  readonly last: Uint16Array;
}

const NONE = 0xffff;
/** The longest run that is made up, in mm: 1000 km. A longer one is a slip, and would be a list without end. */
const MOST_MM = 1e9;
/** Runs longer than this many of the longest piece start with longest pieces; the rest is made up exactly. */
const EXACT_PIECES = 12;

const tables = new WeakMap<readonly number[], Table>();

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

const tableOf = (stock: readonly number[]): Table => {
  const known = tables.get(stock);
  if (known) return known;
  const whole = [...new Set(stock.map(Math.round).filter((l) => l > 0 && l <= MOST_MM))].sort(
    (a, b) => b - a,
  );
  const unitMm = whole.reduce(gcd, 0);
  const lengths = whole.map((l) => l / unitMm);
  const cells = (lengths[0] ?? 0) * (EXACT_PIECES + 1) + 1;
  const fewest = new Uint16Array(cells).fill(NONE);
  const last = new Uint16Array(cells);
  fewest[0] = 0;
  for (let sum = 1; sum < cells; sum++)
    for (const l of lengths) {
      const before = sum >= l ? (fewest[sum - l] ?? NONE) : NONE;
      if (before !== NONE && before + 1 < (fewest[sum] ?? NONE)) {
        fewest[sum] = before + 1;
        last[sum] = l;
      }
    }
  const table = { unitMm, lengths, fewest, last };
  tables.set(stock, table);
  return table;
};

/**
 * Makes up a length in mm of stock pieces: the least total that is long enough, then the fewest pieces, longest first.
 * Gives no pieces where there is no stock length above zero, or where the length is none or beyond 1000 km.
 */
export const makeUp = (neededMm: number, stockMm: readonly number[]): MadeUp => {
  const t = tableOf(stockMm);
  const longest = t.lengths[0];
  if (longest === undefined || !(neededMm <= MOST_MM)) return { piecesMm: [], totalMm: 0 };
  const needed = Math.max(1, Math.ceil(neededMm / t.unitMm - 1e-9));
  const whole = Math.max(0, Math.floor(needed / longest) - (EXACT_PIECES - 1));
  let sum = needed - whole * longest;
  while (sum < t.fewest.length && t.fewest[sum] === NONE) sum++;
  const pieces: number[] = Array.from({ length: whole }, () => longest);
  while (sum > 0) {
    const l = t.last[sum] ?? 0;
    if (l === 0) throw new Error('stock table has a hole');
    pieces.push(l);
    sum -= l;
  }
  const piecesMm = pieces.map((l) => l * t.unitMm).sort((a, b) => b - a);
  return { piecesMm, totalMm: piecesMm.reduce((a, b) => a + b, 0) };
};
