import fc from 'fast-check';
import { type Complex, complex, inv, lup, lusolve, type Matrix, matrix, multiply } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { openVolts } from '../../src/engines/power/coupling.ts';
import { transformerRatio } from '../../src/engines/power/index.ts';
import { abs, at, type C, fullFeeder, minus, polar, solve, type TestLoad } from '../support/circuit.ts';

/**
 * An independent answer to the same network: nodal admittance matrix over all wires of all nodes but the source, solved
 * as a complex linear system by a general-purpose library, with load currents brought up to date until they rest.
 */
const nodal = (
  sourceV: readonly C[],
  parents: readonly number[],
  matrices: readonly (readonly (readonly C[])[])[],
  loads: readonly TestLoad[],
  ratios: readonly (readonly (readonly number[])[] | undefined)[] = [],
): C[][] => {
  const n = parents.length;
  const size = n * 4;
  const zero = (): Complex => complex(0, 0);
  const y: Complex[][] = Array.from({ length: size }, () => Array.from({ length: size }, zero));
  const fixed: Complex[] = Array.from({ length: size }, zero);
  const plus = (a: Complex, b: Complex, k: number): Complex => complex(a.re + k * b.re, a.im + k * b.im);
  matrices.forEach((z, s) => {
    const admittance = inv(matrix(z.map((row) => row.map((c) => complex(c[0], c[1]))))).toArray() as (
      | Complex
      | number
    )[][];
    const up = (parents[s] ?? 0) - 1;
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) {
        // The library gives plain numbers where an entry is real.
        const a = complex(admittance[i]?.[j] ?? 0);
        const bump = (row: number, col: number, k: number): void => {
          const r = y[row];
          if (r && k !== 0) r[col] = plus(r[col] ?? zero(), a, k);
        };
        // Through a transformer the head of the segment is ratio × the wires ahead, and they get its transpose × the current.
        const head = (wire: number, ahead: number): number => {
          const m = ratios[s];
          return m ? (m[wire]?.[ahead] ?? 0) : wire === ahead ? 1 : 0;
        };
        bump(s * 4 + i, s * 4 + j, 1);
        for (let m = 0; m < 4; m++) {
          if (up < 0) {
            const v = sourceV[m] ?? [0, 0];
            const k = head(j, m);
            fixed[s * 4 + i] = plus(
              fixed[s * 4 + i] ?? zero(),
              multiply(a, complex(v[0], v[1])) as Complex,
              k,
            );
            continue;
          }
          bump(s * 4 + i, up * 4 + m, -head(j, m));
          bump(up * 4 + m, s * 4 + j, -head(i, m));
          for (let w = 0; w < 4; w++) bump(up * 4 + m, up * 4 + w, head(i, m) * head(j, w));
        }
      }
  });
  const factored = lup(matrix(y));
  const open: C[][] = [];
  matrices.forEach((_, s) => {
    const ahead = (parents[s] ?? 0) === 0 ? sourceV : (open[(parents[s] ?? 0) - 1] ?? []);
    const m = ratios[s];
    open.push(
      m
        ? m.map(
            (row): C => [
              row.reduce((sum, k, w) => sum + k * (ahead[w]?.[0] ?? 0), 0),
              row.reduce((sum, k, w) => sum + k * (ahead[w]?.[1] ?? 0), 0),
            ],
          )
        : ahead.map((c): C => [c[0], c[1]]),
    );
  });
  let volts: C[] = open.flat();
  for (let pass = 0; pass < 200; pass++) {
    const rhs = fixed.map((c) => complex(c.re, c.im));
    for (const l of loads) {
      const i = (l.node - 1) * 4 + l.from;
      const j = (l.node - 1) * 4 + l.to;
      const v = minus(volts[i] ?? [0, 0], volts[j] ?? [0, 0]);
      const u = abs(v) / l.nominalV;
      const p = l.watts * u ** (l.expP ?? 0);
      const q = (l.vars ?? 0) * u ** (l.expQ ?? 0);
      const d = v[0] ** 2 + v[1] ** 2;
      const c = complex((p * v[0] + q * v[1]) / d, (p * v[1] - q * v[0]) / d);
      rhs[i] = plus(rhs[i] ?? zero(), c, -1);
      rhs[j] = plus(rhs[j] ?? zero(), c, 1);
    }
    const solved = (lusolve(factored, matrix(rhs)) as Matrix).toArray() as (Complex | number)[][];
    const next = solved.map((row): C => {
      const c = complex(row[0] ?? Number.NaN);
      return [c.re, c.im];
    });
    const change = Math.max(...next.map((c, i) => abs(minus(c, volts[i] ?? [0, 0]))));
    volts = next;
    if (change < 1e-10) break;
  }
  return Array.from({ length: n }, (_, k) => volts.slice(k * 4, k * 4 + 4));
};

