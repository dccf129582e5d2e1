import type { EngineFinding } from '../../../derive/findings.ts';
import { limitOf } from '../../../derive/limits.ts';
import { planRecord } from '../../../plan/plan.ts';
import { between } from '../extract.ts';
import type { Judged } from '../types.ts';
import { negativeSequencePct, nemaUnbalancePct } from '../unbalance.ts';
import { inSetups, passing } from './context.ts';

/**
 * Volts between lines that differ too much where three legs arrive, by the practice's own definition: one finding for a
 * source, on the place where it is worst.
 */
export const voltsUnbalance = (c: Judged): readonly EngineFinding[] => {
  const europe = planRecord(c.plan).practice === 'europe';
  const limitPct = limitOf(c.plan, 'volts-unbalance').value;
  const out: EngineFinding[] = [];
  for (const { model, setups } of c.sources.values()) {
    if (model.shape.legs < 3) continue;
    let worst: EngineFinding | undefined;
    for (let k = 1; k < model.feeder.nodes; k++) {
      const n = c.tree.nodes[model.nodeOf[k] ?? -1];
      if (!n || n.legs.length < 3 || (n.what !== 'box' && n.what !== 'load')) continue;
      const lines = (s: number): [number, number, number] | undefined => {
        const run = setups[s]?.sweep;
        if (!run?.settled) return undefined;
        const at = (a: number, b: number): number => between(run.volts, k * 8 + a * 2, k * 8 + b * 2);
        return [at(0, 1), at(1, 2), at(2, 0)];
      };
      const pct = (s: number): number => {
        const v = lines(s);
        return v ? (europe ? negativeSequencePct(v) : nemaUnbalancePct(v)) : Number.NaN;
      };
      const hit = passing(c.setups.length, pct, limitPct);
      if (!hit || (worst?.figure ?? 0) >= hit.value) continue;
      const v = lines(hit.worst) ?? [0, 0, 0];
      worst = inSetups(
        c,
        'power-volts-unbalance',
        'note',
        n,
        hit,
        undefined,
        hit.value,
        {
          pct: hit.value,
          limitPct,
          nemaPct: nemaUnbalancePct(v),
          negativePct: negativeSequencePct(v),
          volts1: v[0],
          volts2: v[1],
          volts3: v[2],
        },
        model.sourceId,
      );
    }
    if (worst) out.push(worst);
  }
  return out;
};
