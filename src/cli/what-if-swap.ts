import { gearBook } from '../gear/index.ts';
import { canonicalJson } from '../kernel/canonical.ts';
import { formatAmps, formatPct, formatVoltAmps, formatWatts } from '../kernel/units.ts';
import type { SourceKind } from '../plan/kinds/kinds.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { CAUTION_LINE } from '../report/cautions.ts';
import { type SourceSwap, type SwapLine, swapSource } from '../report/swap-source.ts';
import { orRefuse, Refusal } from './command.ts';

const kindOfName = (plan: Plan, name: string): SourceKind => {
  const sources = gearBook(planRecord(plan).practice).filter((k): k is SourceKind => k.family === 'source');
  const found = sources.find((k) => k.slug === name || k.name === name);
  if (!found)
    throw new Refusal({
      what: `The gear book has no source “${name}”.`,
      todo: `It has: ${sources.map((k) => k.slug).join(', ')}.`,
    });
  return found;
};

const amount = (l: SwapLine, n: number): string =>
  ({ A: formatAmps, W: formatWatts, VA: formatVoltAmps })[l.unit](n);
const share = (pct: number): string => (Number.isFinite(pct) ? ` (${formatPct(pct)})` : '');

const text = (s: SourceSwap): string =>
  `${[
    s.title,
    ...s.lines.map(
      (l) =>
        `  ${l.name}: ${amount(l, l.before)}${share(l.beforePct)} → ${amount(l, l.after)}${share(l.afterPct)}`,
    ),
    ...s.unfit.map((u) => `  no longer fits: ${u}`),
    ...s.appear.map((f) => `  comes: ${f.severity.toUpperCase()} ${f.head}`),
    ...s.go.map((f) => `  goes: ${f.severity.toUpperCase()} ${f.head}`),
    CAUTION_LINE,
  ].join('\n')}\n`;

/** What another kind of source would do, printed for people or machines. The plan is not changed. */
export const swapPrinted = (plan: Plan, sourceId: string, kind: string, json: boolean): string => {
  const swap = orRefuse(swapSource(plan, sourceId, kindOfName(plan, kind)));
  if (!json) return text(swap);
  const { changes: _, lines, ...rest } = swap;
  const number = (n: number): number | null => (Number.isFinite(n) ? n : null);
  return `${canonicalJson({
    format: 'lampwright-what-if',
    version: 1,
    ...rest,
    lines: lines.map((l) => ({
      ...l,
      before: number(l.before),
      after: number(l.after),
      beforePct: number(l.beforePct),
      afterPct: number(l.afterPct),
    })),
  })}\n`;
};
