import { z } from 'zod';
import { common } from './common.ts';
import { dataPortSchema } from './data-ports.ts';
import { inletSchema, outletPortSchema, waySchema } from './ports.ts';

/**
 * Dims or switches lamps that have no dimmer of their own. It has the ports of a box; each way carries `wayW` at most.
 * `how` it takes its share out of the wave says which lamps it suits, and what it does to the neutral.
 */
export const dimmerKindSchema = z.looseObject({
  ...common,
  family: z.literal('dimmer'),
  inlets: z.array(inletSchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
  ways: z.array(waySchema).default([]),
  mainBreakerA: z.number().optional(),
  mainPoles: z.int().min(1).max(3).optional(),
  dataIn: z.array(dataPortSchema).default([]),
  dataOut: z.array(dataPortSchema).default([]),
  how: z.enum(['leading-edge', 'trailing-edge', 'sine-wave', 'relay', 'tap', 'variable-transformer']),
  wayW: z.number(),
  /** Least watts on a way for it to dim evenly. */
  leastW: z.number().default(0),
  lossPct: z.number(),
  /** Slots of control data; 0 for a knob. */
  slots: z.int().min(0),
});

export type DimmerKind = z.infer<typeof dimmerKindSchema>;
