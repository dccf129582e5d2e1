import { conductor, resistanceOhmPerKm } from '../../src/derive/conductors.ts';
import { type Branches, type Feeder, type Sweep, sweep } from '../../src/engines/power/solve.ts';

/** A complex number. */
export type C = readonly [number, number];

export const METRES_PER_FOOT = 0.3048;

/** Ohms of one conductor of the table over a length, at 75 °C. */
export const ohms = (id: string, lengthM: number, atC = 75): number => {
  const c = conductor(id);
  if (!c) throw new Error(`no conductor ${id}`);
  return (resistanceOhmPerKm(c, atC) * lengthM) / 1000;
};

/** One load branch of a small feeder. */
export interface TestLoad {
  readonly node: number;
  readonly from: number;
  readonly to: number;
  readonly watts: number;
  readonly vars?: number;
  readonly nominalV: number;
  readonly expP?: number;
  readonly expQ?: number;
}

/** A feeder with full 4×4 matrices per segment, in ohms; segment k leads to node k + 1 from `parents[k]`. */
export const fullFeeder = (
  sourceV: readonly C[],
  parents: readonly number[],
  matrices: readonly (readonly (readonly C[])[])[],
): Feeder => {
  const nodes = parents.length + 1;
  const z = new Float64Array(nodes * 32);
  matrices.forEach((m, k) => {
    m.forEach((row, i) => {
      row.forEach((c, j) => {
        z[(k + 1) * 32 + (i * 4 + j) * 2] = c[0];
        z[(k + 1) * 32 + (i * 4 + j) * 2 + 1] = c[1];
      });
    });
  });
  const v = new Float64Array(8);
  sourceV.forEach((c, i) => {
    v.set(c, i * 2);
  });
  return {
    nodes,
    parent: Int32Array.from([0, ...parents]),
    impedance: { kind: 'full', ohms: z },
    sourceV: v,
  };
};

export const diagonal = (values: readonly C[]): readonly (readonly C[])[] =>
  values.map((c, i) => values.map((_, j): C => (i === j ? c : [0, 0])));

export const branchesOf = (loads: readonly TestLoad[]): Branches => ({
  node: Int32Array.from(loads, (l) => l.node),
  from: Uint8Array.from(loads, (l) => l.from),
  to: Uint8Array.from(loads, (l) => l.to),
  nominalV: Float64Array.from(loads, (l) => l.nominalV),
  expP: Float64Array.from(loads, (l) => l.expP ?? 0),
  expQ: Float64Array.from(loads, (l) => l.expQ ?? 0),
});

export const solve = (f: Feeder, loads: readonly TestLoad[]): Sweep =>
  sweep(
    f,
    branchesOf(loads),
    Float64Array.from(loads, (l) => l.watts),
    Float64Array.from(loads, (l) => l.vars ?? 0),
  );

export const at = (a: Float64Array, node: number, wire: number): C => [
  a[node * 8 + wire * 2] ?? Number.NaN,
  a[node * 8 + wire * 2 + 1] ?? Number.NaN,
];
export const abs = (c: C): number => Math.hypot(c[0], c[1]);
export const minus = (a: C, b: C): C => [a[0] - b[0], a[1] - b[1]];
export const degrees = (c: C): number => (Math.atan2(c[1], c[0]) * 180) / Math.PI;
export const polar = (r: number, deg: number): C => [
  r * Math.cos((deg * Math.PI) / 180),
  r * Math.sin((deg * Math.PI) / 180),
];

/** Volts lost on a two-wire run: one leg and neutral of `wireOhms` each, feeding `amps` (constant) at power factor 1. */
export const twoWireDropV = (wireOhms: number, amps: number, volts: number): number => {
  const f = fullFeeder(
    [polar(volts, 0), [0, 0], [0, 0], [0, 0]],
    [0],
    [
      diagonal([
        [wireOhms, 0],
        [0, 0],
        [0, 0],
        [wireOhms, 0],
      ]),
    ],
  );
  const s = solve(f, [{ node: 1, from: 0, to: 3, watts: amps * volts, nominalV: volts, expP: 1, expQ: 1 }]);
  return volts - abs(minus(at(s.volts, 1, 0), at(s.volts, 1, 3)));
};

/** Volts lost line to line on a balanced three-phase run of `wireOhms` a conductor at `amps` (constant), power factor 1. */
export const threePhaseDropV = (wireOhms: number, amps: number, lineV: number): number => {
  const ln = lineV / Math.sqrt(3);
  const z: C = [wireOhms, 0];
  const f = fullFeeder(
    [polar(ln, 0), polar(ln, -120), polar(ln, 120), [0, 0]],
    [0],
    [diagonal([z, z, z, z])],
  );
  const s = solve(
    f,
    [0, 1, 2].map((w) => ({ node: 1, from: w, to: 3, watts: amps * ln, nominalV: ln, expP: 1, expQ: 1 })),
  );
  return lineV - abs(minus(at(s.volts, 1, 0), at(s.volts, 1, 1)));
};
