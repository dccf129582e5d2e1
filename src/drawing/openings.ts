import { add, angleDeg, type Point, scale, sub } from '../kernel/geometry.ts';
import { recordOf } from '../plan/plan.ts';
import type { Opening, Wall } from '../plan/records/index.ts';
import { type DrawContext, memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import { arcPath, itemOf, linePrim, pen, WEIGHT } from './prims.ts';
import { leftOf, wallSolid } from './walls.ts';

interface Frame {
  readonly a: Point;
  readonly b: Point;
  readonly along: Point;
  readonly left: Point;
  readonly half: number;
}

const frameOf = (wall: Wall, o: Opening): Frame => {
  const s = wallSolid(wall, []);
  const a = Math.max(0, Math.min(s.lengthMm, o.offsetMm));
  const b = Math.max(a, Math.min(s.lengthMm, o.offsetMm + o.widthMm));
  return {
    a: add(wall.from, scale(s.along, a)),
    b: add(wall.from, scale(s.along, b)),
    along: s.along,
    left: leftOf(s.along),
    half: wall.thicknessMm / 2,
  };
};

const across = (f: Frame, by: number): readonly [Point, Point] => [
  add(f.a, scale(f.left, by)),
  add(f.b, scale(f.left, by)),
];

const windowLines = (f: Frame): Primitive[] => [
  ...[f.half, -f.half].map((by) => linePrim(...across(f, by), pen('wall', WEIGHT.furniture))),
  ...[f.half * 0.28, -f.half * 0.28].map((by) => linePrim(...across(f, by), pen('glass', WEIGHT.furniture))),
];

const doorLines = (f: Frame, o: Opening): Primitive[] => {
  if (!o.swing) {
    return [f.half, -f.half].map((by) => linePrim(...across(f, by), pen('ink-soft', WEIGHT.thin, [2, 1])));
  }
  const atStart = o.swing.endsWith('start');
  const side = o.swing.startsWith('left') ? 1 : -1;
  const face = across(f, f.half * side);
  const hinge = atStart ? face[0] : face[1];
  const latch = atStart ? face[1] : face[0];
  const width = Math.hypot(latch.xMm - hinge.xMm, latch.yMm - hinge.yMm);
  const leaf = add(hinge, scale(f.left, width * side));
  const from = angleDeg(hinge, latch);
  let to = angleDeg(hinge, leaf);
  if (to - from > 180) to -= 360;
  if (from - to > 180) to += 360;
  return [
    linePrim(hinge, leaf, pen('wall', WEIGHT.cable)),
    { kind: 'path', d: arcPath(hinge, width, from, to), stroke: pen('ink-soft', WEIGHT.thin) },
    linePrim(
      sub(face[0], scale(f.left, f.half * side * 2)),
      sub(face[1], scale(f.left, f.half * side * 2)),
      pen('ink-faint', WEIGHT.thin),
    ),
  ];
};

const archLines = (f: Frame): Primitive[] =>
  [f.half, -f.half].map((by) => linePrim(...across(f, by), pen('ink-soft', WEIGHT.thin, [2, 1])));

/** A door with leaf and swing, a window with its glass, an archway with its head as broken lines. */
export const openingItem = (ctx: DrawContext, o: Opening): DisplayItem | undefined => {
  const wall = recordOf(ctx.plan, 'wall', o.wallId);
  if (!wall || wall.floorId !== ctx.floorId) return undefined;
  return memoItem(o, `opening|${ctx.nominalScale}`, [wall], () => {
    const f = frameOf(wall, o);
    const prims = o.what === 'window' ? windowLines(f) : o.what === 'door' ? doorLines(f, o) : archLines(f);
    return itemOf(`opening:${o.id}`, o.id, 'architecture', ctx.nominalScale, prims);
  });
};
