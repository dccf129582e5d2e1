import { describe, expect, it } from 'vitest';
import {
  type Complex,
  type FeederAnswer,
  type FeederSpec,
  solveFeeder,
  spreadLoads,
  transformerRatio,
} from '../../src/engines/power/index.ts';
import { polar } from '../support/circuit.ts';
import { feeder34, printed34 } from '../support/feeder-34.ts';
import { feeder37, KV37, loads37 } from '../support/feeder-37.ts';

const solved = (spec: FeederSpec): FeederAnswer => {
  const r = solveFeeder(spec);
  if (!r.ok) throw new Error(r.error.what);
  expect(r.value.settled).toBe(true);
  return r.value;
};
const size = (c: Complex): number => Math.hypot(c[0], c[1]);
const degrees = (c: Complex): number => (Math.atan2(c[1], c[0]) * 180) / Math.PI;
const turned = (a: number, b: number): number => Math.abs(((a - b + 540) % 360) - 180);
const minus = (a: Complex, b: Complex): Complex => [a[0] - b[0], a[1] - b[1]];

describe('IEEE 34-node test feeder: long lines, two regulators, spread loads, capacitors (from memory)', () => {
  const a = solved(feeder34('middle'));
  for (const [node, legs] of Object.entries(printed34))
    it(`power-feeder: node ${node}: volts within 0.0003 per unit, angles within 0.05°`, () => {
      const base = (node === '888' || node === '890' ? 4160 : 24_900) / Math.sqrt(3);
      legs.forEach((p, w) => {
        if (!p) return;
        expect(Math.abs(size(a.volts(node, w)) / base - p[0])).toBeLessThan(0.0003);
        expect(turned(degrees(a.volts(node, w)), p[1])).toBeLessThan(0.05);
      });
    });

  it('power-feeder: the source gives 2042.872 kW and 290.258 kvar, 273.049 kW of it lost, to 0.5', () => {
    expect(Math.abs(a.sourceVa[0] / 1000 - 2042.872)).toBeLessThan(0.5);
    expect(Math.abs(a.sourceVa[1] / 1000 - 290.258)).toBeLessThan(0.5);
    expect(Math.abs(a.lossVa[0] / 1000 - 273.049)).toBeLessThan(0.5);
  });

  it('power-feeder: spread loads at the middle, at the ends or at the quarters give the same volts to 0.0003 per unit', () => {
    for (const how of ['ends', 'quarter'] as const) {
      const b = solved(feeder34(how));
      for (const node of Object.keys(printed34))
        for (const w of [0, 1, 2])
          expect(
            Math.abs(size(a.volts(node, w)) - size(b.volts(node, w))) / (24_900 / Math.sqrt(3)),
          ).toBeLessThan(0.0003);
    }
  });
});

describe('IEEE 37-node test feeder: three wires in delta, regulators in open delta (from memory)', () => {
  const a = solved(feeder37());
  const line = (node: string, from: number, to: number): readonly [number, number] => {
    const d = minus(a.volts(node, from), a.volts(node, to));
    // Angles are told from line AB at the source.
    return [size(d) / KV37, degrees(d) - 30];
  };

  it('power-feeder: its loads sum up to the 727, 639 and 1091 kW and 357, 314 and 530 kvar that are printed', () => {
    const sums = [0, 1, 2, 3, 4, 5].map((i) => loads37.reduce((s, [, , v]) => s + (v[i] ?? 0), 0));
    expect(sums).toEqual([727, 357, 639, 314, 1091, 530]);
  });

  it.each([
    ['R799', [1.0437, 0], [1.025, -120], [1.0345, 120.9]],
    ['701', [1.0317, -0.08], [1.0144, -120.39], [1.0183, 120.61]],
  ] as const)(
    'power-feeder: node %s: volts between lines within 0.0002 per unit, angles within 0.01°',
    (node, ab, bc, ca) => {
      for (const [p, pair] of [
        [ab, [0, 1]],
        [bc, [1, 2]],
        [ca, [2, 0]],
      ] as const) {
        const [volts, angle] = line(node, pair[0], pair[1]);
        expect(Math.abs(volts - p[0])).toBeLessThan(0.0002);
        expect(turned(angle, p[1])).toBeLessThan(0.01);
      }
    },
  );

  it('power-feeder: what the source gives beyond the loads is lost in the lines, I² R with all mutuals', () => {
    const lost = feeder37().segments.reduce((sum, s) => {
      const amps = [0, 1, 2].map((w) => a.amps(s.to, w));
      return s.ohm.reduce(
        (rows, row, i) =>
          row.reduce((cells, z, j) => {
            const [x, y] = [amps[i] ?? [0, 0], amps[j] ?? [0, 0]];
            // Real part of conj(I_i) × Z_ij × I_j.
            const re = x[0] * y[0] + x[1] * y[1];
            const im = x[0] * y[1] - x[1] * y[0];
            return cells + z[0] * re - z[1] * im;
          }, rows),
        sum,
      );
    }, 0);
    expect(lost).toBeGreaterThan(50_000);
    expect(Math.abs(a.lossVa[0] - lost) / lost).toBeLessThan(1e-6);
  });
});

