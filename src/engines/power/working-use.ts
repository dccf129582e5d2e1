import { limitCitation, limitOf } from '../../derive/limits.ts';
import { legName } from '../../derive/systems.ts';
import { formatAmps, formatPct } from '../../kernel/units.ts';
import { planRecord } from '../../plan/plan.ts';
import { figure, setupName } from './working-shared.ts';
import type { PowerWorking, Subject, WorkingLine } from './working-types.ts';

/** Working of the use of a thing: its currents over their limits, with where the limits are from. */
export const usageWorking = (s: Subject, key: string): PowerWorking | { readonly why: string } => {
  const { node } = s;
  const limits = s.result.limits[node.index];
  if (!limits?.leg && !limits?.neutral) return { why: `No limit is known for ${node.label}.` };
  const practice = planRecord(s.plan).practice;
  const inputs: WorkingLine[] = [];
  const steps: string[] = [];
  const sources: string[] = [];
  if (limits.leg) {
    const l = limitOf(s.plan, limits.leg.rule);
    inputs.push({
      name: `rating of the ${limits.leg.setBy.replace('-', ' ')}`,
      value: formatAmps(limits.leg.ratingA),
      from: 'the plan and its kinds',
      assumed: false,
    });
    inputs.push({
      name: l.id,
      value: `${l.value} ${l.unit}`,
      from: limitCitation(l),
      assumed: l.override !== undefined,
    });
    steps.push(`limit: ${formatAmps(limits.leg.ratingA)} × ${l.value} = ${formatAmps(limits.leg.limitA)}`);
    for (const leg of node.legs) {
      const a = figure(s, (['leg0A', 'leg1A', 'leg2A'] as const)[leg] ?? 'leg0A');
      steps.push(
        `leg ${legName(practice, node.system, leg)}: ${formatAmps(a)} ÷ ${formatAmps(limits.leg.limitA)} = ${formatPct((100 * a) / limits.leg.limitA)}`,
      );
    }
    sources.push(l.text);
  }
  if (limits.neutral) {
    const a = figure(s, 'neutralA');
    steps.push(
      `neutral: ${formatAmps(a)} ÷ ${formatAmps(limits.neutral.limitA)} = ${formatPct((100 * a) / limits.neutral.limitA)}`,
    );
  }
  return {
    key,
    title: `Use of ${node.label}, ${setupName(s)}`,
    formula: 'largest current ÷ its limit',
    inputs,
    steps,
    result: formatPct(figure(s, 'usePct')),
    rule: 'power-use',
    source: sources.join(' ') || limitOf(s.plan, 'neutral-load-factor').text,
  };
};
