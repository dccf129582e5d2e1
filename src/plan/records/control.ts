import { z } from 'zod';
import { pointSchema, portRefSchema, shared } from './common.ts';
import { packsSchema } from './day.ts';

/** What one port of a desk, node or transmitter carries. A port that carries several universes has a line for each. */
export const portUniverseSchema = z.looseObject({ portId: z.string(), universeId: z.string() });

/**
 * A piece of control gear on the floor: desk, node, switch, data splitter, transmitter, receiver or repeater. Its power
 * inlet is fed by a cable like a fixture's. A receiver plugged into a fixture stands where the fixture stands.
 */
export const deviceSchema = z.looseObject({
  ...shared,
  type: z.literal('device'),
  floorId: z.string(),
  kindId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
  /** Height of its aerial, or of the device, above the floor. With a stand under it, the stand's top counts. */
  heightMm: z.number().default(1000),
  standId: z.string().optional(),
  /** The fixture a receiver is plugged into. */
  fixtureId: z.string().optional(),
  label: z.string(),
  ports: z.array(portUniverseSchema).default([]),
  /** Position of the band in use among its kind's bands. */
  band: z.int().min(0).default(0),
  /** Radiated power and sensitivity as set or measured, in place of the kind's. */
  eirpDbm: z.number().optional(),
  sensitivityDbm: z.number().optional(),
  /** Minutes its own cell lasts, as measured, in place of what follows from the kind. */
  backupMin: z.number().min(0).optional(),
  /** Packs on it that take over when its plug is pulled; what its cell of its own holds does not count then. */
  packs: packsSchema.optional(),
  /** Links it takes, where it is less or more than its kind's. */
  linksMax: z.int().min(1).optional(),
  /** The transmitter or repeater a repeater or receiver listens to. */
  listensToId: z.string().optional(),
});

/** A data line: from a data port to one thing after another. Each of `stops` passes it on to the next. */
export const lineSchema = z.looseObject({
  ...shared,
  type: z.literal('line'),
  label: z.string().default(''),
  from: portRefSchema,
  /** Fixtures and devices in the order the line reaches them. */
  stops: z.array(z.string()),
  /** Points between two ends, by the position of the end it leads to; a hop without them has the automatic route. */
  routes: z.array(z.looseObject({ hop: z.int().min(0), points: z.array(pointSchema) })).default([]),
  /** A terminator is plugged into the last device. */
  terminated: z.boolean().default(false),
  slackPct: z.number().optional(),
  /** Units on it are to be reached from the desk for remote management (ANSI E1.20). */
  remote: z.boolean().optional(),
  /** A data cable from the gear book. */
  kindId: z.string().optional(),
});

/** A tick on a setup card: one step done on one fixture. Its id is `tick:<fixture>:<step>`. */
export const tickSchema = z.looseObject({
  ...shared,
  type: z.literal('tick'),
  fixtureId: z.string(),
  step: z.string(),
  by: z.string().default(''),
  when: z.string().default(''),
});

/** What fills the air where the radio links are. Absent values are assumed and marked. */
export const radioSettingsSchema = z.looseObject({
  /** People between the aerials, when the set is full. */
  crowd: z.enum(['none', 'few', 'many']).optional(),
  /** Wi-Fi channels of the 2.4 and 5 GHz bands in use on set. */
  wifiChannels: z.array(z.int().min(1).max(177)).optional(),
  /** Loss per metre law indoors: the distance power coefficient, where it is known. */
  distanceCoefficient: z.number().optional(),
});

export type PortUniverse = z.infer<typeof portUniverseSchema>;
export type Device = z.infer<typeof deviceSchema>;
export type DataLine = z.infer<typeof lineSchema>;
export type Tick = z.infer<typeof tickSchema>;
export type RadioSettings = z.infer<typeof radioSettingsSchema>;
