import { add, direction, type Point, point, rotate } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, recordsOf } from '../../plan/plan.ts';
import type { SetPiece, WallMaterial } from '../../plan/records/index.ts';
import { materialLoss, openingLoss } from './materials.ts';

/** A hole in a wall, in metres from the wall's start and above its floor. */
export interface Hole {
  readonly id: Id;
  readonly fromM: number;
  readonly toM: number;
  readonly lowM: number;
  readonly highM: number;
  readonly db: number;
  readonly name: string;
  readonly source: string;
}

/** Something a path can meet: one straight wall, or the outline of a set piece. Metres; heights above the datum of all floors. */
export interface Barrier {
  readonly id: Id;
  readonly floorId: Id;
  readonly what: 'wall' | 'setPiece';
  /** Corners in order; a wall has two, an outline is closed. */
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly baseM: number;
  readonly topM: number;
  /** There is room above it for a wave to bend over its top. */
  readonly open: boolean;
  readonly db: number;
  readonly name: string;
  readonly source: string;
  /** Its material or reach is not in the plan. */
  readonly assumed: boolean;
  readonly holes: readonly Hole[];
}

/** All barriers of a plan at one frequency, and its floors. */
export interface Scene {
  readonly fMhz: number;
  readonly barriers: readonly Barrier[];
  readonly levels: ReadonlyMap<Id, number>;
}

/** A wall this much below the ceiling leaves room above it. */
const GAP_M = 0.1;
const ELLIPSE_CORNERS = 24;
/** What a set piece counts as when its material is not in the plan. */
const USUAL_PIECE: WallMaterial = 'wood';

const finite = (n: number, or = 0): number => (Number.isFinite(n) ? n : or);

/** Corners of a set piece on its floor. */
export const pieceCorners = (s: SetPiece): readonly Point[] => {
  const o = s.outline;
  const own =
    o.shape === 'polygon'
      ? o.points
      : o.shape === 'rect'
        ? [
            point(-o.lengthMm / 2, -o.widthMm / 2),
            point(o.lengthMm / 2, -o.widthMm / 2),
            point(o.lengthMm / 2, o.widthMm / 2),
            point(-o.lengthMm / 2, o.widthMm / 2),
          ]
        : Array.from({ length: ELLIPSE_CORNERS }, (_, i) => {
            const d = direction((i * 360) / ELLIPSE_CORNERS);
            return point((d.xMm * o.lengthMm) / 2, (d.yMm * o.widthMm) / 2);
          });
  return own.map((p) => add(s.at, rotate(p, s.rotationDeg)));
};

const columns = (points: readonly Point[]) => ({
  xs: Float64Array.from(points, (p) => finite(p.xMm) / 1000),
  ys: Float64Array.from(points, (p) => finite(p.yMm) / 1000),
});

/** The height up to which each floor is closed: its ceiling, else its highest wall. */
const ceilings = (plan: Plan): ReadonlyMap<Id, { readonly m: number; readonly assumed: boolean }> => {
  const out = new Map<Id, { m: number; assumed: boolean }>();
  for (const f of recordsOf(plan, 'floor'))
    if (f.ceilingMm !== undefined) out.set(f.id, { m: f.ceilingMm / 1000, assumed: false });
  const given = new Set(out.keys());
  for (const w of recordsOf(plan, 'wall')) {
    if (given.has(w.floorId)) continue;
    const m = Math.max(out.get(w.floorId)?.m ?? 0, finite(w.heightMm) / 1000);
    out.set(w.floorId, { m, assumed: true });
  }
  return out;
};

const holesOf = (plan: Plan): ReadonlyMap<Id, readonly Hole[]> => {
  const out = new Map<Id, Hole[]>();
  for (const o of recordsOf(plan, 'opening')) {
    const { db, name, from } = openingLoss(o.what);
    const hole: Hole = {
      id: o.id,
      fromM: o.offsetMm / 1000,
      toM: (o.offsetMm + o.widthMm) / 1000,
      lowM: o.sillMm / 1000,
      highM: (o.sillMm + o.heightMm) / 1000,
      db,
      name,
      source: from,
    };
    const list = out.get(o.wallId);
    if (list) list.push(hole);
    else out.set(o.wallId, [hole]);
  }
  return out;
};

const build = (plan: Plan, fMhz: number): Scene => {
  const levels = new Map(recordsOf(plan, 'floor').map((f) => [f.id, finite(f.levelMm) / 1000]));
  const tops = ceilings(plan);
  const holes = holesOf(plan);
  const barriers: Barrier[] = [];
  for (const w of recordsOf(plan, 'wall')) {
    const baseM = levels.get(w.floorId) ?? 0;
    const { db, name, from } = materialLoss(w.material, w.thicknessMm, fMhz);
    const heightM = finite(w.heightMm) / 1000;
    const ceiling = tops.get(w.floorId);
    barriers.push({
      id: w.id,
      floorId: w.floorId,
      what: 'wall',
      ...columns([w.from, w.to]),
      baseM,
      topM: baseM + heightM,
      open: ceiling !== undefined && heightM < ceiling.m - GAP_M,
      db,
      name,
      source: from,
      assumed: ceiling?.assumed ?? true,
      holes: holes.get(w.id) ?? [],
    });
  }
  for (const s of recordsOf(plan, 'setPiece')) {
    const heightM = finite(s.heightMm) / 1000;
    if (heightM <= 0 || s.line === 'ground') continue;
    const baseM = levels.get(s.floorId) ?? 0;
    const { db, name, from } = materialLoss(s.material ?? USUAL_PIECE, 0, fMhz);
    const ceiling = tops.get(s.floorId);
    barriers.push({
      id: s.id,
      floorId: s.floorId,
      what: 'setPiece',
      ...columns(pieceCorners(s)),
      baseM,
      topM: baseM + heightM,
      open: ceiling === undefined || heightM < ceiling.m - GAP_M,
      db,
      name: s.material === undefined ? `${name}, assumed` : name,
      source: from,
      assumed: s.material === undefined,
      holes: [],
    });
  }
  return { fMhz, barriers, levels };
};

const scenes = new WeakMap<
  object,
  { readonly deps: readonly unknown[]; readonly byMhz: Map<number, Scene> }
>();

/** The barriers of a plan at a frequency. Made once while no wall, opening, set piece or floor changes. */
export const sceneOf = (plan: Plan, fMhz: number): Scene => {
  const walls = recordsOf(plan, 'wall');
  const deps = [recordsOf(plan, 'opening'), recordsOf(plan, 'setPiece'), recordsOf(plan, 'floor')];
  let known = scenes.get(walls);
  if (!known?.deps.every((d, i) => d === deps[i])) {
    known = { deps, byMhz: new Map() };
    scenes.set(walls, known);
  }
  const last = known.byMhz.get(fMhz);
  if (last) return last;
  const made = build(plan, fMhz);
  known.byMhz.set(fMhz, made);
  return made;
};

/** Whether a floor has something around it: walls or a ceiling. Elsewhere waves spread as in the open. */
export const isIndoors = (plan: Plan, floorId: Id): boolean =>
  recordsOf(plan, 'floor').some((f) => f.id === floorId && f.ceilingMm !== undefined) ||
  recordsOf(plan, 'wall').some((w) => w.floorId === floorId);
