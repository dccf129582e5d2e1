import { chargeFrom } from './charge.ts';
import type { Rotation, RotationPool, RotationUnit } from './rotation-types.ts';

/** Cells of time in which charges are looked at, at most, and minutes of one at least. */
const MOST_CELLS = 720;
const LEAST_CELL_MIN = 1;
/** Shares of the day before which charges are reckoned by what was drawn by then alone: each is tried. */
const CUTS = [0, 0.03, 0.06, 0.1, 0.15, 0.2] as const;

/** What is drawn over time in equal cells from `first` on: by all units together, and by the one that draws most. */
interface Drawn {
  readonly cells: number;
  readonly cellMin: number;
  /** Drawn from the first minute to the start of each cell, all packs together. */
  readonly all: Float64Array;
  /** The most that one pack can have lost by then, moved to whatever draws most. */
  readonly one: Float64Array;
}

const drawnBy = (
  units: readonly RotationUnit[],
  first: number,
  until: number,
  mostCells: number = MOST_CELLS,
): Drawn => {
  const cellMin = Math.max(LEAST_CELL_MIN, (until - first) / mostCells);
  const cells = Math.max(1, Math.ceil((until - first) / cellMin - 1e-9));
  const all = new Float64Array(cells + 1);
  const one = new Float64Array(cells + 1);
  for (let i = 0; i < cells; i++) {
    const from = first + i * cellMin;
    const to = Math.min(until, from + cellMin);
    let sum = 0;
    let most = 0;
    for (const u of units)
      for (const s of u.stretches) {
        const minutes = Math.min(to, s.endMin) - Math.max(from, s.startMin);
        if (minutes <= 0) continue;
        sum += u.count * s.drain * minutes;
        most = Math.max(most, s.drain);
      }
    all[i + 1] = (all[i] ?? 0) + sum;
    one[i + 1] = (one[i] ?? 0) + most * (to - from);
  }
  return { cells, cellMin, all, one };
};

/** The most charge a bay gives one pack in whole cells of time: the inverse of `chargeFrom`, never above what a pack gives. */
const chargedIn = (r: Rotation, fullMin: number, d: Drawn): Float64Array => {
  const gives = 1 - r.swapAt;
  const out = new Float64Array(d.cells + 1);
  for (let k = 0; k <= d.cells; k++) {
    const minutes = k * d.cellMin;
    if (minutes >= chargeFrom(r, r.swapAt, fullMin)) {
      out[k] = gives;
      continue;
    }
    let [low, high] = [0, gives];
    for (let step = 0; step < 30; step++) {
      const mid = (low + high) / 2;
      if (chargeFrom(r, 1 - mid, fullMin) <= minutes) low = mid;
      else high = mid;
    }
    out[k] = high;
  }
  return out;
};

/**
 * For one bay from a cell on: the most that charges one after the other are worth that have ended by each cell. A charge
 * is worth what it puts in, less what cannot be drawn from the pack any more after it, by the most that one pack can
 * have lost before and can lose after. Charges may overlap by the cells they begin and end in, so that nothing is lost by the cells.
 */
const bestOfBay = (d: Drawn, charged: Float64Array, gives: number, fromCell: number): Float64Array => {
  const best = new Float64Array(d.cells + 1);
  const last = d.one[d.cells] ?? 0;
  // Charges that begin and end in the cell in which another one ends.
  const tiny = charged[1] ?? 0;
  const fullCells = charged.findIndex((x) => x >= gives);
  // Standing longer than until it is full makes no charge worth more.
  const longest = fullCells < 0 ? d.cells : fullCells;
  for (let b = fromCell + 1; b <= d.cells; b++) {
    const after = Math.min(gives, last - (d.one[b - 1] ?? 0));
    let most = best[b - 1] ?? 0;
    for (let a = b - 1; a >= Math.max(fromCell, b - longest); a--) {
      const put = Math.min(charged[b - a] ?? 0, d.one[a + 1] ?? 0);
      const worth = put + after - gives;
      if (worth > 0) {
        const sum = worth + (a + 1 < b ? tiny + (best[a + 1] ?? 0) : (best[a] ?? 0));
        if (sum > most) most = sum;
      }
    }
    best[b] = most;
  }
  return best;
};

interface Tables {
  readonly d: Drawn;
  /** `bestOfBay` for bays of one speed, from a cell on. */
  readonly bestFrom: (fromCell: number, fullMin: number) => Float64Array;
}

/** What a bay can give depends on its speed, not on how many there are: kept for days that differ in their bays alone. */
const kept = new WeakMap<Rotation['units'], Map<string, Tables>>();

