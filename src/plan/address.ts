import { fail, ok, type Problem, type Result } from '../kernel/result.ts';

/** Slots of a universe after ANSI E1.11; the limits table has the same figure with its source. */
export const UNIVERSE_SLOTS = 512;
/** Universes are numbered from 1 to this, as in streaming ACN (ANSI E1.31). */
export const UNIVERSE_MAX = 63_999;

/** A universe by its number and a slot in it, both counted from 1. */
export interface Address {
  readonly universe: number;
  readonly address: number;
}

/** The number of a slot counted through all universes: `(universe − 1) × 512 + address`. */
export const absoluteOf = (a: Address): number => (a.universe - 1) * UNIVERSE_SLOTS + a.address;

/** The universe and slot of an absolute number, which counts from 1. The inverse of `absoluteOf`. */
export const fromAbsolute = (absolute: number): Address => ({
  universe: Math.floor((absolute - 1) / UNIVERSE_SLOTS) + 1,
  address: ((absolute - 1) % UNIVERSE_SLOTS) + 1,
});

/** An address as it is printed everywhere: `U3 418`. */
export const printAddress = (a: Address): string => `U${a.universe} ${a.address}`;

const PAIR = /^(?:u(?:niverse)?\s*)?(\d+)\s*[/.:\s]\s*(\d+)$/i;

/**
 * Reads an address as people write it: `U3 418`, `3/418`, `3.418`, `3:418`, or an absolute number counted through all
 * universes. Where `inUniverse` is given, a bare number up to 512 is a slot of that universe.
 */
export const parseAddress = (text: string, inUniverse?: number): Result<Address> => {
  const s = text.trim();
  const pair = PAIR.exec(s);
  if (pair) return checked({ universe: Number(pair[1]), address: Number(pair[2]) }, text);
  if (!/^\d+$/.test(s)) return fail(addressProblem(text));
  const n = Number(s);
  if (n < 1) return fail({ what: `There is no address ${s}.`, todo: 'Addresses count from 1.' });
  if (inUniverse !== undefined && n <= UNIVERSE_SLOTS)
    return checked({ universe: inUniverse, address: n }, text);
  return checked(fromAbsolute(n), text);
};

const checked = (a: Address, text: string): Result<Address> => {
  const universe = universeProblem(a.universe);
  if (universe) return fail(universe);
  if (a.address < 1 || a.address > UNIVERSE_SLOTS)
    return fail({
      what: `“${text.trim()}” has no such slot.`,
      todo: `A universe has slots 1 to ${UNIVERSE_SLOTS}.`,
    });
  return ok(a);
};

/** Why a number cannot be that of a universe; undefined where it can. */
export const universeProblem = (n: number): Problem | undefined =>
  Number.isInteger(n) && n >= 1 && n <= UNIVERSE_MAX
    ? undefined
    : { what: `There is no universe ${n}.`, todo: `Universes are numbered from 1 to ${UNIVERSE_MAX}.` };

const addressProblem = (text: string): Problem => ({
  what: `“${text.trim()}” is not an address.`,
  todo: 'Write it like U3 418, 3/418 or 1442.',
});
