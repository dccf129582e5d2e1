import { z } from 'zod';
import { common } from './common.ts';
import { chemistrySchema, plateSchema } from './pack.ts';
import { inletSchema, loadSchema, outletPortSchema } from './ports.ts';

/**
 * Charges packs in bays. `bayW` goes into one pack at most; `together` bays charge at once, `sharedW` between all of them
 * where that is less. `load` is at its inlet with every bay busy that can be.
 */
export const chargerKindSchema = z.looseObject({
  ...common,
  family: z.literal('charger'),
  inlets: z.array(inletSchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
  load: loadSchema,
  plates: z.array(plateSchema).min(1),
  chemistries: z.array(chemistrySchema).min(1),
  /** Nominal volts of the packs it takes. */
  packVolts: z.looseObject({ minV: z.number(), maxV: z.number() }),
  bays: z.int().min(1),
  together: z.int().min(1),
  bayW: z.number(),
  sharedW: z.number().optional(),
});

export type ChargerKind = z.infer<typeof chargerKindSchema>;
