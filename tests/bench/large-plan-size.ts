import { type Plan, recordsOf } from '../../src/plan/plan.ts';
import { largePlan } from './large-plan.ts';

const PLACED = [
  'fixture',
  'stand',
  'box',
  'source',
  'ballast',
  'device',
  'charger',
  'mark',
  'setPiece',
  'outlet',
] as const;

/** How many things stand on the floors of a plan; walls, openings and cables not counted. */
export const placedCount = (plan: Plan): number =>
  PLACED.reduce((sum, type) => sum + recordsOf(plan, type).length, 0);

/** A plan with at least so many things on its floor. */
export const planWithPlaced = (placed: number): Plan => {
  let fixtures = Math.ceil(placed * 0.6);
  for (;;) {
    const plan = largePlan(fixtures);
    const missing = placed - placedCount(plan);
    if (missing <= 0) return plan;
    fixtures += Math.max(10, Math.ceil(missing * 0.6));
  }
};
