import type { EngineFinding } from '../derive/findings.ts';
import { batteryFindings } from '../engines/battery/index.ts';
import { controlFindings } from '../engines/control/index.ts';
import { computePower, type PowerResult } from '../engines/power/index.ts';
import { radioFindings } from '../engines/radio/index.ts';
import { riggingFindings } from '../engines/rigging/index.ts';
import { siteFindings } from '../engines/site/index.ts';
import type { Plan } from '../plan/plan.ts';
import { acknowledgementsByFinding, stillHolds } from './acknowledge.ts';
import { assumptionsOf } from './assumptions.ts';
import { chargerFindings } from './chargers.ts';
import { findingsInSetups } from './in-setups.ts';
import { limitFindings } from './limit-findings.ts';
import { measuredFindings } from './measured.ts';
import { referenceFindings } from './references.ts';
import { remediesFor } from './remedies.ts';
import { stationFindings } from './stations.ts';
import type { Assessment, Finding, Severity } from './types.ts';

/** The engines' own results behind an assessment, so that the next one need not start from nothing. */
const behind = new WeakMap<Assessment, PowerResult>();

export interface AssessOptions {
  /** Number of the plan's revision, handed through to the result. */
  readonly revision: number;
  /** The last assessment of the same plan; only speeds things up. */
  readonly previous?: Assessment | undefined;
}

const RANK: Readonly<Record<Severity, number>> = { stop: 0, warn: 1, note: 2 };

/**
 * Everything computed from a plan: figures of the supply, findings of all engines in a stable order (stops first),
 * numbered, with acknowledgements matched; and what was assumed. The one door for screen, paper and command line.
 */
export const assess = (plan: Plan, options: AssessOptions): Assessment => {
  const power = computePower(plan, options.previous && behind.get(options.previous));
  const setupIds = power.setups.map((s) => s.id);
  const raw = [
    ...power.findings,
    ...controlFindings(plan),
    ...findingsInSetups(plan, setupIds, radioFindings),
    ...findingsInSetups(plan, setupIds, riggingFindings),
    ...findingsInSetups(plan, setupIds, siteFindings),
    ...batteryFindings(plan),
    ...stationFindings(plan),
    ...chargerFindings(plan),
    ...measuredFindings(plan, power),
    ...referenceFindings(plan),
    ...limitFindings(plan),
  ];
  const acknowledgements = acknowledgementsByFinding(plan);
  const findings = raw
    .map((f, i) => ({ f, i }))
    .sort((a, b) => RANK[a.f.severity] - RANK[b.f.severity] || a.i - b.i)
    .map(({ f }, i): Finding => {
      const finding = numbered(f, i, setupIds, remediesFor(power, f));
      const a = acknowledgements.get(finding.id)?.find((x) => stillHolds(x, finding));
      return a ? { ...finding, acknowledged: { by: a.who, reason: a.reason, when: a.when } } : finding;
    });
  const assessment: Assessment = {
    revision: options.revision,
    setups: power.setups,
    entities: power.entities,
    figures: power.figures,
    findings,
    assumptions: assumptionsOf(plan, power),
  };
  behind.set(assessment, power);
  return assessment;
};

/** The power engine's result an assessment was made from. */
export const powerBehind = (assessment: Assessment): PowerResult | undefined => behind.get(assessment);

/** Findings that no person has taken note of and that stop: what the exit status and the title block go by. */
export const openStops = (a: Assessment): readonly Finding[] =>
  a.findings.filter((f) => f.severity === 'stop' && f.acknowledged === undefined);

const numbered = (
  f: EngineFinding,
  index: number,
  setupIds: readonly string[],
  remedies: Finding['remedies'],
): Finding => ({
  id: `${f.rule}:${f.about}`,
  number: `F${index + 1}`,
  rule: f.rule,
  severity: f.severity,
  recordIds: f.recordIds,
  worstSetupId: f.worstSetup >= 0 ? setupIds[f.worstSetup] : undefined,
  setupIds: f.setups.map((s) => setupIds[s] ?? ''),
  params: f.figure === undefined ? f.params : { ...f.params, figure: f.figure },
  figureKey: f.figureKey,
  remedies,
  acknowledged: undefined,
});
