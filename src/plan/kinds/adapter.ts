import { z } from 'zod';
import { common } from './common.ts';
import { dataPortSchema } from './data-ports.ts';
import { inletSchema, outletPortSchema } from './ports.ts';

/**
 * Short ends between unlike connectors, and those that part one feed without a breaker: power comes in at `inlets` and
 * leaves at `outlets`, unprotected. Multi-circuit ends carry `circuits` circuits in one connector.
 */
export const adapterKindSchema = z.looseObject({
  ...common,
  family: z.literal('adapter'),
  what: z.enum(['adapter', 'tee', 'tails', 'break-in', 'break-out', 'data']),
  inlets: z.array(inletSchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
  dataIn: z.array(dataPortSchema).default([]),
  dataOut: z.array(dataPortSchema).default([]),
  circuits: z.int().min(1).default(1),
  /** Row of shared/conductors.json. */
  conductor: z.string().optional(),
  ampacityA: z.number().optional(),
  /** Largest breaker it may hang behind, where that is less than its inlet carries. */
  upstreamA: z.number().optional(),
});

export type AdapterKind = z.infer<typeof adapterKindSchema>;
