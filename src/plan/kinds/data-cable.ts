import { z } from 'zod';
import { common } from './common.ts';
import { dataPortSchema } from './data-ports.ts';

/** A cable for control data with the same connector at both ends. A data line's `kindId` names one. */
export const dataCableKindSchema = z.looseObject({
  ...common,
  family: z.literal('dataCable'),
  connector: dataPortSchema.shape.connector,
  /** Lines in one jacket; a network cable counts as one. */
  lines: z.int().min(1).default(1),
  /** Of its pairs, in ohms. */
  impedanceOhm: z.number(),
  /** Longest run it is meant for without a repeater, a splitter or a switch between. */
  longestMm: z.number(),
  massKgPerM: z.number(),
  stockLengthsMm: z.array(z.number()).min(1),
});

export type DataCableKind = z.infer<typeof dataCableKindSchema>;
