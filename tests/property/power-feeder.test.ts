import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Complex,
  type FeederAnswer,
  type FeederLoad,
  type FeederSegment,
  type FeederSpec,
  solveFeeder,
  transformerRatio,
} from '../../src/engines/power/index.ts';
import { polar } from '../support/circuit.ts';

const ohm = fc.double({ min: 0.002, max: 0.03, noNaN: true });
const drawn = fc.record({
  segments: fc.array(
    fc.record({
      parent: fc.nat(10),
      own: fc.tuple(ohm, ohm, ohm, ohm),
      x: fc.double({ min: 0, max: 0.01, noNaN: true }),
      mutual: fc.double({ min: 0, max: 0.001, noNaN: true }),
      ratio: fc.constantFrom(
        undefined,
        undefined,
        transformerRatio.wyeWye(0.9),
        transformerRatio.deltaWye(0.6),
      ),
    }),
    { minLength: 1, maxLength: 6 },
  ),
  loads: fc.array(
    fc.record({
      node: fc.nat(10),
      pair: fc.constantFrom<readonly [number, number]>([0, 3], [1, 3], [2, 3], [0, 1], [1, 2], [2, 0]),
      wattsW: fc.double({ min: 0, max: 1500, noNaN: true }),
      varsVar: fc.double({ min: -400, max: 800, noNaN: true }),
      exponent: fc.constantFrom(0, 1, 1.55, 2),
    }),
    { minLength: 1, maxLength: 8 },
  ),
});
type Drawn = typeof drawn extends fc.Arbitrary<infer T> ? T : never;

const name = (k: number): string => `n${k}`;
const source = (volts = 120): Complex[] => [polar(volts, 0), polar(volts, -120), polar(volts, 120), [0, 0]];

/** A feeder with its legs turned round by so many places, its source volts and nominal volts times `k`, its ohms times `z`. */
const build = (d: Drawn, turn = 0, k = 1, z = 1, power = 1): FeederSpec => {
  const to = (w: number): number => (w === 3 ? 3 : (w + turn) % 3);
  const from = (w: number): number => (w === 3 ? 3 : (w + 3 - turn) % 3);
  const segments = d.segments.map((s, i): FeederSegment => {
    const cell = (a: number, b: number): Complex =>
      a === b ? [(s.own[a] ?? 0) * z, s.x * z] : [0, s.mutual * z];
    return {
      from: name(s.parent % (i + 1)),
      to: name(i + 1),
      ohm: [0, 1, 2, 3].map((a) => [0, 1, 2, 3].map((b) => cell(from(a), from(b)))),
      ...(s.ratio
        ? { ratio: [0, 1, 2, 3].map((a) => [0, 1, 2, 3].map((b) => s.ratio?.[from(a)]?.[from(b)] ?? 0)) }
        : {}),
    };
  });
  const volts = source(120 * k);
  return {
    source: name(0),
    sourceV: [0, 1, 2, 3].map((w) => volts[from(w)] ?? [0, 0]),
    segments,
    loads: d.loads.map(
      (l): FeederLoad => ({
        node: name(1 + (l.node % d.segments.length)),
        from: to(l.pair[0]),
        to: to(l.pair[1]),
        wattsW: l.wattsW * power,
        varsVar: l.varsVar * power,
        nominalV: (l.pair[1] === 3 ? 120 : 208) * k,
        expP: l.exponent,
        expQ: l.exponent,
      }),
    ),
  };
};

const solved = (spec: FeederSpec): FeederAnswer => {
  const r = solveFeeder(spec, { toleranceV: 1e-11 });
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};
const size = (c: Complex): number => Math.hypot(c[0], c[1]);

