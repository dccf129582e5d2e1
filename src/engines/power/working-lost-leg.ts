import { legName } from '../../derive/systems.ts';
import { QUANTITIES } from '../../derive/types.ts';
import type { Id } from '../../kernel/ids.ts';
import { formatAmps, formatVolts } from '../../kernel/units.ts';
import { type Plan, planRecord } from '../../plan/plan.ts';
import type { LostLeg } from './lost-leg.ts';
import type { PowerResult } from './types.ts';
import { legWorking, neutralWorking } from './working-currents.ts';
import { setupName } from './working-shared.ts';
import type { PowerWorking, Subject } from './working-types.ts';

/**
 * Working of the amps on a wire of a source that has lost a leg, from the load flow that was solved for it. `wire` is the
 * position of a leg, or undefined for the neutral. Undefined where the source was not solved.
 */
export const explainLostLegWire = (
  plan: Plan,
  power: PowerResult,
  lost: LostLeg,
  asked: { readonly sourceId: Id; readonly setup: number; readonly leg: number; readonly wire?: number },
): PowerWorking | undefined => {
  const node = power.tree.byKey.get(asked.sourceId);
  const source = power.sources.get(asked.sourceId);
  if (!node || !source) return undefined;
  const s: Subject = {
    plan,
    result: power,
    node,
    local: source.model.nodeOf.indexOf(node.index),
    setup: asked.setup,
    source: { ...source, model: lost.model },
    run: lost.solved,
  };
  const practice = planRecord(plan).practice;
  const gone = legName(practice, node.system, asked.leg);
  const { wire } = asked;
  const name = wire === undefined ? 'the neutral' : `leg ${legName(practice, node.system, wire)}`;
  const title = `Current on ${name} of ${node.label} without leg ${gone}, ${setupName(s)}`;
  const key = `${asked.sourceId} without leg ${gone}`;
  const at = s.local * 8 + asked.leg * 2;
  const floats = Math.hypot(lost.solved.sweep.volts[at] ?? 0, lost.solved.sweep.volts[at + 1] ?? 0);
  const open = {
    name: `leg ${gone} at the source`,
    value: 'open',
    from: `tried; it floats to ${formatVolts(floats)} by what lies between the legs`,
    assumed: false,
  };
  const rule = 'power-what-if';
  if (wire === asked.leg)
    return {
      key,
      title,
      formula: 'I = 0: the line is open',
      inputs: [open],
      steps: [],
      result: formatAmps(0),
      rule,
      source: 'An open line carries no current',
    };
  const w = wire === undefined ? neutralWorking(s, key) : legWorking(s, wire, key);
  const quantity = wire === undefined ? 'neutralA' : (['leg0A', 'leg1A', 'leg2A'] as const)[wire];
  const place = quantity === undefined ? -1 : QUANTITIES.indexOf(quantity);
  return {
    ...w,
    title,
    inputs: [open, ...w.inputs],
    steps: [
      'each load is the impedance it has as it runs; two load flows, with half and with all of the lost leg’s volts, give the volts at which that leg carries nothing',
      ...w.steps,
    ],
    // Figures of the network lie node by node.
    result: formatAmps(lost.solved.figures[s.local * QUANTITIES.length + place] ?? Number.NaN),
    rule,
    source: 'Kirchhoff’s current law; superposition in a linear network',
  };
};
