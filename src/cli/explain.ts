import { problemText } from '../kernel/result.ts';
import type { Plan } from '../plan/plan.ts';
import { CAUTION_LINE } from '../report/cautions.ts';
import { explainOrWhy } from '../report/explain.ts';
import type { CommandResult } from './check.ts';

/** Prints the working of one figure. Exit code 0, or 1 where the plan has no such figure. */
export const explainCommand = (plan: Plan, key: string): CommandResult => {
  const r = explainOrWhy(plan, key);
  if (!r.ok) return { text: problemText(r.error), exitCode: 1 };
  const w = r.value;
  const lines = [
    w.title,
    `  ${w.result}`,
    '',
    `Formula: ${w.formula}`,
    ...w.inputs.map((i) => `  ${i.name}: ${i.value} (${i.from}${i.assumed ? ', assumed' : ''})`),
    ...(w.steps.length > 0 ? ['Steps', ...w.steps.map((s) => `  ${s}`)] : []),
    `Rule: ${w.rule}`,
    `Source: ${w.source}`,
    '',
    CAUTION_LINE,
  ];
  return { text: lines.join('\n'), exitCode: 0 };
};
