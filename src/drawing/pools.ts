import { add, direction, type Point, scale } from '../kernel/geometry.ts';
import type { Doors } from '../plan/beam.ts';
import type { FixtureKind } from '../plan/kinds/kinds.ts';
import { cutPool, type PatchPoint } from './cut-pool.ts';
import type { Primitive, Stroke } from './display-list.ts';
import { ellipsePath, linePrim, pen, polyPath, WEIGHT } from './prims.ts';

/** Where a cone of light from a height meets the floor: an ellipse, its middle so far out along the facing. */
export interface Pool {
  readonly outMm: number;
  /** Half its size along and across the facing. */
  readonly alongMm: number;
  readonly acrossMm: number;
}

const RAD = Math.PI / 180;

/**
 * The patch a cone of `spreadDeg` makes on a level floor from `heightMm` above it, tilted `tiltDeg` (down is negative);
 * undefined where its upper edge does not come down within 80 degrees of straight down. A plane cuts a cone of half angle β
 * whose axis is at an angle τ to it in an ellipse of eccentricity cos τ / cos β; its ends lie h/tan(τ ± β) out.
 */
export const poolOf = (heightMm: number, tiltDeg: number, spreadDeg: number): Pool | undefined => {
  const [tau, beta] = [-tiltDeg, spreadDeg / 2];
  // Straight down the near edge lies behind the unit; beyond, the same ellipse seen from the other side.
  if (tau - beta < 10 || tau > 90 || beta >= 80 || heightMm <= 0) return undefined;
  const near = heightMm / Math.tan((tau + beta) * RAD);
  const far = heightMm / Math.tan((tau - beta) * RAD);
  const alongMm = (far - near) / 2;
  const e = Math.cos(tau * RAD) / Math.cos(beta * RAD);
  return { outMm: (far + near) / 2, alongMm, acrossMm: alongMm * Math.sqrt(Math.max(0, 1 - e * e)) };
};

interface Ask {
  readonly at: Point;
  readonly facing: number;
  readonly tiltDeg: number;
  readonly heightMm: number;
  readonly kind: FixtureKind;
  readonly beamDeg: number;
  readonly doors: Doors | undefined;
}

/** A patch cut by barn doors, as a shape on the floor; nothing where no light comes through. */
const patchPrim = (a: Ask, cut: readonly PatchPoint[], stroke: Stroke): Primitive | undefined =>
  cut.length < 3
    ? undefined
    : {
        kind: 'path',
        d: polyPath(
          cut.map((p) =>
            add(add(a.at, scale(direction(a.facing), p.outMm)), scale(direction(a.facing + 90), p.rightMm)),
          ),
          true,
        ),
        stroke,
      };

/** How far edge lines of the field run. */
const FIELD_MM = 1800;

/** Beam and field as they fall on the floor; where they do not come down, edge lines of the field. */
export const poolPrims = (a: Ask): readonly Primitive[] => {
  const field = a.kind.fieldDeg === undefined || a.kind.fieldDeg <= a.beamDeg ? undefined : a.kind.fieldDeg;
  const ellipse = (deg: number, dash: readonly number[] | undefined): Primitive | undefined => {
    const cut = a.doors && cutPool(a.heightMm, a.tiltDeg, deg, a.doors);
    if (cut) return patchPrim(a, cut, pen('beam', WEIGHT.hair, dash));
    const pool = poolOf(a.heightMm, a.tiltDeg, deg);
    return (
      pool && {
        kind: 'path',
        d: ellipsePath(
          add(a.at, scale(direction(a.facing), pool.outMm)),
          pool.alongMm,
          pool.acrossMm,
          a.facing,
        ),
        stroke: pen('beam', WEIGHT.hair, dash),
      }
    );
  };
  const edges = (deg: number): readonly Primitive[] =>
    deg >= 170 || a.tiltDeg < -75
      ? []
      : [-1, 1].map((way) =>
          linePrim(
            a.at,
            add(a.at, scale(direction(a.facing + (way * deg) / 2), FIELD_MM)),
            pen('beam', WEIGHT.hair, [0.6, 1]),
          ),
        );
  const beam = ellipse(a.beamDeg, undefined);
  const wide = field === undefined ? undefined : ellipse(field, [0.6, 1]);
  return [...(beam ? [beam] : []), ...(wide ? [wide] : field === undefined ? [] : edges(field))];
};
