import { z } from 'zod';
import { common } from './common.ts';
import { dataPortSchema } from './data-ports.ts';
import { packInSchema } from './pack.ts';
import { inletSchema, loadSchema, outletPortSchema } from './ports.ts';

const data = {
  ...common,
  inlets: z.array(inletSchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
  dataIn: z.array(dataPortSchema).default([]),
  dataOut: z.array(dataPortSchema).default([]),
  supplyW: z.number(),
  load: loadSchema.optional(),
  backupWh: z.number().optional(),
};

/** Where control data begins or changes from a network to lines: desks, network nodes, network switches. */
export const nodeKindSchema = z.looseObject({
  ...data,
  family: z.literal('node'),
  what: z.enum(['desk', 'node', 'switch', 'merger']),
  /** Universes it makes or passes on at once. */
  universes: z.int().min(1),
  rdm: z.boolean().default(false),
});

/** Parts one line into several, each a new segment with its own devices and length. */
export const dataSplitterKindSchema = z.looseObject({
  ...data,
  family: z.literal('dataSplitter'),
  isolated: z.boolean(),
  rdm: z.boolean().default(false),
  /** Unit loads of EIA-485 it puts on its incoming line. */
  unitLoads: z.number(),
});

/**
 * Gear for the picture that runs on mains and rides through a pulled plug on a pack: monitors, wireless senders and receivers of
 * pictures. It carries no control data.
 */
export const videoKindSchema = z.looseObject({
  ...data,
  family: z.literal('video'),
  what: z.enum(['monitor', 'sender', 'receiver']),
  /** Packs it takes in place of, or beside, its mains supply. */
  packIn: packInSchema.optional(),
});

export type VideoKind = z.infer<typeof videoKindSchema>;
export type NodeKind = z.infer<typeof nodeKindSchema>;
export type DataSplitterKind = z.infer<typeof dataSplitterKindSchema>;
