import { type Ratios, ratiosOf, scratch, startVolts, through } from './coupling.ts';
import type { Feeder } from './network.ts';

export type { Feeder } from './network.ts';

/**
 * Load branches. Each takes `wattsW` + j`varsVar` at `nominalV` volts between wires `from` and `to`, and follows the
 * volts u = |V| / nominal as P × u^expP, Q × u^expQ: 0 constant power, 1 constant current, 2 constant impedance.
 */
export interface Branches {
  readonly node: Int32Array;
  readonly from: Uint8Array;
  readonly to: Uint8Array;
  readonly nominalV: Float64Array;
  readonly expP: Float64Array;
  readonly expQ: Float64Array;
}

export interface SweepOptions {
  /** Largest change of any volt between passes that counts as settled. */
  readonly toleranceV?: number;
  readonly maxPasses?: number;
}

export interface Sweep {
  /** Volts to earth of each node's wires at its end, amps in the segment that leads to it (leg out, neutral back negative). */
  readonly volts: Float64Array;
  readonly amps: Float64Array;
  readonly passes: number;
  /** False: the volts did not come to rest, and nothing here may be read as a result. */
  readonly settled: boolean;
  readonly changeV: number;
}

export const TOLERANCE_V = 1e-8;
export const MAX_PASSES = 100;

/**
 * Unbalanced load flow of a radial feeder by the backward/forward sweep: load currents from the volts of the last pass,
 * added up towards the source, then volts from the source outwards, until they rest. Complex, over legs and neutral.
 * Method: Kersting, Distribution System Modeling and Analysis (from memory); proved on published feeders in the tests.
 */
export const sweep = (
  f: Feeder,
  b: Branches,
  wattsW: Float64Array,
  varsVar: Float64Array,
  options: SweepOptions = {},
): Sweep => {
  const tolerance = options.toleranceV ?? TOLERANCE_V;
  const maxPasses = options.maxPasses ?? MAX_PASSES;
  const volts = new Float64Array(f.nodes * 8);
  const amps = new Float64Array(f.nodes * 8);
  const ratios = ratiosOf(f);
  startVolts(f, ratios, volts);
  let changeV = Infinity;
  let passes = 0;
  while (passes < maxPasses) {
    passes++;
    amps.fill(0);
    drawCurrents(b, wattsW, varsVar, volts, amps);
    sumTowardsSource(f, ratios, amps);
    changeV =
      f.impedance.kind === 'full' ? dropFull(f, ratios, volts, amps) : dropDiagonal(f, ratios, volts, amps);
    if (!(changeV >= tolerance)) break;
  }
  return { volts, amps, passes, settled: changeV < tolerance, changeV };
};

/** One pass at the source's volts everywhere: currents at nominal volts, and the drops they make. */
export const onePass = (f: Feeder, b: Branches, wattsW: Float64Array, varsVar: Float64Array): Sweep => ({
  ...sweep(f, b, wattsW, varsVar, { maxPasses: 1, toleranceV: Infinity }),
  settled: true,
});

const powerOf = (u: number, e: number): number => (e === 0 ? 1 : e === 1 ? u : e === 2 ? u * u : u ** e);

const drawCurrents = (
  b: Branches,
  wattsW: Float64Array,
  varsVar: Float64Array,
  volts: Float64Array,
  amps: Float64Array,
): void => {
  for (let k = 0; k < b.node.length; k++) {
    const p0 = wattsW[k] as number;
    const q0 = varsVar[k] as number;
    if (p0 === 0 && q0 === 0) continue;
    const at = (b.node[k] as number) * 8;
    const i = at + (b.from[k] as number) * 2;
    const j = at + (b.to[k] as number) * 2;
    const re = (volts[i] as number) - (volts[j] as number);
    const im = (volts[i + 1] as number) - (volts[j + 1] as number);
    const square = re * re + im * im;
    const u = Math.sqrt(square) / (b.nominalV[k] as number);
    const p = p0 * powerOf(u, b.expP[k] as number);
    const q = q0 * powerOf(u, b.expQ[k] as number);
    // conj((p + jq) / v) = (p − jq) / conj(v) = (p − jq) v / |v|²
    const ire = (p * re + q * im) / square;
    const iim = (p * im - q * re) / square;
    amps[i] = (amps[i] as number) + ire;
    amps[i + 1] = (amps[i + 1] as number) + iim;
    amps[j] = (amps[j] as number) - ire;
    amps[j + 1] = (amps[j + 1] as number) - iim;
  }
};

