import { fail, ok, type Result } from '../../kernel/result.ts';
import { UNIVERSE_SLOTS, universeProblem } from '../../plan/address.ts';
import { controlFigure } from './figures.ts';

/** IPv4 multicast group of a streaming-ACN universe: 239.255.high.low (ANSI E1.31). */
export const multicastGroup = (universe: number): Result<string> => {
  const problem = universeProblem(universe);
  return problem ? fail(problem) : ok(`239.255.${Math.floor(universe / 256)}.${universe % 256}`);
};

/** Bytes of one streaming-ACN packet, the UDP payload: 126 and one per slot; 638 for a whole universe (ANSI E1.31). */
export const packetBytes = (slots: number): number => controlFigure('sacn-head-bytes') + slots;

/** Bytes one packet takes on an Ethernet wire, headers, preamble and gap included; 704 for a whole universe. */
export const wireBytes = (slots: number): number =>
  packetBytes(slots) +
  controlFigure('udp-ip-bytes') +
  controlFigure('ethernet-bytes') +
  controlFigure('ethernet-wire-bytes');

/** Kilobits a second that universes take on the wire, each sent whole, at 44 Hz unless told otherwise. */
export const bandwidthKbps = (universes: number, hz = controlFigure('dmx-refresh-hz')): number =>
  (universes * wireBytes(UNIVERSE_SLOTS) * 8 * hz) / 1000;

/** Universes a link of so many Mbit/s carries by arithmetic alone, with nothing else on it. */
export const universesOnLink = (mbps: number): number => Math.floor((mbps * 1000) / bandwidthKbps(1));
