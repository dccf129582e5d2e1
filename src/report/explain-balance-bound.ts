import { worstLegBound } from '../engines/power/index.ts';
import { formatAmps } from '../kernel/units.ts';
import type { Plan } from '../plan/plan.ts';
import type { BalancedSource } from './balance.ts';
import { type AskedBalance, askedOf, BALANCE_SOURCE, line } from './explain-balance.ts';
import type { Working } from './types.ts';

/** The lower bound on the worst leg, or how far above it the answer is. */
export const explainBalanceBound = (
  plan: Plan,
  source: BalancedSource,
  figure: 'boundA' | 'gapPct',
): Working | undefined => {
  const asked = askedOf(plan, source, 'before');
  if (!asked) return undefined;
  const bound = source.proved ? undefined : boundOf(asked);
  if (!bound) return undefined;
  const common = {
    key: `${figure} of ${source.basis.rootKey}`,
    rule: 'power-balance',
    source: BALANCE_SOURCE,
  };
  if (figure === 'boundA') return { ...common, ...bound, title: `${bound.title} of ${source.label}` };
  const gap = `${source.gapPct.toFixed(1)} %`;
  const worst = formatAmps(source.after.worstLegA);
  return {
    ...common,
    title: `How far ${source.label} as offered is above the least worst leg there can be`,
    formula: 'gap = (worst leg − bound) ÷ bound',
    inputs: [
      line('worst leg', worst, 'as offered'),
      line('bound', bound.result, 'no assignment of these plugs is below it'),
    ],
    steps: [`(${worst} − ${bound.result}) ÷ ${bound.result} = ${gap}`],
    result: gap,
  };
};

const boundOf = (asked: AskedBalance): Pick<Working, 'title' | 'formula' | 'inputs' | 'steps' | 'result'> => {
  const { p, setup } = asked;
  const { plugs, legs, setups, fixedA } = p.problem;
  const sum = (xs: readonly number[]): number => xs.reduce((a, b) => a + b, 0);
  const each = Array.from({ length: setups }, (_, s) => {
    const fixed = Array.from({ length: legs }, (_, l) => fixedA[l * setups + s] ?? 0);
    const own = plugs.flatMap((x) => [...x.amps.slice(s * x.positions, (s + 1) * x.positions)]);
    const totalA = sum(fixed) + sum(own);
    return { s, totalA, evenA: totalA / legs, fixedA: Math.max(...fixed), plugA: Math.max(0, ...own) };
  });
  const most = (x: (typeof each)[number]): number => Math.max(x.evenA, x.fixedA, x.plugA);
  const worst = each.reduce((a, b) => (most(b) > most(a) ? b : a));
  const result = formatAmps(worstLegBound(p.problem));
  return {
    title: 'Least worst leg there can be',
    formula:
      'bound = the largest of: all amps ÷ legs, the fullest leg of what does not move, the largest plug',
    inputs: [
      line('all amps', formatAmps(worst.totalA), setup(worst.s)),
      line('legs', `${legs}`, 'the source'),
      line('fullest leg of what does not move', formatAmps(worst.fixedA), setup(worst.s)),
      line('largest plug, on one leg', formatAmps(worst.plugA), setup(worst.s)),
    ],
    steps: [
      `the setup that bounds most is ${setup(worst.s)}`,
      `${formatAmps(worst.totalA)} ÷ ${legs} = ${formatAmps(worst.evenA)}`,
      `the largest of ${[worst.evenA, worst.fixedA, worst.plugA].map(formatAmps).join(', ')}: ${result}`,
    ],
    result,
  };
};
