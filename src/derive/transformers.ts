import type { ConverterKind } from '../plan/kinds/converter.ts';
import type { System } from '../plan/kinds/kinds.ts';
import type { InletPort, LoadSpec } from '../plan/kinds/ports.ts';
import { loadBranches } from './connections.ts';
import { type LoadBranch, NEUTRAL } from './supply-types.ts';
import { type SystemShape, systemShape } from './systems.ts';
import type { Transformer } from './transformer.ts';

export type { Transformer } from './transformer.ts';

/** What a transformer draws by itself, and how that lies over its feed. */
export interface TransformerFeed {
  readonly transformer: Transformer;
  readonly load: LoadSpec;
  readonly branches: readonly LoadBranch[];
}

/** Share of the losses at full load that a transformer has with nothing on it, and the power factor of what it draws then. */
const NO_LOAD_SHARE = 0.5;
const NO_LOAD_PF = 0.3;
/** Volts a winding takes, as a share of what it is wound for. */
const LEAST = 0.9;
const MOST = 1.1;

/** What an output of so many legs at so many volts to neutral is called, where the kind does not say. */
const systemOf = (legs: number, volts: number): System => {
  if (legs === 1) return volts < 175 ? '120' : '230';
  if (legs === 2) return '120/240';
  if (volts < 175) return '120/208';
  return volts < 255 ? '230/400' : volts < 310 ? '277/480' : '347/600';
};

/**
 * A transformer over the legs that reach it: one winding between a leg and the neutral or between two legs, for an output
 * of one leg or of two about an earthed middle; three windings in delta for an earthed wye. Half of its losses at full load
 * are drawn always. Gives words where it cannot be connected.
 */
export const transformerOn = (
  kind: ConverterKind,
  inlet: InletPort,
  shape: SystemShape,
  legs: readonly number[],
  neutral: boolean,
): TransformerFeed | string => {
  const ratedVa = (kind.ratedKva ?? 0) * 1000;
  if (!(ratedVa > 0)) return 'its kVA are not given';
  const outLegs = Math.max(1, ...kind.outlets.map((o) => o.legs));
  const outputV = kind.outputV;
  if (outputV === undefined || !(outputV > 0)) return 'its output volts are not given';
  const three = inlet.legs === 3;
  const lossW = ratedVa * Math.max(0, 1 - kind.efficiencyPct / 100);
  const load = (inputV: number): LoadSpec => ({
    wattsW: lossW * NO_LOAD_SHARE,
    standbyW: lossW * NO_LOAD_SHARE,
    powerFactor: NO_LOAD_PF,
    leading: false,
    model: 'constant-impedance',
    thirdHarmonicPct: 0,
    leakageMa: 0,
    voltsMinV: inputV * LEAST,
    voltsMaxV: inputV * MOST,
  });
  // Three windings lie in delta, whether or not a neutral comes with the feed.
  const branches = loadBranches(
    shape,
    three ? { ...inlet, neutral: false } : inlet,
    legs,
    three ? false : neutral,
    load(Number.POSITIVE_INFINITY),
  );
  if (typeof branches === 'string') return branches;
  const [first] = branches;
  if (!first) return 'no leg reaches it';
  const inputV = kind.inputV ?? first.nominalV;
  const system = kind.outputSystem ?? systemOf(outLegs, outputV);
  const base = systemShape(system);
  if (!base) return `its output is ${system}`;
  if (base.legs === 3 && !three) return 'its output has three legs and its inlet has not';
  if (base.legs < 3 && branches.length > 1)
    return 'its inlet takes three legs and its output is not three-phase';
  return {
    load: load(inputV),
    branches,
    transformer: {
      system,
      shape: { ...base, nominalV: outputV, lineToNeutralV: outputV * (base.ratios[0] ?? 1) },
      ratedVa,
      ratio: outputV / inputV,
      windings: Array.from({ length: base.legs }, (_, leg) =>
        three
          ? { leg, from: branches[leg]?.from ?? 0, to: branches[(leg + 2) % 3]?.from ?? 0, sign: 1 as const }
          : { leg, from: first.from, to: first.to, sign: leg === 0 ? (1 as const) : (-1 as const) },
      ),
      impedancePct: kind.impedancePct,
      efficiencyPct: kind.efficiencyPct,
      twoWire: base.legs === 1,
    },
  };
};

/** Ratios of a transformer as the load flow takes them: wires of the output × wires of the feed, by rows. */
export const ratioMatrix = (t: Transformer): Float64Array => {
  const m = new Float64Array(16);
  for (const w of t.windings) {
    const k = t.ratio * w.sign;
    m[w.leg * 4 + w.from] = (m[w.leg * 4 + w.from] ?? 0) + k;
    m[w.leg * 4 + w.to] = (m[w.leg * 4 + w.to] ?? 0) - k;
  }
  return m;
};

/**
 * Amps on the legs of a transformer's feed for amps on the legs of its output: plain sums over its windings, which are never
 * too kind.
 */
export const feedAmps = (t: Transformer, outA: readonly number[]): readonly [number, number, number] => {
  const amps: [number, number, number] = [0, 0, 0];
  for (const w of t.windings)
    for (const wire of [w.from, w.to])
      if (wire !== NEUTRAL) amps[wire] = (amps[wire] ?? 0) + t.ratio * (outA[w.leg] ?? 0);
  return amps;
};
