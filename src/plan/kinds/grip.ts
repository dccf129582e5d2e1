import { z } from 'zod';
import { common } from './common.ts';
import { receiverSchema } from './rigging.ts';

/**
 * What shapes light or holds gear down: frames, flags, nets, diffusion, bounces, cloths for frames, sand bags, boxes.
 * `sizeMm` is its plan outline as it stands: `widthMm` across, `lengthMm` its thickness; `heightMm` is its own height.
 */
export const gripKindSchema = z.looseObject({
  ...common,
  family: z.literal('grip'),
  what: z.enum(['frame', 'flag', 'net', 'diffusion', 'bounce', 'cloth', 'bag', 'box']),
  fits: z.array(receiverSchema).default([]),
  /** The face wind meets; absent where it catches none. */
  areaM2: z.number().optional(),
  /** Force of the wind as a share of that on a solid board of the same face. Of a frame: where it has no cloth. */
  windShare: z.number().optional(),
  /** Stands it takes, the stand it is mostly put on (a slug), and the lines it is held with outdoors. */
  stands: z.int().min(0).default(0),
  stand: z.string().optional(),
  guys: z.int().min(0).default(0),
});
