import { add, type Box, distanceMm, lerp, type Point, point, rotate, sub } from '../kernel/geometry.ts';
import { kindOf, recordsOf } from '../plan/plan.ts';
import type { Grip, SetPiece } from '../plan/records/index.ts';
import type { DrawContext } from './context.ts';
import { solidStretches } from './walls.ts';

/** Something upright that light meets: a wall, a flat, a flag, a cloth. Floor millimetres. */
export interface Shade {
  readonly a: Point;
  readonly b: Point;
  /** Light goes on through it, softened. */
  readonly soft: boolean;
  /** Its lower and upper edge above the floor; walls reach from floor to ceiling. */
  readonly lowMm: number;
  readonly highMm: number;
}

/** All that shades light on a floor, found by place. */
export interface Shades {
  /** Those that may be met within a box. */
  near(box: Box): readonly Shade[];
}

/** Pieces of scenery lower than this are furniture: light goes over them. */
const FLAT_MM = 1900;
const CELL_MM = 4000;

const pieceSides = (s: SetPiece): readonly (readonly [Point, Point])[] => {
  const o = s.outline;
  if (o.shape === 'ellipse') return [];
  const [x, y] = o.shape === 'rect' ? [o.lengthMm / 2, o.widthMm / 2] : [0, 0];
  const corners = o.shape === 'rect' ? [point(-x, -y), point(x, -y), point(x, y), point(-x, y)] : o.points;
  const at = corners.map((p) => add(s.at, rotate(p, s.rotationDeg)));
  return at.map((p, i) => [p, at[(i + 1) % at.length] ?? p] as const);
};

/** Cloths by what they do to light, from their names in the gear book; what is not named here stops it. */
const SOFT_WORDS = /silk|grid|diffus|frost|muslin|net|scrim/i;

const gripShade = (ctx: Pick<DrawContext, 'plan'>, g: Grip): Shade | undefined => {
  const kind = kindOf(ctx.plan, g.kindId, 'grip');
  if (!kind || kind.what === 'bag' || kind.what === 'box') return undefined;
  const cloth = g.clothId === undefined ? undefined : kindOf(ctx.plan, g.clothId, 'grip');
  // A frame without a cloth is only tube: light goes through.
  if (kind.what === 'frame' && !cloth) return undefined;
  const soft =
    kind.what === 'net' || kind.what === 'diffusion' || (cloth !== undefined && SOFT_WORDS.test(cloth.slug));
  const half = kind.sizeMm.widthMm / 2;
  const tall = kind.sizeMm.heightMm ?? kind.sizeMm.widthMm;
  return {
    a: add(g.at, rotate(point(0, -half), g.rotationDeg)),
    b: add(g.at, rotate(point(0, half), g.rotationDeg)),
    soft,
    lowMm: g.heightMm - tall / 2,
    highMm: g.heightMm + tall / 2,
  };
};

const everything = (ctx: DrawContext): readonly Shade[] => {
  const arch = ctx.index.architecture;
  const all: Shade[] = [];
  for (const w of arch.walls) {
    const l = distanceMm(w.from, w.to) || 1;
    for (const [a, b] of solidStretches(l, arch.openings.get(w.id) ?? []))
      all.push({
        a: lerp(w.from, w.to, a / l),
        b: lerp(w.from, w.to, b / l),
        soft: w.material === 'glass',
        lowMm: 0,
        highMm: Number.POSITIVE_INFINITY,
      });
  }
  for (const g of recordsOf(ctx.plan, 'grip')) {
    const shade = g.floorId === ctx.floorId && !g.hidden ? gripShade(ctx, g) : undefined;
    if (shade) all.push(shade);
  }
  for (const s of recordsOf(ctx.plan, 'setPiece'))
    if (s.floorId === ctx.floorId && s.heightMm >= FLAT_MM && s.line !== 'ground' && !s.hidden)
      for (const [a, b] of pieceSides(s)) all.push({ a, b, soft: false, lowMm: 0, highMm: s.heightMm });
  return all;
};

const cell = (mm: number): number => Math.floor(mm / CELL_MM);
/** One number for a cell: quicker to look up than a text. */
const keyOf = (x: number, y: number): number => x * 1_048_576 + y;

const gridOf = (all: readonly Shade[]): Shades => {
  const cells = new Map<number, Shade[]>();
  const put = (x: number, y: number, s: Shade): void => {
    const key = keyOf(x, y);
    const list = cells.get(key);
    if (list) {
      if (list.at(-1) !== s) list.push(s);
    } else cells.set(key, [s]);
  };
  for (const s of all) {
    // A long wall is put into the cells it runs through, a little at a time.
    const n = Math.max(1, Math.ceil((distanceMm(s.a, s.b) / CELL_MM) * 2));
    for (let i = 0; i < n; i++) {
      const [p, q] = [lerp(s.a, s.b, i / n), lerp(s.a, s.b, (i + 1) / n)];
      for (let x = cell(Math.min(p.xMm, q.xMm)); x <= cell(Math.max(p.xMm, q.xMm)); x++)
        for (let y = cell(Math.min(p.yMm, q.yMm)); y <= cell(Math.max(p.yMm, q.yMm)); y++) put(x, y, s);
    }
  }
  return {
    near: (box) => {
      const found: Shade[] = [];
      for (let x = cell(box.minX); x <= cell(box.maxX); x++)
        for (let y = cell(box.minY); y <= cell(box.maxY); y++)
          for (const s of cells.get(keyOf(x, y)) ?? []) if (!found.includes(s)) found.push(s);
      return found;
    },
  };
};

const known = new WeakMap<
  object,
  { readonly deps: readonly unknown[]; readonly byFloor: Map<string, Shades> }
>();

/** What shades light on the drawn floor; the same object while no wall, opening, grip gear or flat changes. */
export const shadesOf = (ctx: DrawContext): Shades => {
  const deps = [recordsOf(ctx.plan, 'grip'), recordsOf(ctx.plan, 'setPiece')];
  const arch = ctx.index.architecture;
  let entry = known.get(arch);
  if (!entry?.deps.every((d, i) => d === deps[i])) {
    entry = { deps, byFloor: new Map() };
    known.set(arch, entry);
  }
  let made = entry.byFloor.get(ctx.floorId);
  if (!made) {
    made = gridOf(everything(ctx));
    entry.byFloor.set(ctx.floorId, made);
  }
  return made;
};

/** A ray over the floor with its height above it. */
export interface Ray {
  readonly from: Point;
  readonly d: Point;
  readonly heightMm: number;
  /** Rise for each millimetre along the floor, and how far the light spreads up and down from it. */
  readonly rise: number;
  readonly spread: number;
}

/** How far along a ray a shade is met; undefined where it is not. */
export const meets = (s: Shade, ray: Ray): number | undefined => {
  const e = sub(s.b, s.a);
  const den = ray.d.xMm * e.yMm - ray.d.yMm * e.xMm;
  if (Math.abs(den) < 1e-9) return undefined;
  const w = sub(s.a, ray.from);
  const t = (w.xMm * e.yMm - w.yMm * e.xMm) / den;
  if (t <= 1) return undefined;
  const u = (w.xMm * ray.d.yMm - w.yMm * ray.d.xMm) / den;
  if (u < 0 || u > 1) return undefined;
  const z = ray.heightMm + ray.rise * t;
  const half = ray.spread * t;
  return z + half < s.lowMm || z - half > s.highMm ? undefined : t;
};
