import { z } from 'zod';
import { shared } from './common.ts';
import { radioSettingsSchema } from './control.ts';
import { batterySettingsSchema, geoPlaceSchema } from './day.ts';

export const practiceSchema = z.enum(['north-america', 'europe']);
/** Countries whose own rules or colours lie over the practice's. */
export const countrySchema = z.enum(['us', 'canada', 'uk', 'eu', 'australia']);
export const lengthUnitsSchema = z.enum(['imperial', 'metric']);

/** A sheet of labels: its size, the size of one label, how many, and where the first one starts. All as typed. */
export const labelStockSchema = z.looseObject({
  sheetWidthMm: z.number().positive(),
  sheetHeightMm: z.number().positive(),
  columns: z.int().min(1),
  rows: z.int().min(1),
  widthMm: z.number().positive(),
  heightMm: z.number().positive(),
  leftMm: z.number().min(0),
  topMm: z.number().min(0),
  /** From the left edge of one label to that of the next, and likewise down. */
  pitchXMm: z.number().positive(),
  pitchYMm: z.number().positive(),
});

const sparePctSchema = z.number().min(0).max(200).optional();

/** Spares in per cent of what the plan uses, by group of gear; absent: common practice. */
export const sparesSchema = z.looseObject({
  cable: sparePctSchema,
  lights: sparePctSchema,
  stands: sparePctSchema,
  grip: sparePctSchema,
  adapters: sparePctSchema,
});

/** Sheet and scale of the issued plot. `scale` 48 means 1:48; absent means the largest standard scale that fits. */
export const paperSchema = z.looseObject({
  sheet: z.string(),
  landscape: z.boolean().default(true),
  scale: z.number().optional(),
  /** Ids of the sheets to print, in order; absent means all, in their usual order. */
  sheets: z.array(z.string()).optional(),
  labels: labelStockSchema.optional(),
  spares: sparesSchema.optional(),
});

/** A limit the user set in place of the table's, with the reason; printed on paper. */
export const limitOverrideSchema = z.looseObject({
  limit: z.string(),
  value: z.number(),
  reason: z.string(),
});

/** The one record about the plan as a whole. Its id is always `plan`. */
export const planRecordSchema = z.looseObject({
  ...shared,
  id: z.literal('plan'),
  type: z.literal('plan'),
  title: z.string(),
  production: z.string().default(''),
  scene: z.string().default(''),
  location: z.string().default(''),
  drawingNumber: z.string().default(''),
  owner: z.string().default(''),
  dates: z.array(z.string()).default([]),
  /** Free text per role: `director-of-photography`, `gaffer`, `best-boy`, `drawn-by`. */
  people: z.record(z.string(), z.string()).default({}),
  practice: practiceSchema,
  /** Absent: the practice's own rules and colours. */
  country: countrySchema.optional(),
  lengthUnits: lengthUnitsSchema,
  frequencyHz: z.union([z.literal(50), z.literal(60)]),
  ambientC: z.number().default(30),
  /** Height above the sea; sets give less power high up. Absent counts as low ground. */
  altitudeM: z.number().optional(),
  /** Wind to reckon with where the gear stands, gusts included; 0 indoors. Absent: not known, never assumed. */
  windMps: z.number().min(0).optional(),
  /** `windMps` is the mean of a forecast; gusts are reckoned from it. */
  windIsMean: z.boolean().optional(),
  limits: z.array(limitOverrideSchema).default([]),
  batteries: batterySettingsSchema.optional(),
  place: geoPlaceSchema.optional(),
  radio: radioSettingsSchema.optional(),
  paper: paperSchema,
});

/** A level that lights differently from the others: a scene or a shot. */
export const setupSchema = z.looseObject({
  ...shared,
  type: z.literal('setup'),
  order: z.number(),
  name: z.string(),
  scene: z.string().default(''),
});

/** Level and colour (`#rrggbb`) of one part of a unit. */
export const partLevelSchema = z.looseObject({ levelPct: z.number(), color: z.string().optional() });

/** How bright one fixture is in one setup. Its id is `level:<setup>:<fixture>`. A fixture without one burns at full, marked assumed. */
export const levelSchema = z.looseObject({
  ...shared,
  type: z.literal('level'),
  setupId: z.string(),
  fixtureId: z.string(),
  levelPct: z.number(),
  /** Colour as the crew notes it: a temperature, a gel, a named colour. */
  color: z.string().optional(),
  cctK: z.number().optional(),
  /** Levels of the parts of a unit that has several, in the order of its mode; in place of `levelPct` where given. */
  parts: z.array(partLevelSchema).optional(),
});

/** A person's note that a finding is known. It prints, and changes no status. */
export const acknowledgementSchema = z.looseObject({
  ...shared,
  type: z.literal('acknowledgement'),
  findingId: z.string(),
  severity: z.enum(['stop', 'warn', 'note']),
  reason: z.string(),
  who: z.string(),
  when: z.string(),
  /** The figure as it was then, by setup; the note lapses when it worsens. */
  figure: z.number().optional(),
});

export const universeSchema = z.looseObject({
  ...shared,
  type: z.literal('universe'),
  number: z.int(),
  name: z.string().default(''),
  colorIndex: z.int().min(0).default(0),
});

/** One issue of the papers. */
export const issueSchema = z.looseObject({
  ...shared,
  type: z.literal('issue'),
  revision: z.string(),
  date: z.string(),
  note: z.string().default(''),
  planHash: z.string(),
  by: z.string().default(''),
  /** The plan as issued, as a blob. */
  snapshotId: z.string().optional(),
});

export type Practice = z.infer<typeof practiceSchema>;
export type Country = z.infer<typeof countrySchema>;
export type LabelStock = z.infer<typeof labelStockSchema>;
export type PlanRecord = z.infer<typeof planRecordSchema>;
export type Setup = z.infer<typeof setupSchema>;
export type PartLevel = z.infer<typeof partLevelSchema>;
export type Level = z.infer<typeof levelSchema>;
export type Acknowledgement = z.infer<typeof acknowledgementSchema>;
export type Universe = z.infer<typeof universeSchema>;
export type Issue = z.infer<typeof issueSchema>;
