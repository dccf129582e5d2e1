import { z } from 'zod';
import { common } from './common.ts';

/** What something is put on or hung from: tops of stands, heads, tube, and the parts of a building. */
export const receiverSchema = z.enum([
  'pin-16',
  'spigot-28',
  'grip-head',
  'clamp',
  'hung',
  'frame',
  'wall',
  'beam',
  'floor',
  'held',
]);

/**
 * What carries gear besides stands: tube, truss, arms, heads, clamps, lifts, cranes. It goes on any of `fits` and offers
 * `receives`. An arm puts its load `reachMm` out from what carries it; of a lift or crane `reachMm` is the furthest its
 * basket or hook comes to the side. No `ratedLoadKg` means that only the maker's table or an engineer can tell.
 */
export const riggingKindSchema = z.looseObject({
  ...common,
  family: z.literal('rigging'),
  what: z.enum([
    'pipe',
    'truss',
    'point',
    'arm',
    'head',
    'clamp',
    'plate',
    'spreader',
    'bond',
    'lift',
    'crane',
  ]),
  fits: z.array(receiverSchema).default([]),
  receives: z.array(receiverSchema).default([]),
  ratedLoadKg: z.number().optional(),
  reachMm: z.number().optional(),
  heightMinMm: z.number().optional(),
  heightMaxMm: z.number().optional(),
  /** Circle around its legs, wheels or outriggers. */
  legCircleMm: z.number().optional(),
  /** People the basket or platform is made for. */
  people: z.int().min(0).optional(),
  /** Wind at which it comes down; 0 means indoors only. */
  windLimitMps: z.number().optional(),
  /** Who may work it, in words. */
  operator: z.string().optional(),
});

export type Receiver = z.infer<typeof receiverSchema>;
