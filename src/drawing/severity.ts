import { add, type Point, point, scale } from '../kernel/geometry.ts';
import type { Severity } from '../report/types.ts';
import type { Primitive } from './display-list.ts';
import { pen, polyPath } from './prims.ts';

type Ring = readonly (readonly [number, number])[];

/** Corner points of the signs for a size of 1 across: octagon, its bar, diamond, its dark half, square. */
const K = Math.tan(Math.PI / 8) / 2;
export const SIGN_RINGS = {
  octagon: [
    [-K, -0.5],
    [K, -0.5],
    [0.5, -K],
    [0.5, K],
    [K, 0.5],
    [-K, 0.5],
    [-0.5, K],
    [-0.5, -K],
  ],
  bar: [
    [-0.28, -0.085],
    [0.28, -0.085],
    [0.28, 0.085],
    [-0.28, 0.085],
  ],
  diamond: [
    [0, -0.575],
    [0.575, 0],
    [0, 0.575],
    [-0.575, 0],
  ],
  half: [
    [0, -0.575],
    [0.575, 0],
    [0, 0.575],
  ],
  square: [
    [-0.43, -0.43],
    [0.43, -0.43],
    [0.43, 0.43],
    [-0.43, 0.43],
  ],
} as const satisfies Record<string, Ring>;

/** The sign of a severity on the drawing: octagon with bar, half-filled diamond, open square. */
export const severityPrims = (
  at: Point,
  dx: number,
  dy: number,
  severity: Severity,
  nominal: number,
): Primitive[] => {
  const size = 2.7;
  const middle = add(at, scale(point(dx, dy), nominal));
  const path = (ring: Ring) =>
    polyPath(
      ring.map(([x, y]) => add(middle, scale(point(x, y), size * nominal))),
      true,
    );
  if (severity === 'stop') {
    return [
      { kind: 'path', d: path(SIGN_RINGS.octagon), fill: { role: 'stop' } },
      { kind: 'path', d: path(SIGN_RINGS.bar), fill: { role: 'paper' } },
    ];
  }
  if (severity === 'warn') {
    return [
      { kind: 'path', d: path(SIGN_RINGS.diamond), stroke: pen('warn', 0.25), fill: { role: 'paper' } },
      { kind: 'path', d: path(SIGN_RINGS.half), fill: { role: 'warn' } },
    ];
  }
  return [{ kind: 'path', d: path(SIGN_RINGS.square), stroke: pen('note', 0.25), fill: { role: 'paper' } }];
};
