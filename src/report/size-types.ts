import type { Id } from '../kernel/ids.ts';
import type { BoxKind, CableKind, SourceKind } from '../plan/kinds/kinds.ts';
import type { Cable } from '../plan/records/index.ts';
import type { Working } from './types.ts';

/** What is to be said of the kind that is there now. */
export type SizedNow = 'fits' | 'larger' | 'too small' | 'loses too much';

/** That in words, for screen and command line. */
export const SIZED_NOW_WORDS: Readonly<Record<SizedNow, string>> = {
  fits: 'the present one is it',
  larger: 'the present one is larger than needed',
  'too small': 'the present one does not carry it with that headroom',
  'loses too much': 'the present one carries it, and more volts are lost than advised',
};

/** What a source or box must carry, and the smallest kind that does. */
export interface Sized {
  readonly recordId: Id;
  readonly label: string;
  readonly what: 'generator' | 'box' | 'cable';
  readonly nowName: string;
  /** The smallest kind of the book that carries it; undefined where none does. */
  readonly kind: SourceKind | BoxKind | CableKind | undefined;
  /** Sets of a cable side by side. */
  readonly sets?: number;
  /** Whether the present kind is it, is larger than needed, does not carry the load, or carries it and loses more volts than advised. */
  readonly now: SizedNow;
  readonly reasons: readonly string[];
  /** The arithmetic behind it. */
  readonly working: Working;
}

/** A run to find a cable for. */
export interface RunAsked {
  /** Amps on its fullest leg, and in its neutral. */
  readonly amps: number;
  readonly neutralA: number;
  readonly legs: number;
  readonly neutral: boolean;
  readonly lengthMm: number;
  /** Nominal volts: leg to neutral, or between legs without one. */
  readonly volts: number;
  readonly powerFactor: number;
  /** Most of those volts that may be lost in it, in per cent. */
  readonly dropPct: number;
  /** The breaker ahead, which the cable should not be weaker than; undefined where none is known. */
  readonly breakerA: number | undefined;
  readonly cable?: Pick<Cable, 'bundled' | 'onDrum'> | undefined;
  /** Whether a kind has the ends the run needs; all do when absent. */
  readonly fits?: (k: CableKind) => boolean;
}

/** A cable for a run: how many sets of it side by side, what they carry and what they lose. */
export interface RunChoice {
  readonly kind: CableKind;
  readonly sets: number;
  readonly ampacityA: number;
  readonly dropV: number;
  readonly dropPct: number;
}
