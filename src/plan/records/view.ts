import { z } from 'zod';
import { pointSchema, shared } from './common.ts';

/** How one layer of the drawing shows. */
export const layerShowSchema = z.looseObject({
  show: z.enum(['full', 'faded', 'hidden']).default('full'),
  locked: z.boolean().default(false),
});

/** A saved view of a floor: what is seen of it and how. */
export const viewSchema = z.looseObject({
  ...shared,
  type: z.literal('view'),
  name: z.string(),
  floorId: z.string(),
  center: pointSchema,
  /** Millimetres of floor across the view. */
  spanMm: z.number().positive(),
  setupId: z.string().optional(),
  layers: z.record(z.string(), layerShowSchema).default({}),
  labelFields: z.array(z.string()).optional(),
});

/** A label moved by hand, with a leader to what it names. Its id is `label:<record>`; the offset is from the record's place. */
export const labelPlaceSchema = z.looseObject({
  ...shared,
  type: z.literal('labelPlace'),
  recordId: z.string(),
  dxMm: z.number(),
  dyMm: z.number(),
});

/**
 * Where something is in one setup, when it moves between setups. Its id is `move:<setup>:<record>`. A fixture keeps its
 * plug; its cable is cut for the longest place.
 */
export const moveSchema = z.looseObject({
  ...shared,
  type: z.literal('move'),
  setupId: z.string(),
  recordId: z.string(),
  at: pointSchema,
  heightMm: z.number().optional(),
  rotationDeg: z.number().optional(),
  facingDeg: z.number().optional(),
  tiltDeg: z.number().optional(),
  /** The mark a fixture follows in this setup, in place of facing anywhere. */
  aimMarkId: z.string().optional(),
});

export type LayerShow = z.infer<typeof layerShowSchema>;
export type View = z.infer<typeof viewSchema>;
export type LabelPlace = z.infer<typeof labelPlaceSchema>;
export type Move = z.infer<typeof moveSchema>;
