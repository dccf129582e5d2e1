import { z } from 'zod';
import { common } from './common.ts';
import { dataPortSchema } from './data-ports.ts';
import { inletSchema, loadSchema, outletPortSchema } from './ports.ts';

/** The same link works on one band at a time. `eirpDbm` is the most it radiates there with its own aerial. */
export const radioBandSchema = z.looseObject({
  fromMhz: z.number(),
  toMhz: z.number(),
  eirpDbm: z.number(),
});

/**
 * One end of a radio link for control data. `conductedDbm` is at the aerial socket, `antennaGainDbi` of the aerial it
 * comes with, `sensitivityDbm` the weakest signal it is said to take. `universes` at once.
 */
const radio = {
  ...common,
  inlets: z.array(inletSchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
  dataIn: z.array(dataPortSchema).default([]),
  dataOut: z.array(dataPortSchema).default([]),
  bands: z.array(radioBandSchema).min(1),
  universes: z.int().min(1),
  /** How the aerial spreads what it radiates: all round, to one side, or inside a case. */
  antenna: z.enum(['inside', 'whip', 'whip-high-gain', 'panel']),
  antennaGainDbi: z.number(),
  sensitivityDbm: z.number(),
  supplyW: z.number(),
  load: loadSchema.optional(),
  /** Of the cell it runs on without a supply; absent where it has none. */
  backupWh: z.number().optional(),
  rdm: z.boolean().default(false),
  /** Receivers it keeps a link with at once, where the kind has such a limit. */
  linksMax: z.int().min(1).optional(),
  /** Every unit of the mesh passes on what it hears, so many times at most from the transmitter on. */
  mesh: z.looseObject({ hopsMax: z.int().min(1), relayEirpDbm: z.number() }).optional(),
};

export const transmitterKindSchema = z.looseObject({
  ...radio,
  family: z.literal('transmitter'),
  conductedDbm: z.number(),
});

export const receiverKindSchema = z.looseObject({
  ...radio,
  family: z.literal('receiver'),
  /** Where it goes: at the head of a line of fixtures, plugged into one fixture, or a small one with its own cell. */
  fits: z.enum(['line', 'fixture', 'pocket']),
});

/** Takes a link and sends it on. */
export const repeaterKindSchema = z.looseObject({
  ...radio,
  family: z.literal('repeater'),
  conductedDbm: z.number(),
  delayMs: z.number(),
});

export type TransmitterKind = z.infer<typeof transmitterKindSchema>;
export type ReceiverKind = z.infer<typeof receiverKindSchema>;
export type RepeaterKind = z.infer<typeof repeaterKindSchema>;
