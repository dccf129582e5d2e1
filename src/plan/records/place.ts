import { z } from 'zod';
import { pointSchema, shared } from './common.ts';

/** One drawn level. `northDeg` is where north points, clockwise from +x. */
export const floorSchema = z.looseObject({
  ...shared,
  type: z.literal('floor'),
  name: z.string(),
  levelMm: z.number().default(0),
  ceilingMm: z.number().optional(),
  northDeg: z.number().default(270),
});

export const wallMaterials = [
  'plasterboard',
  'brick',
  'concrete',
  'glass',
  'metal',
  'wood',
  'drape',
] as const;
export const wallMaterialSchema = z.enum(wallMaterials);

/** A straight wall along its centre line. */
export const wallSchema = z.looseObject({
  ...shared,
  type: z.literal('wall'),
  floorId: z.string(),
  from: pointSchema,
  to: pointSchema,
  thicknessMm: z.number(),
  heightMm: z.number(),
  material: wallMaterialSchema,
});

/** A door, window or archway, `offsetMm` from the wall's start to the opening's near side. */
export const openingSchema = z.looseObject({
  ...shared,
  type: z.literal('opening'),
  wallId: z.string(),
  what: z.enum(['door', 'window', 'archway']),
  offsetMm: z.number(),
  widthMm: z.number(),
  heightMm: z.number(),
  sillMm: z.number().default(0),
  /** Which side of the wall the leaf opens to, seen from its start, and which end is hinged. */
  swing: z.enum(['left-start', 'left-end', 'right-start', 'right-end']).optional(),
});

/** Furniture and anything else that stands in the set: a shape with its centre at `at`. */
export const setPieceSchema = z.looseObject({
  ...shared,
  type: z.literal('setPiece'),
  floorId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
  outline: z.discriminatedUnion('shape', [
    z.looseObject({ shape: z.literal('rect'), lengthMm: z.number(), widthMm: z.number() }),
    z.looseObject({ shape: z.literal('ellipse'), lengthMm: z.number(), widthMm: z.number() }),
    z.looseObject({ shape: z.literal('polygon'), points: z.array(pointSchema).min(3) }),
  ]),
  heightMm: z.number().default(0),
  label: z.string().default(''),
  material: wallMaterialSchema.optional(),
  line: z.enum(['solid', 'hidden', 'ground']).default('solid'),
  /** Furniture or a vehicle of the gear book, drawn by its symbol inside the outline. */
  kindId: z.string().optional(),
});

/** A spot that matters: a camera, an actor, a note. */
export const markSchema = z.looseObject({
  ...shared,
  type: z.literal('mark'),
  floorId: z.string(),
  what: z.enum(['camera', 'talent', 'note']),
  at: pointSchema,
  heightMm: z.number().default(1600),
  facingDeg: z.number().default(0),
  name: z.string(),
  /** What a note says. */
  text: z.string().optional(),
  /** Photos pinned with it. */
  photoIds: z.array(z.string()).optional(),
  /** A camera of the gear book, drawn by its symbol at its size. */
  kindId: z.string().optional(),
  /** Horizontal angle of view of a camera. */
  viewDeg: z.number().optional(),
});

export type Floor = z.infer<typeof floorSchema>;
export type Wall = z.infer<typeof wallSchema>;
export type WallMaterial = z.infer<typeof wallMaterialSchema>;
export type Opening = z.infer<typeof openingSchema>;
export type SetPiece = z.infer<typeof setPieceSchema>;
export type Mark = z.infer<typeof markSchema>;
