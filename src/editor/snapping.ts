import { distanceMm, nearestOnSegment, type Point, point } from '../kernel/geometry.ts';
import type { Guide } from './overlay.ts';
import type { SnapTargets } from './snap-targets.ts';

export interface Snapped {
  /** The spot after snapping. */
  readonly at: Point;
  readonly guides: readonly Guide[];
}

interface AxisPick {
  readonly value: number;
  readonly off: number;
  readonly guide: Guide | undefined;
}

/**
 * Snaps a spot to what is near. Corners come first, then wall faces, then lines through other centres, then the grid;
 * across and down each take the best of theirs. `reachMm` is the on-screen reach as floor millimetres, so that
 * snapping feels the same at every zoom; `gridMm` of 0 leaves the grid out.
 */
export const snapPoint = (at: Point, targets: SnapTargets, reachMm: number, gridMm: number): Snapped => {
  const onPoint = nearestPoint(at, targets.points, reachMm);
  if (onPoint) return { at: onPoint, guides: cross(onPoint, reachMm) };

  const face = nearestFace(at, targets.faces, reachMm);
  if (face && !face.level) {
    return { at: face.at, guides: [{ from: face.from, to: face.to }] };
  }
  const x =
    face?.level === 'down'
      ? facePick(face, 'x')
      : best(axis(at, targets, 'x', reachMm), gridMm, at.xMm, reachMm);
  const y =
    face?.level === 'across'
      ? facePick(face, 'y')
      : best(axis(at, targets, 'y', reachMm), gridMm, at.yMm, reachMm);
  const snapped = point(x?.value ?? at.xMm, y?.value ?? at.yMm);
  const guides = [x?.guide, y?.guide].flatMap((g) => (g ? [reaching(g, snapped)] : []));
  return { at: snapped, guides };
};

const nearestPoint = (at: Point, points: readonly Point[], reach: number): Point | undefined => {
  let found: Point | undefined;
  let off = reach;
  for (const p of points) {
    const d = distanceMm(at, p);
    if (d <= off) {
      off = d;
      found = p;
    }
  }
  return found;
};

interface FacePick {
  readonly at: Point;
  readonly from: Point;
  readonly to: Point;
  readonly level: 'across' | 'down' | undefined;
}

const LEVEL_MM = 0.5;

const nearestFace = (at: Point, faces: SnapTargets['faces'], reach: number): FacePick | undefined => {
  let found: FacePick | undefined;
  let off = reach;
  for (const f of faces) {
    const p = nearestOnSegment(at, f.from, f.to).at;
    const d = distanceMm(at, p);
    if (d > off) continue;
    off = d;
    const across = Math.abs(f.from.yMm - f.to.yMm) < LEVEL_MM;
    const down = Math.abs(f.from.xMm - f.to.xMm) < LEVEL_MM;
    found = { at: p, from: f.from, to: f.to, level: across ? 'across' : down ? 'down' : undefined };
  }
  return found;
};

const facePick = (f: FacePick, side: 'x' | 'y'): AxisPick => ({
  value: side === 'x' ? f.from.xMm : f.from.yMm,
  off: 0,
  guide: { from: f.from, to: f.to },
});

/** The nearest line through another centre, straight down (`x`) or straight across (`y`). */
const axis = (at: Point, targets: SnapTargets, side: 'x' | 'y', reach: number): AxisPick | undefined => {
  let found: AxisPick | undefined;
  for (const c of targets.centers) {
    const off = side === 'x' ? Math.abs(c.xMm - at.xMm) : Math.abs(c.yMm - at.yMm);
    if (off > reach || (found && off >= found.off)) continue;
    found = { value: side === 'x' ? c.xMm : c.yMm, off, guide: { from: c, to: c } };
  }
  return found;
};

const best = (
  line: AxisPick | undefined,
  gridMm: number,
  value: number,
  reach: number,
): AxisPick | undefined => {
  if (line || gridMm <= 0) return line;
  const onGrid = Math.round(value / gridMm) * gridMm;
  const off = Math.abs(onGrid - value);
  return off <= reach ? { value: onGrid, off, guide: undefined } : undefined;
};

/** A guide line drawn through to the snapped spot. */
const reaching = (g: Guide, at: Point): Guide => (g.from === g.to ? { from: g.from, to: at } : g);

const cross = (p: Point, arm: number): readonly Guide[] => [
  { from: point(p.xMm - arm * 2, p.yMm), to: point(p.xMm + arm * 2, p.yMm) },
  { from: point(p.xMm, p.yMm - arm * 2), to: point(p.xMm, p.yMm + arm * 2) },
];
