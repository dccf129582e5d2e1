export { improveExactly, worstLegBound } from './exact.ts';
export { balanceProblem, nominalAmps, type Place, placesOf, type SourceProblem } from './problem.ts';
export { type Found, polish, search, tradeOff } from './search.ts';
export { BalanceState, compareScores, scoreOf } from './state.ts';
export type { BalanceProblem, Plug, Score, Slot } from './types.ts';
