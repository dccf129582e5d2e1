import { z } from 'zod';
import { shared } from './common.ts';

/**
 * What someone measured at a point of the supply. `on` names a source, box, wall outlet, cable or load, or with `wayId` a way.
 * Kept as written; it changes no figure, it stands beside the computed one.
 */
export const measurementSchema = z.looseObject({
  ...shared,
  type: z.literal('measurement'),
  on: z.looseObject({ recordId: z.string(), wayId: z.string().optional() }),
  /** Setup that was on; absent where it is not said. */
  setupId: z.string().optional(),
  /** Leg it was measured on, 0-based; absent: the fullest, or the only one. */
  leg: z.int().min(0).max(2).optional(),
  voltsV: z.number().optional(),
  amps: z.number().optional(),
  /** Amps in the neutral at the same time. */
  neutralA: z.number().optional(),
  hertz: z.number().optional(),
  polarity: z.enum(['right', 'wrong']).optional(),
  /** Residual-current device by its test: it opened, or it did not. */
  deviceTest: z.enum(['opened', 'did-not-open']).optional(),
  by: z.string().default(''),
  /** Date and time as typed, like `2026-03-09 07:40`. */
  when: z.string().default(''),
});

export type Measurement = z.infer<typeof measurementSchema>;
