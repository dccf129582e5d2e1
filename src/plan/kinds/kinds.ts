import { z } from 'zod';
import { adapterKindSchema } from './adapter.ts';
import { chargerKindSchema } from './charger.ts';
import { common } from './common.ts';
import { converterKindSchema } from './converter.ts';
import { dataCableKindSchema } from './data-cable.ts';
import { dataSplitterKindSchema, nodeKindSchema, videoKindSchema } from './data-gear.ts';
import { dataPortSchema } from './data-ports.ts';
import { dimmerKindSchema } from './dimmer.ts';
import { gripKindSchema } from './grip.ts';
import { packInSchema, packKindSchema } from './pack.ts';
import { inletSchema, loadSchema, outletPortSchema, waySchema } from './ports.ts';
import { receiverKindSchema, repeaterKindSchema, transmitterKindSchema } from './radio.ts';
import { riggingKindSchema } from './rigging.ts';
import { systemSchema } from './system.ts';

export { originSchema } from './common.ts';

const ports = {
  inlets: z.array(inletSchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
};

export const modeSchema = z.looseObject({
  id: z.string(),
  name: z.string(),
  slots: z.int().min(0),
  parts: z.int().min(1).default(1),
  /** Slots of one part; the slots before the first part are the unit's own. */
  partSlots: z.int().min(1).optional(),
  /** Address ranges of a mode that has several, each with a start address of its own; `slots` is the first one's. */
  breaks: z
    .array(z.looseObject({ number: z.int(), slots: z.int().min(0), occupied: z.int().min(0).optional() }))
    .optional(),
  /** What each slot is for, by break and slot; empty text for a gap. */
  slotNames: z.array(z.array(z.string())).optional(),
});

export const fixtureKindSchema = z.looseObject({
  ...common,
  ...ports,
  family: z.literal('fixture'),
  source: z.enum(['tungsten', 'discharge', 'led', 'fluorescent']),
  style: z.string(),
  /** Absent where a separate ballast draws the power. */
  load: loadSchema.optional(),
  needsBallast: z.boolean().default(false),
  mount: z.looseObject({
    fits: z.array(z.enum(['pin-16', 'spigot-28', 'clamp', 'clip', 'socket', 'hung', 'floor', 'held'])),
  }),
  beamDeg: z.number().optional(),
  fieldDeg: z.number().optional(),
  candelaCd: z.number().optional(),
  /** Narrow end of a zoom; `beamDeg` and `candelaCd` are then its wide end. */
  spot: z.looseObject({ beamDeg: z.number(), candelaCd: z.number() }).optional(),
  cct: z.looseObject({ minK: z.number(), maxK: z.number(), color: z.boolean().default(false) }).optional(),
  modes: z.array(modeSchema).default([]),
  /** Data ports where they are known; absent on a kind with modes: five-pin in and through, assumed. */
  dataIn: z.array(dataPortSchema).optional(),
  dataOut: z.array(dataPortSchema).optional(),
  /** Sensitivity of a built-in radio receiver; absent: none built in. */
  radioIn: z
    .looseObject({
      sensitivityDbm: z.number(),
      antennaGainDbi: z.number(),
      fromMhz: z.number(),
      toMhz: z.number(),
    })
    .optional(),
  /** How its address is set. */
  addressBy: z.enum(['menu', 'switches']).optional(),
  /** Settings its menu has besides mode and address; absent: what units of its sort have, assumed. */
  settings: z.array(z.enum(['curve', 'frequency', 'fan', 'loss'])).optional(),
  /** How it is controlled where it takes no control data: by its maker's app only, at the unit, by hand. */
  controlBy: z.enum(['app', 'local', 'manual']).optional(),
  /** Parts of a mode that make a field lie in so many columns, row by row; absent: one row, or a square of a flat unit. */
  partColumns: z.int().min(1).optional(),
  ownCellsWh: z.number().optional(),
  packIn: packInSchema.optional(),
  hotRestrikeMin: z.number().optional(),
  warmUpMin: z.number().optional(),
  /** Least distance in front and around to cloth and other things that burn, and to lit surfaces. */
  clearanceMm: z.looseObject({ cloth: z.number().optional(), surface: z.number().optional() }).optional(),
  /** Its own top view as plain absolute paths in millimetres, x right and the front down the page. */
  outlineSvg: z.string().optional(),
});

export const ballastKindSchema = z.looseObject({
  ...common,
  ...ports,
  family: z.literal('ballast'),
  load: loadSchema,
  /** Slugs of the heads it runs. */
  heads: z.array(z.string()),
  headCablesMm: z.array(z.number()).default([]),
  /** Light of a head on it: even (a square-wave supply), or pulsing at twice the mains frequency. */
  flicker: z.enum(['even', 'twice-mains']).optional(),
});

export const standKindSchema = z.looseObject({
  ...common,
  family: z.literal('stand'),
  receives: z.array(z.enum(['pin-16', 'spigot-28', 'grip-head', 'clamp'])),
  /** Legs evenly spaced; absent means three. */
  legs: z.int().min(3).optional(),
  ratedLoadKg: z.number(),
  heightMinMm: z.number(),
  heightMaxMm: z.number(),
  legCircleMm: z.number(),
});

export const sourceKindSchema = z.looseObject({
  ...common,
  family: z.literal('source'),
  what: z.enum(['generator', 'service', 'house-panel', 'wall-circuit', 'power-station']),
  system: systemSchema,
  ratedKw: z.number().optional(),
  ratedKva: z.number().optional(),
  mainBreakerA: z.number().optional(),
  /** Litres in the tank of a set. */
  tankL: z.number().optional(),
  /** What the cells of a power station hold. */
  storedWh: z.number().optional(),
  /** What it gives for a moment at switching on, and what its inverter gives of what it takes from the cells. */
  surgeW: z.number().optional(),
  inverterPct: z.number().optional(),
  /** Where a power station is plugged in to be charged, and what it then draws there. */
  inlets: z.array(inletSchema).optional(),
  load: loadSchema.optional(),
  ways: z.array(waySchema).default([]),
  outlets: z.array(outletPortSchema).default([]),
});

export const boxKindSchema = z.looseObject({
  ...common,
  ...ports,
  family: z.literal('box'),
  mainBreakerA: z.number().optional(),
  mainPoles: z.int().min(1).max(3).optional(),
  ways: z.array(waySchema).default([]),
});

/** A cable ready to run, with a plug (into an outlet) and a socket (for an inlet). */
export const cableKindSchema = z.looseObject({
  ...common,
  family: z.literal('cable'),
  construction: z.enum(['multicore', 'single-conductors']),
  legs: z.int().min(1).max(3),
  neutral: z.boolean(),
  /** Row of shared/conductors.json, like `awg:12` or `mm2:2.5`. */
  conductor: z.string(),
  neutralConductor: z.string().optional(),
  /** Neutral conductors side by side, where they are not as many as `parallel`: 2 for a doubled neutral. */
  neutralParallel: z.int().min(1).optional(),
  parallel: z.int().min(1).default(1),
  /** Circuits in one multi-circuit cable, each with its own live and neutral conductor; absent means one. */
  circuits: z.int().min(1).optional(),
  ampacityA: z.number(),
  plug: z.string(),
  socket: z.string(),
  stockLengthsMm: z.array(z.number()).min(1),
});

export const sceneryKindSchema = z.looseObject({
  ...common,
  family: z.enum(['camera', 'furniture', 'vehicle']),
});

export const kindSchema = z.discriminatedUnion('family', [
  fixtureKindSchema,
  ballastKindSchema,
  standKindSchema,
  gripKindSchema,
  riggingKindSchema,
  sourceKindSchema,
  boxKindSchema,
  cableKindSchema,
  dimmerKindSchema,
  adapterKindSchema,
  converterKindSchema,
  packKindSchema,
  chargerKindSchema,
  transmitterKindSchema,
  receiverKindSchema,
  repeaterKindSchema,
  nodeKindSchema,
  dataSplitterKindSchema,
  videoKindSchema,
  dataCableKindSchema,
  sceneryKindSchema,
]);

export type * from './adapter.ts';
export type * from './charger.ts';
export type * from './converter.ts';
export type * from './data-cable.ts';
export type * from './data-gear.ts';
export type * from './data-ports.ts';
export type * from './dimmer.ts';
export type * from './pack.ts';
export type * from './radio.ts';
export type { System } from './system.ts';

export type Mode = z.infer<typeof modeSchema>;
export type FixtureKind = z.infer<typeof fixtureKindSchema>;
export type BallastKind = z.infer<typeof ballastKindSchema>;
export type StandKind = z.infer<typeof standKindSchema>;
export type GripKind = z.infer<typeof gripKindSchema>;
export type RiggingKind = z.infer<typeof riggingKindSchema>;
export type SourceKind = z.infer<typeof sourceKindSchema>;
export type BoxKind = z.infer<typeof boxKindSchema>;
export type CableKind = z.infer<typeof cableKindSchema>;
export type SceneryKind = z.infer<typeof sceneryKindSchema>;
export type Kind = z.infer<typeof kindSchema>;
export type KindFamily = Kind['family'];
