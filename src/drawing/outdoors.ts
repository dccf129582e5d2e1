import { acrossOf, EXIT_RADIUS_MM, isArea, onward, spotRadius } from '../derive/outdoors.ts';
import { overheadLimit } from '../derive/overhead.ts';
import { add, boxOf, distanceMm, lerp, type Point, point, scale } from '../kernel/geometry.ts';
import { formatLength } from '../kernel/units.ts';
import type { Crossing, Feature } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Fill, PathCommand, Primitive } from './display-list.ts';
import { arcPath, groundedText, itemOf, linePrim, pen, polyPath, textPrim, WEIGHT } from './prims.ts';

const KERB_MM = 150;
/** Ticks of a facade and signs of a power line, apart on paper. */
const TICK_APART_MM = 3;
const SIGN_APART_MM = 18;

const WORDS: Readonly<Partial<Record<Feature['what'], string>>> = {
  road: 'ROAD',
  water: 'WATER',
  'wet-area': 'WET',
  exit: 'EXIT',
  'fire-lane': 'FIRE LANE, KEEP CLEAR',
  'power-line': 'OVERHEAD LINE',
};

const hatch = (role: Fill['role'], angleDeg: number, spacingMm: number): Fill => ({
  role,
  hatch: { angleDeg, spacingMm, weightMm: WEIGHT.hair },
});

