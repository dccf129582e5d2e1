import { describe, expect, it } from 'vitest';
import {
  type Complex,
  type FeederLoad,
  type FeederSegment,
  foldNeutral,
  solveFeeder,
  transformerRatio,
} from '../../src/engines/power/index.ts';
import { polar } from '../support/circuit.ts';

const solved = (spec: Parameters<typeof solveFeeder>[0]) => {
  const r = solveFeeder(spec);
  if (!r.ok) throw new Error(r.error.what);
  expect(r.value.settled).toBe(true);
  // What the source gives is what the loads take and what is lost.
  expect(r.value.lossVa[0]).toBeGreaterThan(0);
  return r.value;
};

/** Upper triangle by rows to a full symmetric matrix, times `k`. */
const triangle = (z: readonly Complex[], k: number): Complex[][] => {
  const index = [
    [0, 1, 2],
    [1, 3, 4],
    [2, 4, 5],
  ];
  return index.map((row) =>
    row.map((n): Complex => {
      const c = z[n] ?? [0, 0];
      return [c[0] * k, c[1] * k];
    }),
  );
};

const magnitude = (c: Complex): number => Math.hypot(c[0], c[1]);
const degrees = (c: Complex): number => (Math.atan2(c[1], c[0]) * 180) / Math.PI;
const turned = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);

/**
 * IEEE 4 Node Test Feeder, closed delta to grounded wye, step-down: data and printed results of the working group’s paper
 * (from memory); the same lines and loads as the wye-wye case, whose source is a stored page.
 */
describe('IEEE 4-node test feeder, delta to wye step-down (from memory)', () => {
  const perMile: Complex[] = [
    [0.4576, 1.078],
    [0.1559, 0.5017],
    [0.1535, 0.3849],
    [0.4666, 1.0482],
    [0.158, 0.4236],
    [0.4615, 1.0651],
  ];
  // A delta’s feed has no neutral: its line is the three-wire one, whose modified Carson matrix is printed apart.
  const threeWire: Complex[] = [
    [0.4013, 1.4133],
    [0.0953, 0.8515],
    [0.0953, 0.7266],
    [0.4013, 1.4133],
    [0.0953, 0.7802],
    [0.4013, 1.4133],
  ];
  const base = 4160 ** 2 / 6e6;
  const wye = (kw: readonly number[], pf: readonly number[]): FeederLoad[] =>
    kw.map((p, from) => ({
      node: '4',
      from,
      to: 3,
      wattsW: p * 1000,
      varsVar: p * 1000 * Math.tan(Math.acos(pf[from] ?? 1)),
      nominalV: 2401.8,
    }));
  const run = (loads: FeederLoad[]) =>
    solved({
      source: '1',
      sourceV: [polar(7199.558, 0), polar(7199.558, -120), polar(7199.558, 120)],
      segments: [
        { from: '1', to: '2', ohm: triangle(threeWire, 2000 / 5280) },
        {
          from: '2',
          to: '3',
          ohm: triangle(
            [
              [0.01 * base, 0.06 * base],
              [0, 0],
              [0, 0],
              [0.01 * base, 0.06 * base],
              [0, 0],
              [0.01 * base, 0.06 * base],
            ],
            1,
          ),
          ratio: transformerRatio.deltaWye(4160 / Math.sqrt(3) / 12470),
        },
        { from: '3', to: '4', ohm: triangle(perMile, 2500 / 5280) },
      ],
      loads,
    });

  const near = (
    a: ReturnType<typeof run>,
    node: string,
    printed: readonly (readonly [volts: number, deg: number])[],
  ): void =>
    printed.forEach(([v, deg], w) => {
      expect(Math.abs(magnitude(a.volts(node, w)) - v)).toBeLessThanOrEqual(1);
      expect(turned(degrees(a.volts(node, w)), deg)).toBeLessThanOrEqual(0.1);
    });
  const lines = (a: ReturnType<typeof run>, node: string): number[] =>
    [0, 1, 2].map((w) => {
      const [x, y] = [a.volts(node, w), a.volts(node, (w + 1) % 3)];
      return Math.round(Math.hypot(x[0] - y[0], x[1] - y[1]));
    });

  it('power-flow: balanced loads: 2249 / 2263 / 2259 V at node 3, 1920 / 2054 / 1986 V at node 4', () => {
    const a = run(wye([1800, 1800, 1800], [0.9, 0.9, 0.9]));
    expect(lines(a, '2')).toEqual([12340, 12349, 12318]);
    near(a, '3', [
      [2249, -33.7],
      [2263, -153.4],
      [2259, 86.4],
    ]);
    near(a, '4', [
      [1920, -39.1],
      [2054, -158.3],
      [1986, 80.9],
    ]);
  });

  it('power-flow: unbalanced loads: 2290 / 2261 / 2214 V at node 3, 2157 / 1936 / 1849 V at node 4', () => {
    const a = run(wye([1275, 1800, 2375], [0.85, 0.9, 0.95]));
    expect(lines(a, '2')).toEqual([12350, 12314, 12333]);
    near(a, '3', [
      [2290, -32.4],
      [2261, -153.8],
      [2214, 85.2],
    ]);
    near(a, '4', [
      [2157, -34.2],
      [1936, -157.0],
      [1849, 73.4],
    ]);
  });
});

