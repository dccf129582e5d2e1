import { z } from 'zod';
import { fail, ok, type Result } from '../kernel/result.ts';

const complexSchema = z.tuple([z.number(), z.number()]);
const matrixSchema = z.array(z.array(complexSchema));

const loadSchema = z.strictObject({
  from: z.int(),
  to: z.int(),
  watts: z.number().default(0),
  vars: z.number().default(0),
  nominalV: z.number(),
  expP: z.number().optional(),
  expQ: z.number().optional(),
});

const transformerSchema = z.union([
  z.strictObject({
    connection: z.enum([
      'wyeWye',
      'deltaWye',
      'deltaWyeAhead',
      'deltaDelta',
      'wyeDelta',
      'openDelta',
      'openWyeOpenDelta',
    ]),
    turns: z.number(),
  }),
  z.strictObject({ regulator: z.tuple([z.number(), z.number(), z.number()]) }),
  z.strictObject({ openDeltaRegulator: z.tuple([z.number(), z.number()]) }),
  z.strictObject({ ratio: z.array(z.array(z.number())) }),
]);

/** Lines by name, per unit of length: a full matrix, 3×3 or 4×4, or sequence impedances; charging in siemens. */
const configurationSchema = z.union([
  z.strictObject({ ohm: matrixSchema, siemens: z.array(z.array(z.number())).optional() }),
  z.strictObject({ z1: complexSchema, z0: complexSchema }),
]);

const feederSchema = z.strictObject({
  format: z.literal('lampwright-feeder'),
  version: z.literal(1),
  name: z.string().default(''),
  source: z.string(),
  /** Volts to earth and degrees of the legs, and of the neutral where it is not at earth. */
  sourceV: z.array(z.strictObject({ volts: z.number(), degrees: z.number() })),
  configurations: z.record(z.string(), configurationSchema).default({}),
  segments: z.array(
    z.strictObject({
      from: z.string(),
      to: z.string(),
      /** A configuration and how long, or `ohm` of the whole; a transformer at the head of it. Neither: no impedance. */
      line: z.string().optional(),
      length: z.number().min(0).default(1),
      ohm: matrixSchema.optional(),
      parallel: z.number().optional(),
      transformer: transformerSchema.optional(),
    }),
  ),
  loads: z.array(z.strictObject({ node: z.string(), ...loadSchema.shape })).default([]),
  spread: z
    .array(z.strictObject({ along: z.tuple([z.string(), z.string()]), ...loadSchema.shape }))
    .default([]),
  spreadAt: z.enum(['middle', 'ends', 'quarter']).default('middle'),
});

export type FeederFile = z.infer<typeof feederSchema>;
export type FeederFileLoad = z.infer<typeof loadSchema>;
export type FeederFileTransformer = z.infer<typeof transformerSchema>;

/** A feeder file from its text: JSON in the form that `lampwright feeder --help` tells. Problems name the place in it. */
export const readFeederFile = (text: string): Result<FeederFile> => {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (e) {
    return fail({
      what: `This is no JSON: ${(e as Error).message}.`,
      todo: 'Look at that place of the file.',
    });
  }
  const read = feederSchema.safeParse(json);
  if (read.success) return ok(read.data);
  const [first] = read.error.issues;
  return fail({
    what: `The feeder cannot be read at ${first?.path.join('/') || 'its beginning'}: ${first?.message ?? ''}.`,
    todo: '“feeder --help” tells the form of the file.',
  });
};