const tablesOf = (
  r: Rotation,
  pool: RotationPool,
  units: readonly RotationUnit[],
  first: number,
  untilMin: number,
): Tables => {
  const key = [pool.id, untilMin, r.swapAt, r.changeOver, r.changeOverTime, r.taper].join();
  const known = kept.get(r.units)?.get(key);
  if (known) return known;
  const d = drawnBy(units, first, untilMin);
  const gives = 1 - r.swapAt;
  const charged = new Map<number, Float64Array>();
  const best = new Map<string, Float64Array>();
  const bestFrom = (fromCell: number, fullMin: number): Float64Array => {
    const name = `${fromCell}/${fullMin}`;
    const old = best.get(name);
    if (old) return old;
    const into = charged.get(fullMin) ?? chargedIn(r, fullMin, d);
    charged.set(fullMin, into);
    const made = bestOfBay(d, into, gives, fromCell);
    best.set(name, made);
    return made;
  };
  const made = { d, bestFrom };
  const ofUnits = kept.get(r.units) ?? new Map<string, Tables>();
  ofUnits.set(key, made);
  kept.set(r.units, ofUnits);
  return made;
};

/**
 * The most that charges of a pool's packs can give back for use until a moment, whatever the rotation, as a sum of shares of
 * one pack. All that is drawn from a pack is what its charges put in and what it lacks at the end. So a charge counts for what
 * it puts in (no more than the pack can have lost before, nor than the bay can put in) less what its pack cannot lose any
 * more after it; of several late charges of one pack this counts too much, never too little. Besides, charges that begin
 * before a moment put in no more than was drawn by then, and those that end after one serve no more than is drawn after
 * it: the least over such moments holds too.
 */
export const restoredMost = (
  r: Rotation,
  pool: RotationPool,
  units: readonly RotationUnit[],
  untilMin: number,
): number => {
  const first = Math.min(...units.flatMap((u) => u.stretches.map((s) => s.startMin)));
  const speeds = new Map<number, number>();
  for (const b of r.bays) {
    if (!b.pools.has(pool.id)) continue;
    const fullMin = pool.chargeMin * (b.slower.get(pool.id) ?? 1);
    speeds.set(fullMin, (speeds.get(fullMin) ?? 0) + 1);
  }
  if (speeds.size === 0 || !(untilMin > first)) return 0;
  const tables = tablesOf(r, pool, units, first, untilMin);
  const { d } = tables;
  const total = d.all[d.cells] ?? 0;
  let least = Number.POSITIVE_INFINITY;
  for (const cut of CUTS) {
    const from = Math.min(d.cells - 1, Math.round(cut * d.cells));
    const before = d.all[from] ?? 0;
    const bays = [...speeds].map(([fullMin, n]) => ({ bays: n, best: tables.bestFrom(from, fullMin) }));
    for (let b = from; b <= d.cells; b++) {
      const within = bays.reduce((sum, x) => sum + x.bays * (x.best[b] ?? 0), 0);
      least = Math.min(least, before + within + total - (d.all[b] ?? 0));
    }
  }
  return least;
};

/** Cells for one pack on its own lead, where charges are looked at in threes. */
const OWN_CELLS = 150;

/**
 * The most that can be drawn from one pack until a moment that charges on its own lead whenever it is on no unit, as a share
 * of one pack: it burns where most is drawn, and what a charge puts in is no more than was drawn since the last one.
 * Cells are counted so that nothing is lost by them.
 */
export const mostOfOne = (
  r: Rotation,
  pool: RotationPool,
  units: readonly RotationUnit[],
  untilMin: number,
): number => {
  const first = Math.min(...units.flatMap((u) => u.stretches.map((s) => s.startMin)));
  const gives = 1 - r.swapAt;
  if (!(untilMin > first)) return gives;
  const d = drawnBy(units, first, untilMin, OWN_CELLS);
  const charged = chargedIn(r, pool.chargeMin, d);
  const drawn = (from: number, to: number): number => (d.one[to] ?? 0) - (d.one[from] ?? 0);
  const tiny = charged[1] ?? 0;
  let most = Math.min(gives, drawn(0, d.cells));
  /** All that was drawn and put back by charges of which the last one ended in a cell. */
  const ended = new Float64Array(d.cells + 1);
  for (let b = 1; b <= d.cells; b++) {
    let best = 0;
    for (let a = 0; a < b; a++)
      for (let c = 0; c <= a + 1 && c < b; c++) {
        const put = Math.min(charged[b - a] ?? 0, drawn(Math.max(0, c - 1), a + 1)) + tiny;
        best = Math.max(best, (ended[c] ?? 0) + put);
      }
    ended[b] = best;
    most = Math.max(most, best + Math.min(gives, drawn(b - 1, d.cells)));
  }
  return most;
};
