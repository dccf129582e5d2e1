import { z } from 'zod';
import { waySchema } from '../kinds/ports.ts';
import { pointSchema, portRefSchema, shared } from './common.ts';
import { ownCellsSchema, packFromSchema, packsSchema } from './day.ts';
import { armSchema } from './grip.ts';

const placed = {
  ...shared,
  floorId: z.string(),
  kindId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
};

export const standSchema = z.looseObject({
  ...placed,
  type: z.literal('stand'),
  /** Height of the top above the floor. */
  heightMm: z.number(),
  /** Sand bags on it, of the plan's size of bag. */
  bags: z.int().min(0).optional(),
});

/** What a fixture points at: a mark it follows, or a facing (clockwise from +x) and a tilt (down is negative). */
export const aimSchema = z.discriminatedUnion('at', [
  z.looseObject({ at: z.literal('mark'), markId: z.string() }),
  z.looseObject({ at: z.literal('facing'), facingDeg: z.number(), tiltDeg: z.number().default(0) }),
]);

/** What carries a fixture. On a stand it stands where the stand stands. */
export const supportSchema = z.discriminatedUnion('on', [
  z.looseObject({ on: z.literal('stand'), standId: z.string() }),
  z.looseObject({ on: z.literal('floor') }),
  /** `riggingId` names the tube, point, lift or crane it hangs on, where that is on the plan. */
  z.looseObject({ on: z.literal('rigged'), riggingId: z.string().optional() }),
  z.looseObject({ on: z.literal('held') }),
]);

/** Universe and start address of one fixture. `paired` allows an overlap on purpose. */
export const patchSchema = z.looseObject({
  modeId: z.string(),
  universeId: z.string(),
  address: z.number(),
  paired: z.boolean().default(false),
  /** Where a fixture parted over several places goes on, from its own slot `fromSlot` (counted from 1) on. */
  spans: z
    .array(z.looseObject({ fromSlot: z.int(), universeId: z.string(), address: z.number() }))
    .optional(),
});

export const fixtureSchema = z.looseObject({
  ...shared,
  type: z.literal('fixture'),
  floorId: z.string(),
  kindId: z.string(),
  /** Where the lamp centre is on the floor. With a stand under it, the stand's `at` counts. */
  at: pointSchema,
  /** Height of the lamp centre above the floor; with a stand under it, the stand's height counts. */
  heightMm: z.number(),
  aim: aimSchema,
  support: supportSchema,
  /** Kinds of what is between it and its support or on it: arms, heads, adapters, grip. */
  accessories: z.array(z.string()).optional(),
  arm: armSchema.optional(),
  unit: z.string(),
  channel: z.string().default(''),
  use: z.string().default(''),
  gel: z.string().default(''),
  /** Setting of its zoom: 0 spot, 100 wide; absent: wide. */
  zoomPct: z.number().min(0).max(100).optional(),
  /**
   * Barn doors that are on: how far their leaves stand from the throw, the sides seen from behind. The leaves above and below
   * are there where they are given.
   */
  doors: z
    .looseObject({
      leftDeg: z.number(),
      rightDeg: z.number(),
      topDeg: z.number().optional(),
      bottomDeg: z.number().optional(),
    })
    .optional(),
  patch: patchSchema.optional(),
  link: z.enum(['none', 'line', 'radio']).default('none'),
  /** The transmitter, repeater or receiver its radio link is with; absent: any that carries its universe. */
  linkId: z.string().optional(),
  /** Runs on its own cells or packs and takes no mains. */
  onPacks: z.boolean().default(false),
  packs: packsSchema.optional(),
  /** Fed by a lead from a pack on the floor; in place of `packs`. */
  packFrom: packFromSchema.optional(),
  ownCells: ownCellsSchema.optional(),
});

/** The box between the mains and a discharge head. It draws the power; its head's level counts. */
export const ballastSchema = z.looseObject({
  ...placed,
  type: z.literal('ballast'),
  fixtureId: z.string(),
  headCableMm: z.number(),
});