const plain = (ohm: number): Complex[][] =>
  [0, 1, 2].map((i) => [0, 1, 2].map((j): Complex => (i === j ? [ohm, 0] : [0, 0])));
const wye = (v: number): Complex[] => [polar(v, 0), polar(v, -120), polar(v, 120)];

describe('connections of transformers and regulators at no load', () => {
  const open = (ratio: readonly (readonly number[])[]) =>
    solved({
      source: 's',
      sourceV: wye(7200),
      segments: [{ from: 's', to: 'x', ohm: plain(0.01), ratio }],
      loads: [],
    });
  const between = (a: FeederAnswer, i: number, j: number) => minus(a.volts('x', i), a.volts('x', j));

  it('power-coupling: delta to wye turns the low side 30° behind or ahead, by √3 of its turns (any text on vector groups: Dyn1, Dyn11)', () => {
    const [behind, ahead] = [transformerRatio.deltaWye(0.1), transformerRatio.deltaWyeAhead(0.1)].map(open);
    for (const [a, angle] of [
      [behind, -30],
      [ahead, 30],
    ] as const) {
      expect(size(a?.volts('x', 0) ?? [0, 0])).toBeCloseTo(7200 * Math.sqrt(3) * 0.1, 6);
      expect(degrees(a?.volts('x', 0) ?? [0, 0])).toBeCloseTo(angle, 6);
    }
  });

  it('power-coupling: wye to delta, open delta and open wye to open delta give three equal lines', () => {
    const lineV: readonly [readonly (readonly number[])[], number][] = [
      [transformerRatio.wyeDelta(0.1), 720],
      [transformerRatio.openDelta(0.1), 720 * Math.sqrt(3)],
      [transformerRatio.openWyeOpenDelta(0.1), 720],
    ];
    for (const [ratio, volts] of lineV) {
      const a = open(ratio);
      const lines = [between(a, 0, 1), between(a, 1, 2), between(a, 2, 0)];
      for (const l of lines) expect(Math.abs(size(l) - volts)).toBeLessThan(1e-6);
      expect(turned(degrees(lines[0] ?? [0, 0]) - degrees(lines[1] ?? [0, 0]), 120)).toBeLessThan(1e-6);
    }
  });

  it('power-coupling: sixteen steps up are 10 %, on the leg of the regulator alone', () => {
    const a = open(transformerRatio.regulator(1 + 16 * 0.00625, 1, 1));
    expect([0, 1, 2].map((w) => Math.round(size(a.volts('x', w)) * 1e6) / 1e6)).toEqual([7920, 7200, 7200]);
  });
});

