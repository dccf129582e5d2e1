import {
  add,
  angleDeg,
  direction,
  distanceMm,
  dot,
  lerp,
  type Point,
  point,
  scale,
  sub,
} from '../kernel/geometry.ts';
import { facingOf } from '../plan/edits/arrange.ts';
import { fixturePlace, kindOf, levelOf, recordOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { itemOf, linePrim, pen, polyPath, WEIGHT } from './prims.ts';
import { leftOf, solidStretches } from './walls.ts';

/** Solid stretches of the floor's walls as thin lines, for rays to stop at. */
const blockers = new WeakMap<object, readonly (readonly [Point, Point])[]>();

const blockersOf = (ctx: DrawContext): readonly (readonly [Point, Point])[] => {
  const arch = ctx.index.architecture;
  const known = blockers.get(arch);
  if (known) return known;
  const made = arch.walls.flatMap((w) => {
    const l = distanceMm(w.from, w.to);
    return solidStretches(l, arch.openings.get(w.id) ?? []).map(
      ([a, b]) => [lerp(w.from, w.to, a / (l || 1)), lerp(w.from, w.to, b / (l || 1))] as const,
    );
  });
  blockers.set(arch, made);
  return made;
};

/** Distance along a ray to the first solid wall, or `maxMm`. */
const castRay = (
  walls: readonly (readonly [Point, Point])[],
  from: Point,
  d: Point,
  maxMm: number,
): number => {
  let best = maxMm;
  for (const [p, q] of walls) {
    const e = sub(q, p);
    const den = d.xMm * e.yMm - d.yMm * e.xMm;
    if (Math.abs(den) < 1e-9) continue;
    const w = sub(p, from);
    const t = (w.xMm * e.yMm - w.yMm * e.xMm) / den;
    const u = (w.xMm * d.yMm - w.yMm * d.xMm) / den;
    if (t > 1 && t < best && u >= 0 && u <= 1) best = t;
  }
  return best;
};

/** Rays of a fan about `facingDeg`, `steps` + 1 of them, each cut at the first wall. */
export const castFan = (
  ctx: DrawContext,
  from: Point,
  facingDeg: number,
  spreadDeg: number,
  reachMm: number,
  steps: number,
): readonly { readonly to: Point; readonly stopped: boolean }[] => {
  const walls = blockersOf(ctx);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const d = direction(facingDeg - spreadDeg / 2 + (spreadDeg * i) / steps);
    const t = castRay(walls, from, d, reachMm);
    return { to: add(from, scale(d, t)), stopped: t < reachMm };
  });
};

/** How far a beam is drawn where neither its aim nor a wall ends it, and how far it is hatched. */
const OPEN_REACH_MM = 2400;
const HATCH_REACH_MM = 1400;
/** A spread from here on is soft light: short edges, no hatch. */
const SOFT_DEG = 85;

const reachOf = (ctx: DrawContext, f: Fixture, at: Point, heightMm: number): number => {
  if (f.aim.at === 'mark') {
    const mark = recordOf(ctx.plan, 'mark', f.aim.markId);
    return mark ? Math.max(600, distanceMm(at, mark.at)) : OPEN_REACH_MM;
  }
  if (f.aim.tiltDeg >= -3) return OPEN_REACH_MM;
  const drop = heightMm / Math.tan((-f.aim.tiltDeg * Math.PI) / 180);
  return Math.min(OPEN_REACH_MM, Math.max(900, drop));
};

/** Whether a fixture burns in the shown setup. Without a setup all do. */
export const burns = (ctx: DrawContext, f: Fixture): boolean =>
  ctx.setupId === undefined || levelOf(ctx.plan, ctx.setupId, f.id).levelPct > 0;

