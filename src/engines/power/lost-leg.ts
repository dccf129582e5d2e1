import { NEUTRAL } from '../../derive/supply-types.ts';
import { between, extract } from './extract.ts';
import type { SourceModel } from './model.ts';
import { type Branches, type Sweep, sweep } from './solve.ts';
import type { SolvedSetup } from './types.ts';

/** A source that has lost a leg, in one setup. */
export interface LostLeg {
  /** The network with its loads as impedances, and its volts, amps and figures without the leg. */
  readonly model: SourceModel;
  readonly solved: SolvedSetup;
  /** Volts across each of the model's branches, and the watts each takes there. */
  readonly voltsV: Float64Array;
  readonly wattsW: Float64Array;
}

/**
 * A network whose source feeds one leg less: the line is open, so no current flows in it there, and its volts float. Every
 * load is the impedance it has as it runs (at its rated volts where the source's volts are not known). Impedances make the
 * amps of the open leg a straight function of its volts: two load flows, with half and with all of the leg's volts, give the
 * volts at which its amps are none, and by the same share everything else. What nothing feeds is at 0 V. Undefined without an
 * answer.
 */
export const lostLeg = (m: SourceModel, solved: SolvedSetup, leg: number): LostLeg | undefined => {
  const branches = asImpedances(m, solved);
  const { feeder } = m;
  const w = leg * 2;
  const halved = feeder.sourceV.map((v, i) => (i === w || i === w + 1 ? v / 2 : v));
  const half = sweep({ ...feeder, sourceV: halved }, branches.at, branches.wattsW, branches.varsVar);
  const whole = sweep(feeder, branches.at, branches.wattsW, branches.varsVar);
  if (!half.settled || !whole.settled) return undefined;
  const [ar, ai] = [half.amps[w] as number, half.amps[w + 1] as number];
  const [br, bi] = [(whole.amps[w] as number) - ar, (whole.amps[w + 1] as number) - ai];
  const square = br * br + bi * bi;
  // With nothing on the leg its volts are no matter: −1 makes them nothing.
  const [tr, ti] = square < 1e-24 ? [-1, 0] : [-(ar * br + ai * bi) / square, -(ai * br - ar * bi) / square];
  const run: Sweep = {
    ...half,
    volts: mix(half.volts, whole.volts, tr, ti),
    amps: mix(half.amps, whole.amps, tr, ti),
    passes: half.passes + whole.passes,
  };
  const count = branches.wattsW.length;
  const voltsV = new Float64Array(count);
  const wattsW = new Float64Array(count);
  for (let b = 0; b < count; b++) {
    const at = (branches.at.node[b] as number) * 8;
    const v = between(
      run.volts,
      at + (branches.at.from[b] as number) * 2,
      at + (branches.at.to[b] as number) * 2,
    );
    voltsV[b] = v;
    wattsW[b] = (branches.wattsW[b] as number) * (v / (branches.at.nominalV[b] as number)) ** 2;
  }
  const model: SourceModel = { ...m, branches: branches.at };
  const { at: _, ...powers } = branches;
  const figures = extract(model, run, powers.wattsW, powers.varsVar);
  return { model, solved: { ...powers, sweep: run, figures }, voltsV, wattsW };
};

/** The loads of a run as impedances: watts and vars at the volts they have in it. */
const asImpedances = (
  m: SourceModel,
  solved: SolvedSetup,
): { readonly at: Branches; readonly wattsW: Float64Array; readonly varsVar: Float64Array } => {
  const b = m.branches;
  const known = m.basis !== 'unknown' && solved.sweep.settled;
  const volts = b.nominalV.map((nominal, k) => {
    const at = (b.node[k] as number) * 8;
    const v = known
      ? between(solved.sweep.volts, at + (b.from[k] as number) * 2, at + (b.to[k] ?? NEUTRAL) * 2)
      : nominal;
    return v > 0 ? v : nominal;
  });
  const u = (k: number): number => (volts[k] as number) / (b.nominalV[k] as number);
  const two = b.nominalV.map(() => 2);
  return {
    at: { ...b, nominalV: volts, expP: two, expQ: two },
    wattsW: solved.wattsW.map((p, k) => p * u(k) ** (b.expP[k] as number)),
    varsVar: solved.varsVar.map((q, k) => q * u(k) ** (b.expQ[k] as number)),
  };
};

/** a + t × (b − a), complex number by complex number. */
export const mix = (a: Float64Array, b: Float64Array, tr: number, ti: number): Float64Array => {
  const out = new Float64Array(a.length);
  for (let i = 0; i < a.length; i += 2) {
    const dr = (b[i] as number) - (a[i] as number);
    const di = (b[i + 1] as number) - (a[i + 1] as number);
    out[i] = (a[i] as number) + tr * dr - ti * di;
    out[i + 1] = (a[i + 1] as number) + tr * di + ti * dr;
  }
  return out;
};