describe('any feeder', () => {
  it('power-flow: the source gives what the loads take and the impedances lose, to 1e-9', () => {
    fc.assert(
      fc.property(drawn, (d) => {
        const spec = build(d);
        const a = solved(spec);
        fc.pre(a.settled);
        let lost: Complex = [0, 0];
        for (const s of spec.segments)
          for (let i = 0; i < 4; i++) {
            let drop: Complex = [0, 0];
            for (let j = 0; j < 4; j++) {
              const [r, x] = s.ohm[i]?.[j] ?? [0, 0];
              const [p, q] = a.amps(s.to, j);
              drop = [drop[0] + r * p - x * q, drop[1] + r * q + x * p];
            }
            const [p, q] = a.amps(s.to, i);
            lost = [lost[0] + drop[0] * p + drop[1] * q, lost[1] + drop[1] * p - drop[0] * q];
          }
        const scale = 1 + size(a.sourceVa);
        expect(Math.abs(a.lossVa[0] - lost[0]) / scale).toBeLessThan(1e-9);
        expect(Math.abs(a.lossVa[1] - lost[1]) / scale).toBeLessThan(1e-9);
      }),
      { numRuns: 200 },
    );
  });

  it('power-flow: legs turned round by one give the same answer turned round', () => {
    fc.assert(
      fc.property(drawn, fc.constantFrom(1, 2), (d, turn) => {
        const [a, b] = [solved(build(d)), solved(build(d, turn))];
        fc.pre(a.settled && b.settled);
        for (const node of a.nodes)
          for (let w = 0; w < 4; w++) {
            const t = w === 3 ? 3 : (w + turn) % 3;
            expect(Math.abs(size(a.volts(node, w)) - size(b.volts(node, t)))).toBeLessThan(1e-7);
            expect(Math.abs(size(a.amps(node, w)) - size(b.amps(node, t)))).toBeLessThan(1e-6);
          }
      }),
      { numRuns: 100 },
    );
  });

  it('power-flow: volts times k, ohms times k² ÷ p and watts times p give volts times k and amps times p ÷ k', () => {
    fc.assert(
      fc.property(
        drawn,
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (d, k, p) => {
          const [a, b] = [solved(build(d)), solved(build(d, 0, k, (k * k) / p, p))];
          fc.pre(a.settled && b.settled);
          for (const node of a.nodes)
            for (let w = 0; w < 4; w++) {
              expect(Math.abs(size(a.volts(node, w)) * k - size(b.volts(node, w)))).toBeLessThan(1e-6);
              expect(Math.abs((size(a.amps(node, w)) * p) / k - size(b.amps(node, w)))).toBeLessThan(1e-5);
            }
        },
      ),
      { numRuns: 100 },
    );
  });

  it('power-feeder: a loop, a gap, a matrix of another size or a load nowhere is refused in words', () => {
    const line = (from: string, to: string, n = 4): FeederSegment => ({
      from,
      to,
      ohm: Array.from({ length: n }, () => Array.from({ length: n }, (): Complex => [0.01, 0])),
    });
    const refused = (segments: FeederSegment[], loads: FeederLoad[] = []): string => {
      const r = solveFeeder({ source: 'a', sourceV: source(), segments, loads });
      return r.ok ? 'solved' : r.error.what;
    };
    expect(refused([line('a', 'b'), line('b', 'c'), line('a', 'c')])).toMatch(/c is fed twice/);
    expect(refused([line('b', 'c')])).toMatch(/nothing reaches b/);
    expect(refused([line('a', 'b', 2)])).toMatch(/3×3 or 4×4/);
    expect(
      refused([line('a', 'b')], [{ node: 'x', from: 0, to: 3, wattsW: 1, varsVar: 0, nominalV: 120 }]),
    ).toMatch(/hangs on x/);
  });

  it('power-unsettled: a load past what a feeder carries is told as not settled, never as a number', () => {
    const r = solveFeeder({
      source: 'a',
      sourceV: source(),
      segments: [
        {
          from: 'a',
          to: 'b',
          ohm: [0, 1, 2].map((i) => [0, 1, 2].map((j): Complex => (i === j ? [0.5, 0] : [0, 0]))),
        },
      ],
      loads: [{ node: 'b', from: 0, to: 3, wattsW: 20_000, varsVar: 0, nominalV: 120 }],
    });
    expect(r.ok && r.value.settled).toBe(false);
  });
});
