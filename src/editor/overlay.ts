import type { Box, Point } from '../kernel/geometry.ts';

/** A line that shows what a drag has snapped to. */
export interface Guide {
  readonly from: Point;
  readonly to: Point;
}

/** Text typed for a tool, with what it stands for or why it cannot be read. */
export interface ToolEntry {
  readonly at: Point;
  readonly text: string;
  readonly hint: string;
  readonly wrong: boolean;
}

/** A line with its figure at the middle. */
export interface Measure {
  readonly from: Point;
  readonly to: Point;
  readonly text: string;
}

/** What tools show on top of the drawing while they work; never part of the plan. Floor millimetres. */
export interface Overlay {
  readonly guides: readonly Guide[];
  readonly marquee: Box | undefined;
  /** A cable, a data line or an aim line being drawn. */
  readonly rubber:
    | {
        readonly from: Point;
        readonly to: Point;
        readonly what: 'cable' | 'data' | 'aim';
        readonly fits: boolean;
      }
    | undefined;
  /** What is being typed for the tool at work, shown beside a spot of the floor. */
  readonly entry?: ToolEntry | undefined;
  /** Measuring lines with their figures. */
  readonly measures?: readonly Measure[] | undefined;
  /** A free-hand loop. */
  readonly loop?: readonly Point[] | undefined;
  /** The spot a tool is about to use: a mark that will be followed, a unit that will be plugged. */
  readonly target: Point | undefined;
}

export const NO_OVERLAY: Overlay = { guides: [], marquee: undefined, rubber: undefined, target: undefined };
