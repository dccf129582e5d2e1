import { add, direction, dot, type Point, scale, sub } from '../kernel/geometry.ts';
import { formatLength } from '../kernel/units.ts';
import { recordsOf } from '../plan/plan.ts';
import type { Mark } from '../plan/records/index.ts';
import { castFan } from './beams.ts';
import type { DrawContext } from './context.ts';
import type { Primitive } from './display-list.ts';
import { groundedText, linePrim, pen, WEIGHT } from './prims.ts';

/** How far frame lines of a camera run when nothing stops them, and how far off an actor still makes a frame. */
const VIEW_MM = 2600;
const SUBJECT_MM = 12_000;
/** From the middle of a camera to its lens. */
const LENS_MM = 290;
const CAP_MM = 1.8;

/** How far along a camera's line of sight the nearest actor in its view is; undefined where none is. */
export const subjectMm = (
  marks: readonly Mark[],
  camera: Mark,
  lens: Point,
  viewDeg: number,
): number | undefined => {
  const d = direction(camera.facingDeg);
  const tan = Math.tan((viewDeg * Math.PI) / 360);
  let found: number | undefined;
  for (const m of marks) {
    if (m.what !== 'talent' || m.floorId !== camera.floorId) continue;
    const off = sub(m.at, lens);
    const along = dot(off, d);
    const beside = Math.abs(off.xMm * d.yMm - off.yMm * d.xMm);
    if (along < 200 || along > SUBJECT_MM || beside > along * tan) continue;
    if (found === undefined || along < found) found = along;
  }
  return found;
};

/** The two edges of what a camera sees, cut at walls and flats, and the frame across at the nearest actor with its width. */
export const framePrims = (ctx: DrawContext, camera: Mark, viewDeg: number): readonly Primitive[] => {
  const d = direction(camera.facingDeg);
  const lens = add(camera.at, scale(d, LENS_MM));
  const subject = subjectMm(recordsOf(ctx.plan, 'mark'), camera, lens, viewDeg);
  const half = (viewDeg * Math.PI) / 360;
  const reach = Math.max(VIEW_MM, subject === undefined ? 0 : subject / Math.cos(half) + 200);
  const edges = castFan(ctx, lens, camera.facingDeg, viewDeg, reach, 1);
  const prims: Primitive[] = edges.map((ray) => linePrim(lens, ray.to, pen('ink-soft', WEIGHT.thin)));
  const n = ctx.nominalScale;
  if (subject === undefined) return prims;
  const across = subject * Math.tan(half);
  const middle = add(lens, scale(d, subject));
  const side = { xMm: -d.yMm, yMm: d.xMm };
  prims.push(
    linePrim(
      add(middle, scale(side, -across)),
      add(middle, scale(side, across)),
      pen('ink-soft', WEIGHT.hair, [1.6, 1]),
    ),
  );
  let deg = camera.facingDeg + 90;
  deg = ((deg % 360) + 360) % 360;
  if (deg > 90 && deg <= 270) deg -= 180;
  const rad = (deg * Math.PI) / 180;
  const text = `frame ${formatLength(2 * across, ctx.settings.lengthUnits)}`;
  // Beside the actor, not on them, and only where the frame is wide enough to carry it.
  if (2 * across > 14 * n)
    prims.push(
      ...groundedText(
        add(middle, scale(side, across * 0.55)),
        0.7 * Math.sin(rad),
        -0.7 * Math.cos(rad),
        text,
        { capMm: CAP_MM, align: 'center', role: 'ink-soft', rotationDeg: deg },
        n,
      ),
    );
  return prims;
};
