import type { System } from '../plan/kinds/kinds.ts';
import type { Box, Source } from '../plan/records/index.ts';
import type { DimmerHow } from './dimmers.ts';
import type { SystemShape } from './systems.ts';

/** What reaches a port: the legs of the source and a neutral. */
export interface Reach {
  readonly parent: number;
  readonly depth: number;
  readonly source: Source | Box | undefined;
  readonly system: System | undefined;
  readonly shape: SystemShape | undefined;
  readonly legs: readonly number[];
  readonly neutral: boolean;
  readonly notComputed: string | undefined;
  readonly dimmedBy: DimmerHow | undefined;
}

export const nowhere = (why: string): Reach => ({
  parent: -1,
  depth: 0,
  source: undefined,
  system: undefined,
  shape: undefined,
  legs: [],
  neutral: false,
  notComputed: why,
  dimmedBy: undefined,
});

/** Legs that a port or cable passes on. Where the supply has no neutral, a line lies on the neutral's conductor. */
export const linesOf = (reach: Reach, p: { readonly legs: number; readonly neutral: boolean }): number =>
  reach.shape?.neutral === false && p.neutral ? p.legs + 1 : p.legs;

/** What a source gives: all its legs. */
export const startAt = (
  source: Source | Box,
  system: System | undefined,
  shape: SystemShape | undefined,
): Reach => ({
  ...nowhere(''),
  source,
  system,
  shape,
  legs: Array.from({ length: shape?.legs ?? 0 }, (_, i) => i),
  neutral: shape?.neutral ?? true,
  notComputed: undefined,
});
