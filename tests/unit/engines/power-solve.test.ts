import { describe, expect, it } from 'vitest';
import { sweep } from '../../../src/engines/power/solve.ts';
import {
  abs,
  at,
  branchesOf,
  type C,
  diagonal,
  fullFeeder,
  minus,
  polar,
  solve,
} from '../../support/circuit.ts';

const source = [polar(120, 0), polar(120, -120), polar(120, 120), [0, 0] as C];
const line = (ohm: number): readonly (readonly C[])[] => diagonal([0, 1, 2, 3].map((): C => [ohm, 0]));
const load = (watts: number, node = 1) => ({ node, from: 0, to: 3, watts, nominalV: 120 });

describe('the sweep', () => {
  it('power-flow: a constant-power load on a resistance agrees with the quadratic it solves', () => {
    const s = solve(fullFeeder(source, [0], [line(0.25)]), [load(2000)]);
    // V² − 120 V + P R = 0 with R of leg and neutral together.
    const v = (120 + Math.sqrt(120 ** 2 - 4 * 2000 * 0.5)) / 2;
    expect(abs(minus(at(s.volts, 1, 0), at(s.volts, 1, 3)))).toBeCloseTo(v, 7);
  });

  it('power-flow: past the most a run can carry (V² ÷ 4R) it does not settle, just below it does', () => {
    const most = 120 ** 2 / (4 * 0.5);
    expect(solve(fullFeeder(source, [0], [line(0.25)]), [load(most * 0.97)]).settled).toBe(true);
    expect(solve(fullFeeder(source, [0], [line(0.25)]), [load(most * 1.03)]).settled).toBe(false);
  });

  it('power-flow: a NaN anywhere in the network never passes as settled', () => {
    const bad = solve(fullFeeder(source, [0, 0], [line(Number.NaN), line(0.1)]), [load(500, 2)]);
    expect(bad.settled).toBe(false);
    expect(solve(fullFeeder(source, [0], [line(0.1)]), [load(Number.NaN)]).settled).toBe(false);
  });

  it('power-flow: reports its passes and stops at the cap', () => {
    const f = fullFeeder(source, [0], [line(0.25)]);
    const one = sweep(f, branchesOf([load(2000)]), Float64Array.of(2000), Float64Array.of(0), {
      maxPasses: 2,
    });
    expect([one.passes, one.settled]).toEqual([2, false]);
    const s = solve(f, [load(2000)]);
    expect(s.passes).toBeGreaterThan(2);
    expect(s.changeV).toBeLessThan(1e-8);
  });

  it('power-flow: turning all legs round by one gives the same currents, turned round', () => {
    const loads = (shift: number) => [
      { node: 1, from: shift % 3, to: 3, watts: 900, vars: 200, nominalV: 120 },
      { node: 1, from: (1 + shift) % 3, to: (2 + shift) % 3, watts: 700, vars: -100, nominalV: 208 },
    ];
    const f = fullFeeder(source, [0], [line(0.05)]);
    const [a, b] = [solve(f, loads(0)), solve(f, loads(1))];
    for (const w of [0, 1, 2]) expect(abs(at(b.amps, 1, (w + 1) % 3))).toBeCloseTo(abs(at(a.amps, 1, w)), 7);
    expect(abs(at(b.amps, 1, 3))).toBeCloseTo(abs(at(a.amps, 1, 3)), 7);
  });

  it('power-flow: constant-impedance loads scale with the volts of the source', () => {
    const loads = [{ ...load(1000), expP: 2, expQ: 2 }];
    const full = solve(fullFeeder(source, [0], [line(0.2)]), loads);
    const less = solve(
      fullFeeder(
        source.map((c): C => [c[0] * 0.9, c[1] * 0.9]),
        [0],
        [line(0.2)],
      ),
      loads,
    );
    expect(abs(at(less.amps, 1, 0)) / abs(at(full.amps, 1, 0))).toBeCloseTo(0.9, 7);
  });
});
