import { NEUTRAL } from '../../derive/supply-types.ts';
import { QUANTITIES, type Quantity } from '../../derive/types.ts';
import { ratiosOf, scratch, through } from './coupling.ts';
import { neutralCurrents } from './harmonics.ts';
import type { SourceModel, Zone } from './model.ts';
import type { Sweep } from './solve.ts';

const WIDTH = QUANTITIES.length;
const q = Object.fromEntries(QUANTITIES.map((name, i) => [name, i])) as Record<Quantity, number>;

/** Length of the difference of two complex numbers. */
export const between = (a: Float64Array, i: number, j: number): number => {
  const re = (a[i] as number) - (a[j] as number);
  const im = (a[i + 1] as number) - (a[j + 1] as number);
  return Math.sqrt(re * re + im * im);
};

const length = (re: number, im: number): number => Math.sqrt(re * re + im * im);

/**
 * Figures of one source in one setup: by node of the model and quantity, NaN where not computed.
 * `wattsW` and `varsVar` are by branch, at nominal volts. A run that did not settle gives NaN throughout.
 */
export const extract = (
  m: SourceModel,
  s: Sweep,
  wattsW: Float64Array,
  varsVar: Float64Array,
): Float64Array => {
  const count = m.feeder.nodes;
  const out = new Float64Array(count * WIDTH).fill(Number.NaN);
  if (!s.settled) return out;
  putLoads(out, m, wattsW, varsVar);
  const ratios = ratiosOf(m.feeder);
  const neutrals = neutralCurrents(m, s, wattsW, varsVar)?.rms;
  for (let k = 0; k < count; k++) {
    const at = k * WIDTH;
    const a = s.amps;
    const i = k * 8;
    const l0 = length(a[i] as number, a[i + 1] as number);
    const l1 = length(a[i + 2] as number, a[i + 3] as number);
    const l2 = length(a[i + 4] as number, a[i + 5] as number);
    const neutralA =
      (neutrals?.[k] as number | undefined) ??
      length(a[i + NEUTRAL * 2] as number, a[i + NEUTRAL * 2 + 1] as number);
    out[at + q.leg0A] = l0;
    out[at + q.leg1A] = l1;
    out[at + q.leg2A] = l2;
    out[at + q.neutralA] = neutralA;
    const legUse = (100 * Math.max(l0, l1, l2)) / (m.legLimitA[k] as number);
    const neutralUse = (100 * neutralA) / (m.neutralLimitA[k] as number);
    // Either may be NaN: no limit known.
    out[at + q.usePct] = neutralUse > legUse || Number.isNaN(legUse) ? neutralUse : legUse;
    putVolts(out, k, m, s);
    if (m.basis !== 'unknown') putPower(out, k, m, s, ratios?.[k]);
  }
  return out;
};

/** Connected power of each node: sums of P and of Q of what hangs on it. */
const putLoads = (out: Float64Array, m: SourceModel, wattsW: Float64Array, varsVar: Float64Array): void => {
  const count = m.feeder.nodes;
  const p = new Float64Array(count);
  const v = new Float64Array(count);
  for (let b = 0; b < m.branches.node.length; b++) {
    const k = m.branches.node[b] as number;
    p[k] = (p[k] as number) + (wattsW[b] as number);
    v[k] = (v[k] as number) + (varsVar[b] as number);
  }
  for (let k = count - 1; k >= 0; k--) {
    const up = m.feeder.parent[k] as number;
    if (k > 0) {
      p[up] = (p[up] as number) + (p[k] as number);
      v[up] = (v[up] as number) + (v[k] as number);
    }
    out[k * WIDTH + q.loadW] = p[k] as number;
    out[k * WIDTH + q.loadVa] = length(p[k] as number, v[k] as number);
  }
};

const putVolts = (out: Float64Array, k: number, m: SourceModel, s: Sweep): void => {
  let volts = Infinity;
  let drop = -Infinity;
  let pct = -Infinity;
  const end = m.pairStart[k + 1] as number;
  const openV = (m.zones[m.zoneOf[k] as number] as Zone).openV;
  for (let i = m.pairStart[k] as number; i < end; i++) {
    const a = (m.pairs[i * 2] as number) * 2;
    const b = (m.pairs[i * 2 + 1] as number) * 2;
    const here = between(s.volts, k * 8 + a, k * 8 + b);
    const there = between(openV, a, b);
    if (here < volts) volts = here;
    if (there - here > drop) drop = there - here;
    const share = (100 * (there - here)) / there;
    if (share > pct) pct = share;
  }
  if (volts === Infinity) return;
  out[k * WIDTH + q.dropV] = drop;
  if (m.basis === 'unknown') return;
  out[k * WIDTH + q.voltsV] = volts;
  out[k * WIDTH + q.dropPct] = pct;
};

/** Power into a node, read at its parent's end, so that its own cable's loss is in it. Into a transformer: at its windings. */
const putPower = (
  out: Float64Array,
  k: number,
  m: SourceModel,
  s: Sweep,
  ratio: Float64Array | undefined,
): void => {
  const parent = (k === 0 ? 0 : (m.feeder.parent[k] as number)) * 8;
  if (ratio) through(ratio, s.volts, parent, scratch, false);
  const volts = ratio ? scratch : s.volts;
  const up = ratio ? 0 : parent;
  let re = 0;
  let im = 0;
  for (let w = 0; w < 8; w += 2) {
    const vr = volts[up + w] as number;
    const vi = volts[up + w + 1] as number;
    const ir = s.amps[k * 8 + w] as number;
    const ii = s.amps[k * 8 + w + 1] as number;
    re += vr * ir + vi * ii;
    im += vi * ir - vr * ii;
  }
  out[k * WIDTH + q.inW] = re;
  out[k * WIDTH + q.inVa] = length(re, im);
};
