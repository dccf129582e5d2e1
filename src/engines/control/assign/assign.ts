import { recordLabel } from '../../../derive/labels.ts';
import { limitOf } from '../../../derive/limits.ts';
import { fail, ok, type Problem, type Result } from '../../../kernel/result.ts';
import { universeProblem } from '../../../plan/address.ts';
import { spansOf } from '../../../plan/footprint.ts';
import type { Plan } from '../../../plan/plan.ts';
import { type Block, blocksOf, type Item } from './blocks.ts';
import { lowerBound } from './bound.ts';
import { choose, itemsOf, ownParts, takenBy } from './choose.ts';
import type { AssignOptions } from './options.ts';
import { outcome } from './outcome.ts';
import { pack } from './pack.ts';
import { inOrder, type Piece } from './place.ts';
import { Room } from './room.ts';
import type { Assignment } from './types.ts';

/**
 * Gives addresses to fixtures. Pure: the same plan and options give the same proposal. No fixture crosses the end of a
 * universe; units of several parts are parted between parts only; what stays is never moved and never overlapped.
 * Fails where the start is no address or a number is out of range.
 */
export const assignAddresses = (plan: Plan, options: AssignOptions): Result<Assignment> => {
  const problem = optionProblem(options);
  if (problem) return fail(problem);
  const size = limitOf(plan, 'universe-slots').value - options.spareSlots;
  const { chosen, kept } = choose(plan, options);
  const asked = itemsOf(plan, chosen, options);
  // What no universe takes stays as it is, so the others have to keep clear of it.
  const fits = (i: Item): boolean => spansOf(i.footprint, size) !== undefined;
  const items = asked.filter(fits);
  const notices: string[] = [];
  const how = { step: options.step, after: options.gapSlots };
  const moved = new Set(items.flatMap((i) => i.ids));
  const taken = takenBy(plan, moved);
  const fresh = (): Room => new Room(options.start, size, taken);
  const pieces: Piece[] = [];
  const lost = asked.filter((i) => !fits(i));
  let bound = 0;
  let proved = true;
  const room = fresh();
  let at = options.start;
  for (const own of ownParts(items)) {
    const { blocks, tooLarge } = blocksOf(own, size, how);
    if (tooLarge.length > 0)
      notices.push(
        `What belongs together takes more than one universe in ${tooLarge.length} cases; it was parted there.`,
      );
    const least = leastUniverses(blocks, size, options);
    bound += least;
    const home = own[0]?.home;
    if (home !== undefined)
      at = home === options.start.universe ? options.start : { universe: home, address: 1 };
    else if (pieces.length > 0 && options.ownUniverse !== 'nothing')
      at = { universe: Math.max(...pieces.map((p) => p.universe)) + 1, address: 1 };
    if (options.fewest) {
      const begin = at;
      // Parts that begin where a port says may run into one another's universes.
      const now = takenWith(taken, pieces, options.gapSlots);
      const base = begin === options.start && pieces.length === 0 ? fresh : () => new Room(begin, size, now);
      const packed = pack(base, blocks, how, begin, least);
      pieces.push(...packed.pieces);
      lost.push(...packed.lost);
      proved &&= packed.proved;
    } else {
      const done = inOrder(room, blocks, how, options.part, at);
      pieces.push(...done.pieces);
      lost.push(...done.lost);
      at = done.next;
      const strays = home === undefined ? [] : done.pieces.filter((p) => p.universe !== home);
      if (strays.length > 0)
        notices.push(
          `Universe ${home} does not hold all that its line or transmitter reaches: ${strays.length} ${strays.length === 1 ? 'goes' : 'go'} on in another.`,
        );
    }
  }
  for (const item of lost)
    for (const id of item.ids)
      notices.push(
        `${recordLabel(plan, plan.records.get(id))}: ${item.footprint.slots} slots fit no universe${options.spareSlots > 0 ? ` with ${options.spareSlots} spare` : ''}, and its mode says no place to part them. It stays as it is.`,
      );
  return ok(outcome(plan, options, chosen, pieces, { bound, proved, kept, notices }));
};

/** Slots taken by what stays and by what was laid so far. */
const takenWith = (
  taken: ReturnType<typeof takenBy>,
  pieces: readonly Piece[],
  after: number,
): ReturnType<typeof takenBy> => {
  const all = new Map([...taken].map(([u, list]) => [u, [...list]]));
  for (const p of pieces) {
    const span = { address: p.address, last: p.address + p.slots - 1 + after };
    const list = all.get(p.universe);
    if (list) list.push(span);
    else all.set(p.universe, [span]);
  }
  for (const list of all.values()) list.sort((a, b) => a.address - b.address);
  return all;
};

/** A number of universes that blocks need in any arrangement that keeps them whole, or parted as they have to be. */
const leastUniverses = (blocks: readonly Block[], size: number, o: AssignOptions): number => {
  const sizes = blocks.flatMap((b) => {
    const [only] = b.items;
    if (b.slots <= size || !only) return [b.slots];
    return spansOf(only.footprint, size)?.map((s) => s.slots) ?? [];
  });
  // What may be parted anywhere is bounded by its sum alone.
  if (o.part) return Math.ceil(sizes.reduce((s, n) => s + n, 0) / size);
  return lowerBound(
    sizes.map((n) => n + o.gapSlots),
    size + o.gapSlots,
  );
};

const optionProblem = (o: AssignOptions): Problem | undefined => {
  const universe = universeProblem(o.start.universe);
  if (universe) return universe;
  const whole = (n: number, from: number, to: number, what: string): Problem | undefined =>
    Number.isInteger(n) && n >= from && n <= to
      ? undefined
      : { what: `${what} is a whole number from ${from} to ${to}.` };
  return (
    whole(o.start.address, 1, 512, 'The first address') ??
    whole(o.step, 1, 512, 'The step') ??
    whole(o.gapSlots, 0, 256, 'The number of slots left free after each') ??
    whole(o.spareSlots, 0, 256, 'The number of spare slots at the end') ??
    (o.channelsFrom === undefined ? undefined : whole(o.channelsFrom, 0, 99_999, 'The first channel'))
  );
};
