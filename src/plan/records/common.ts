import { z } from 'zod';
import type { Point } from '../../kernel/geometry.ts';

/** A point on a floor. Unknown keys are kept like everywhere, without showing in the type. */
export const pointSchema: z.ZodType<Point> = z.looseObject({ xMm: z.number(), yMm: z.number() });

/** What every record may carry besides its own fields. Unknown keys are kept and written back. */
export const shared = {
  id: z.string().min(1),
  notes: z.string().optional(),
  groupId: z.string().optional(),
  locked: z.boolean().optional(),
  /** Drawn above what has a lower one; absent counts as 0. */
  order: z.number().optional(),
  hidden: z.boolean().optional(),
};

/** A port on a record: a box's outlet, a fixture's inlet. */
export const portRefSchema = z.looseObject({ recordId: z.string(), portId: z.string() });

export type PortRef = z.infer<typeof portRefSchema>;