describe('feeders that cannot be solved', () => {
  const spec = (watts: number): FeederSpec => ({
    source: 's',
    sourceV: wye(120),
    segments: [
      { from: 's', to: 'a', ohm: plain(0.001) },
      { from: 'a', to: 'b', ohm: plain(0.5) },
      { from: 'a', to: 'c', ohm: plain(0.02) },
    ],
    loads: ['b', 'c'].map((node) => ({ node, from: 0, to: 3, wattsW: watts, varsVar: 0, nominalV: 120 })),
  });

  it('power-feeder: more load than V² ÷ 4R: not settled, and the stretch to blame is named', () => {
    // 120 V over 0.5 Ω give at most 7200 W.
    const just = solveFeeder(spec(6500));
    const over = solveFeeder(spec(7500));
    if (!just.ok || !over.ok) throw new Error('refused');
    expect([just.value.settled, just.value.blame]).toEqual([true, undefined]);
    expect([over.value.settled, over.value.blame]).toEqual([false, ['a', 'b']]);
  });

  it('power-feeder: what is no number, no wire or no volts is refused in words', () => {
    const load = { node: 'a', from: 0, to: 3, wattsW: 1, varsVar: 0, nominalV: 120 };
    const [first] = spec(1).segments;
    if (!first) throw new Error('no segment');
    const cases: readonly [Partial<FeederSpec>, RegExp][] = [
      [{ loads: [{ ...load, wattsW: Number.NaN }] }, /no number/],
      [{ loads: [{ ...load, nominalV: 0 }] }, /rated 0 V/],
      [{ loads: [{ ...load, to: 7 }] }, /between wires/],
      [{ loads: [{ ...load, to: 0 }] }, /between wires/],
      [{ loads: [{ ...load, node: 'nowhere' }] }, /not there/],
      [{ segments: [{ ...first, ohm: plain(Number.NaN) }] }, /no number/],
      [{ segments: [{ ...first, parallel: 0 }] }, /side by side/],
      [{ segments: [{ ...first, ohm: [[[1, 0]]] }] }, /3×3 or 4×4/],
      [{ segments: [first, { ...first, from: 'a', to: 's' }] }, /fed twice/],
      [{ segments: [{ ...first, from: 'z' }] }, /nothing reaches/],
      [{ sourceV: [[Number.NaN, 0]] }, /source needs/],
    ];
    for (const [change, words] of cases) {
      const r = solveFeeder({ ...spec(1), loads: [load], ...change });
      expect(!r.ok && r.error.what).toMatch(words);
    }
  });

  it('power-feeder: a spread load on a line that is not there is refused', () => {
    const { segments, loads } = spreadLoads(
      spec(1).segments,
      [{ along: ['s', 'nowhere'], load: { from: 0, to: 3, wattsW: 1, varsVar: 0, nominalV: 120 } }],
      'middle',
    );
    const r = solveFeeder({ ...spec(1), segments, loads });
    expect(!r.ok && r.error.what).toMatch(/not there/);
  });

  it('power-feeder: spread over one line, two thirds at a quarter and a third at the end give the drop and loss of an even spread (Kersting, from memory: half the drop, a third of the loss of the same load at the end)', () => {
    const one = { source: 's', sourceV: wye(1000), segments: [{ from: 's', to: 'e', ohm: plain(1) }] };
    const load = { from: 0, to: 3, wattsW: 1000, varsVar: 0, nominalV: 1000, expP: 1, expQ: 1 };
    const run = (how: 'quarter' | 'ends' | 'middle') => {
      const s = spreadLoads(one.segments, [{ along: ['s', 'e'], load }], how);
      return solved({ ...one, ...s });
    };
    const quarter = run('quarter');
    // 1 A over 1 Ω: 1 V and 1 W with all of it at the end.
    expect(1000 - size(quarter.volts('e', 0))).toBeCloseTo(0.5, 6);
    expect(quarter.lossVa[0]).toBeCloseTo(1 / 3, 3);
    expect(run('ends').lossVa[0]).toBeCloseTo(1 / 4, 3);
    expect(run('middle').lossVa[0]).toBeCloseTo(1 / 2, 3);
  });
});
