import type { Id } from '../../kernel/ids.ts';

/** A setup the engine computes. A plan without setups is computed once, with everything at full. */
export interface SetupName {
  readonly id: Id;
  readonly name: string;
}
