import type { Id } from '../kernel/ids.ts';
import type { System } from '../plan/kinds/kinds.ts';
import type { Transformer } from './transformer.ts';

export type EntityWhat = 'source' | 'box' | 'way' | 'outlet' | 'cable' | 'load';

/** A limit on the current of one conductor, with the thing that sets it. */
export interface CurrentLimit {
  /** What the practice allows through it here, after its load rule. */
  readonly limitA: number;
  /** The rating on the thing. */
  readonly ratingA: number;
  /** What sets the limit: `breaker`, `main-breaker`, `connector`, `cable`, `generator`, `outlet`. */
  readonly setBy: string;
  /** Row of the limits table, for the citation. */
  readonly rule: string;
  /**
   * The limit for what is still to be plugged in or moved here, where `limitA` is eased by the hours of what hangs here now: how
   * long the rest burns is not known.
   */
  readonly planningA?: number;
}

/**
 * One node of the supply tree, with its key in the figure table.
 * Keys: `<recordId>` for sources, boxes, outlets, cables and loads; `<recordId>/<wayId>` for a way of a source or box.
 */
export interface SupplyEntity {
  readonly key: string;
  readonly what: EntityWhat;
  readonly recordId: Id;
  readonly wayId: string | undefined;
  /** Words for people, like `K1 way 4`, `Unit 7`, `W2`. */
  readonly label: string;
  readonly parentKey: string | undefined;
  readonly sourceId: Id | undefined;
  readonly system: System | undefined;
  /** Legs of the source this carries, 0-based positions; leg names come from `legName`. */
  readonly legs: readonly number[];
  readonly neutral: boolean;
  /** The lowest limit on a leg, and on the neutral; undefined where nothing is known. */
  readonly legLimit: CurrentLimit | undefined;
  readonly neutralLimit: CurrentLimit | undefined;
  /** Why it and what hangs on it is not computed, in words, when it is not. */
  readonly notComputed: string | undefined;
  /** Depth in the tree, sources 0. */
  readonly depth: number;
  /** The output of a transformer, whose feed is the entity above. */
  readonly transformer: Transformer | undefined;
}

/**
 * What is known of each entity in each setup.
 * - `leg0A`..`leg2A`: rms amps on the source's legs; `neutralA`: true rms amps,
 *   the phasor sum of the fundamentals with the third harmonics of the loads added in step.
 * - `loadW`, `loadVa`: connected real and apparent power at nominal volts, cable loss left out.
 * - `voltsV`: the least volts at its end (leg-neutral, or leg-leg for a load so connected); `dropPct` against the source.
 * - `usePct`: the largest current over its limit, legs and neutral, times 100.
 * - `dropV`: the largest fall in volts from the source to its end, also where the source's own volts are not known.
 * - `inW`, `inVa`: real and apparent power that goes into it, cable loss behind it included.
 * A load's figures are those of its inlet: what it passes on through its own outlets is in them.
 * NaN means not computed.
 */
export const QUANTITIES = [
  'leg0A',
  'leg1A',
  'leg2A',
  'neutralA',
  'loadW',
  'loadVa',
  'voltsV',
  'dropPct',
  'usePct',
  'dropV',
  'inW',
  'inVa',
] as const;

export type Quantity = (typeof QUANTITIES)[number];

/** Figures by entity, quantity and setup over one typed array. */
export interface FigureTable {
  readonly entityKeys: readonly string[];
  readonly setupIds: readonly Id[];
  readonly values: Float64Array;
  /** The figure, or NaN where it is not known. */
  get(entityKey: string, quantity: Quantity, setupIndex: number): number;
  /** Largest over all setups (least for `voltsV`), with the setup; NaN and -1 where nothing is known. */
  worst(entityKey: string, quantity: Quantity): { readonly value: number; readonly setupIndex: number };
}

/** Key of a figure for `explain`: `<quantity>@<entityKey>@<setupId>`. */
export const figureKey = (quantity: Quantity, entityKey: string, setupId: Id): string =>
  `${quantity}@${entityKey}@${setupId}`;
