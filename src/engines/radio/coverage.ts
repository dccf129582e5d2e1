import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import { type End, type Ground, groundOf, hopsTo } from './budget.ts';
import { binOf, byDirection } from './directions.ts';
import { computeRadio } from './links.ts';
import { radioModel } from './model.ts';
import { sceneOf } from './scene.ts';
import type { Sender } from './types.ts';

/** What a coverage picture is wanted of. */
export interface CoverageAsk {
  readonly floorId: Id;
  /** The senders whose best margin counts at each place. */
  readonly senderIds: readonly Id[];
  /** Metres between the places. */
  readonly stepM: number;
  /** Height of the receiving aerial above the floor; absent: the middle of those of the plan, else 1.5 m. */
  readonly heightM?: number | undefined;
  readonly sensitivityDbm?: number | undefined;
}

/** Margins over a floor, row by row from its upper left corner; NaN where nothing is computed. */
export interface CoverageGrid {
  readonly floorId: Id;
  readonly originXMm: number;
  readonly originYMm: number;
  readonly stepMm: number;
  readonly columns: number;
  readonly rows: number;
  readonly marginDb: Float32Array;
  readonly heightM: number;
  readonly sensitivityDbm: number;
  readonly senderIds: readonly Id[];
}

/** A place every so often at most: larger floors are looked at more coarsely. */
const MOST_PLACES = 120_000;
/** Shown around what is drawn, metres. */
const AROUND_M = 2;
/** Box in metres around the walls, set pieces and gear of a floor; undefined for an empty floor. */
export const floorBoxM = (plan: Plan, floorId: Id) => {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  const take = (x: number, y: number): void => {
    if (!Number.isFinite(x) || !Number.isFinite(y)) return;
    box.minX = Math.min(box.minX, x);
    box.minY = Math.min(box.minY, y);
    box.maxX = Math.max(box.maxX, x);
    box.maxY = Math.max(box.maxY, y);
  };
  for (const b of sceneOf(plan, 2400).barriers)
    if (b.floorId === floorId) b.xs.forEach((x, i) => void take(x, b.ys[i] ?? Number.NaN));
  for (const type of ['fixture', 'stand', 'device', 'box', 'mark', 'source'] as const)
    for (const r of recordsOf(plan, type)) if (r.floorId === floorId) take(r.at.xMm / 1000, r.at.yMm / 1000);
  return box.minX <= box.maxX ? box : undefined;
};

const middle = (values: readonly number[]): number | undefined =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** The receiver a picture is made for: the middle height and the weakest ear of what listens on the floor. */
export const usualReceiver = (plan: Plan, floorId: Id) => {
  const here = [...radioModel(plan).listeners.values()].filter((l) => l.floorId === floorId);
  return {
    heightM: middle(here.map((l) => l.heightM)) ?? 1.5,
    sensitivityDbm:
      here.length > 0
        ? Math.max(...here.map((l) => l.sensitivityDbm))
        : limitOf(plan, 'radio-sensitivity').value,
  };
};

const fill = (
  g: Ground,
  s: Sender,
  out: Float32Array,
  grid: Omit<CoverageGrid, 'marginDb'>,
  most: number,
): void => {
  const bins = byDirection(g.scene, s.spot.x, s.spot.y);
  const level = (recordOf(g.plan, 'floor', grid.floorId)?.levelMm ?? 0) / 1000;
  const spot = { x: 0, y: 0, z: level + grid.heightM };
  const hop = hopsTo(g, s, grid.floorId);
  const end = {
    floorId: grid.floorId,
    spot,
    heightM: grid.heightM,
    gainDbi: 0,
    sensitivityDbm: grid.sensitivityDbm,
  };
  for (let row = 0; row < grid.rows; row++) {
    spot.y = (grid.originYMm + row * grid.stepMm) / 1000;
    for (let col = 0; col < grid.columns; col++) {
      spot.x = (grid.originXMm + col * grid.stepMm) / 1000;
      const only = bins[binOf(spot.x - s.spot.x, spot.y - s.spot.y)] ?? [];
      const m = Math.min(most, hop(end, only));
      const at = row * grid.columns + col;
      const now = out[at] ?? Number.NaN;
      if (Number.isNaN(now) || m > now) out[at] = m;
    }
  }
};

/** The least margin on the way to a sender: none for a transmitter, that of its repeaters else. */
const upstreamDb = (plan: Plan, s: Sender): number => {
  if (s.role === 'transmitter') return Number.POSITIVE_INFINITY;
  return computeRadio(plan).links.get(s.id)?.marginDb ?? Number.NaN;
};

/**
 * Margins of the best of some senders over a floor, for a receiver of a given height. Undefined where the floor is empty
 * or none of the senders is in the plan.
 */
export const coverage = (plan: Plan, ask: CoverageAsk): CoverageGrid | undefined => {
  const box = floorBoxM(plan, ask.floorId);
  const model = radioModel(plan);
  const senders = ask.senderIds.flatMap((id) => model.senders.get(id) ?? []);
  if (!box || senders.length === 0) return undefined;
  const widthM = box.maxX - box.minX + 2 * AROUND_M;
  const heightM = box.maxY - box.minY + 2 * AROUND_M;
  const stepM = Math.max(0.05, ask.stepM, Math.sqrt((widthM * heightM) / MOST_PLACES));
  const usual = usualReceiver(plan, ask.floorId);
  const grid = {
    floorId: ask.floorId,
    originXMm: (box.minX - AROUND_M) * 1000,
    originYMm: (box.minY - AROUND_M) * 1000,
    stepMm: stepM * 1000,
    columns: Math.max(2, Math.ceil(widthM / stepM) + 1),
    rows: Math.max(2, Math.ceil(heightM / stepM) + 1),
    heightM: ask.heightM ?? usual.heightM,
    sensitivityDbm: ask.sensitivityDbm ?? usual.sensitivityDbm,
    senderIds: senders.map((s) => s.id),
  };
  const marginDb = new Float32Array(grid.columns * grid.rows).fill(Number.NaN);
  for (const s of senders) fill(groundOf(plan, model.air, s.fMhz), s, marginDb, grid, upstreamDb(plan, s));
  return { ...grid, marginDb };
};

/** A place on a floor as an end of a path, for what is not in the plan. */
export const endAt = (plan: Plan, floorId: Id, xMm: number, yMm: number, heightM: number): End => {
  const level = (recordOf(plan, 'floor', floorId)?.levelMm ?? 0) / 1000;
  return { floorId, heightM, spot: { x: xMm / 1000, y: yMm / 1000, z: level + heightM } };
};
