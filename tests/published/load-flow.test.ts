import { describe, expect, it } from 'vitest';
import { abs, at, type C, degrees, fullFeeder, polar, solve, type TestLoad } from '../support/circuit.ts';

/**
 * Four-wire low-voltage feeder with explicit neutral: PowerModelsDistribution.jl,
 * test/data/en_validation_case_data with solutions beside it, commit e59d21a. 1 km, neutral held at 0 V at the source only.
 */
const R_OWN = 0.227217624;
const R_MUTUAL = 0.059217624;
const X: readonly (readonly number[])[] = [
  [0.879326005, 0.541069709, 0.475545802, 0.449141163],
  [0.541069709, 0.879326005, 0.516533439, 0.475545802],
  [0.475545802, 0.516533439, 0.879326005, 0.541069709],
  [0.449141163, 0.475545802, 0.541069709, 0.879326005],
];
const line = X.map((row, i) => row.map((x, j): C => [i === j ? R_OWN : R_MUTUAL, x]));
const LN = 400 / Math.sqrt(3);
const feeder = fullFeeder([polar(LN, 0), polar(LN, -120), polar(LN, 120), [0, 0]], [0], [line]);

/** Watts and vars of kVA at 0.9 lag. */
const power = (va: number) => ({ watts: va * 0.9, vars: va * Math.sqrt(1 - 0.81) });
const always: TestLoad = { node: 1, from: 0, to: 3, ...power(5000), nominalV: 230 };
const wye = (expP: number, expQ: number): TestLoad[] =>
  [0, 1, 2].map((from) => ({ node: 1, from, to: 3, ...power(10000 / 3), nominalV: LN, expP, expQ }));
const delta = (expP: number, expQ: number): TestLoad[] =>
  [0, 1, 2].map((from) => ({
    node: 1,
    from,
    to: (from + 1) % 3,
    ...power(10000 / 3),
    nominalV: 400,
    expP,
    expQ,
  }));

const cases: readonly {
  readonly name: string;
  readonly loads: readonly TestLoad[];
  readonly volts: readonly number[];
  readonly anglesRad: readonly number[];
}[] = [
  {
    name: 'constant power leg to neutral',
    loads: [{ node: 1, from: 0, to: 3, ...power(10000), nominalV: 230 }],
    volts: [193.70297, 236.99468, 233.05332, 43.40161],
    anglesRad: [-0.105464, -2.099195, 2.069463, 0.489083],
  },
  {
    name: 'constant power in wye',
    loads: wye(0, 0),
    volts: [216.16311, 228.57895, 227.68081, 12.88275],
    anglesRad: [-0.047864, -2.109281, 2.068657, 0.614438],
  },
  {
    name: 'constant impedance in wye',
    loads: wye(2, 2),
    volts: [217.41945, 228.02977, 227.69479, 11.25059],
    anglesRad: [-0.043499, -2.11049, 2.07022, 0.576579],
  },
  {
    name: 'exponents 0.4 and 2 in wye',
    loads: wye(0.4, 2),
    volts: [216.97369, 228.26235, 227.76759, 12.00557],
    anglesRad: [-0.047315, -2.10912, 2.069244, 0.635184],
  },
  {
    name: 'constant impedance in delta',
    loads: delta(2, 2),
    volts: [217.27156, 228.49974, 227.5294, 12.19822],
    anglesRad: [-0.045673, -2.109842, 2.071185, 0.631907],
  },
];

describe('four-wire feeder of PowerModelsDistribution.jl, en_validation_case, commit e59d21a', () => {
  for (const c of cases)
    it(`power-flow: ${c.name}: volts to 0.0001 V, angles to 0.000002 rad`, () => {
      const s = solve(feeder, [always, ...c.loads]);
      expect(s.settled).toBe(true);
      c.volts.forEach((v, w) => {
        expect(Math.abs(abs(at(s.volts, 1, w)) - v)).toBeLessThan(1e-4);
      });
      c.anglesRad.forEach((a, w) => {
        expect(Math.abs((degrees(at(s.volts, 1, w)) * Math.PI) / 180 - a)).toBeLessThan(2e-6);
      });
    });
});

