import type { FixtureKind, PackKind } from '../../plan/kinds/kinds.ts';
import { leftAtCutOff } from './calc.ts';
import type { Range } from './tables.ts';

/** Where a unit cuts out while its packs still hold charge. */
export interface CutOff {
  /** Volts of one cell then, the fall in the lead at full counted in. */
  readonly cellV: number;
  /** Share of the charge that stays in the packs. */
  readonly left: number;
}

/**
 * When a unit that takes packs without a converter cuts out: at its least volts and, at full, the fall in its lead. Undefined
 * where the packs are empty before that. Cell volts against charge are the table's, from memory.
 */
export const cutOffOf = (
  kind: FixtureKind | undefined,
  pack: PackKind | undefined,
  inRow: number,
  loopOhm: number,
): CutOff | undefined => {
  const dc = kind?.packIn;
  if (!dc || !pack || !(dc.minV > 0)) return undefined;
  const watts = Math.min(dc.maxW ?? Number.POSITIVE_INFINITY, kind.load?.wattsW ?? 0);
  const atPackV = dc.minV + (watts / dc.minV) * loopOhm;
  const cellV = atPackV / inRow / pack.cells;
  const left = atPackV > pack.emptyV * inRow ? leftAtCutOff(pack.chemistry, cellV) : 0;
  return left > 0 ? { cellV, left } : undefined;
};

/** Usable shares, never more than what a unit gets before it cuts out. */
export const beforeCutOff = (usable: Range, c: CutOff | undefined): Range =>
  c
    ? {
        low: Math.min(usable.low, 1 - c.left),
        plan: Math.min(usable.plan, 1 - c.left),
        high: Math.min(usable.high, 1 - c.left),
      }
    : usable;