/** A beam as two edge lines and a light hatch between them, up to a wall or where the aim ends. */
export const beamItem = (ctx: DrawContext, f: Fixture): DisplayItem | undefined => {
  const kind = kindOf(ctx.plan, f.kindId, 'fixture');
  const beamDeg = kind?.beamDeg;
  if (!kind || beamDeg === undefined || beamDeg <= 0 || beamDeg >= 175 || !burns(ctx, f)) return undefined;
  if (f.aim.at === 'facing' && f.aim.tiltDeg < -75) return undefined;
  const { at, heightMm } = fixturePlace(ctx.plan, f);
  const facing = facingOf(ctx.plan, f);
  const mark = f.aim.at === 'mark' ? recordOf(ctx.plan, 'mark', f.aim.markId) : undefined;
  const deps = [at.xMm, at.yMm, heightMm, facing, mark, kind, ctx.index.architecture];
  return memoItem(f, `beam|${ctx.nominalScale}`, deps, () => {
    const soft = beamDeg >= SOFT_DEG;
    const nose = add(at, scale(direction(facing), kind.sizeMm.lengthMm * 0.5));
    const reach = Math.min(soft ? 900 : Number.POSITIVE_INFINITY, reachOf(ctx, f, at, heightMm));
    const half = kind.sizeMm.widthMm * 0.4;
    const side = scale(leftOf(direction(facing)), half);
    const starts: readonly [Point, Point] = [add(nose, side), sub(nose, side)];
    const [first, last] = castFan(ctx, nose, facing, beamDeg, reach, 1);
    if (!first || !last) return undefined;
    const prims: Primitive[] = [];
    if (!soft) {
      const near = castFan(ctx, nose, facing, beamDeg, Math.min(HATCH_REACH_MM, reach), 8);
      prims.push({
        kind: 'path',
        d: polyPath([starts[0], ...near.map((r) => r.to), starts[1]], true),
        fill: { role: 'beam', hatch: { angleDeg: 45, spacingMm: 1.5, weightMm: WEIGHT.hair } },
      });
    }
    const dash = soft ? [3, 1.2] : undefined;
    prims.push(linePrim(starts[0], first.to, pen('beam', WEIGHT.hair, dash)));
    prims.push(linePrim(starts[1], last.to, pen('beam', WEIGHT.hair, dash)));
    return itemOf(`beam:${f.id}`, f.id, 'beams', ctx.nominalScale, prims);
  });
};

/** The aim of a fixture that follows a mark: both ends on the floor and the true throw, heights included. */
export const aimOf = (
  ctx: DrawContext,
  f: Fixture,
): { readonly from: Point; readonly to: Point; readonly throwMm: number } | undefined => {
  if (f.aim.at !== 'mark') return undefined;
  const mark = recordOf(ctx.plan, 'mark', f.aim.markId);
  if (!mark || mark.floorId !== f.floorId) return undefined;
  const { at, heightMm } = fixturePlace(ctx.plan, f);
  const flat = distanceMm(at, mark.at);
  if (flat < 1) return undefined;
  const d = direction(angleDeg(at, mark.at));
  return {
    from: at,
    to: sub(mark.at, scale(d, Math.min(180, flat / 2))),
    throwMm: Math.hypot(flat, heightMm - mark.heightMm),
  };
};

export const aimItem = (ctx: DrawContext, f: Fixture): DisplayItem | undefined => {
  const aim = aimOf(ctx, f);
  if (!aim) return undefined;
  const k = kindOf(ctx.plan, f.kindId);
  const start = lengthen(aim.from, aim.to, (k?.sizeMm.lengthMm ?? 300) * 0.6);
  if (dot(sub(aim.to, start), sub(aim.to, aim.from)) <= 0) return undefined;
  return memoItem(f, `aim|${ctx.nominalScale}`, [start.xMm, start.yMm, aim.to.xMm, aim.to.yMm], () =>
    itemOf(`aim:${f.id}`, f.id, 'beams', ctx.nominalScale, [
      linePrim(start, aim.to, pen('aim', WEIGHT.thin, [4, 1, 0.6, 1])),
    ]),
  );
};

const lengthen = (from: Point, to: Point, by: number): Point => {
  const l = distanceMm(from, to) || 1;
  return point(from.xMm + ((to.xMm - from.xMm) * by) / l, from.yMm + ((to.yMm - from.yMm) * by) / l);
};
