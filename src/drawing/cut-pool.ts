import type { Doors } from '../plan/beam.ts';

/** A point of a patch of light: so far out along the facing, and so far to the right of it. */
export interface PatchPoint {
  readonly outMm: number;
  readonly rightMm: number;
}

/** A ray of the cone by its tangents from the throw, to the right and up. */
interface Ray {
  readonly right: number;
  readonly up: number;
}

const RAD = Math.PI / 180;
const CORNERS = 96;
/** Light that comes down flatter than this counts as not coming down. */
const FLATTEST_DEG = 10;

/** The corners on the side of a leaf where light goes by; where an edge meets the leaf there is a new one. */
const cutBy = (rays: readonly Ray[], room: (r: Ray) => number): readonly Ray[] =>
  rays.flatMap((b, i) => {
    const a = rays.at(i - 1) ?? b;
    const [ra, rb] = [room(a), room(b)];
    const share = ra / (ra - rb);
    const met =
      ra < 0 === rb < 0
        ? []
        : [{ right: a.right + (b.right - a.right) * share, up: a.up + (b.up - a.up) * share }];
    return rb < 0 ? met : [...met, b];
  });

/**
 * The patch on a level floor of a cone of `spreadDeg` from `heightMm` above, tilted `tiltDeg` (down is negative), behind barn
 * doors: each leaf is a plane through the lamp at its angle from the throw, so it cuts the patch along a straight line. Gives
 * corners in order; none where nothing comes through; undefined where no leaf reaches into the cone, or where some of what
 * comes through does not come down. Worked on the plane across the throw, where rays are points and leaves are lines.
 */
export const cutPool = (
  heightMm: number,
  tiltDeg: number,
  spreadDeg: number,
  doors: Doors,
): readonly PatchPoint[] | undefined => {
  const beta = spreadDeg / 2;
  if (beta >= 80 || beta <= 0 || heightMm <= 0) return undefined;
  const edge = Math.tan(beta * RAD);
  const leaves: readonly (readonly [deg: number | undefined, of: (r: Ray) => number])[] = [
    [doors.topDeg, (r) => r.up],
    [doors.bottomDeg, (r) => -r.up],
    [doors.rightDeg, (r) => r.right],
    [doors.leftDeg, (r) => -r.right],
  ];
  const cutting = leaves.filter(([deg]) => deg !== undefined && deg < beta);
  if (cutting.length === 0) return undefined;
  let rays: readonly Ray[] = Array.from({ length: CORNERS }, (_, i) => {
    const turn = (2 * Math.PI * i) / CORNERS;
    return { right: edge * Math.sin(turn), up: edge * Math.cos(turn) };
  });
  for (const [deg = 0, of] of cutting) {
    const limit = Math.tan(Math.max(-89, deg) * RAD);
    rays = cutBy(rays, (r) => limit - of(r));
  }
  const [sin, cos] = [Math.sin(-tiltDeg * RAD), Math.cos(-tiltDeg * RAD)];
  const patch: PatchPoint[] = [];
  for (const { right, up } of rays) {
    const down = sin - up * cos;
    const out = cos + up * sin;
    if (Math.atan2(down, Math.hypot(out, right)) < FLATTEST_DEG * RAD) return undefined;
    patch.push({ outMm: (out / down) * heightMm, rightMm: (right / down) * heightMm });
  }
  return patch;
};
