import { z } from 'zod';

/** How a breaker trips. `na` is the North American moulded-case family; B, C and D are the classes of IEC 60898-1. */
export const curveSchema = z.enum(['na', 'B', 'C', 'D']);

/**
 * A port that takes power in. `legs` counts the live conductors it carries (1, 2 or 3), `neutral` says whether it has one.
 * The connector names a row of shared/connectors.json.
 */
export const inletSchema = z.looseObject({
  id: z.string(),
  connector: z.string(),
  legs: z.int().min(1).max(3),
  neutral: z.boolean(),
  label: z.string().optional(),
});

/** A port that gives power out. With a `wayId` it is protected by that way; without one it is an unprotected pass-through. */
export const outletPortSchema = z.looseObject({
  id: z.string(),
  connector: z.string(),
  legs: z.int().min(1).max(3),
  neutral: z.boolean(),
  wayId: z.string().optional(),
  label: z.string().optional(),
  /** Ways whose circuits a multi-circuit connector carries, in the order of its circuits. */
  circuitWayIds: z.array(z.string()).optional(),
  /** Circuit (from 1) of the multi-circuit inlet that comes out here. */
  circuit: z.int().min(1).optional(),
  /** Circuits of a multi-circuit connector that passes on the inlet's. */
  circuits: z.int().min(1).optional(),
});

/**
 * One protected output. `legs` are positions (0, 1, 2) among the legs of the thing it belongs to:
 * a one-pole way on the second leg is `[1]`, a two-pole way over the first and third is `[0, 2]`.
 */
export const waySchema = z.looseObject({
  id: z.string(),
  label: z.string(),
  breakerA: z.number(),
  poles: z.int().min(1).max(3),
  curve: curveSchema,
  legs: z.array(z.int().min(0).max(2)).min(1).max(3),
  rcdMa: z.number().optional(),
  /** What its residual-current device opens on: AC alternating, A also pulsating, F also mixed frequencies, B also smooth direct current. */
  rcdType: z.enum(['AC', 'A', 'F', 'B']).optional(),
});

/** How current follows voltage. Exponents are for P and Q in `exponential`. */
export const loadModelSchema = z.enum([
  'constant-power',
  'constant-current',
  'constant-impedance',
  'tungsten',
  'exponential',
]);

/** What a thing draws at its inlet at full level: input watts, ballast and supply losses included. */
export const loadSchema = z.looseObject({
  wattsW: z.number(),
  standbyW: z.number().default(0),
  powerFactor: z.number(),
  leading: z.boolean().default(false),
  model: loadModelSchema,
  expP: z.number().optional(),
  expQ: z.number().optional(),
  thirdHarmonicPct: z.number().default(0),
  inrushMultiple: z.number().optional(),
  inrushMs: z.number().optional(),
  leakageMa: z.number().default(0),
  voltsMinV: z.number(),
  voltsMaxV: z.number(),
});

export type Curve = z.infer<typeof curveSchema>;
export type InletPort = z.infer<typeof inletSchema>;
export type OutletPort = z.infer<typeof outletPortSchema>;
export type Way = z.infer<typeof waySchema>;
export type LoadModel = z.infer<typeof loadModelSchema>;
export type LoadSpec = z.infer<typeof loadSchema>;
