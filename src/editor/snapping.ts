import {
  add,
  direction,
  distanceMm,
  dot,
  nearestOnSegment,
  type Point,
  point,
  scale,
  sub,
} from '../kernel/geometry.ts';
import type { Guide } from './overlay.ts';
import { evenPick } from './snap-even.ts';
import type { SnapTargets } from './snap-targets.ts';

export interface Snapped {
  /** The spot after snapping. */
  readonly at: Point;
  readonly guides: readonly Guide[];
  /** Gaps that are alike where it is put. */
  readonly gaps?: readonly Guide[];
}

interface AxisPick {
  readonly value: number;
  readonly off: number;
  readonly guide: Guide | undefined;
  readonly gaps?: readonly Guide[];
}

/**
 * Snaps a spot to what is near. Corners come first, then wall faces and centre lines, then lines through other centres
 * and places that make gaps alike, then the line another unit points along, then the grid; across and down each take the
 * best of theirs. `reachMm` is the on-screen reach as floor millimetres, so that
 * snapping feels the same at every zoom; `gridMm` of 0 leaves the grid out.
 */
export const snapPoint = (at: Point, targets: SnapTargets, reachMm: number, gridMm: number): Snapped => {
  const onPoint = nearestPoint(at, targets.points, reachMm);
  if (onPoint) return { at: onPoint, guides: cross(onPoint, reachMm) };

  const face =
    nearestFace(at, targets.faces, reachMm) ??
    nearestFace(at, targets.lines ?? NO_LINES, reachMm * LINE_SHARE);
  if (face && !face.level) {
    return { at: face.at, guides: [{ from: face.from, to: face.to }] };
  }
  const ray =
    face || axis(at, targets, 'x', reachMm) || axis(at, targets, 'y', reachMm)
      ? undefined
      : nearestRay(at, targets.rays ?? NO_RAYS, reachMm);
  if (ray) return ray;
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
  const gaps = [...(x?.gaps ?? []), ...(y?.gaps ?? [])];
  return gaps.length > 0 ? { at: snapped, guides, gaps } : { at: snapped, guides };
};

const NO_LINES: SnapTargets['faces'] = [];
const NO_RAYS: NonNullable<SnapTargets['rays']> = [];
/** Centre lines hold less far than faces, so that both can be met where they are near one another. */
const LINE_SHARE = 0.7;
/** How far from a unit the line it points along is still met. */
const RAY_MM = 8000;

const nearestRay = (
  at: Point,
  rays: NonNullable<SnapTargets['rays']>,
  reach: number,
): Snapped | undefined => {
  let found: Snapped | undefined;
  let best = reach;
  for (const r of rays) {
    const d = direction(r.deg);
    const off = sub(at, r.from);
    const t = dot(off, d);
    const foot = add(r.from, scale(d, t));
    const beside = distanceMm(at, foot);
    if (beside > best || Math.abs(t) > RAY_MM || Math.abs(t) < reach) continue;
    best = beside;
    found = { at: foot, guides: [{ from: r.from, to: foot }] };
  }
  return found;
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
  const even = evenPick(at, targets.centers, side, reach);
  return even && (!found || even.off < found.off) ? { ...even, guide: undefined } : found;
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
