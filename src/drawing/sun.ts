import { insidePolygon, onward } from '../derive/outdoors.ts';
import { onFloorDeg, type SunSpot } from '../derive/sun.ts';
import { add, dot, type Point, point, scale, sub } from '../kernel/geometry.ts';
import { openingCentre } from '../plan/edits/openings.ts';
import type { Plan } from '../plan/plan.ts';
import { recordOf } from '../plan/plan.ts';
import type { Opening, Wall } from '../plan/records/index.ts';
import { type DrawContext, floorIndex } from './context.ts';
import type { DisplayItem } from './display-list.ts';
import { itemOf, pen, polyPath, WEIGHT } from './prims.ts';
import type { RoomFace } from './room-faces.ts';
import { roomsOf } from './rooms.ts';

/** A window the sun comes in by, and where its light falls on the floor of the room. */
export interface SunnyWindow {
  readonly opening: Opening;
  /** Angle at which it comes in, 0 along the wall and 90 square to it, seen from above. */
  readonly ontoDeg: number;
  /** On the floor, inside the room; empty where it does not reach the floor within it. */
  readonly patch: readonly Point[];
}

const PROBE_MM = 300;

/** Cuts a polygon by a convex one (clockwise as drawn or not). */
const clip = (subject: readonly Point[], by: readonly Point[]): readonly Point[] => {
  const middle = scale(
    by.reduce((s, p) => add(s, p), point(0, 0)),
    1 / (by.length || 1),
  );
  let out = [...subject];
  by.forEach((a, i) => {
    const b = by[(i + 1) % by.length] ?? a;
    const side = (p: Point): number => (b.xMm - a.xMm) * (p.yMm - a.yMm) - (b.yMm - a.yMm) * (p.xMm - a.xMm);
    const sign = side(middle) >= 0 ? 1 : -1;
    const kept: Point[] = [];
    out.forEach((p, k) => {
      const q = out[(k + 1) % out.length] ?? p;
      const [sp, sq] = [side(p) * sign, side(q) * sign];
      if (sp >= 0) kept.push(p);
      if (sp >= 0 !== sq >= 0) kept.push(add(p, scale(sub(q, p), sp / (sp - sq))));
    });
    out = kept;
  });
  return out;
};

/** The room a window lights, and the direction into it; undefined where it has a room on both sides or none. */
const roomBehind = (
  rooms: readonly RoomFace[],
  wall: Wall,
  o: Opening,
): { readonly room: RoomFace; readonly inward: Point } | undefined => {
  const c = openingCentre(wall, o);
  const l = Math.hypot(wall.to.xMm - wall.from.xMm, wall.to.yMm - wall.from.yMm) || 1;
  const n = point((wall.to.yMm - wall.from.yMm) / l, -(wall.to.xMm - wall.from.xMm) / l);
  const at = (k: number): RoomFace | undefined =>
    rooms.find((r) => insidePolygon(r.inside, add(c, scale(n, k * (wall.thicknessMm / 2 + PROBE_MM)))));
  const [left, right] = [at(1), at(-1)];
  if (left && !right) return { room: left, inward: n };
  if (right && !left) return { room: right, inward: scale(n, -1) };
  return undefined;
};

/** Windows of a floor that the sun shines into, and where; none while it is under the horizon. Trees and houses opposite are not counted. */
export const sunnyWindows = (plan: Plan, floorId: string, sun: SunSpot): readonly SunnyWindow[] => {
  if (sun.elevationDeg <= 0) return [];
  const index = floorIndex(plan, floorId);
  const rooms = roomsOf({ index });
  const north = recordOf(plan, 'floor', floorId)?.northDeg ?? 270;
  // Light runs away from the sun.
  const way = onFloorDeg(sun.azimuthDeg + 180, north);
  const run = onward(point(0, 0), way, 1);
  const perMm = 1 / Math.tan((sun.elevationDeg * Math.PI) / 180);
  return index.architecture.walls.flatMap((wall) =>
    (index.architecture.openings.get(wall.id) ?? []).flatMap((o): SunnyWindow[] => {
      if (o.what !== 'window' || o.hidden) return [];
      const behind = roomBehind(rooms, wall, o);
      const onto = behind ? dot(run, behind.inward) : 0;
      if (!behind || onto <= 0.02) return [];
      const ends = [0, o.widthMm].map((mm) =>
        add(
          openingCentre(wall, { offsetMm: o.offsetMm + mm, widthMm: 0 }),
          scale(behind.inward, wall.thicknessMm / 2),
        ),
      );
      const [a, b] = [ends[0] ?? wall.from, ends[1] ?? wall.to];
      const far = (p: Point, z: number): Point => add(p, scale(run, z * perMm));
      const top = o.sillMm + o.heightMm;
      const light = [far(a, o.sillMm), far(b, o.sillMm), far(b, top), far(a, top)];
      const patch = clip(behind.room.inside, light);
      return [{ opening: o, ontoDeg: (Math.asin(Math.min(1, onto)) * 180) / Math.PI, patch }];
    }),
  );
};

/** Where the sun falls on the floors of rooms, with the edges of its way in from the window. */
export const sunItems = (ctx: DrawContext, sun: SunSpot): readonly DisplayItem[] =>
  sunnyWindows(ctx.plan, ctx.floorId, sun).flatMap((w) => {
    if (w.patch.length < 3) return [];
    const item = itemOf(`sun:${w.opening.id}`, w.opening.id, 'beams', ctx.nominalScale, [
      {
        kind: 'path',
        d: polyPath(w.patch, true),
        fill: { role: 'beam', opacity: 0.3 },
        stroke: pen('beam', WEIGHT.thin, [1.5, 0.8]),
      },
    ]);
    return item ? [item] : [];
  });
