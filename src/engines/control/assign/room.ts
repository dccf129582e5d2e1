import type { Gap } from '../types.ts';
import { gapsBetween } from '../use.ts';

/** How stretches are set into free room. */
export interface Setting {
  /** Addresses are 1 and then every so many slots on. */
  readonly step: number;
  /** Slots left free after each fixture. */
  readonly after: number;
}

/** A stretch of slots put in a universe. */
export interface Put {
  readonly universe: number;
  readonly address: number;
}

const aligned = (from: number, step: number): number => Math.ceil((from - 1) / step) * step + 1;

/** Free slots by universe number, from a first address on. Universes nobody knows yet are empty. */
export class Room {
  readonly first: number;
  readonly size: number;
  readonly #startAddress: number;
  readonly #taken: ReadonlyMap<number, readonly { readonly address: number; readonly last: number }[]>;
  readonly #gaps = new Map<number, Gap[]>();

  constructor(
    start: Put,
    size: number,
    taken: ReadonlyMap<number, readonly { readonly address: number; readonly last: number }[]>,
  ) {
    this.first = start.universe;
    this.#startAddress = start.address;
    this.size = size;
    this.#taken = taken;
  }

  /** Free stretches of a universe that are left, in order. */
  gaps(universe: number): readonly Gap[] {
    const known = this.#gaps.get(universe);
    if (known) return known;
    const from = universe === this.first ? this.#startAddress : 1;
    const made = gapsBetween(this.#taken.get(universe) ?? [], this.size)
      // Something kept among the spare slots ends a gap beyond what may be used.
      .map((g) => ({ from: Math.max(g.from, from), to: Math.min(g.to, this.size) }))
      .filter((g) => g.from <= g.to);
    this.#gaps.set(universe, made);
    return made;
  }

  /** Takes slots out of the free ones. */
  take(universe: number, from: number, to: number): void {
    const next: Gap[] = [];
    for (const g of this.gaps(universe)) {
      if (g.to < from || g.from > to) next.push(g);
      else {
        if (g.from < from) next.push({ from: g.from, to: from - 1 });
        if (g.to > to) next.push({ from: to + 1, to: g.to });
      }
    }
    this.#gaps.set(universe, next);
  }
}

/** Addresses of stretches laid one after the other into a gap, from `least` on; undefined where they do not all go in. */
export const layInto = (
  gap: Gap,
  sizes: readonly number[],
  how: Setting,
  least = 1,
): readonly number[] | undefined => {
  const out: number[] = [];
  let at = Math.max(gap.from, least);
  for (const n of sizes) {
    at = aligned(at, how.step);
    if (at + n - 1 > gap.to) return undefined;
    out.push(at);
    at += n + how.after;
  }
  return out;
};

/** Where a gap would take a single stretch to begin; for stretches that may be parted. */
export const beginIn = (gap: Gap, how: Setting, least: number): number | undefined => {
  const at = aligned(Math.max(gap.from, least), how.step);
  return at <= gap.to ? at : undefined;
};