/**
 * IEEE 4-node test feeder, grounded wye to grounded wye step-down; results printed as “IEEE results” in
 * lbl-srg/modelica-buildings, Test4NodesFeeder/UnbalancedStepDown/YY.mo and BaseClasses/IEEE4.mo.
 * The transformer is its series impedance; the high-voltage side is referred to the low one by the square of the ratio.
 */
const RATIO = 4.16 / 12.47;
const PER_MILE: readonly (readonly C[])[] = [
  [
    [0.4576, 1.078],
    [0.1559, 0.5017],
    [0.1535, 0.3849],
  ],
  [
    [0.1559, 0.5017],
    [0.4666, 1.0482],
    [0.158, 0.4236],
  ],
  [
    [0.1535, 0.3849],
    [0.158, 0.4236],
    [0.4615, 1.0651],
  ],
];
const scaled = (k: number): C[][] =>
  [0, 1, 2, 3].map((i) =>
    [0, 1, 2, 3].map((j): C => {
      const z = PER_MILE[i]?.[j];
      return z ? [z[0] * k, z[1] * k] : [0, 0];
    }),
  );
const base = 4160 ** 2 / 6e6;
const transformer = [0, 1, 2, 3].map((i) =>
  [0, 1, 2, 3].map((j): C => (i === j && i < 3 ? [0.01 * base, 0.06 * base] : [0, 0])),
);
const high = 7199.6 * RATIO;
const ieee = fullFeeder(
  [polar(high, 0), polar(high, -120), polar(high, 120), [0, 0]],
  [0, 1, 2],
  [scaled((2000 / 5280) * RATIO ** 2), transformer, scaled(2500 / 5280)],
);
const lagging = (kw: number, pf: number) => ({ watts: kw * 1000, vars: kw * 1000 * Math.tan(Math.acos(pf)) });
const ieeeLoads = (...l: readonly (readonly [number, number])[]): TestLoad[] =>
  l.map(([kw, pf], from) => ({ node: 3, from, to: 3, ...lagging(kw, pf), nominalV: 2401.8 }));

describe('IEEE 4-node test feeder, wye to wye step-down', () => {
  const check = (
    loads: TestLoad[],
    node2: number[],
    node3: number[],
    node4: number[],
    angles: number[],
  ): void => {
    const s = solve(ieee, loads);
    expect(s.settled).toBe(true);
    const volts = (node: number, k: number): number[] => [0, 1, 2].map((w) => abs(at(s.volts, node, w)) / k);
    const near = (got: number[], printed: number[], within: number): void =>
      got.forEach((g, i) => {
        expect(Math.abs(g - (printed[i] ?? Number.NaN))).toBeLessThanOrEqual(within);
      });
    near(volts(1, RATIO), node2, 1);
    near(volts(2, 1), node3, 1);
    near(volts(3, 1), node4, 1);
    near(
      [0, 1, 2].map((w) => degrees(at(s.volts, 3, w))),
      angles,
      0.1,
    );
  };

  it('power-flow: unbalanced loads: 2175 / 1930 / 1833 V at node 4', () => {
    check(
      ieeeLoads([1275, 0.85], [1800, 0.9], [2375, 0.95]),
      [7164, 7110, 7082],
      [2305, 2255, 2203],
      [2175, 1930, 1833],
      [-4.1, -126.8, 102.8],
    );
  });

  it('power-flow: balanced loads: 1918 / 2061 / 1981 V at node 4', () => {
    check(
      ieeeLoads([1800, 0.9], [1800, 0.9], [1800, 0.9]),
      [7107, 7140, 7121],
      [2247, 2269, 2256],
      [1918, 2061, 1981],
      [-9.1, -128.3, 110.9],
    );
  });
});
