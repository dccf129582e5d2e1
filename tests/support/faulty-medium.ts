import type { Medium } from '../../src/storage/medium.ts';

export interface Faults {
  /** Counts writes so far. */
  count: number;
  /** Decides whether write number `n` (from 1) fails, and whether before or after it reached the medium. */
  fail: (n: number) => 'before' | 'after' | undefined;
  error: () => Error;
}

export const noFaults = (): Faults => ({
  count: 0,
  fail: () => undefined,
  error: () => new DOMException('made to fail', 'UnknownError'),
});

/** A medium whose writes fail when told to. `after` stands for a write that was done but whose success was never heard of. */
export const faultyMedium = (medium: Medium, faults: Faults): Medium => ({
  ...medium,
  update: async (planId, make) => {
    const how = faults.fail(++faults.count);
    if (how === 'before') throw faults.error();
    const head = await medium.update(planId, make);
    if (how === 'after') throw faults.error();
    return head;
  },
});
