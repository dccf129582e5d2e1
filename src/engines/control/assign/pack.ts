import type { Block, Item } from './blocks.ts';
import { fitExactly } from './bound.ts';
import { MANY, type Piece, putInto, putParted } from './place.ts';
import type { Put, Room, Setting } from './room.ts';

/** Up to so many blocks an exact search is tried where first-fit may not have found the fewest universes. */
const EXACT_UP_TO = 24;

export interface Packed {
  readonly pieces: readonly Piece[];
  readonly lost: readonly Item[];
  /** Whether no packing takes fewer universes, as far as the search could tell. */
  readonly proved: boolean;
}

const universesOf = (pieces: readonly Piece[]): readonly number[] =>
  [...new Set(pieces.map((p) => p.universe))].sort((a, b) => a - b);

const isWhole = (room: Room, universe: number): boolean => {
  const [gap] = room.gaps(universe);
  return gap?.from === 1 && gap.to === room.size;
};

/**
 * Blocks into as few universes as it finds. The largest first into the first place that takes it; where that is more than
 * `bound`, few blocks are tried out in full. In each universe they then lie in their own order where that fits.
 * `fresh` makes the free room anew, so that several ways can be tried.
 */
export const pack = (
  fresh: () => Room,
  blocks: readonly Block[],
  how: Setting,
  start: Put,
  bound: number,
): Packed => {
  const room = fresh();
  const wide: Piece[] = [];
  const lost: Item[] = [];
  const rest: Block[] = [];
  for (const b of blocks) {
    if (b.slots <= room.size) rest.push(b);
    else {
      const put = b.items[0] && putParted(room, b.items[0], how, start);
      if (put) wide.push(...put);
      else lost.push(...b.items);
    }
  }
  const withWide = (): Room => {
    const r = fresh();
    for (const p of wide) r.take(p.universe, p.address, p.address + p.slots - 1 + how.after);
    return r;
  };
  const largestFirst = rest
    .map((block, i) => ({ block, i }))
    .sort((a, b) => b.block.slots - a.block.slots || a.i - b.i);
  const order = new Map(rest.map((b, i) => [b, i]));
  let where = new Map<Block, { universe: number; pieces: readonly Piece[] }>();
  // Only blocks as large as the ones seen to fail need not look there again.
  const full = new Map<number, number>();
  for (const { block } of largestFirst) {
    for (let u = start.universe; !where.has(block); u++) {
      if ((full.get(u) ?? Number.POSITIVE_INFINITY) <= block.slots) continue;
      const put = putInto(room, u, block, how);
      if (put) where.set(block, { universe: u, pieces: put });
      else if (u > start.universe + MANY) throw new Error('a block that fits no empty universe');
      else if (block.items.length === 1) full.set(u, block.slots);
    }
  }
  const firstFit = universesOf([...wide, ...[...where.values()].flatMap((w) => w.pieces)]);
  let proved = firstFit.length <= bound;
  if (!proved && how.step === 1 && rest.length <= EXACT_UP_TO) {
    // Only where nothing stands in the way is trying out the first few universes trying out all.
    proved = wide.length === 0 && firstFit.every((u) => isWhole(withWide(), u));
    for (let k = Math.max(1, bound); k < firstFit.length; k++) {
      const better = exactly(
        withWide(),
        largestFirst.map((x) => x.block),
        how,
        firstFit.slice(0, k),
      );
      if (better === 'unknown') proved = false;
      else if (better !== 'none') {
        where = better;
        break;
      }
    }
  }
  return { pieces: [...wide, ...inOwnOrder(withWide(), where, order, how)], lost, proved };
};

const exactly = (
  room: Room,
  blocks: readonly Block[],
  how: Setting,
  universes: readonly number[],
): Map<Block, { universe: number; pieces: readonly Piece[] }> | 'none' | 'unknown' => {
  const gaps = universes.flatMap((universe) => room.gaps(universe).map((gap) => ({ universe, gap })));
  const fit = fitExactly(
    blocks.map((b) => b.slots + how.after),
    gaps.map(({ gap }) => gap.to - gap.from + 1 + how.after),
  );
  if (fit === 'none' || fit === 'unknown') return fit;
  const next = gaps.map(({ gap }) => gap.from);
  const out = new Map<Block, { universe: number; pieces: readonly Piece[] }>();
  blocks.forEach((block, i) => {
    const bin = fit.bins[i] ?? 0;
    const universe = gaps[bin]?.universe ?? 0;
    let at = next[bin] ?? 1;
    const pieces = block.items.map((item, k) => {
      const slots = block.sizes[k] ?? 0;
      const piece = { item, universe, address: at, fromSlot: 1, slots };
      at += slots + how.after;
      return piece;
    });
    next[bin] = at;
    out.set(block, { universe, pieces });
  });
  return out;
};

/** The blocks of each universe laid anew in their own order; as they were where that does not fit. */
const inOwnOrder = (
  room: Room,
  where: ReadonlyMap<Block, { readonly universe: number; readonly pieces: readonly Piece[] }>,
  order: ReadonlyMap<Block, number>,
  how: Setting,
): readonly Piece[] => {
  const byUniverse = new Map<number, Block[]>();
  for (const [block, { universe }] of where) {
    const list = byUniverse.get(universe);
    if (list) list.push(block);
    else byUniverse.set(universe, [block]);
  }
  return [...byUniverse].flatMap(([universe, blocks]) => {
    const sorted = blocks.sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0));
    const laid = sorted.map((b) => putInto(room, universe, b, how));
    return laid.every((p) => p !== undefined)
      ? laid.flatMap((p) => p ?? [])
      : sorted.flatMap((b) => where.get(b)?.pieces ?? []);
  });
};
