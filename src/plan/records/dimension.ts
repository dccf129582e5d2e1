import { z } from 'zod';
import { pointSchema, shared } from './common.ts';

/**
 * One end of a dimension line. With a record it goes along with it: `byMm` off its centre, or off the named end of a
 * wall; `at` is where it was last, for when the record is gone.
 */
export const dimensionAnchorSchema = z.looseObject({
  at: pointSchema,
  recordId: z.string().optional(),
  end: z.enum(['from', 'to']).optional(),
  byMm: pointSchema.optional(),
});

/** A kept dimension line. `offsetMm` is how far beside the measured stretch the line stands, left positive. */
export const dimensionSchema = z.looseObject({
  ...shared,
  type: z.literal('dimension'),
  floorId: z.string(),
  from: dimensionAnchorSchema,
  to: dimensionAnchorSchema,
  offsetMm: z.number().default(0),
});

export type DimensionAnchor = z.infer<typeof dimensionAnchorSchema>;
export type Dimension = z.infer<typeof dimensionSchema>;
