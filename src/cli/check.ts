import { formatAmps, formatPct, formatVoltAmps, formatVolts, formatWatts } from '../kernel/units.ts';
import type { Plan } from '../plan/plan.ts';
import { planRecord } from '../plan/plan.ts';
import { assess, openStops } from '../report/assess.ts';
import { CAUTION_LINE } from '../report/cautions.ts';
import { assessmentJson } from '../report/json.ts';
import { type CircuitRow, type Meter, type SourceRow, supplySummary } from '../report/summary.ts';
import { findingText } from '../report/text.ts';
import type { Assessment, Finding } from '../report/types.ts';
import { riggingLines } from './check-rigging.ts';

export interface CommandResult {
  readonly text: string;
  readonly exitCode: number;
}

/**
 * Checks a plan: per source, leg and circuit the amps, limit and percentage in the worst setup, then the findings.
 * Exit code 0 where no stop finding is open, 1 where one is; acknowledged ones are printed and do not count.
 */
export const checkCommand = (plan: Plan, options: { readonly json: boolean }): CommandResult => {
  const a = assess(plan, { revision: 0 });
  const exitCode = openStops(a).length > 0 ? 1 : 0;
  return { text: options.json ? assessmentJson(plan, a) : checkText(plan, a), exitCode };
};

const checkText = (plan: Plan, a: Assessment): string => {
  const s = supplySummary(plan, a);
  const lines: string[] = [planRecord(plan).title || 'Untitled plan', ''];
  for (const source of s.sources) lines.push(...sourceLines(source), '');
  if (s.unfed.length > 0) {
    lines.push('Not fed by any source', ...s.unfed.map((l) => `  ${l.label}: ${l.notComputed ?? ''}`), '');
  }
  lines.push(...riggingLines(plan));
  lines.push(...findingLines(plan, a));
  if (a.assumptions.length > 0) lines.push('Assumed', ...a.assumptions.map((x) => `  ${x.text}`), '');
  lines.push(CAUTION_LINE);
  return lines.join('\n');
};

const row = (name: string, now: string, limit: string, pct: string, setup: string): string =>
  `  ${name.padEnd(24)} ${now.padStart(10)} ${limit.padStart(12)} ${pct.padStart(7)}  ${setup}`.trimEnd();

const meterRow = (name: string, m: Meter): string =>
  row(
    name,
    formatAmps(m.worstA),
    m.limitA === undefined ? 'no limit' : `of ${formatAmps(m.limitA)}`,
    formatPct(m.worstPct),
    m.worstSetup,
  );

const sourceLines = (s: SourceRow): string[] => {
  const volts =
    s.voltsV === undefined
      ? 'volts not known: measure'
      : `${formatVolts(s.voltsV)}${s.voltsBasis === 'given' ? '' : ' (nominal, assumed)'}`;
  const head = `${s.label} (${[s.kindName, s.system, volts].filter(Boolean).join(', ')})`;
  if (s.notComputed !== undefined) return [head, `  not computed: ${s.notComputed}`];
  const power = (name: string, m: SourceRow['watts'], f: (n: number) => string): string =>
    row(
      name,
      f(m.worst),
      m.rated === undefined ? 'no rating' : `of ${f(m.rated)}`,
      formatPct(m.worstPct),
      m.worstSetup,
    );
  const busy = s.circuits.filter((c) => c.loads.length > 0 || c.feeds.length > 0 || c.amps.worstA > 0);
  return [
    head,
    row('', 'worst', 'limit', 'use', 'in'),
    ...s.legs.map((m) => meterRow(`leg ${m.name}`, m)),
    ...(s.legs.length > 1 ? [meterRow('neutral', s.neutral)] : []),
    power('power', s.watts, formatWatts),
    power('apparent power', s.voltAmps, formatVoltAmps),
    ...busy.flatMap(circuitLines),
    ...(busy.length < s.circuits.length
      ? [`  ${s.circuits.length - busy.length} more circuits carry nothing`]
      : []),
  ];
};

const circuitLines = (c: CircuitRow): string[] => {
  if (c.notComputed !== undefined) return [`  ${c.label}: not computed: ${c.notComputed}`];
  const on = [...c.loads.map((l) => l.label), ...c.feeds].join(', ');
  return [meterRow(`${c.label} [${c.legs}]`, c.amps), ...(on ? [`      ${on}`] : [])];
};

const findingLines = (plan: Plan, a: Assessment): string[] => {
  if (a.findings.length === 0) return ['No findings.', ''];
  const count = (severity: Finding['severity']): number =>
    a.findings.filter((f) => f.severity === severity).length;
  return [
    `Findings: ${count('stop')} stop, ${count('warn')} warn, ${count('note')} note; ${openStops(a).length} stop open`,
    ...a.findings.flatMap((f) => {
      const t = findingText(plan, f);
      return [
        `  ${f.number} ${f.severity}: ${t.head}`,
        `      ${t.body}`,
        `      To do: ${t.todo}`,
        ...(t.citation ? [`      From: ${t.citation}`] : []),
        ...(f.acknowledged
          ? [`      Acknowledged by ${f.acknowledged.by}, ${f.acknowledged.when}: ${f.acknowledged.reason}`]
          : []),
        ...(f.figureKey ? [`      Working: ${f.figureKey}`] : []),
      ];
    }),
    '',
  ];
};
