import { controlFigure } from './figures.ts';

/** Times of a data line, microseconds. */
export interface LineTiming {
  readonly breakUs: number;
  readonly markUs: number;
  readonly slotUs: number;
  /** Least time from one break to the next. */
  readonly leastUs: number;
}

/** The shortest times a transmitter may send (ANSI E1.11). */
export const TRANSMIT: LineTiming = {
  breakUs: controlFigure('dmx-break-us'),
  markUs: controlFigure('dmx-mab-us'),
  slotUs: controlFigure('dmx-slot-us'),
  leastUs: controlFigure('dmx-packet-least-us'),
};

/** The shortest times a receiver has to take (ANSI E1.11). */
export const RECEIVE: LineTiming = {
  breakUs: controlFigure('dmx-receive-break-us'),
  markUs: controlFigure('dmx-receive-mab-us'),
  slotUs: controlFigure('dmx-slot-us'),
  leastUs: controlFigure('dmx-receive-least-us'),
};

/**
 * Time of one packet of `slots` slots and its start code, microseconds: break + mark + (slots + 1) × 44 µs, stretched
 * to the least time from break to break. ANSI E1.11.
 */
export const packetUs = (slots: number, t: LineTiming = TRANSMIT): number =>
  Math.max(t.leastUs, t.breakUs + t.markUs + (slots + 1) * t.slotUs);

/** Packets a second at most. 512 slots give 44 Hz. */
export const refreshHz = (slots: number, t: LineTiming = TRANSMIT): number => 1e6 / packetUs(slots, t);
