import { z } from 'zod';
import {
  type Complex,
  type ComplexMatrix,
  type FeederSegment,
  type FeederSpec,
  sequenceOhm,
  spreadLoads,
  transformerRatio,
} from '../engines/power/index.ts';
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

type FeederFile = z.infer<typeof feederSchema>;

const ratioOf = (t: z.infer<typeof transformerSchema>): readonly (readonly number[])[] => {
  if ('connection' in t) return transformerRatio[t.connection](t.turns);
  if ('regulator' in t) return transformerRatio.regulator(...t.regulator);
  if ('openDeltaRegulator' in t) return transformerRatio.openDeltaRegulator(...t.openDeltaRegulator);
  return t.ratio;
};

const times = (m: ComplexMatrix, k: number): ComplexMatrix =>
  m.map((row) => row.map((c): Complex => [c[0] * k, c[1] * k]));
const NOTHING: ComplexMatrix = [0, 1, 2].map(() => [0, 1, 2].map((): Complex => [0, 0]));

const segmentOf = (f: FeederFile, s: FeederFile['segments'][number]): Result<FeederSegment> => {
  const c = s.line === undefined ? undefined : f.configurations[s.line];
  if (s.line !== undefined && !c)
    return fail({
      what: `The stretch from ${s.from} to ${s.to} names a line “${s.line}” that is not there.`,
      todo: `Lines of the file: ${Object.keys(f.configurations).join(', ') || 'none'}.`,
    });
  const made = c === undefined ? undefined : 'z1' in c ? sequenceOhm(c.z1, c.z0) : c.ohm;
  const charging = c && 'ohm' in c ? c.siemens : undefined;
  return ok({
    from: s.from,
    to: s.to,
    ohm: s.ohm ?? (made ? times(made, s.length) : NOTHING),
    ...(charging ? { shuntS: charging.map((row) => row.map((b) => b * s.length)) } : {}),
    ...(s.parallel === undefined ? {} : { parallel: s.parallel }),
    ...(s.transformer ? { ratio: ratioOf(s.transformer) } : {}),
  });
};

const loadOf = (l: z.infer<typeof loadSchema>) => ({
  from: l.from,
  to: l.to,
  wattsW: l.watts,
  varsVar: l.vars,
  nominalV: l.nominalV,
  ...(l.expP === undefined ? {} : { expP: l.expP }),
  ...(l.expQ === undefined ? {} : { expQ: l.expQ }),
});

/** A feeder from the text of a file: JSON in the form that `lampwright feeder --help` tells. Problems name the place in it. */
export const readFeeder = (text: string): Result<{ readonly name: string; readonly spec: FeederSpec }> => {
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
  if (!read.success) {
    const [first] = read.error.issues;
    return fail({
      what: `The feeder cannot be read at ${first?.path.join('/') || 'its beginning'}: ${first?.message ?? ''}.`,
      todo: '“feeder --help” tells the form of the file.',
    });
  }
  const f = read.data;
  const segments: FeederSegment[] = [];
  for (const s of f.segments) {
    const made = segmentOf(f, s);
    if (!made.ok) return made;
    segments.push(made.value);
  }
  const spread = spreadLoads(
    segments,
    f.spread.map((l) => ({ along: l.along, load: loadOf(l) })),
    f.spreadAt,
  );
  const sourceV = f.sourceV.map(({ volts, degrees }): Complex => {
    const a = (degrees * Math.PI) / 180;
    return [volts * Math.cos(a), volts * Math.sin(a)];
  });
  const loads = [...f.loads.map((l) => ({ node: l.node, ...loadOf(l) })), ...spread.loads];
  return ok({ name: f.name, spec: { source: f.source, sourceV, segments: spread.segments, loads } });
};
