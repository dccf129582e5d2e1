import { figureOffset } from '../../derive/figures.ts';
import type { SupplyNode } from '../../derive/supply-types.ts';
import { NEUTRAL } from '../../derive/supply-types.ts';
import { QUANTITIES, type Quantity } from '../../derive/types.ts';
import type { NodeLimits } from './limits.ts';
import type { SourceModel } from './model.ts';
import type { Sweep } from './solve.ts';

const q = Object.fromEntries(QUANTITIES.map((name, i) => [name, i])) as Record<Quantity, number>;

/** Length of a complex number at an offset. */
export const magnitude = (a: Float64Array, at: number): number =>
  Math.hypot(a[at] as number, a[at + 1] as number);

/** Length of the difference of two complex numbers. */
export const between = (a: Float64Array, i: number, j: number): number =>
  Math.hypot((a[i] as number) - (a[j] as number), (a[i + 1] as number) - (a[j + 1] as number));

/** Pairs of wires across which a node's volts are read: leg to neutral where it has one, else leg to leg. */
export const voltPairs = (n: SupplyNode): readonly (readonly [number, number])[] => {
  if (n.branches.length > 0) return n.branches.map((b) => [b.from, b.to] as const);
  if (n.neutral) return n.legs.map((l) => [l, NEUTRAL] as const);
  return n.legs.flatMap((a, i) => n.legs.slice(i + 1).map((b) => [a, b] as const));
};

/**
 * Writes the figures of one source in one setup into the plan's table.
 * `wattsW` and `varsVar` are by branch. A run that did not settle writes nothing: its figures stay NaN.
 */
export const extract = (
  values: Float64Array,
  setup: number,
  setups: number,
  nodes: readonly SupplyNode[],
  limits: readonly NodeLimits[],
  m: SourceModel,
  s: Sweep,
  wattsW: Float64Array,
  varsVar: Float64Array,
): void => {
  if (!s.settled) return;
  const count = m.feeder.nodes;
  const p = new Float64Array(count);
  const v = new Float64Array(count);
  m.branches.node.forEach((k, i) => {
    p[k] = (p[k] as number) + (wattsW[i] as number);
    v[k] = (v[k] as number) + (varsVar[i] as number);
  });
  for (let k = count - 1; k > 0; k--) {
    const up = m.feeder.parent[k] as number;
    p[up] = (p[up] as number) + (p[k] as number);
    v[up] = (v[up] as number) + (v[k] as number);
  }
  for (let k = 0; k < count; k++) {
    const index = m.nodeOf[k] as number;
    const n = nodes[index] as SupplyNode;
    const put = (quantity: number, value: number): void => {
      values[figureOffset(index, quantity, setup, setups)] = value;
    };
    const legA = [magnitude(s.amps, k * 8), magnitude(s.amps, k * 8 + 2), magnitude(s.amps, k * 8 + 4)];
    const neutralA = magnitude(s.amps, k * 8 + NEUTRAL * 2);
    put(q.leg0A, legA[0] as number);
    put(q.leg1A, legA[1] as number);
    put(q.leg2A, legA[2] as number);
    put(q.neutralA, neutralA);
    put(q.loadW, p[k] as number);
    put(q.loadVa, Math.hypot(p[k] as number, v[k] as number));
    putVolts(put, n, k, m, s);
    putPower(put, k, m, s);
    const l = limits[index];
    let use = Number.NaN;
    if (l?.leg) use = (100 * Math.max(...legA)) / l.leg.limitA;
    if (l?.neutral && neutralA > 0) {
      const share = (100 * neutralA) / l.neutral.limitA;
      if (!(share <= use)) use = share;
    }
    put(q.usePct, use);
  }
};

const putVolts = (
  put: (quantity: number, value: number) => void,
  n: SupplyNode,
  k: number,
  m: SourceModel,
  s: Sweep,
): void => {
  let volts = Infinity;
  let drop = -Infinity;
  let pct = -Infinity;
  for (const [a, b] of voltPairs(n)) {
    const here = between(s.volts, k * 8 + a * 2, k * 8 + b * 2);
    const there = between(s.volts, a * 2, b * 2);
    volts = Math.min(volts, here);
    drop = Math.max(drop, there - here);
    pct = Math.max(pct, (100 * (there - here)) / there);
  }
  if (!Number.isFinite(volts)) return;
  put(q.dropV, drop);
  if (m.basis === 'unknown') return;
  put(q.voltsV, volts);
  put(q.dropPct, pct);
};

/** Power into a node, read at its parent's end, so that its own cable's loss is in it. */
const putPower = (
  put: (quantity: number, value: number) => void,
  k: number,
  m: SourceModel,
  s: Sweep,
): void => {
  if (m.basis === 'unknown') return;
  const up = (m.feeder.parent[k] as number) * 8;
  let re = 0;
  let im = 0;
  for (let w = 0; w < 8; w += 2) {
    const vr = s.volts[up + w] as number;
    const vi = s.volts[up + w + 1] as number;
    const ir = s.amps[k * 8 + w] as number;
    const ii = s.amps[k * 8 + w + 1] as number;
    re += vr * ir + vi * ii;
    im += vi * ir - vr * ii;
  }
  put(q.inW, re);
  put(q.inVa, Math.hypot(re, im));
};
