import type { Id } from '../../../kernel/ids.ts';
import type { Footprint } from '../../../plan/footprint.ts';
import { layInto, type Setting } from './room.ts';

/** Fixtures that get one and the same address: one as a rule, several where they are paired. */
export interface Item {
  readonly ids: readonly Id[];
  readonly footprint: Footprint;
  /** What keeps it in one universe with others, and what gives it a universe of its own; empty for neither. */
  readonly togetherKey: string;
  readonly ownKey: string;
  /** Number of the universe its line or transmitter carries, where it goes by that. */
  readonly home?: number | undefined;
}

/** Items that stay side by side in one universe. */
export interface Block {
  readonly items: readonly Item[];
  readonly sizes: readonly number[];
  /** Slots from its first to its last one, those left free between its items included. */
  readonly slots: number;
}

const blockOf = (items: readonly Item[], how: Setting): Block => {
  const sizes = items.map((i) => i.footprint.slots);
  const [only] = sizes;
  if (only !== undefined && sizes.length === 1) return { items, sizes, slots: only };
  // From one address of the step on a block takes as many slots as from any other.
  const laid = layInto({ from: 1, to: Number.MAX_SAFE_INTEGER }, sizes, how) ?? [];
  return { items, sizes, slots: (laid.at(-1) ?? 1) + (sizes.at(-1) ?? 0) - 1 };
};

/**
 * Items as blocks, in the order of their first items. Items with the same key make one block where that fits a universe;
 * keys whose block would not fit are told in `tooLarge` and their items stand alone.
 */
export const blocksOf = (
  items: readonly Item[],
  size: number,
  how: Setting,
): { readonly blocks: readonly Block[]; readonly tooLarge: readonly string[] } => {
  const byKey = new Map<string, Item[]>();
  for (const [i, item] of items.entries()) {
    const key = item.togetherKey === '' ? `#${i}` : `k${item.togetherKey}`;
    const list = byKey.get(key);
    if (list) list.push(item);
    else byKey.set(key, [item]);
  }
  const blocks: Block[] = [];
  const tooLarge: string[] = [];
  for (const [key, list] of byKey) {
    const block = blockOf(list, how);
    if (list.length === 1 || block.slots <= size) blocks.push(block);
    else {
      tooLarge.push(key.slice(1));
      blocks.push(...list.map((i) => blockOf([i], how)));
    }
  }
  return { blocks, tooLarge };
};
