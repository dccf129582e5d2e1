import { z } from 'zod';
import { pointSchema, shared } from './common.ts';

const placed = {
  ...shared,
  floorId: z.string(),
  kindId: z.string(),
  at: pointSchema,
  rotationDeg: z.number().default(0),
};

/** A frame, flag, bounce or other grip gear. It faces along its rotation. */
export const gripSchema = z.looseObject({
  ...placed,
  type: z.literal('grip'),
  /** Height of its middle above the floor. */
  heightMm: z.number(),
  /** How far it leans from upright: 0 stands, 90 lies flat overhead. Absent: upright. */
  tiltDeg: z.number().min(0).max(90).optional(),
  /** Stands that carry it. */
  supports: z.array(z.string()).default([]),
  /** Kind of the cloth in a frame. */
  clothId: z.string().optional(),
  /** Tube, point or lift it hangs on. */
  riggingId: z.string().optional(),
  /** Lines that hold it, besides stands and bags. */
  guys: z.int().min(0).default(0),
});

/** Tube, truss, a hanging point, a lift or a crane where it stands or hangs. */
export const riggingSchema = z.looseObject({
  ...placed,
  type: z.literal('rigging'),
  label: z.string().default(''),
  /** Of tube, truss and points: height above the floor. Of lifts and cranes: height the platform or hook is at. */
  heightMm: z.number(),
  /** Of tube and truss: the length in use where it is not the kind's. */
  lengthMm: z.number().optional(),
  /** Of lifts and cranes: how far to the side of its middle the platform or hook is. */
  reachMm: z.number().optional(),
  /** The load it may carry as its plate or an engineer says, where that is known for this one. */
  ratedLoadKg: z.number().optional(),
  /** People in the basket. */
  people: z.int().min(0).default(0),
  /** Who works it. */
  operator: z.string().default(''),
});

/** Where an arm between a stand and a fixture puts it. */
export const armSchema = z.looseObject({
  /** Distance from the column to the fixture; absent means the arm's own reach. */
  outMm: z.number().optional(),
  /** Which way it goes out, clockwise from +x; absent: the way the fixture faces. */
  directionDeg: z.number().optional(),
  /** A leg of the stand lies under the arm. */
  overLeg: z.boolean().default(false),
  /** Counterweight on the other end, and how far from the column it hangs. */
  counterKg: z.number().optional(),
  counterMm: z.number().optional(),
});

export type Grip = z.infer<typeof gripSchema>;
export type Rigging = z.infer<typeof riggingSchema>;
export type Arm = z.infer<typeof armSchema>;