const ohm = fc.double({ min: 0.002, max: 0.05, noNaN: true });
const segment = fc.record({
  parent: fc.nat(10),
  own: fc.tuple(ohm, ohm, ohm, ohm),
  x: fc.double({ min: 0, max: 0.02, noNaN: true }),
  mutual: fc.double({ min: 0, max: 0.5, noNaN: true }),
});
const load = fc.record({
  node: fc.nat(10),
  pair: fc.constantFrom<readonly [number, number]>([0, 3], [1, 3], [2, 3], [0, 1], [1, 2], [2, 0]),
  watts: fc.double({ min: 0, max: 2500, noNaN: true }),
  vars: fc.double({ min: -800, max: 1500, noNaN: true }),
  exponents: fc.constantFrom<readonly [number, number]>([0, 0], [1, 1], [2, 2], [1.55, 1.55], [0.4, 2]),
});

describe('load flow against a nodal solution by mathjs', () => {
  it('power-flow: 300 random feeders with mutual coupling agree to 1e-6 of the source volts', () => {
    fc.assert(
      fc.property(
        fc.array(segment, { minLength: 1, maxLength: 6 }),
        fc.array(load, { minLength: 1, maxLength: 10 }),
        (segments, loads) => {
          const source = [polar(120, 0), polar(120, -120), polar(120, 120), [0, 0] as C];
          const parents = segments.map((s, i) => s.parent % (i + 1));
          const matrices = segments.map((s) =>
            s.own.map((r, i) =>
              s.own.map((_, j): C => (i === j ? [r, s.x + 0.001] : [s.mutual * 0.002, s.mutual * s.x])),
            ),
          );
          const test: TestLoad[] = loads.map((l) => ({
            node: 1 + (l.node % segments.length),
            from: l.pair[0],
            to: l.pair[1],
            watts: l.watts,
            vars: l.vars,
            nominalV: l.pair[1] === 3 ? 120 : 120 * Math.sqrt(3),
            expP: l.exponents[0],
            expQ: l.exponents[1],
          }));
          const mine = solve(fullFeeder(source, parents, matrices), test);
          // Feeders near or past what the network can carry have no answer to compare.
          fc.pre(mine.settled && mine.passes < 40);
          const theirs = nodal(source, parents, matrices, test);
          theirs.forEach((row, k) => {
            row.forEach((c, w) => {
              expect(abs(minus(c, at(mine.volts, k + 1, w)))).toBeLessThan(120e-6);
            });
          });
        },
      ),
      { numRuns: 300 },
    );
  });

  it('power-coupling: 100 random feeders with transformers of every sort agree to 1e-6 of the source volts', () => {
    const ratio = fc.constantFrom<readonly (readonly number[])[] | undefined>(
      undefined,
      transformerRatio.wyeWye(0.5),
      transformerRatio.wyeWye(1.7),
      transformerRatio.deltaWye(1 / Math.sqrt(3)),
      transformerRatio.deltaDelta(0.8),
      transformerRatio.deltaWyeAhead(0.6),
      transformerRatio.wyeDelta(1.3),
      transformerRatio.openDelta(0.9),
      transformerRatio.openWyeOpenDelta(1.2),
      transformerRatio.regulator(1.05, 0.98, 1.0125),
      transformerRatio.openDeltaRegulator(1.04375, 1.025),
      // One winding between legs A and B, its output about an earthed middle.
      [
        [0.5, -0.5, 0, 0],
        [-0.5, 0.5, 0, 0],
        [0, 0, 0, 0],
        [0, 0, 0, 0],
      ],
    );
    fc.assert(
      fc.property(
        fc.array(fc.tuple(segment, ratio), { minLength: 1, maxLength: 5 }),
        fc.array(load, { minLength: 1, maxLength: 8 }),
        (drawn, loads) => {
          const source = [polar(120, 0), polar(120, -120), polar(120, 120), [0, 0] as C];
          const parents = drawn.map(([s], i) => s.parent % (i + 1));
          const matrices = drawn.map(([s]) =>
            s.own.map((r, i) => s.own.map((_, j): C => (i === j ? [r, s.x + 0.001] : [0, 0]))),
          );
          const ratios = drawn.map(([, m]) => m);
          const feeder = fullFeeder(source, parents, matrices);
          const couplings = ratios.flatMap((m, k) =>
            m ? [{ node: k + 1, ratio: Float64Array.from(m.flat()) }] : [],
          );
          // Constant impedance and current have an answer whatever the volts of the output are.
          const test: TestLoad[] = loads.map((l) => ({
            node: 1 + (l.node % drawn.length),
            from: l.pair[0],
            to: l.pair[1],
            watts: l.watts / 4,
            vars: l.vars / 4,
            nominalV: l.pair[1] === 3 ? 120 : 120 * Math.sqrt(3),
            expP: Math.max(1, l.exponents[0]),
            expQ: Math.max(1, l.exponents[1]),
          }));
          const open = openVolts({ ...feeder, couplings });
          // A load on wires that carry no volts has no current of its own to compare.
          fc.pre(test.every((l) => abs(minus(at(open, l.node, l.from), at(open, l.node, l.to))) > 5));
          const mine = solve({ ...feeder, couplings }, test);
          fc.pre(mine.settled);
          const theirs = nodal(source, parents, matrices, test, ratios);
          theirs.forEach((row, k) => {
            row.forEach((c, w) => {
              expect(abs(minus(c, at(mine.volts, k + 1, w)))).toBeLessThan(120e-6);
            });
          });
        },
      ),
      { numRuns: 100 },
    );
  });
});
