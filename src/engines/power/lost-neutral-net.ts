import { between } from './extract.ts';
import { mix } from './lost-leg.ts';
import type { SourceModel } from './model.ts';
import { type Branches, type Sweep, sweep } from './solve.ts';
import type { SolvedSetup } from './types.ts';

/** A network whose neutral has come off ahead of one node. */
export interface LostNeutral {
  readonly sweep: Sweep;
  readonly branches: Branches;
  /** Volts across each of the model's branches, and the watts each takes there. */
  readonly voltsV: Float64Array;
  readonly wattsW: Float64Array;
}

/**
 * A network with its neutral open at the head of the segment that leads to `node` (of the model; 0: at the source), its cables and
 * windings counted. Every load is the impedance it has at its rated volts and its level. A source of volts in series with the
 * neutral there makes the neutral's amps a straight function of its volts: two load flows, with none and with one volt, give
 * the volts at which nothing flows, which is the open neutral; all else follows by the same share. Undefined where no load drives a
 * current through that neutral, or without an answer.
 */
export const lostNeutral = (m: SourceModel, solved: SolvedSetup, node: number): LostNeutral | undefined => {
  const { feeder } = m;
  const two = m.branches.nominalV.map(() => 2);
  const branches: Branches = { ...m.branches, expP: two, expQ: two };
  const flow = (re: number): Sweep =>
    sweep(
      node === 0
        ? { ...feeder, sourceV: feeder.sourceV.map((v, i) => (i === 6 ? v + re : v)) }
        : { ...feeder, lift: { node, re, im: 0 } },
      branches,
      solved.wattsW,
      solved.varsVar,
    );
  const none = flow(0);
  const one = flow(1);
  if (!none.settled || !one.settled) return undefined;
  const at = node * 8 + 6;
  const [ar, ai] = [none.amps[at] as number, none.amps[at + 1] as number];
  const [br, bi] = [(one.amps[at] as number) - ar, (one.amps[at + 1] as number) - ai];
  const square = br * br + bi * bi;
  if (square < 1e-18) return undefined;
  const [tr, ti] = [-(ar * br + ai * bi) / square, -(ai * br - ar * bi) / square];
  const run: Sweep = {
    ...none,
    volts: mix(none.volts, one.volts, tr, ti),
    amps: mix(none.amps, one.amps, tr, ti),
    passes: none.passes + one.passes,
  };
  const count = branches.node.length;
  const voltsV = new Float64Array(count);
  const wattsW = new Float64Array(count);
  for (let b = 0; b < count; b++) {
    const k = (branches.node[b] as number) * 8;
    const v = between(run.volts, k + (branches.from[b] as number) * 2, k + (branches.to[b] as number) * 2);
    voltsV[b] = v;
    wattsW[b] = (solved.wattsW[b] as number) * (v / (branches.nominalV[b] as number)) ** 2;
  }
  return { sweep: run, branches, voltsV, wattsW };
};
