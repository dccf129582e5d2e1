import { z } from 'zod';

export const pointSchema = z.looseObject({ xMm: z.number(), yMm: z.number() });

/** What every record may carry besides its own fields. Unknown keys are kept and written back. */
export const shared = {
  id: z.string().min(1),
  notes: z.string().optional(),
  groupId: z.string().optional(),
  locked: z.boolean().optional(),
};

/** A port on a record: a box's outlet, a fixture's inlet. */
export const portRefSchema = z.looseObject({ recordId: z.string(), portId: z.string() });

export type PortRef = z.infer<typeof portRefSchema>;
