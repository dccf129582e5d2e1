import { describe, expect, it } from 'vitest';
import { type Complex, solveFeeder, transformerRatio } from '../../src/engines/power/index.ts';
import { polar } from '../support/circuit.ts';
import { lineOf } from '../support/feeder-tables.ts';

const line = lineOf({
  'four wires': {
    z: [
      [0.4576, 1.078],
      [0.1559, 0.5017],
      [0.1535, 0.3849],
      [0.4666, 1.0482],
      [0.158, 0.4236],
      [0.4615, 1.0651],
    ],
  },
  'three wires': {
    z: [
      [0.4013, 1.4133],
      [0.0953, 0.8515],
      [0.0953, 0.7266],
      [0.4013, 1.4133],
      [0.0953, 0.7802],
      [0.4013, 1.4133],
    ],
  },
});

const VOLTS = 12_470 / Math.sqrt(3);
const base = 4160 ** 2 / 6e6;
const none: Complex = [0, 0];
const winding = (i: number): Complex[] =>
  [0, 1, 2].map((j): Complex => (i === j ? [0.01 * base, 0.06 * base] : none));

/** The step-down case with balanced loads in delta, 1800 kW at 0.9 between each two lines. */
const run = (feed: string, ratio: readonly (readonly number[])[]) => {
  const r = solveFeeder({
    source: '1',
    sourceV: [polar(VOLTS, 0), polar(VOLTS, -120), polar(VOLTS, 120)],
    segments: [
      line('1', '2', 2000, feed),
      { from: '2', to: '3', ohm: [winding(0), winding(1), winding(2)], ratio },
      line('3', '4', 2500, 'three wires'),
    ],
    loads: [0, 1, 2].map((from) => ({
      node: '4',
      from,
      to: (from + 1) % 3,
      wattsW: 1.8e6,
      varsVar: 1.8e6 * Math.tan(Math.acos(0.9)),
      nominalV: 4160,
    })),
  });
  if (!r.ok) throw new Error(r.error.what);
  expect(r.value.settled).toBe(true);
  return r.value;
};

const near = (
  a: ReturnType<typeof run>,
  node: string,
  printed: readonly (readonly [volts: number, deg: number])[],
): void =>
  printed.forEach(([v, deg], w) => {
    const [x, y] = [a.volts(node, w), a.volts(node, (w + 1) % 3)];
    const d: Complex = [x[0] - y[0], x[1] - y[1]];
    expect(Math.abs(Math.hypot(...d) - v)).toBeLessThanOrEqual(1);
    const angle = (Math.atan2(d[1], d[0]) * 180) / Math.PI;
    expect(Math.abs(((angle - deg + 540) % 360) - 180)).toBeLessThanOrEqual(0.11);
  });

describe('IEEE 4-node test feeder, step-down to a delta, balanced loads: volts between lines (from memory)', () => {
  it('power-coupling: delta to delta: 3911 / 3914 / 3905 V at node 3, 3442 / 3497 / 3384 V at node 4', () => {
    const a = run('three wires', transformerRatio.deltaDelta(4160 / 12_470));
    near(a, '2', [
      [12_339, 29.7],
      [12_349, -90.4],
      [12_321, 149.6],
    ]);
    near(a, '3', [
      [3911, 26.5],
      [3914, -93.6],
      [3905, 146.4],
    ]);
    near(a, '4', [
      [3442, 22.3],
      [3497, -99.4],
      [3384, 140.7],
    ]);
  });

  it('power-coupling: wye to delta: 3906 / 3915 / 3909 V at node 3, 3437 / 3497 / 3388 V at node 4', () => {
    const a = run('four wires', transformerRatio.wyeDelta(4160 / VOLTS));
    near(a, '3', [
      [3906, -3.5],
      [3915, -123.6],
      [3909, 116.3],
    ]);
    near(a, '4', [
      [3437, -7.8],
      [3497, -129.3],
      [3388, 110.6],
    ]);
  });
});
