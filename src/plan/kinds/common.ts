import { z } from 'zod';

/** Where a kind came from. `built-in` is only believed where the content hash matches the book. */
export const originSchema = z.looseObject({
  book: z.enum(['built-in', 'user', 'file']),
  version: z.string(),
});

/**
 * What every kind has. `lengthMm` runs along the throw (+x of the symbol), `widthMm` across it.
 * `basis` names, per field or `all`, where a figure is from: a source, `common practice`, or `assumed`.
 */
export const common = {
  id: z.string(),
  type: z.literal('kind'),
  slug: z.string(),
  name: z.string(),
  also: z.array(z.string()).default([]),
  sizeMm: z.looseObject({ lengthMm: z.number(), widthMm: z.number(), heightMm: z.number().optional() }),
  massKg: z.number(),
  symbol: z.string(),
  basis: z.record(z.string(), z.string()),
  origin: originSchema,
  notes: z.string().optional(),
};
