import { limitCitation, limitOf } from '../derive/limits.ts';
import { formatAmps, formatCableLength, formatVolts, formatWatts } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import type { PlugStep } from './plug-all.ts';
import type { Working, WorkingInput } from './types.ts';

/** A figure of a unit that is offered a plug. */
export type PlugFigure = 'cable' | 'amps';

/** The arithmetic behind a figure of a unit that is offered a plug, from the call that offered it. */
export const explainPlug = (plan: Plan, step: PlugStep, figure: PlugFigure): Working => ({
  ...(figure === 'amps' ? ampsOf(step) : cableOf(plan, step)),
  key: `${figure} of ${step.recordId}`,
  rule: 'power-plug-all',
});

type Body = Omit<Working, 'key' | 'rule'>;

const line = (name: string, value: string, from: string, assumed = false): WorkingInput => ({
  name,
  value,
  from,
  assumed,
});

const ampsOf = ({ label, toLabel, amps, basis }: PlugStep): Body => {
  const { setup, wattsW, ratedW, levelAssumed, powerFactor, voltsV } = basis;
  return {
    title: `Amps of ${label} on a leg of ${toLabel}`,
    formula: 'I = P ÷ power factor ÷ V',
    inputs: [
      line('rated watts', formatWatts(ratedW), 'its kind'),
      line(
        'watts at its level',
        formatWatts(wattsW),
        levelAssumed ? `no level in ${setup}: full` : `level in ${setup}, in which it draws most`,
        levelAssumed,
      ),
      line('power factor', `${powerFactor}`, 'its kind'),
      line('volts', formatVolts(voltsV), 'nominal of the source, over all legs it takes to neutral together'),
    ],
    steps: [`${formatWatts(wattsW)} ÷ ${powerFactor} ÷ ${formatVolts(voltsV)} = ${formatAmps(amps)}`],
    result: formatAmps(amps),
    source: 'Apparent power over volts',
  };
};

const cableOf = (plan: Plan, { label, toLabel, kindName, lengthMm, basis }: PlugStep): Body => {
  const units = planRecord(plan).lengthUnits;
  const mm = (n: number): string => formatCableLength(n, units);
  const { drawnMm, risesMm, slackMm } = basis.run;
  return {
    title: `Cable from ${toLabel} to ${label}`,
    formula: 'L = way on the floor + rises at both ends + slack, made up of stock lengths',
    inputs: [
      line('way on the floor', mm(drawnMm), 'along and across, from the outlet to the unit'),
      line('rises', mm(risesMm), 'heights of both ends'),
      line('slack-pct', mm(slackMm), 'rule of the plan: a share of the rest, but at least slack-min', true),
      line('kind', kindName, 'the first of the book that joins both ends and is not the weakest part'),
    ],
    steps: [
      `${mm(drawnMm)} + ${mm(risesMm)} + ${mm(slackMm)} = ${mm(drawnMm + risesMm + slackMm)}`,
      ...(basis.piecesMm.length > 0
        ? [`stock lengths: ${basis.piecesMm.map(mm).join(' + ')} = ${mm(lengthMm)}`]
        : []),
    ],
    result: `${kindName}, ${mm(lengthMm)}`,
    source: `Slack: ${limitCitation(limitOf(plan, 'slack-pct'))}`,
  };
};