/**
 * IEEE 13 Node Test Feeder: line configurations, loads and the printed volts of the working group’s paper (from memory).
 * Single, two and three-leg lines, wye and delta loads of constant power, current and impedance, capacitors, charging, a
 * transformer. The regulator is taken at its printed output; the load along 632–671 stands in the middle of the line.
 */
describe('IEEE 13-node test feeder (from memory)', () => {
  const zero: Complex = [0, 0];
  const configurations: Record<string, { z: readonly Complex[]; b: readonly number[] }> = {
    '601': {
      z: [
        [0.3465, 1.0179],
        [0.156, 0.5017],
        [0.158, 0.4236],
        [0.3375, 1.0478],
        [0.1535, 0.3849],
        [0.3414, 1.0348],
      ],
      b: [6.2998, -1.9958, -1.2595, 5.9597, -0.7417, 5.6386],
    },
    '602': {
      z: [
        [0.7526, 1.1814],
        [0.158, 0.4236],
        [0.156, 0.5017],
        [0.7475, 1.1983],
        [0.1535, 0.3849],
        [0.7436, 1.2112],
      ],
      b: [5.699, -1.0817, -1.6905, 5.1795, -0.6588, 5.4246],
    },
    '603': {
      z: [zero, zero, zero, [1.3294, 1.3471], [0.2066, 0.4591], [1.3238, 1.3569]],
      b: [0, 0, 0, 4.7097, -0.8999, 4.6658],
    },
    '604': {
      z: [[1.3238, 1.3569], zero, [0.2066, 0.4591], zero, zero, [1.3294, 1.3471]],
      b: [4.6658, 0, -0.8999, 0, 0, 4.7097],
    },
    '605': { z: [zero, zero, zero, zero, zero, [1.3292, 1.3475]], b: [0, 0, 0, 0, 0, 4.5193] },
    '606': {
      z: [
        [0.7982, 0.4463],
        [0.3192, 0.0328],
        [0.2849, -0.0143],
        [0.7891, 0.4041],
        [0.3192, 0.0328],
        [0.7982, 0.4463],
      ],
      b: [96.8897, 0, 0, 96.8897, 0, 96.8897],
    },
    '607': { z: [[1.3425, 0.5124], zero, zero, zero, zero, zero], b: [88.9912, 0, 0, 0, 0, 0] },
  };
  const line = (from: string, to: string, feet: number, configuration: string): FeederSegment => {
    const c = configurations[configuration];
    if (!c) throw new Error(configuration);
    const miles = feet / 5280;
    return {
      from,
      to,
      ohm: triangle(c.z, miles),
      shuntS: triangle(
        c.b.map((b): Complex => [b * 1e-6, 0]),
        miles,
      ).map((row) => row.map((x) => x[0])),
    };
  };
  const LN = 4160 / Math.sqrt(3);
  const low = 480 ** 2 / 500e3;
  const load = (
    node: string,
    from: number,
    to: number,
    kw: number,
    kvar: number,
    exponent = 0,
    nominalV = to === 3 ? LN : 4160,
  ): FeederLoad => ({
    node,
    from,
    to,
    wattsW: kw * 1000,
    varsVar: kvar * 1000,
    nominalV,
    expP: exponent,
    expQ: exponent,
  });
  const capacitor = (node: string, leg: number, kvar: number): FeederLoad => load(node, leg, 3, 0, -kvar, 2);

  const answer = () =>
    solved({
      source: 'RG60',
      sourceV: [polar(1.0625 * LN, 0), polar(1.05 * LN, -120), polar(1.0687 * LN, 120)],
      segments: [
        line('RG60', '632', 2000, '601'),
        line('632', '633', 500, '602'),
        {
          from: '633',
          to: '634',
          ohm: triangle(
            [
              [0.011 * low, 0.02 * low],
              zero,
              zero,
              [0.011 * low, 0.02 * low],
              zero,
              [0.011 * low, 0.02 * low],
            ],
            1,
          ),
          ratio: transformerRatio.wyeWye(480 / 4160),
        },
        line('632', '645', 500, '603'),
        line('645', '646', 300, '603'),
        line('632', 'mid', 1000, '601'),
        line('mid', '671', 1000, '601'),
        line('671', '684', 300, '604'),
        line('684', '611', 300, '605'),
        line('684', '652', 800, '607'),
        line('671', '680', 1000, '601'),
        line('671', '675', 500, '606'),
      ],
      loads: [
        load('634', 0, 3, 160, 110, 0, 277.128),
        load('634', 1, 3, 120, 90, 0, 277.128),
        load('634', 2, 3, 120, 90, 0, 277.128),
        load('645', 1, 3, 170, 125),
        load('646', 1, 2, 230, 132, 2),
        load('652', 0, 3, 128, 86, 2),
        load('671', 0, 1, 385, 220),
        load('671', 1, 2, 385, 220),
        load('671', 2, 0, 385, 220),
        load('675', 0, 3, 485, 190),
        load('675', 1, 3, 68, 60),
        load('675', 2, 3, 290, 212),
        load('671', 2, 0, 170, 151, 1),
        load('611', 2, 3, 170, 80, 1),
        load('mid', 0, 3, 17, 10),
        load('mid', 1, 3, 66, 38),
        load('mid', 2, 3, 117, 68),
        ...[0, 1, 2].map((leg) => capacitor('675', leg, 200)),
        capacitor('611', 2, 100),
      ],
    });
  const printed: Record<string, readonly (readonly [perUnit: number, deg: number] | undefined)[]> = {
    '632': [
      [1.021, -2.49],
      [1.042, -121.72],
      [1.0174, 117.83],
    ],
    '633': [
      [1.018, -2.56],
      [1.0401, -121.77],
      [1.0148, 117.82],
    ],
    '634': [
      [0.994, -3.23],
      [1.0218, -122.22],
      [0.996, 117.34],
    ],
    '645': [undefined, [1.0329, -121.9], [1.0155, 117.86]],
    '646': [undefined, [1.0311, -121.98], [1.0134, 117.9]],
    '671': [
      [0.99, -5.3],
      [1.0529, -122.34],
      [0.9778, 116.02],
    ],
    '680': [
      [0.99, -5.3],
      [1.0529, -122.34],
      [0.9778, 116.02],
    ],
    '684': [[0.9881, -5.32], undefined, [0.9758, 115.92]],
    '611': [undefined, undefined, [0.9738, 115.78]],
    '652': [[0.9825, -5.25], undefined, undefined],
    '675': [
      [0.9835, -5.56],
      [1.0553, -122.52],
      [0.9758, 116.03],
    ],
  };
  for (const [node, legs] of Object.entries(printed))
    it(`power-flow: node ${node}: volts within 0.0003 per unit, angles within 0.02°`, () => {
      const a = answer();
      const base = node === '634' ? 480 / Math.sqrt(3) : LN;
      legs.forEach((p, w) => {
        if (!p) return;
        expect(Math.abs(magnitude(a.volts(node, w)) / base - p[0])).toBeLessThan(0.0003);
        expect(turned(degrees(a.volts(node, w)), p[1])).toBeLessThan(0.02);
      });
    });

  it('power-flow: the source gives 3577 kW and 1725 kvar, 111 kW of it lost in lines and transformer', () => {
    const { sourceVa, lossVa } = answer();
    const kilo = (va: Complex): readonly number[] => va.map((x) => x / 1000);
    const near = (got: readonly number[], printed: readonly number[]): void =>
      got.forEach((g, i) => {
        expect(Math.abs(g - (printed[i] ?? Number.NaN))).toBeLessThan(0.5);
      });
    near(kilo(sourceVa), [3577.191, 1724.72]);
    near(kilo(lossVa), [111.063, 324.653]);
  });
});

