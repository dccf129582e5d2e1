import type { System } from '../plan/kinds/kinds.ts';
import type { SystemShape } from './systems.ts';

/** A transformer as it stands in a supply: what its output is, and how its windings lie over the legs of its feed. */
export interface Transformer {
  readonly system: System;
  /** The output's legs and volts; its neutral is the earthed middle or star point of the windings. */
  readonly shape: SystemShape;
  readonly ratedVa: number;
  /** Volts of a winding, out over in. */
  readonly ratio: number;
  /** The output's legs, each on a winding fed from one wire to another of the feed, with or against it. */
  readonly windings: readonly {
    readonly leg: number;
    readonly from: number;
    readonly to: number;
    readonly sign: 1 | -1;
  }[];
  readonly impedancePct: number | undefined;
  readonly efficiencyPct: number;
  /** Its feed and output are one leg each, so that a breaker ahead guards what hangs behind it, by the ratio. */
  readonly twoWire: boolean;
}
