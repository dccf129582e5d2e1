export { type CableAmpacity, cableAmpacity } from './ampacity.ts';
export {
  type BalanceProblem,
  BalanceState,
  balanceProblem,
  compareScores,
  type Found,
  improveExactly,
  nominalAmps,
  type Place,
  type Plug,
  placesOf,
  polish,
  type Score,
  type Slot,
  type SourceProblem,
  scoreOf,
  search,
  tradeOff,
  worstLegBound,
  zoneRoots,
} from './balance/index.ts';
export { computedSetups, computePower, EVERYTHING_AT_FULL } from './compute.ts';
export { explainPower, parseFigureKey } from './explain.ts';
export { type FaultLoop, faultLoops, type LoopPart, largestLoopOhm, loopParts } from './fault-loop.ts';
export {
  type Complex,
  type ComplexMatrix,
  type FeederAnswer,
  type FeederLoad,
  type FeederSegment,
  type FeederSpec,
  solveFeeder,
} from './feeder.ts';
export { foldNeutral, type SpreadLoad, spreadLoads, transformerRatio } from './feeder-parts.ts';
export { wireImpedance } from './impedance.ts';
export { type OverheadConductor, overheadOhmPerMile, sequenceOhm } from './line-ohms.ts';
export { type LostLeg, lostLeg } from './lost-leg.ts';
export { type FloatingNeutral, floatingNeutral, type NeutralLoad, onNeutral } from './lost-neutral.ts';
export { type LostNeutral, lostNeutral } from './lost-neutral-net.ts';
export { type SourceModel, sourceVolts, type VoltsBasis } from './model.ts';
export { deratingShare, positive, type Rating, sourceRating } from './rating.ts';
export { type LoadStep, largestStep } from './steps.ts';
export { type TripBand, tripBand, tripWords } from './thermal.ts';
export type { PowerResult, SetupName } from './types.ts';
export { explainLostLegWire } from './working-lost-leg.ts';
export type { PowerWorking } from './working-types.ts';
