import { z } from 'zod';

/** One end of a data line. A five-pin or three-pin port carries one universe, a network or radio port several. */
export const dataPortSchema = z.looseObject({
  id: z.string(),
  connector: z.enum(['xlr-5', 'xlr-3', 'ethernet', 'radio', 'usb']),
  universes: z.int().min(1),
  label: z.string().optional(),
});

export type DataPort = z.infer<typeof dataPortSchema>;
