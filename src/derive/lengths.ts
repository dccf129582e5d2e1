import { type Point, polylineLengthMm } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { movingRecords, planInSetup, wholePlan } from '../plan/moves.ts';
import { kindOf, type Plan, recordOf, setupsOf } from '../plan/plan.ts';
import { autoRoute, placeOf } from '../plan/ports.ts';
import type { Cable } from '../plan/records/index.ts';
import { limitOf } from './limits.ts';
import { makeUp } from './stock.ts';

/** The length of one run, from the drawing to the pieces that make it up. All in mm. */
export interface CableLength {
  /** Along the drawn route, on the floor. */
  readonly drawnMm: number;
  /** Down from the one end and up to the other. */
  readonly risesMm: number;
  readonly slackMm: number;
  readonly neededMm: number;
  readonly piecesMm: readonly number[];
  /** Sum of the pieces: the length that carries the current. */
  readonly totalMm: number;
  /** Joints between pieces. */
  readonly couplings: number;
  /** Slack is the practice's own, not the plan's. */
  readonly slackAssumed: boolean;
  /** Pieces were made up here, not chosen by hand. */
  readonly piecesAssumed: boolean;
  /** The setup whose places need the longest cable, where an end moves between setups; it is cut for that one. */
  readonly longestIn?: Id;
}

/**
 * Length of a cable: drawn route from end to end, rises and drops, slack, made up of the kind's stock lengths.
 * Slack is the cable's own share, else the table's share with the table's least length.
 * Where an end moves between setups, the longest of all setups: the cable is cut once, and what is not needed in a setup
 * lies in a coil and carries the current all the same.
 * Gives undefined where an end is on nothing that has a place.
 */
export const cableLength = (plan: Plan, cable: Cable): CableLength | undefined => {
  const whole = wholePlan(plan);
  const moving = movingRecords(whole);
  if (!moving.has(cable.from.recordId) && !moving.has(cable.to.recordId)) return lengthAsPlaced(plan, cable);
  let longest: CableLength | undefined;
  for (const { id } of setupsOf(whole)) {
    const there = planInSetup(whole, id);
    const l = lengthAsPlaced(there, recordOf(there, 'cable', cable.id) ?? cable);
    if (l && l.neededMm > (longest?.neededMm ?? -1)) longest = { ...l, longestIn: id };
  }
  return longest;
};

const lengthAsPlaced = (plan: Plan, cable: Cable): CableLength | undefined => {
  const from = placeOf(plan, cable.from.recordId);
  const to = placeOf(plan, cable.to.recordId);
  if (!from || !to) return undefined;
  const drawnMm = polylineLengthMm([from.at, ...cable.route.points, to.at]);
  const levelMm = (floorId: string): number => recordOf(plan, 'floor', floorId)?.levelMm ?? 0;
  const between = from.floorId === to.floorId ? 0 : Math.abs(levelMm(from.floorId) - levelMm(to.floorId));
  const risesMm = Math.abs(from.heightMm) + Math.abs(to.heightMm) + between;
  const base = drawnMm + risesMm;
  const slackMm =
    cable.slackPct === undefined
      ? Math.max(limitOf(plan, 'slack-min').value, (base * limitOf(plan, 'slack-pct').value) / 100)
      : (base * Math.max(0, cable.slackPct)) / 100;
  const neededMm = base + slackMm;
  const stock = kindOf(plan, cable.kindId, 'cable')?.stockLengthsMm;
  const piecesMm = cable.piecesMm ?? (stock ? makeUp(neededMm, stock).piecesMm : []);
  return {
    drawnMm,
    risesMm,
    slackMm,
    neededMm,
    piecesMm,
    totalMm: piecesMm.reduce((a, b) => a + b, 0),
    couplings: Math.max(0, piecesMm.length - 1),
    slackAssumed: cable.slackPct === undefined,
    piecesAssumed: cable.piecesMm === undefined,
  };
};

/**
 * Length in mm that a new run between two places of one floor would need: automatic route, rises at both ends, and the
 * practice's slack.
 */
export const newRunMm = (
  plan: Plan,
  from: { readonly at: Point; readonly heightMm: number },
  to: { readonly at: Point; readonly heightMm: number },
): number => {
  const run = newRunParts(plan, from, to);
  return run.drawnMm + run.risesMm + run.slackMm;
};

/** What makes up the length of a new run: its way on the floor, the rises at both ends, and slack; in mm. */
export const newRunParts = (
  plan: Plan,
  from: { readonly at: Point; readonly heightMm: number },
  to: { readonly at: Point; readonly heightMm: number },
): { readonly drawnMm: number; readonly risesMm: number; readonly slackMm: number } => {
  const drawnMm = polylineLengthMm([from.at, ...autoRoute(from.at, to.at), to.at]);
  const risesMm = Math.abs(from.heightMm) + Math.abs(to.heightMm);
  const base = drawnMm + risesMm;
  const slackMm = Math.max(limitOf(plan, 'slack-min').value, (base * limitOf(plan, 'slack-pct').value) / 100);
  return { drawnMm, risesMm, slackMm };
};
