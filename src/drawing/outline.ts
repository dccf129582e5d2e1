import type { Point } from '../kernel/geometry.ts';
import type { Kind } from '../plan/kinds/kinds.ts';
import type { PathCommand, Primitive, Stroke } from './display-list.ts';
import { pen, WEIGHT } from './prims.ts';
import { placedPath } from './symbol-paths.ts';
import { parsePath } from './symbols.ts';

/** A unit's own top view, its throw along +x and its middle at zero, in millimetres. */
export interface Outline {
  readonly lengthMm: number;
  readonly widthMm: number;
  /** The largest shape first. */
  readonly paths: readonly (readonly PathCommand[])[];
}

/** Beyond this the symbol is drawn: a plan with many such units must stay quick. */
const MOST_COMMANDS = 4000;

const known = new WeakMap<Kind, Outline | undefined>();

const boxOf = (d: readonly PathCommand[]): readonly [number, number, number, number] => {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const c of d)
    for (let i = 1; i + 1 < c.length; i += 2) {
      const [x, y] = [Number(c[i]), Number(c[i + 1])];
      [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x)];
      [minY, maxY] = [Math.min(minY, y), Math.max(maxY, y)];
    }
  return [minX, minY, maxX, maxY];
};

/** A quarter turn: in the file the front looks down the page, on the plan along +x. */
const turned = (d: readonly PathCommand[], cx: number, cy: number): PathCommand[] => {
  const at = (x: number, y: number): readonly [number, number] => [y - cy, cx - x];
  return d.map((c): PathCommand => {
    if (c[0] === 'Z') return c;
    if (c[0] === 'C') return ['C', ...at(c[1], c[2]), ...at(c[3], c[4]), ...at(c[5], c[6])];
    return [c[0], ...at(c[1], c[2])];
  });
};

const read = (svg: string): Outline | undefined => {
  const paths = [...svg.matchAll(/<path d="([MLCZ\d\s.,-]*)"\/>/g)]
    .map((m) => parsePath(m[1] ?? ''))
    .filter((d) => d.length > 1);
  const all = paths.flat();
  if (all.length === 0 || all.length > MOST_COMMANDS) return undefined;
  const [minX, minY, maxX, maxY] = boxOf(all);
  if (!(maxX > minX && maxY > minY)) return undefined;
  const area = (d: readonly PathCommand[]): number => {
    const [a, b, c, e] = boxOf(d);
    return (c - a) * (e - b);
  };
  return {
    lengthMm: maxY - minY,
    widthMm: maxX - minX,
    paths: [...paths]
      .sort((a, b) => area(b) - area(a))
      .map((d) => turned(d, (minX + maxX) / 2, (minY + maxY) / 2)),
  };
};

/** The top view a kind brought along from its fixture file; undefined where it has none that can be drawn. */
export const outlineOf = (kind: Kind | undefined): Outline | undefined => {
  if (kind?.family !== 'fixture' || typeof kind.outlineSvg !== 'string') return undefined;
  if (!known.has(kind)) known.set(kind, read(kind.outlineSvg));
  return known.get(kind);
};

/** A unit drawn by its own top view, `scale` times its true size: its largest shape heavy and filled, the rest thin. */
export const outlinePrims = (
  o: Outline,
  at: Point,
  rotationDeg: number,
  scale: number,
  broken: boolean,
): readonly Primitive[] => {
  const dash = broken ? [1.2, 0.8] : undefined;
  const line = (weightMm: number): Stroke => pen('gear', weightMm, dash);
  return o.paths.map((d, i): Primitive => {
    const path = placedPath(d, at, rotationDeg, scale);
    return i === 0
      ? { kind: 'path', d: path, stroke: line(WEIGHT.cable), fill: { role: 'paper' } }
      : { kind: 'path', d: path, stroke: line(WEIGHT.thin) };
  });
};