const middleOf = (f: Feature): Point => {
  const b = boxOf(f.points);
  return point((b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2);
};

/** The word of a feature with its label and, where it tells something, its height. */
const wordsOf = (ctx: DrawContext, f: Feature): string => {
  const units = ctx.settings.lengthUnits;
  const height = f.heightMm !== 0 ? formatLength(f.heightMm, units) : '';
  switch (f.what) {
    case 'ground':
      return [f.label, height ? `${f.heightMm > 0 ? '+' : ''}${height}` : '±0'].filter(Boolean).join(' ');
    case 'power-line':
      return [f.label || WORDS['power-line'], height ? `lowest wire ${height}` : 'height not known'].join(
        ', ',
      );
    default:
      return f.label || (WORDS[f.what] ?? '');
  }
};

const text = (
  ctx: DrawContext,
  at: Point,
  words: string,
  role: 'ink-soft' | 'stop' | 'warn' | 'note',
): Primitive[] =>
  words === ''
    ? []
    : groundedText(
        at,
        0,
        0.9,
        words,
        { capMm: 1.8, align: 'center', role, weight: 'semibold' },
        ctx.nominalScale,
      );

/** Spots along a line, so far apart, the first half a step in. */
const along = (
  points: readonly Point[],
  stepMm: number,
): readonly { readonly at: Point; readonly left: Point }[] => {
  const out: { at: Point; left: Point }[] = [];
  let next = stepMm / 2;
  points.slice(1).forEach((b, i) => {
    const a = points[i] ?? b;
    const l = distanceMm(a, b);
    for (; next < l; next += stepMm) out.push({ at: lerp(a, b, next / l), left: acrossOf(a, b) });
    next -= l;
  });
  return out;
};

const offset = (points: readonly Point[], mm: number): PathCommand[] =>
  points.slice(1).flatMap((b, i) => {
    const a = points[i] ?? b;
    const off = scale(acrossOf(a, b), mm);
    return polyPath([add(a, off), add(b, off)], false);
  });

/** A crown of small arcs. */
const crown = (at: Point, rMm: number): PathCommand[] => {
  const n = 9;
  const d: PathCommand[] = [];
  const bump = (rMm * Math.PI) / n;
  for (let i = 0; i < n; i++) {
    const deg = (360 * i) / n;
    const c = onward(at, deg, rMm - bump * 0.55);
    d.push(...arcPath(c, bump, deg - 90, deg), ...arcPath(c, bump, deg, deg + 90));
  }
  return d;
};

/** A small zigzag that stands for voltage. */
const bolt = (at: Point, k: number): PathCommand[] =>
  polyPath(
    [
      [0.5, -1.5],
      [-0.6, 0.2],
      [0.5, -0.1],
      [-0.5, 1.5],
    ].map(([x, y]) => point(at.xMm + (x ?? 0) * k, at.yMm + (y ?? 0) * k)),
    false,
  );

const areaPrims = (ctx: DrawContext, f: Feature): Primitive[] => {
  const d = polyPath(f.points, isArea(f));
  const at = middleOf(f);
  const words = wordsOf(ctx, f);
  switch (f.what) {
    case 'road':
      return [
        { kind: 'path', d, fill: { role: 'ink-faint', opacity: 0.12 }, stroke: pen('ink-soft', WEIGHT.thin) },
        ...text(ctx, at, words, 'ink-soft'),
      ];
    case 'water':
      return [
        { kind: 'path', d, fill: hatch('glass', 0, 1.6), stroke: pen('glass', WEIGHT.furniture) },
        ...text(ctx, at, words, 'ink-soft'),
      ];
    case 'wet-area':
      return [
        { kind: 'path', d, fill: hatch('note', 45, 3), stroke: pen('note', WEIGHT.thin, [1.5, 1]) },
        ...text(ctx, at, words, 'note'),
      ];
    case 'fire-lane':
      return [
        { kind: 'path', d, fill: hatch('stop', 135, 3.5), stroke: pen('stop', WEIGHT.furniture) },
        ...text(ctx, at, words, 'stop'),
      ];
    case 'exit':
      return [
        { kind: 'path', d, stroke: pen('stop', WEIGHT.furniture, [2, 1]) },
        ...text(ctx, at, words, 'stop'),
      ];
    default:
      return [
        { kind: 'path', d, stroke: pen('ink-soft', WEIGHT.thin, [4, 1, 0.5, 1]) },
        ...text(ctx, at, words, 'ink-soft'),
      ];
  }
};

const linePrims = (ctx: DrawContext, f: Feature): Primitive[] => {
  const k = ctx.nominalScale;
  const d = polyPath(f.points, f.closed);
  const mid =
    along(f.points, 1e9)[0]?.at ?? lerp(f.points[0] ?? middleOf(f), f.points[1] ?? middleOf(f), 0.5);
  switch (f.what) {
    case 'kerb':
      return [
        { kind: 'path', d, stroke: pen('ink-soft', WEIGHT.furniture) },
        { kind: 'path', d: offset(f.points, KERB_MM), stroke: pen('ink-soft', WEIGHT.hair) },
      ];
    case 'facade':
      return [
        { kind: 'path', d, stroke: pen('wall', WEIGHT.wall) },
        ...along(f.points, TICK_APART_MM * k).map(({ at, left }) =>
          linePrim(
            at,
            add(at, add(scale(left, 1.4 * k), scale({ xMm: left.yMm, yMm: -left.xMm }, 0.8 * k))),
            pen('wall', WEIGHT.hair),
          ),
        ),
        ...(f.label ? text(ctx, mid, f.label, 'ink-soft') : []),
      ];
    case 'power-line': {
      const need = overheadLimit(ctx.plan, f.voltsV).needMm;
      return [
        { kind: 'path', d, stroke: pen('warn', WEIGHT.furniture, [6, 1, 1, 1]) },
        {
          kind: 'path',
          d: [...offset(f.points, need), ...offset(f.points, -need)],
          stroke: pen('warn', WEIGHT.hair, [1, 1.2]),
        },
        ...along(f.points, SIGN_APART_MM * k).map(
          ({ at, left }): Primitive => ({
            kind: 'path',
            d: bolt(add(at, scale(left, 2.4 * k)), k),
            stroke: pen('warn', WEIGHT.tick),
          }),
        ),
        ...text(ctx, mid, wordsOf(ctx, f), 'warn'),
      ];
    }
    default:
      return [
        { kind: 'path', d, stroke: pen('ink-soft', WEIGHT.thin) },
        ...text(ctx, mid, wordsOf(ctx, f), 'ink-soft'),
      ];
  }
};

const spotPrims = (ctx: DrawContext, f: Feature): Primitive[] => {
  const at = f.points[0] ?? point(0, 0);
  const k = ctx.nominalScale;
  const r = spotRadius(f);
  const circle = (rMm: number, more: Partial<Extract<Primitive, { kind: 'circle' }>>): Primitive => ({
    kind: 'circle',
    xMm: at.xMm,
    yMm: at.yMm,
    rMm,
    space: 'floor',
    ...more,
  });
  const below = (words: string, mm: number): Primitive[] =>
    words ? [textPrim(at, 0, mm / k + 2.6, words, { capMm: 1.8, align: 'center', role: 'ink-soft' })] : [];
  switch (f.what) {
    case 'tree':
      return [
        { kind: 'path', d: crown(at, r), stroke: pen('ink-soft', WEIGHT.thin) },
        circle(Math.max(0.5 * k, 90), { fill: { role: 'ink-soft' } }),
        ...below(f.label, r),
      ];
    case 'exit': {
      const half = 2.4 * k;
      const box = [
        point(at.xMm - 2 * half, at.yMm - half),
        point(at.xMm + 2 * half, at.yMm - half),
        point(at.xMm + 2 * half, at.yMm + half),
        point(at.xMm - 2 * half, at.yMm + half),
      ];
      return [
        circle(f.radiusMm ?? EXIT_RADIUS_MM, { stroke: pen('stop', WEIGHT.thin, [1.6, 1]) }),
        { kind: 'path', d: polyPath(box, true), fill: { role: 'paper' }, stroke: pen('stop', WEIGHT.tick) },
        textPrim(at, 0, 0.95, f.label || 'EXIT', {
          capMm: 1.9,
          align: 'center',
          role: 'stop',
          weight: 'semibold',
        }),
      ];
    }
    default: {
      const mm = Math.max(r, 0.9 * k);
      return [
        circle(mm, { fill: { role: 'paper' }, stroke: pen('ink-soft', WEIGHT.tick) }),
        linePrim(point(at.xMm - mm, at.yMm), point(at.xMm + mm, at.yMm), pen('ink-soft', WEIGHT.thin)),
        linePrim(point(at.xMm, at.yMm - mm), point(at.xMm, at.yMm + mm), pen('ink-soft', WEIGHT.thin)),
        ...below(f.label, mm),
      ];
    }
  }
};

/** Something outdoors, or a way to keep clear, in our own conventions: areas hatched, lines with signs, spots at true size. */
export const featureItem = (ctx: DrawContext, f: Feature): DisplayItem | undefined =>
  memoItem(f, `feature|${ctx.nominalScale}`, [ctx.settings], () => {
    const prims =
      f.points.length === 1 ? spotPrims(ctx, f) : isArea(f) ? areaPrims(ctx, f) : linePrims(ctx, f);
    return itemOf(`feature:${f.id}`, f.id, 'architecture', ctx.nominalScale, prims);
  });

const RAMP_WIDTH_MM = 500;

/** A cable crossing: a ramp with its grooves, or two posts with a line between them for one that is flown. */
export const crossingItem = (ctx: DrawContext, x: Crossing): DisplayItem | undefined =>
  memoItem(x, `crossing|${ctx.nominalScale}`, [ctx.settings], () => {
    const half = x.lengthMm / 2;
    const [a, b] = [onward(x.at, x.rotationDeg, -half), onward(x.at, x.rotationDeg, half)];
    const side = (mm: number): readonly [Point, Point] => [
      onward(a, x.rotationDeg + 90, mm),
      onward(b, x.rotationDeg + 90, mm),
    ];
    const width = Math.max(RAMP_WIDTH_MM, ctx.nominalScale * 3) / 2;
    const prims: Primitive[] = [];
    if (x.how === 'ramp') {
      const [p, q] = side(-width);
      const [r, s] = side(width);
      prims.push({
        kind: 'path',
        d: polyPath([p, q, s, r], true),
        fill: { role: 'paper' },
        stroke: pen('ink', WEIGHT.tick),
      });
      for (const share of [-0.5, 0, 0.5]) {
        const [u, v] = side(width * share);
        prims.push(linePrim(u, v, pen('ink-soft', WEIGHT.hair)));
      }
    } else {
      prims.push(linePrim(a, b, pen('ink', WEIGHT.tick, [2.5, 1])));
      for (const p of [a, b])
        prims.push({
          kind: 'circle',
          xMm: p.xMm,
          yMm: p.yMm,
          rMm: 1,
          space: 'paper',
          fill: { role: 'paper' },
          stroke: pen('ink', WEIGHT.tick),
        });
      const words =
        x.heightMm > 0 ? `flown at ${formatLength(x.heightMm, ctx.settings.lengthUnits)}` : 'flown';
      prims.push(textPrim(x.at, 0, -1.4, words, { capMm: 1.8, align: 'center', role: 'ink-soft' }));
    }
    return itemOf(`crossing:${x.id}`, x.id, 'notes', ctx.nominalScale, prims);
  });
