import { phaseCutThird } from '../../derive/dimmers.ts';
import { NEUTRAL } from '../../derive/supply-types.ts';
import { ratiosOf } from './coupling.ts';
import type { SourceModel } from './model.ts';
import type { Sweep } from './solve.ts';

/**
 * Third-harmonic current in a load of `amps` rms with `share` = third harmonic ÷ fundamental.
 * The rms holds both: I = √(I₁² + I₃²), so I₁ = I ÷ √(1 + share²) and I₃ = share × I₁.
 */
export const splitRms = (amps: number, share: number): { readonly first: number; readonly third: number } => {
  const first = amps / Math.sqrt(1 + share * share);
  return { first, third: share * first };
};

/**
 * Neutral over leg current of a balanced wye of like loads: 3k ÷ √(1 + k²), k = third harmonic ÷ fundamental.
 * The fundamentals cancel, the thirds of the three legs add in step.
 */
export const balancedNeutralRatio = (share: number): number => (3 * share) / Math.sqrt(1 + share * share);

/** Neutral current of each node in A: its fundamental, its third harmonic, and both as true rms. */
export interface NeutralCurrents {
  readonly first: Float64Array;
  readonly third: Float64Array;
  readonly rms: Float64Array;
}

/**
 * True rms neutral currents. The fundamentals of what lies between leg and neutral are summed as phasors. Thirds are taken
 * as in step with their own leg, the worst case: on legs 120° apart they add as plain numbers, on legs 180° apart they
 * oppose one another as the fundamentals do. Where one leg runs, its neutral carries the leg's own current.
 * Undefined where no load has harmonics: the phasor sum is then the whole of it.
 */
export const neutralCurrents = (
  m: SourceModel,
  s: Sweep,
  wattsW: Float64Array,
  varsVar: Float64Array,
): NeutralCurrents | undefined => {
  if (!m.harmonics) return undefined;
  const { feeder, branches, zoneOf, zones } = m;
  const count = feeder.nodes;
  const ratios = ratiosOf(feeder);
  // By node: what to take from the phasor sum to leave the fundamental, then the thirds. Complex.
  const sums = new Float64Array(count * 4);
  for (let b = 0; b < branches.node.length; b++) {
    if ((branches.to[b] as number) !== NEUTRAL) continue;
    const share = thirdOf(m, b, wattsW[b] as number, varsVar[b] as number);
    if (share === 0) continue;
    const k = branches.node[b] as number;
    const leg = branches.from[b] as number;
    const [re, im] = branchAmps(m, s, b, wattsW, varsVar);
    const keep = 1 / Math.sqrt(1 + share * share);
    const third3 = Math.sqrt(re * re + im * im) * keep * share;
    const angle = 3 * (zones[zoneOf[k] as number]?.shape.anglesRad[leg] ?? 0);
    sums[k * 4] = (sums[k * 4] as number) + re * (1 - keep);
    sums[k * 4 + 1] = (sums[k * 4 + 1] as number) + im * (1 - keep);
    sums[k * 4 + 2] = (sums[k * 4 + 2] as number) + third3 * Math.cos(angle);
    sums[k * 4 + 3] = (sums[k * 4 + 3] as number) + third3 * Math.sin(angle);
  }
  const out = {
    first: new Float64Array(count),
    third: new Float64Array(count),
    rms: new Float64Array(count),
  };
  for (let k = count - 1; k >= 0; k--) {
    const at = k * 4;
    const n = k * 8 + NEUTRAL * 2;
    const re = (s.amps[n] as number) + (sums[at] as number);
    const im = (s.amps[n + 1] as number) + (sums[at + 1] as number);
    const first = Math.sqrt(re * re + im * im);
    const own = Math.sqrt((sums[at + 2] as number) ** 2 + (sums[at + 3] as number) ** 2);
    out.first[k] = first;
    out.third[k] = own;
    out.rms[k] =
      m.legCount[k] === 1
        ? Math.sqrt((s.amps[n] as number) ** 2 + (s.amps[n + 1] as number) ** 2)
        : Math.sqrt(first * first + own * own);
    // Windings between legs keep the thirds of their output to themselves: none reaches the neutral of the feed.
    if (k === 0 || ratios?.[k]) continue;
    const up = (feeder.parent[k] as number) * 4;
    for (let i = 0; i < 4; i++) sums[up + i] = (sums[up + i] as number) + (sums[at + i] as number);
  }
  return out;
};

/** Third harmonic over fundamental of a branch: by its kind, or by how far a phase-cut dimmer holds it down. */
const thirdOf = (m: SourceModel, b: number, watts: number, vars: number): number => {
  if (!m.phaseCut[b]) return m.third[b] as number;
  const square = watts * watts + vars * vars;
  // A cut resistance has as its power factor the root of its share of full power.
  return square === 0 ? 0 : phaseCutThird((watts * watts) / square);
};

/** Current of one load branch out of its first wire, at the volts of the run; at nominal where they are not known. */
export const branchAmps = (
  m: SourceModel,
  s: Sweep,
  b: number,
  wattsW: Float64Array,
  varsVar: Float64Array,
): readonly [number, number] => {
  const p0 = wattsW[b] as number;
  const q0 = varsVar[b] as number;
  if (p0 === 0 && q0 === 0) return [0, 0];
  const node = m.branches.node[b] as number;
  const unknown = m.basis === 'unknown';
  const volts = unknown ? (m.zones[m.zoneOf[node] as number]?.openV ?? s.volts) : s.volts;
  const at = unknown ? 0 : node * 8;
  const i = at + (m.branches.from[b] as number) * 2;
  const j = at + (m.branches.to[b] as number) * 2;
  const re = (volts[i] as number) - (volts[j] as number);
  const im = (volts[i + 1] as number) - (volts[j + 1] as number);
  const square = re * re + im * im;
  const u = Math.sqrt(square) / (m.branches.nominalV[b] as number);
  const p = p0 * u ** (m.branches.expP[b] as number);
  const q = q0 * u ** (m.branches.expQ[b] as number);
  return [(p * re + q * im) / square, (p * im - q * re) / square];
};