/** Kersting, Distribution System Modeling and Analysis, example 4.1 (from memory): an overhead line of three legs and neutral. */
describe('folding in an earthed neutral', () => {
  it('power-flow: Kron’s reduction gives the printed 3×3 matrix to the rounding of its inputs', () => {
    const x = (own: Complex, ...rest: Complex[]): Complex[] => [own, ...rest];
    const [ab, ac, an, bc, bn, cn]: readonly Complex[] = [
      [0.0953, 0.8515],
      [0.0953, 0.7266],
      [0.0953, 0.7524],
      [0.0953, 0.7802],
      [0.0953, 0.7865],
      [0.0953, 0.7674],
    ];
    const leg: Complex = [0.4013, 1.4133];
    const at = (c: Complex | undefined): Complex => c ?? [0, 0];
    const z = foldNeutral([
      x(leg, at(ab), at(ac), at(an)),
      x(at(ab), leg, at(bc), at(bn)),
      x(at(ac), at(bc), leg, at(cn)),
      x(at(an), at(bn), at(cn), [0.6873, 1.5465]),
    ]);
    const printed: readonly (readonly Complex[])[] = [
      [
        [0.4576, 1.078],
        [0.156, 0.5017],
        [0.1535, 0.3849],
      ],
      [
        [0.156, 0.5017],
        [0.4666, 1.0482],
        [0.158, 0.4236],
      ],
      [
        [0.1535, 0.3849],
        [0.158, 0.4236],
        [0.4615, 1.0651],
      ],
    ];
    // Every input is printed to ±0.00005; two of them and their product meet in each answer.
    printed.forEach((row, i) => {
      row.forEach((p, j) => {
        expect(Math.abs(at(z[i]?.[j])[0] - p[0])).toBeLessThan(2e-4);
        expect(Math.abs(at(z[i]?.[j])[1] - p[1])).toBeLessThan(2e-4);
      });
    });
  });
});
