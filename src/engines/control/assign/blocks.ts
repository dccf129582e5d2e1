import type { Id } from '../../../kernel/ids.ts';
import type { Footprint } from '../../../plan/footprint.ts';

/** Fixtures that get one and the same address: one as a rule, several where they are paired. */
export interface Item {
  readonly ids: readonly Id[];
  readonly footprint: Footprint;
  /** What keeps it in one universe with others, and what gives it a universe of its own; empty for neither. */
  readonly togetherKey: string;
  readonly ownKey: string;
}

/** Items that stay side by side in one universe. */
export interface Block {
  readonly items: readonly Item[];
  readonly sizes: readonly number[];
  /** Slots with those left free between its items. */
  readonly slots: number;
}

const blockOf = (items: readonly Item[], after: number): Block => {
  const sizes = items.map((i) => i.footprint.slots);
  return { items, sizes, slots: sizes.reduce((s, n) => s + n, 0) + after * (items.length - 1) };
};

/**
 * Items as blocks, in the order of their first items. Items with the same key make one block where that fits a universe;
 * keys whose block would not fit are told in `tooLarge` and their items stand alone.
 */
export const blocksOf = (
  items: readonly Item[],
  size: number,
  after: number,
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
    const block = blockOf(list, after);
    if (list.length === 1 || block.slots <= size) blocks.push(block);
    else {
      tooLarge.push(key.slice(1));
      blocks.push(...list.map((i) => blockOf([i], after)));
    }
  }
  return { blocks, tooLarge };
};
