import {
  add,
  angleDeg,
  direction,
  distanceMm,
  dot,
  type Point,
  point,
  scale,
  sub,
} from '../kernel/geometry.ts';
import { beamDegOf, type Doors, doorsOf } from '../plan/beam.ts';
import { facingOf, tiltOf } from '../plan/edits/arrange.ts';
import { fixturePlace, kindOf, levelOf, recordOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { poolPrims } from './pools.ts';
import { itemOf, linePrim, pen, polyPath, WEIGHT } from './prims.ts';
import { meets, type Ray, type Shade, shadesOf } from './shades.ts';
import { leftOf } from './walls.ts';

/** A ray's way over the floor: to where something stops it, and where it goes through a cloth first. */
interface Cast {
  readonly d: Point;
  readonly toMm: number;
  readonly cloth: { readonly shade: Shade; readonly atMm: number } | undefined;
}

const cast = (shades: readonly Shade[], ray: Ray, maxMm: number): Cast => {
  let toMm = maxMm;
  let cloth: Cast['cloth'];
  for (const shade of shades) {
    const t = meets(shade, ray);
    if (t === undefined || t >= toMm) continue;
    if (!shade.soft) toMm = t;
    else if (!cloth || t < cloth.atMm) cloth = { shade, atMm: t };
  }
  return { d: ray.d, toMm, cloth: cloth && cloth.atMm < toMm ? cloth : undefined };
};

const around = (from: Point, mm: number) => ({
  minX: from.xMm - mm,
  minY: from.yMm - mm,
  maxX: from.xMm + mm,
  maxY: from.yMm + mm,
});

/** Rays of a fan about `facingDeg`, `steps` + 1 of them, each cut at the first wall or flat; level, at eye height. */
export const castFan = (
  ctx: DrawContext,
  from: Point,
  facingDeg: number,
  spreadDeg: number,
  reachMm: number,
  steps: number,
): readonly { readonly to: Point; readonly stopped: boolean }[] => {
  const shades = shadesOf(ctx)
    .near(around(from, reachMm))
    .filter((s) => !s.soft);
  return Array.from({ length: steps + 1 }, (_, i) => {
    const d = direction(facingDeg - spreadDeg / 2 + (spreadDeg * i) / steps);
    const t = cast(shades, { from, d, heightMm: 1600, rise: 0, spread: 0 }, reachMm).toMm;
    return { to: add(from, scale(d, t)), stopped: t < reachMm };
  });
};

/** How far a beam is drawn where neither its aim nor a wall ends it, and how far it is hatched. */
const OPEN_REACH_MM = 2400;
const HATCH_REACH_MM = 1400;
/** A spread from here on is soft light: short edges, no hatch. */
const SOFT_DEG = 85;
const SOFT_REACH_MM = 900;
/** Behind a cloth light spreads on, so far to each side and so far along. */
const BEHIND_DEG = 14;
const BEHIND_MM = 1500;
const STEPS = 8;

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

/**
 * A beam as two edge lines and a light hatch between them. Walls, flats, flags and solid cloths end it; behind a cloth
 * that lets light through it goes on as a soft edge. Barn doors narrow it, a zoom sets its angle. Where fields are wanted,
 * the field is drawn beside it, and the patch the light makes on the floor at its height and tilt, cut by the leaves.
 */
export const beamItem = (ctx: DrawContext, f: Fixture): DisplayItem | undefined => {
  const kind = kindOf(ctx.plan, f.kindId, 'fixture');
  const beamDeg = kind && beamDegOf(kind, f);
  if (!kind || beamDeg === undefined || beamDeg <= 0 || beamDeg >= 175 || !burns(ctx, f)) return undefined;
  const { at, heightMm } = fixturePlace(ctx.plan, f);
  const tilt = tiltOf(ctx.plan, f);
  const steep = f.aim.at === 'facing' && tilt < -75;
  const fields = ctx.options.fields;
  if (steep && !fields) return undefined;
  const facing = facingOf(ctx.plan, f);
  const mark = f.aim.at === 'mark' ? recordOf(ctx.plan, 'mark', f.aim.markId) : undefined;
  const deps = [at.xMm, at.yMm, heightMm, facing, mark, kind, shadesOf(ctx), fields];
  return memoItem(f, `beam|${ctx.nominalScale}`, deps, () => {
    const soft = beamDeg >= SOFT_DEG;
    const nose = add(at, scale(direction(facing), kind.sizeMm.lengthMm * 0.5));
    const reach = Math.min(soft ? SOFT_REACH_MM : Number.POSITIVE_INFINITY, reachOf(ctx, f, at, heightMm));
    const half = kind.sizeMm.widthMm * 0.4;
    const side = scale(leftOf(direction(facing)), half);
    const starts: readonly [Point, Point] = [add(nose, side), sub(nose, side)];
    const prims: Primitive[] = [];
    const doors = doorsOf(kind, f);
    const [left, right] = [
      Math.min(beamDeg / 2, doors?.leftDeg ?? 90),
      Math.min(beamDeg / 2, doors?.rightDeg ?? 90),
    ];
    const shades = shadesOf(ctx).near(around(nose, reach + BEHIND_MM));
    const spread = Math.tan((Math.min(80, beamDeg / 2) * Math.PI) / 180);
    const rise = Math.tan((Math.max(-80, Math.min(80, tilt)) * Math.PI) / 180);
    const ray = (deg: number): Ray => ({ from: nose, d: direction(deg), heightMm, rise, spread });
    const fan = Array.from({ length: STEPS + 1 }, (_, i) =>
      cast(shades, ray(facing - left + ((left + right) * i) / STEPS), reach),
    );
    const end = (c: Cast, mm: number): Point =>
      add(nose, scale(c.d, Math.min(c.toMm, c.cloth?.atMm ?? c.toMm, mm)));
    const [first, last] = [fan[0], fan.at(-1)];
    if (!first || !last) return undefined;
    if (!steep) {
      if (!soft)
        prims.push({
          kind: 'path',
          d: polyPath([starts[0], ...fan.map((c) => end(c, HATCH_REACH_MM)), starts[1]], true),
          fill: { role: 'beam', hatch: { angleDeg: 45, spacingMm: 1.5, weightMm: WEIGHT.hair } },
        });
      const edge = pen('beam', WEIGHT.hair, soft ? [3, 1.2] : undefined);
      prims.push(linePrim(starts[0], end(first, reach), edge), linePrim(starts[1], end(last, reach), edge));
      prims.push(...behindCloth(fan, shades, ray, nose));
    }
    prims.push(...doorPrims(doors, starts, facing, kind.sizeMm.widthMm));
    if (fields) prims.push(...poolPrims({ at: nose, facing, tiltDeg: tilt, heightMm, kind, beamDeg, doors }));
    return itemOf(`beam:${f.id}`, f.id, 'beams', ctx.nominalScale, prims);
  });
};

/** Soft edges that go on behind the cloth a beam meets: from the outer rays that meet it, spreading. */
const behindCloth = (
  fan: readonly Cast[],
  shades: readonly Shade[],
  ray: (deg: number) => Ray,
  nose: Point,
): readonly Primitive[] => {
  const through = fan.filter((c) => c.cloth);
  const [a, b] = [through[0], through.at(-1)];
  if (!a?.cloth || !b?.cloth) return [];
  const behind = pen('beam', WEIGHT.hair, [1.2, 1.4]);
  return (
    [
      [a, -1],
      [b, 1],
    ] as const
  ).map(([c, way]) => {
    const from = add(nose, scale(c.d, c.cloth?.atMm ?? 0));
    const deg = angleDeg(point(0, 0), c.d) + way * BEHIND_DEG;
    const go = cast(
      shades.filter((s) => !s.soft),
      { ...ray(deg), from },
      BEHIND_MM,
    );
    return linePrim(from, add(from, scale(direction(deg), go.toMm)), behind);
  });
};

/** A leaf above or below, seen from above: as wide as the opening, as long as its angle lets it look. */
const flatLeaf = (
  starts: readonly [Point, Point],
  facing: number,
  longMm: number,
  deg: number,
  dash?: readonly number[],
): Primitive => {
  const ahead = scale(direction(facing), longMm * Math.cos((deg * Math.PI) / 180));
  return {
    kind: 'path',
    d: polyPath([starts[0], add(starts[0], ahead), add(starts[1], ahead), starts[1]], false),
    stroke: pen('gear', WEIGHT.hair, dash),
  };
};

/** Barn doors as they stand: the leaves beside the opening, and those above and, dashed, below it where they are given. */
const doorPrims = (
  doors: Doors | undefined,
  starts: readonly [Point, Point],
  facing: number,
  widthMm: number,
): readonly Primitive[] => {
  if (!doors) return [];
  const long = widthMm * 0.45;
  const leaf = pen('gear', WEIGHT.thin);
  return [
    linePrim(starts[0], add(starts[0], scale(direction(facing - doors.leftDeg), long)), leaf),
    linePrim(starts[1], add(starts[1], scale(direction(facing + doors.rightDeg), long)), leaf),
    ...(doors.topDeg === undefined ? [] : [flatLeaf(starts, facing, long, doors.topDeg)]),
    ...(doors.bottomDeg === undefined
      ? []
      : [flatLeaf(starts, facing, long * 0.92, doors.bottomDeg, [1.2, 0.8])]),
  ];
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
