import { z } from 'zod';
import { pointSchema, shared } from './common.ts';

/** Latest minute of a shooting day, counted from its 00:00: noon of the next day. */
export const LAST_MINUTE = 2160;

/** What a stretch of the day is for. Only `setup` and `pre-light` burn a whole setup. */
export const blockWhatSchema = z.enum(['setup', 'pre-light', 'meal', 'move', 'wrap', 'other']);

/**
 * A stretch of a shooting day. Days count from 1 and have the plan's dates in their order; times are minutes after the
 * day's 00:00 and may pass 1440. In a meal, a move and the like only `burnsThrough` stays on, at the level of `setupId`
 * or, without it, of the setup before. Blocks of two crews may overlap.
 */
export const blockSchema = z.looseObject({
  ...shared,
  type: z.literal('block'),
  day: z.int().min(1),
  startMin: z.number(),
  endMin: z.number(),
  what: blockWhatSchema,
  setupId: z.string().optional(),
  label: z.string().default(''),
  burnsThrough: z.array(z.string()).default([]),
  crew: z.enum(['shooting', 'rigging']).default('shooting'),
});

/** How many packs of one kind the crew has, how many of them it keeps back, and their state of health where it is known. */
export const stockSchema = z.looseObject({
  ...shared,
  type: z.literal('stock'),
  kindId: z.string(),
  count: z.int().min(0),
  reserve: z.int().min(0).default(0),
  sohPct: z.number().optional(),
});

/** A charger on the floor. It is a load of the supply it is plugged into. */
export const chargerSchema = z.looseObject({
  ...shared,
  type: z.literal('charger'),
  floorId: z.string(),
  kindId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
  label: z.string(),
  /** Bays in use, where not all of its kind's are. */
  bays: z.int().min(0).optional(),
});

/** The lead between packs and a unit: one-way length and a row of shared/conductors.json. */
export const packLeadSchema = z.looseObject({ lengthMm: z.number(), conductor: z.string() });

/** Packs a fixture runs on: the kind, how many at once and how they are joined, and what is between. */
export const packsSchema = z.looseObject({
  kindId: z.string(),
  count: z.int().min(1).default(1),
  joined: z.enum(['parallel', 'series']).default('parallel'),
  /** A converter's kind between the packs and the unit. */
  converterId: z.string().optional(),
  lead: packLeadSchema.optional(),
  /** A second plate takes over while a pack is changed; in place of what the kind says. */
  hotSwap: z.boolean().optional(),
});

/** What a unit is fed from by a lead of its own: a pack on the floor that feeds several. */
export const packFromSchema = z.looseObject({
  packId: z.string(),
  /** Outlet of the pack its lead is in; absent: the next free one. */
  outletId: z.string().optional(),
  /** Its lead; absent: as long as the way on the floor, of the table's conductor, both assumed. */
  lead: packLeadSchema.optional(),
  /** A converter's kind at the end of the lead. */
  converterId: z.string().optional(),
});

/**
 * A block, belt or other pack that stands on the floor and feeds units by leads of direct current: one, or several of a kind
 * joined. It is changed for all its units at once.
 */
export const floorPackSchema = z.looseObject({
  ...shared,
  type: z.literal('pack'),
  floorId: z.string(),
  kindId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
  label: z.string(),
  count: z.int().min(1).default(1),
  joined: z.enum(['parallel', 'series']).default('parallel'),
  /** A second one takes over while it is changed. */
  hotSwap: z.boolean().default(false),
});

/** What is done with a unit that runs on its own cells when they are empty. */
export const ownCellsSchema = z.looseObject({
  /** `exchange`: a charged unit takes its place. `recharge`: it is plugged in whenever it is off. `none`: neither. */
  when: z.enum(['none', 'recharge', 'exchange']).default('none'),
  chargeMin: z.number().optional(),
});

/** Values that hold for all packs of the plan; what is absent is assumed from the table. */
export const batterySettingsSchema = z.looseObject({
  /** Temperature of the cells. */
  cellC: z.number().optional(),
  sohPct: z.number().optional(),
  /** State of charge at which packs are changed. */
  swapAtPct: z.number().optional(),
  /** Packs and units with cells travel by passenger aircraft, carried by so many people; absent: not known how many. */
  byAir: z.boolean().optional(),
  travellers: z.number().optional(),
  /** How long a change of packs takes. */
  swapMin: z.number().optional(),
});

/** Where on earth the set is, and how far its clocks are ahead of UTC on the shooting days. */
export const geoPlaceSchema = z.looseObject({
  latDeg: z.number().min(-90).max(90),
  lonDeg: z.number().min(-180).max(180),
  utcOffsetMin: z.number(),
});

export type Block = z.infer<typeof blockSchema>;
export type BlockWhat = z.infer<typeof blockWhatSchema>;
export type Stock = z.infer<typeof stockSchema>;
export type Charger = z.infer<typeof chargerSchema>;
export type PackLead = z.infer<typeof packLeadSchema>;
export type PackUse = z.infer<typeof packsSchema>;
export type PackFrom = z.infer<typeof packFromSchema>;
export type FloorPack = z.infer<typeof floorPackSchema>;
export type OwnCellsUse = z.infer<typeof ownCellsSchema>;
export type BatterySettings = z.infer<typeof batterySettingsSchema>;
export type GeoPlace = z.infer<typeof geoPlaceSchema>;
