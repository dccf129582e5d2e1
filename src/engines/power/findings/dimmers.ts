import { cutsPhase, type DimmerHow, isResistive } from '../../../derive/dimmers.ts';
import { always, type EngineFinding } from '../../../derive/findings.ts';
import { limitsOf } from '../../../derive/limits.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { kindOf, type Plan, recordOf } from '../../../plan/plan.ts';
import { cableAmpacity } from '../ampacity.ts';
import type { Judged } from '../types.ts';
import { ROUNDING } from './context.ts';

/** Whether a lamp or supply suits a dimmer: tungsten suits all, bulbs made to be dimmed suit those that cut the end of the wave. */
const suits = (plan: Plan, n: SupplyNode, how: DimmerHow): boolean => {
  if (how === 'relay' || !n.load || isResistive(n.load)) return true;
  const fixture = recordOf(plan, 'fixture', n.recordId);
  const style = fixture && kindOf(plan, fixture.kindId, 'fixture')?.style;
  return how === 'trailing-edge' && style === 'practical';
};

/** Loads on a dimmer that does not suit them. */
export const dimmedLamps = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((n) => {
    if (n.dimmedBy === undefined || !n.load || n.branches.length === 0 || n.notComputed !== undefined)
      return [];
    if (suits(c.plan, n, n.dimmedBy)) return [];
    return [
      always('power-dimmer-lamp', 'warn', n.key, [n.recordId], {
        label: n.label,
        how: n.dimmedBy.replace('-', ' '),
      }),
    ];
  });

/** Ways of dimmers with less on them, all at full, than they need to dim evenly. */
export const dimmedTooLittle = (c: Judged): readonly EngineFinding[] =>
  c.part.flatMap((way) => {
    if (!way.dimmer || way.notComputed !== undefined || !(way.dimmer.leastW > 0)) return [];
    let watts = 0;
    for (let i = way.index + 1; i < c.tree.nodes.length; i++) {
      const n = c.tree.nodes[i];
      if (!n || n.depth <= way.depth) break;
      if (n.load && n.branches.length > 0) watts += n.load.wattsW;
    }
    if (watts === 0 || watts >= way.dimmer.leastW * (1 - ROUNDING)) return [];
    return [
      always('power-dimmer-least', 'note', way.key, [way.recordId], {
        label: way.label,
        watts,
        leastW: way.dimmer.leastW,
      }),
    ];
  });

/**
 * Single-conductor feeders of several legs that lead to phase-cut dimmers and whose neutral is not as heavy as the practice
 * wants it.
 */
export const dimmerNeutrals = (c: Judged): readonly EngineFinding[] => {
  const wanted = limitsOf(c.plan).get('dimmer-neutral');
  if (!wanted || !c.part.some((n) => n.dimmer)) return [];
  const leads = new Uint8Array(c.part.length);
  for (let i = c.part.length - 1; i >= 0; i--) {
    const n = c.part[i];
    if (!n || n.notComputed !== undefined) continue;
    if (n.dimmer && cutsPhase(n.dimmer.how)) leads[i] = 1;
    // Behind windings between legs the neutral is another one.
    if (leads[i] && n.parent >= 0 && !n.transformer) leads[n.parent - c.from] = 1;
  }
  return c.part.flatMap((n) => {
    if (n.what !== 'cable' || !leads[n.index - c.from] || n.legs.length < 2 || !n.neutral) return [];
    const cable = recordOf(c.plan, 'cable', n.recordId);
    const kind = cable && kindOf(c.plan, cable.kindId, 'cable');
    if (!cable || kind?.construction !== 'single-conductors') return [];
    const a = cableAmpacity(c.plan, kind, cable);
    const pct = (100 * a.neutralA) / a.legA;
    if (pct >= wanted.value * (1 - ROUNDING)) return [];
    return [
      always('power-dimmer-neutral', 'warn', n.key, [n.recordId], {
        label: n.label,
        legA: a.legA,
        neutralA: a.neutralA,
        wantedA: (a.legA * wanted.value) / 100,
        pct,
        limitPct: wanted.value,
      }),
    ];
  });
};
