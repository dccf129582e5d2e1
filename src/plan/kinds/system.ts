import { z } from 'zod';

/**
 * Supply systems by nominal volts. Three-wire split phase has two legs, single phase one. `120/240-delta` is a delta with
 * one winding tapped: its second leg is high. `230-it` has three lines, 230 V between them, and no neutral.
 */
export const systemSchema = z.enum([
  '120',
  '120/240',
  '120/208',
  '120/240-delta',
  '277/480',
  '347/600',
  '230',
  '230/400',
  '230-it',
]);

export type System = z.infer<typeof systemSchema>;