const sumTowardsSource = (f: Feeder, ratios: Ratios, amps: Float64Array): void => {
  for (let n = f.nodes - 1; n > 0; n--) {
    const to = (f.parent[n] as number) * 8;
    const from = n * 8;
    const ratio = ratios?.[n];
    if (ratio) {
      through(ratio, amps, from, scratch, true);
      for (let w = 0; w < 8; w++) amps[to + w] = (amps[to + w] as number) + (scratch[w] as number);
      continue;
    }
    for (let w = 0; w < 8; w++) amps[to + w] = (amps[to + w] as number) + (amps[from + w] as number);
  }
};

const dropDiagonal = (f: Feeder, ratios: Ratios, volts: Float64Array, amps: Float64Array): number => {
  const z = f.impedance.ohms;
  const lifted = f.lift?.node ?? -1;
  let change = 0;
  for (let n = 1; n < f.nodes; n++) {
    let up = (f.parent[n] as number) * 8;
    const at = n * 8;
    const ratio = ratios?.[n];
    if (ratio) through(ratio, volts, up, scratch, false);
    const head = ratio ? scratch : volts;
    if (ratio) up = 0;
    for (let w = 0; w < 8; w += 2) {
      const r = z[at + w] as number;
      const x = z[at + w + 1] as number;
      const ire = amps[at + w] as number;
      const iim = amps[at + w + 1] as number;
      let re = (head[up + w] as number) - (r * ire - x * iim);
      let im = (head[up + w + 1] as number) - (r * iim + x * ire);
      if (n === lifted && w === 6) {
        re += f.lift?.re ?? 0;
        im += f.lift?.im ?? 0;
      }
      const d = Math.abs(re - (volts[at + w] as number)) + Math.abs(im - (volts[at + w + 1] as number));
      // A NaN stays: nothing is larger than it. It ends the run as not settled.
      if (d > change || Number.isNaN(d)) change = d;
      volts[at + w] = re;
      volts[at + w + 1] = im;
    }
  }
  return change;
};

const dropFull = (f: Feeder, ratios: Ratios, volts: Float64Array, amps: Float64Array): number => {
  const z = f.impedance.ohms;
  const lifted = f.lift?.node ?? -1;
  let change = 0;
  for (let n = 1; n < f.nodes; n++) {
    let up = (f.parent[n] as number) * 8;
    const at = n * 8;
    const ratio = ratios?.[n];
    if (ratio) through(ratio, volts, up, scratch, false);
    const head = ratio ? scratch : volts;
    if (ratio) up = 0;
    for (let w = 0; w < 4; w++) {
      let re = head[up + 2 * w] as number;
      let im = head[up + 2 * w + 1] as number;
      for (let m = 0; m < 4; m++) {
        const k = n * 32 + (w * 4 + m) * 2;
        const r = z[k] as number;
        const x = z[k + 1] as number;
        const ire = amps[at + 2 * m] as number;
        const iim = amps[at + 2 * m + 1] as number;
        re -= r * ire - x * iim;
        im -= r * iim + x * ire;
      }
      if (n === lifted && w === 3) {
        re += f.lift?.re ?? 0;
        im += f.lift?.im ?? 0;
      }
      const d =
        Math.abs(re - (volts[at + 2 * w] as number)) + Math.abs(im - (volts[at + 2 * w + 1] as number));
      if (d > change || Number.isNaN(d)) change = d;
      volts[at + 2 * w] = re;
      volts[at + 2 * w + 1] = im;
    }
  }
  return change;
};
