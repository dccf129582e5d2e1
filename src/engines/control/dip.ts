import { fail, ok, type Result } from '../../kernel/result.ts';
import { UNIVERSE_SLOTS } from '../../plan/address.ts';

/** How nine switches stand for an address: their sum is the address, or the address less one. Units differ. */
export type DipConvention = 'sum' | 'sum-less-one';

/** What each of the nine switches counts, first to last. */
export const DIP_WEIGHTS: readonly number[] = [1, 2, 4, 8, 16, 32, 64, 128, 256];

/**
 * The switches that are on for an address, numbered from 1. With `sum` nine switches reach 511, so 512 cannot be set;
 * with `sum-less-one` address 1 is all off and 512 all on. Common practice; a unit's manual says which holds.
 */
export const dipSwitches = (address: number, convention: DipConvention): Result<readonly number[]> => {
  if (!Number.isInteger(address) || address < 1 || address > UNIVERSE_SLOTS)
    return fail({
      what: `There is no address ${address}.`,
      todo: `Addresses run from 1 to ${UNIVERSE_SLOTS}.`,
    });
  const value = convention === 'sum' ? address : address - 1;
  if (value > 511)
    return fail({
      what: 'Nine switches add up to 511 at most, so 512 cannot be set this way.',
      todo: 'See the unit’s manual, or choose a lower address.',
    });
  return ok(DIP_WEIGHTS.flatMap((w, i) => ((value & w) !== 0 ? [i + 1] : [])));
};
