export { improveExactly, worstLegBound } from './exact.ts';
export { nominalAmps, type Place, placesOf, zoneRoots } from './places.ts';
export { balanceProblem, type SourceProblem } from './problem.ts';
export { type Found, polish, search, tradeOff } from './search.ts';
export { BalanceState, compareScores, scoreOf } from './state.ts';
export type { BalanceProblem, Plug, Score, Slot } from './types.ts';
