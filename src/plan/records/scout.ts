import { z } from 'zod';
import { pointSchema, shared } from './common.ts';

/**
 * Bytes that belong to the plan: an underlay, a photo, a plan as issued. Its id is `blob:<SHA-256 of the bytes>`, so that
 * the same bytes are there once. In a plan file they are parts of their own beside the records.
 */
export const blobSchema = z.looseObject({
  ...shared,
  type: z.literal('blob'),
  mediaType: z.enum(['image/png', 'image/jpeg', 'application/json', 'application/gzip']),
  base64: z.string().meta({ contentEncoding: 'base64' }),
});

/**
 * Something laid under the drawing: a picture, or line work baked into paths. `at` is where its upper left corner is on
 * the floor; `mmPerUnit` is the size of a pixel or of a unit of its paths there.
 */
export const underlaySchema = z.looseObject({
  ...shared,
  type: z.literal('underlay'),
  floorId: z.string(),
  name: z.string(),
  /** `image`: the blob is a PNG or JPEG. `lines`: the blob is JSON line work. */
  what: z.enum(['image', 'lines']),
  blobId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
  mmPerUnit: z.number().positive(),
  /** Whether someone has scaled it from a known length or the file gave its units; else its scale is a guess. */
  scaled: z.boolean().default(false),
  widthUnits: z.number(),
  heightUnits: z.number(),
  /** 0 shows it full, 100 not at all. */
  fadePct: z.number().min(0).max(100).default(50),
  order: z.number().default(0),
  /** Whether it prints with the plot; absent: it does. */
  onPaper: z.boolean().optional(),
});

/** A photo pinned to a spot, looking to `facingDeg`. */
export const photoSchema = z.looseObject({
  ...shared,
  type: z.literal('photo'),
  floorId: z.string(),
  at: pointSchema,
  facingDeg: z.number().optional(),
  blobId: z.string(),
  widthPx: z.int(),
  heightPx: z.int(),
  /** What its pin says: PH1. */
  label: z.string().default(''),
  caption: z.string().default(''),
});

export const featureWhats = [
  'ground',
  'kerb',
  'road',
  'tree',
  'facade',
  'pole',
  'water',
  'wet-area',
  'exit',
  'fire-lane',
  'power-line',
] as const;

/**
 * What is there outdoors, and what must be kept clear indoors: lines (kerb, facade, overhead power line), areas (road,
 * water, wet area, fire lane, ground at another level) or spots (tree, pole, exit), by the number of points and `closed`.
 */
export const featureSchema = z.looseObject({
  ...shared,
  type: z.literal('feature'),
  floorId: z.string(),
  what: z.enum(featureWhats),
  points: z.array(pointSchema).min(1),
  closed: z.boolean().default(false),
  /** Of a tree's crown or a pole. */
  radiusMm: z.number().optional(),
  /** Height of its top, of the lowest wire of a power line, or how far the ground is above the floor's level. */
  heightMm: z.number().default(0),
  /** Volts of a power line as the utility said; absent: not known. */
  voltsV: z.number().optional(),
  label: z.string().default(''),
});

/** Where cables cross a way that stays open: a ramp on the ground, or flown over it. */
export const crossingSchema = z.looseObject({
  ...shared,
  type: z.literal('crossing'),
  floorId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
  lengthMm: z.number(),
  how: z.enum(['ramp', 'flown']),
  /** Of the lowest cable, where it is flown. */
  heightMm: z.number().default(0),
  /** Channels of one ramp. */
  channels: z.int().min(1).default(5),
});

export type Blob = z.infer<typeof blobSchema>;
export type Underlay = z.infer<typeof underlaySchema>;
export type Photo = z.infer<typeof photoSchema>;
export type Feature = z.infer<typeof featureSchema>;
export type FeatureWhat = (typeof featureWhats)[number];
export type Crossing = z.infer<typeof crossingSchema>;
