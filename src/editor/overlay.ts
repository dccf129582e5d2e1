import type { Box, Point } from '../kernel/geometry.ts';

/** A line that shows what a drag has snapped to. */
export interface Guide {
  readonly from: Point;
  readonly to: Point;
}

/** What tools show on top of the drawing while they work; never part of the plan. Floor millimetres. */
export interface Overlay {
  readonly guides: readonly Guide[];
  readonly marquee: Box | undefined;
  /** A cable or an aim line being drawn. */
  readonly rubber:
    | { readonly from: Point; readonly to: Point; readonly what: 'cable' | 'aim'; readonly fits: boolean }
    | undefined;
  /** The spot a tool is about to use: a mark that will be followed, a unit that will be plugged. */
  readonly target: Point | undefined;
}

export const NO_OVERLAY: Overlay = { guides: [], marquee: undefined, rubber: undefined, target: undefined };
