import { spansOf } from '../../../plan/footprint.ts';
import type { Block, Item } from './blocks.ts';
import { beginIn, layInto, type Put, type Room, type Setting } from './room.ts';

/** A stretch of an item's slots with the place it got. */
export interface Piece extends Put {
  readonly item: Item;
  readonly fromSlot: number;
  readonly slots: number;
}

/** Universes past this many after the first are not looked at: more than any plan has. */
export const MANY = 4096;

/** Takes the room of laid stretches and the slots to be left free after them. */
const settle = (
  room: Room,
  universe: number,
  block: Block,
  addresses: readonly number[],
  how: Setting,
): readonly Piece[] =>
  block.items.map((item, i) => {
    const address = addresses[i] ?? 1;
    const slots = block.sizes[i] ?? 0;
    room.take(universe, address, address + slots - 1 + how.after);
    return { item, universe, address, fromSlot: 1, slots };
  });

/** Puts a block into the first gap of a universe that takes it whole. */
export const putInto = (
  room: Room,
  universe: number,
  block: Block,
  how: Setting,
  least = 1,
): readonly Piece[] | undefined => {
  for (const gap of room.gaps(universe)) {
    if (gap.to < least) continue;
    const addresses = layInto(gap, block.sizes, how, least);
    if (addresses) return settle(room, universe, block, addresses, how);
  }
  return undefined;
};

/** Parts an item that no universe holds over universes one after the other, from the first that takes its beginning. */
export const putParted = (room: Room, item: Item, how: Setting, from: Put): readonly Piece[] | undefined => {
  const spans = spansOf(item.footprint, room.size);
  if (!spans) return undefined;
  for (let u = from.universe; u < room.first + MANY; u++) {
    const places = spans.map((s, i) => {
      const least = u + i === from.universe ? from.address : 1;
      for (const gap of room.gaps(u + i)) {
        const at = layInto(gap, [s.slots], how, least)?.[0];
        if (at !== undefined) return at;
      }
      return undefined;
    });
    if (places.some((p) => p === undefined)) continue;
    return spans.map((s, i) => {
      const address = places[i] ?? 1;
      room.take(u + i, address, address + s.slots - 1 + how.after);
      return { item, universe: u + i, address, fromSlot: s.fromSlot, slots: s.slots };
    });
  }
  return undefined;
};

/** Fills what is left of universes with whole parts of an item, going on in the next where it does not end. */
const putFilling = (room: Room, item: Item, how: Setting, from: Put): readonly Piece[] | undefined => {
  const { cuts, slots: total } = item.footprint;
  const ends = [...cuts, total];
  const pieces: Piece[] = [];
  let done = 0;
  for (let u = from.universe; done < total; u++) {
    if (u >= room.first + MANY) return undefined;
    for (const gap of room.gaps(u)) {
      const at = beginIn(gap, how, u === from.universe ? from.address : 1);
      if (at === undefined || done >= total) continue;
      const free = gap.to - at + 1;
      const end = ends.filter((e) => e > done && e - done <= free).at(-1);
      // A stretch goes on in one place of the next universe only: its later parts never lie before its earlier ones.
      if (end === undefined || (pieces.length > 0 && pieces.at(-1)?.universe === u)) continue;
      pieces.push({ item, universe: u, address: at, fromSlot: done + 1, slots: end - done });
      done = end;
    }
  }
  for (const p of pieces) room.take(p.universe, p.address, p.address + p.slots - 1 + how.after);
  return pieces;
};

/** The place behind the last piece, to go on from. */
const after = (pieces: readonly Piece[], how: Setting, size: number): Put | undefined => {
  const last = pieces.at(-1);
  if (!last) return undefined;
  const address = last.address + last.slots + how.after;
  return address <= size ? { universe: last.universe, address } : { universe: last.universe + 1, address: 1 };
};

/**
 * Blocks one behind the other in their order: each at the next free place that takes it whole, never before the one
 * before it. With `part`, units of several parts fill a universe to its end and go on in the next.
 */
export const inOrder = (
  room: Room,
  blocks: readonly Block[],
  how: Setting,
  part: boolean,
  start: Put,
): { readonly pieces: readonly Piece[]; readonly lost: readonly Item[]; readonly next: Put } => {
  const pieces: Piece[] = [];
  const lost: Item[] = [];
  let at = start;
  for (const block of blocks) {
    const put = next(room, block, how, part, at);
    if (!put) lost.push(...block.items);
    else {
      pieces.push(...put);
      at = after(put, how, room.size) ?? at;
    }
  }
  return { pieces, lost, next: at };
};

const next = (
  room: Room,
  block: Block,
  how: Setting,
  part: boolean,
  at: Put,
): readonly Piece[] | undefined => {
  const [only] = block.items;
  if (block.items.length === 1 && only && only.footprint.cuts.length > 0) {
    if (part) return putFilling(room, only, how, at);
    if (only.footprint.slots > room.size) return putParted(room, only, how, at);
  }
  if (block.slots > room.size) return undefined;
  for (let u = at.universe; u < room.first + MANY; u++) {
    const put = putInto(room, u, block, how, u === at.universe ? at.address : 1);
    if (put) return put;
  }
  return undefined;
};
