import { groupingSources } from '../../derive/conductors.ts';
import { limitCitation, limitOf, limitsOf } from '../../derive/limits.ts';
import { continuousHours } from '../../derive/loaded-hours.ts';
import { NEUTRAL } from '../../derive/supply-types.ts';
import { legName } from '../../derive/systems.ts';
import { formatAmps, formatPct } from '../../kernel/units.ts';
import { kindOf, planRecord, recordOf } from '../../plan/plan.ts';
import { cableAmpacity } from './ampacity.ts';
import { tripWords } from './thermal.ts';
import { figure, setupName } from './working-shared.ts';
import type { PowerWorking, Subject, WorkingLine } from './working-types.ts';

/** What lowers the ampacity of a cable: warm air, its bundle, its drum. */
const ampacityLines = (s: Subject): WorkingLine[] => {
  const cable = recordOf(s.plan, 'cable', s.node.recordId);
  const kind = s.node.what === 'cable' && cable ? kindOf(s.plan, cable.kindId, 'cable') : undefined;
  if (!cable || !kind || s.result.limits[s.node.index]?.leg?.setBy !== 'cable') return [];
  const a = cableAmpacity(s.plan, kind, cable);
  const line = (name: string, value: string, from: string): WorkingLine => ({
    name,
    value,
    from,
    assumed: false,
  });
  const europe = planRecord(s.plan).practice === 'europe';
  return [
    ...(a.factor < 1
      ? [line('ampacity of one conductor', formatAmps(a.baseA), 'the kind and its table')]
      : []),
    ...(a.ambient < 1
      ? [line(`air at ${planRecord(s.plan).ambientC} °C`, `× ${a.ambient}`, 'ambient table, 60 °C column')]
      : []),
    ...(a.grouping < 1
      ? [
          line(
            europe ? `${a.together} cables together` : `${a.together} loaded conductors together`,
            `× ${a.grouping}`,
            europe ? groupingSources.circuits : groupingSources.conductors,
          ),
        ]
      : []),
    ...(a.drum < 1 ? [line(`${cable.onDrum} layers on a drum`, `× ${a.drum}`, groupingSources.drum)] : []),
  ];
};

/** How long each conductor behind a breaker is loaded at a stretch, where the practice's rule asks for it. */
const hourLines = (s: Subject): WorkingLine[] => {
  const { plan, node } = s;
  const setBy = s.result.limits[node.index]?.leg?.setBy;
  if ((setBy !== 'breaker' && setBy !== 'main-breaker') || !limitsOf(plan).has('continuous-hours')) return [];
  if (continuousHours(plan, node.key) === undefined) return [];
  const practice = planRecord(plan).practice;
  return [...node.legs, ...(node.neutral ? [NEUTRAL] : [])].flatMap((wire) => {
    const hours = continuousHours(plan, node.key, wire);
    const name = wire === NEUTRAL ? 'neutral' : `leg ${legName(practice, node.system, wire)}`;
    return hours === undefined
      ? []
      : [
          {
            name: `${name} loaded at a stretch`,
            value: `${hours.toFixed(1)} h`,
            from: 'the blocks of the shooting day',
            assumed: false,
          },
        ];
  });
};

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
    inputs.push(...ampacityLines(s), ...hourLines(s));
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
    const most = Math.max(
      ...node.legs.map((leg) => figure(s, (['leg0A', 'leg1A', 'leg2A'] as const)[leg] ?? 'leg0A')),
    );
    const bears = node.way && tripWords(s.plan, node.way.curve, node.way.breakerA, most);
    if (bears) steps.push(bears);
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
