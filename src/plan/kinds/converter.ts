import { z } from 'zod';
import { common } from './common.ts';
import { dcPortSchema, plateSchema } from './pack.ts';
import { inletSchema, loadSchema, outletPortSchema } from './ports.ts';
import { systemSchema } from './system.ts';

/**
 * Changes one sort of supply into another. Mains go in through `inlets`, direct current through `dcIn` or `plates`; it
 * gives `outputW` at most. `load` is at a mains inlet with all of that given.
 */
export const converterKindSchema = z.looseObject({
  ...common,
  family: z.literal('converter'),
  what: z.enum(['transformer', 'ac-dc', 'dc-dc', 'inverter', 'plate-adapter']),
  inlets: z.array(inletSchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
  load: loadSchema.optional(),
  dcIn: z.array(dcPortSchema).default([]),
  dcOut: z.array(dcPortSchema).default([]),
  plates: z.array(plateSchema).default([]),
  outputW: z.number(),
  ratedKva: z.number().optional(),
  /** Nominal volts of its mains outlets, leg to neutral. */
  outputV: z.number().optional(),
  /** Volts its mains inlet is wound for: leg to neutral, or between legs where the inlet has two or three. */
  inputV: z.number().optional(),
  /** What its outlets give: one leg, two legs or three; absent: by its outlets and volts. */
  outputSystem: systemSchema.optional(),
  /** Impedance in per cent of its rating; absent: assumed. */
  impedancePct: z.number().optional(),
  efficiencyPct: z.number(),
  /** Watt-hours of its own battery: what an inverter goes on with when its mains fail. */
  storedWh: z.number().optional(),
});

export type ConverterKind = z.infer<typeof converterKindSchema>;
