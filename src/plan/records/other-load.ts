import { z } from 'zod';
import { shared } from './common.ts';

/**
 * What someone else draws from a supply of this plan: catering, carts, heaters, chargers. Given in amps or in watts.
 * `on` says where it is plugged: a way of a source or box, a port of one, a wall outlet (its own port), or, with neither,
 * the source or box itself.
 */
export const otherLoadSchema = z.looseObject({
  ...shared,
  type: z.literal('otherLoad'),
  /** Whose it is, like `Catering`. */
  owner: z.string(),
  what: z.string().default(''),
  /** Amps on each leg it is plugged to. With both given, amps count. */
  amps: z.number().optional(),
  wattsW: z.number().optional(),
  powerFactor: z.number().default(1),
  on: z.looseObject({
    recordId: z.string(),
    wayId: z.string().optional(),
    portId: z.string().optional(),
  }),
});

export type OtherLoad = z.infer<typeof otherLoadSchema>;
