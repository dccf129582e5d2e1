import { z } from 'zod';
import { common } from './common.ts';

/**
 * What a pack is held by and takes its current through. Two voltages share the plates of bricks, so a plate alone never
 * says that a pack suits a unit: compare the volts.
 */
export const plateSchema = z.enum([
  'v-plate',
  'three-stud',
  'slide-7v',
  'block-28',
  'block-48',
  'belt-xlr4',
  'terminals',
  'built-in',
]);

/** Cell chemistry. It sets full and least volts of a cell, how it is charged and carried. */
export const chemistrySchema = z.enum(['li-ion', 'lifepo4', 'nimh', 'lead-acid']);

/** A direct-current port by its connector in words; packs and converters have no connector that a mains cable fits. */
export const dcPortSchema = z.looseObject({
  id: z.string(),
  connector: z.enum(['xlr-4', 'xlr-3', 'two-pin-tap', 'barrel', 'usb-c', 'plate', 'terminals', 'lamp-feed']),
  voltsV: z.number(),
  maxA: z.number(),
  label: z.string().optional(),
});

/**
 * A battery. `energyWh` is what its label prints, `voltsV` the nominal volts of all cells in a row. `chargeMin` is from
 * empty to full at `chargeW`, the power that goes into it at most.
 */
export const packKindSchema = z.looseObject({
  ...common,
  family: z.literal('pack'),
  chemistry: chemistrySchema,
  plate: plateSchema,
  cells: z.int().min(1),
  voltsV: z.number(),
  fullV: z.number(),
  emptyV: z.number(),
  capacityAh: z.number(),
  energyWh: z.number(),
  continuousA: z.number(),
  peakA: z.number(),
  chargeW: z.number(),
  chargeMin: z.number(),
  dcOut: z.array(dcPortSchema).default([]),
});

/** What a unit takes from packs: plates, how many packs at once, the volts it runs on and, where less than in full, the watts. */
export const packInSchema = z.looseObject({
  plates: z.array(plateSchema).min(1),
  packs: z.int().min(1).default(1),
  joined: z.enum(['parallel', 'series']).default('parallel'),
  minV: z.number(),
  maxV: z.number(),
  maxW: z.number().optional(),
  /** Current one of its plates carries for long, where it is known. */
  maxA: z.number().optional(),
  /** Times its watts it takes from packs for a moment when it is switched on at full; absent: not known. */
  inrushMultiple: z.number().optional(),
  hotSwap: z.boolean().default(false),
});

export type PackIn = z.infer<typeof packInSchema>;
export type Plate = z.infer<typeof plateSchema>;
export type DcPort = z.infer<typeof dcPortSchema>;
export type PackKind = z.infer<typeof packKindSchema>;
