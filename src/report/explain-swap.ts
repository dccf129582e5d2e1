import { formatAmps, formatPct, formatVoltAmps, formatWatts } from '../kernel/units.ts';
import { applyChanges } from '../plan/change-set.ts';
import type { Plan } from '../plan/plan.ts';
import { explain } from './explain.ts';
import type { SourceSwap, SwapLine } from './swap-source.ts';
import type { Working } from './types.ts';

/** A figure of a swap with its unit; a dash where it is not computed. */
export const swapFigure = (l: Pick<SwapLine, 'unit'>, v: number): string =>
  !Number.isFinite(v)
    ? '–'
    : l.unit === 'A'
      ? formatAmps(v)
      : l.unit === 'W'
        ? formatWatts(v)
        : formatVoltAmps(v);

/**
 * The arithmetic behind a figure of a tried swap, or its share of what may be used: of the plan as it is, or of the plan with
 * the other source, by the same engine. Undefined where the figure is not computed.
 */
export const explainSwap = (
  plan: Plan,
  swap: SourceSwap,
  name: string,
  when: 'before' | 'after',
  of: 'figure' | 'share',
): Working | undefined => {
  const l = swap.lines.find((x) => x.name === name);
  const key = l && (when === 'before' ? l.beforeKey : l.afterKey);
  if (!l || key === undefined) return undefined;
  const known = explain(when === 'before' ? plan : applyChanges(plan, swap.changes), key);
  const other = `with ${swap.title}`;
  if (!known) return undefined;
  const w = when === 'before' ? known : { ...known, title: `${known.title}, ${other}` };
  if (of === 'figure') return w;
  const [value, limit, pct] =
    when === 'before' ? [l.before, l.beforeLimit, l.beforePct] : [l.after, l.afterLimit, l.afterPct];
  if (limit === undefined || !Number.isFinite(pct)) return undefined;
  return {
    key: `${key} share`,
    title: `Share of what may be used: ${w.title}`,
    formula: 'share = figure ÷ what may be used',
    inputs: [
      { name: 'figure, worst setup', value: swapFigure(l, value), from: w.title, assumed: false },
      {
        name: 'what may be used',
        value: swapFigure(l, limit),
        from: l.unit === 'A' ? 'limit of the source on this wire' : 'rating of the source, as it is derated',
        assumed: false,
      },
    ],
    steps: [`${swapFigure(l, value)} ÷ ${swapFigure(l, limit)} = ${formatPct(pct)}`],
    result: formatPct(pct),
    rule: 'power-rating',
    source: 'Rating of the source and the rules of the practice',
  };
};