export const sourceSchema = z.looseObject({
  ...placed,
  type: z.literal('source'),
  label: z.string(),
  /** Line-to-neutral volts as measured or, for a generator, as set. Absent for a house: never assumed. */
  voltsV: z.number().optional(),
  ratedKw: z.number().optional(),
  ratedKva: z.number().optional(),
  mainBreakerA: z.number().optional(),
  /** Litres in the tank of this set, where they are known. */
  tankL: z.number().optional(),
  /** Share of the rating a set gives where it stands, by its maker; in place of the derating table. */
  ratingShare: z.number().optional(),
  /** Impedance of the supply at its outlets, leg and return together, in ohms, as measured. */
  loopOhm: z.number().optional(),
  /** A house panel's circuits as read off the panel. They take the place of the kind's ways. */
  ways: z.array(waySchema).optional(),
});

/** A wall outlet: a source's way brought out somewhere else on the floor. Its port is always `out`. */
export const outletSchema = z.looseObject({
  ...shared,
  type: z.literal('outlet'),
  floorId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
  heightMm: z.number().default(300),
  sourceId: z.string(),
  wayId: z.string(),
  connector: z.string(),
  legs: z.int().min(1).max(3).default(1),
  neutral: z.boolean().default(true),
  label: z.string(),
  /** Sockets in its plate; absent: the usual number for its connector, assumed. */
  sockets: z.int().min(1).max(8).optional(),
  /** Outdoors or in a wet place. */
  wet: z.boolean().optional(),
  /** The wall it is in and how far from the wall's start; it goes where the wall goes. */
  wallId: z.string().optional(),
  offsetMm: z.number().optional(),
});

/** Anything power passes through: distribution boxes, dimmers, transformers, splitters and multi-circuit ends. */
export const boxSchema = z.looseObject({
  ...placed,
  type: z.literal('box'),
  label: z.string(),
  /** Changes to single ways of the kind, by way id. */
  ways: z.array(waySchema).optional(),
  /** Stands outdoors or in a wet place. */
  wet: z.boolean().optional(),
  /** The outlet an adapter, tee or splitter is plugged straight into, without a cable. */
  plugsInto: portRefSchema.optional(),
  /** Where a dimmer listens: its ways are on this slot and those after it, in their order. */
  patch: z.looseObject({ universeId: z.string(), address: z.int() }).optional(),
});

/** A run of cable from an outlet to an inlet. */
export const cableSchema = z.looseObject({
  ...shared,
  type: z.literal('cable'),
  kindId: z.string(),
  from: portRefSchema,
  to: portRefSchema,
  /** Points between the two ends. With `auto` they follow the drawing's own rule, by hand they stay. */
  route: z.looseObject({ auto: z.boolean(), points: z.array(pointSchema) }),
  /** Extra length as a share of the drawn distance and rises; absent means the practice's own. */
  slackPct: z.number().optional(),
  /** Stock lengths as chosen by hand; absent means made up by the program. */
  piecesMm: z.array(z.number()).optional(),
  /** Loaded cables that lie together in one bundle, this one counted. */
  bundled: z.int().min(1).optional(),
  /** Layers of it that stay on a drum or in a coil while loaded. */
  onDrum: z.int().min(1).optional(),
  label: z.string().default(''),
});

export type Stand = z.infer<typeof standSchema>;
export type Aim = z.infer<typeof aimSchema>;
export type Support = z.infer<typeof supportSchema>;
export type Patch = z.infer<typeof patchSchema>;
export type Fixture = z.infer<typeof fixtureSchema>;
export type Ballast = z.infer<typeof ballastSchema>;
export type Source = z.infer<typeof sourceSchema>;
export type Outlet = z.infer<typeof outletSchema>;
export type Box = z.infer<typeof boxSchema>;
export type Cable = z.infer<typeof cableSchema>;
