import { always, type EngineFinding } from '../../../derive/findings.ts';
import { NEUTRAL, type SupplyNode } from '../../../derive/supply-types.ts';
import { feedAmps } from '../../../derive/transformers.ts';
import type { Judged } from '../types.ts';
import { inSetups } from './context.ts';

/** Sources whose volts no one has given, and runs that did not settle. */
export const sourceState = (c: Judged): readonly EngineFinding[] => {
  const out: EngineFinding[] = [];
  for (const n of c.part) {
    if (n.what !== 'source') continue;
    const solved = c.sources.get(n.recordId);
    if (!solved) continue;
    const carries = solved.model.branches.node.length > 0;
    if (solved.model.basis === 'unknown' && carries)
      out.push(
        always('power-volts-unknown', 'note', n.key, [n.recordId], {
          label: n.label,
          nominalV: solved.model.shape.nominalV,
        }),
      );
    const failed = solved.setups.flatMap((s, i) => (s.sweep.settled ? [] : [i]));
    if (failed.length > 0) out.push(unsettled(c, n, failed));
  }
  return out;
};

/** Names the run to blame: the one that would lose most volts at nominal currents. */
const unsettled = (c: Judged, n: SupplyNode, failed: readonly number[]): EngineFinding => {
  const solved = c.sources.get(n.recordId);
  let worst = { dropV: -1, index: -1, setup: failed[0] ?? 0 };
  if (solved) {
    const { model } = solved;
    for (const s of failed) {
      const amps = new Float64Array(model.feeder.nodes * 8);
      const run = solved.setups[s];
      model.branches.node.forEach((node, k) => {
        const va = Math.hypot(run?.wattsW[k] ?? 0, run?.varsVar[k] ?? 0) / (model.branches.nominalV[k] ?? 1);
        for (const w of [model.branches.from[k] ?? 0, model.branches.to[k] ?? NEUTRAL])
          amps[node * 8 + w] = (amps[node * 8 + w] ?? 0) + va;
      });
      for (let k = model.feeder.nodes - 1; k > 0; k--) {
        const up = model.feeder.parent[k] ?? 0;
        const own = [0, 1, 2].map((w) => amps[k * 8 + w] ?? 0);
        const t = c.tree.nodes[model.nodeOf[k] ?? -1]?.transformer;
        const passed = t ? feedAmps(t, own) : own;
        for (let w = 0; w < 3; w++) {
          const a = own[w] ?? 0;
          amps[up * 8 + w] = (amps[up * 8 + w] ?? 0) + (passed[w] ?? 0);
          const dropV = a * (model.feeder.impedance.ohms[k * 8 + w * 2] ?? 0);
          if (dropV > worst.dropV) worst = { dropV, index: model.nodeOf[k] ?? -1, setup: s };
        }
      }
    }
  }
  const run = c.tree.nodes[worst.index];
  const found = inSetups(
    c,
    'power-unsettled',
    'stop',
    n,
    { setups: failed, worst: worst.setup },
    undefined,
    worst.dropV,
    {
      run: run?.label ?? n.label,
      dropV: worst.dropV,
      baseV: solved?.model.volts ?? Number.NaN,
    },
  );
  return { ...found, recordIds: run ? [run.recordId, n.recordId] : [n.recordId] };
};
