import type { EngineFinding } from '../../../derive/findings.ts';
import type { Computed } from '../types.ts';
import { breakerSizesOdd } from './breaker-size.ts';
import { connectorVolts } from './connector-volts.ts';
import { dimmedLamps, dimmedTooLittle, dimmerNeutrals } from './dimmers.ts';
import { sourceRatings } from './generator.ts';
import { inrush } from './inrush.ts';
import { inverterFeeds } from './inverter.ts';
import { closeBreakers, overloads } from './overload.ts';
import { cableChoices, weakerThanBreaker } from './protection.ts';
import { deviceTypes, leakage, wetPlaces } from './residual.ts';
import { sourceState } from './source-state.ts';
import { twoSources } from './two-sources.ts';
import { dropAdvice, highLeg, loadVolts, wrongVolts } from './volts.ts';
import { voltsUnbalance } from './volts-unbalance.ts';

/** All findings of the power engine, in the order they are told: what is wrong in the plan, overloads, volts, the rest. */
export const powerFindings = (c: Computed): readonly EngineFinding[] => [
  ...c.tree.defects,
  ...sourceState(c),
  ...wrongVolts(c),
  ...highLeg(c),
  ...connectorVolts(c),
  ...sourceRatings(c),
  ...overloads(c),
  ...closeBreakers(c),
  ...loadVolts(c),
  ...dropAdvice(c),
  ...weakerThanBreaker(c),
  ...cableChoices(c),
  ...dimmedLamps(c),
  ...dimmerNeutrals(c),
  ...twoSources(c),
  ...wetPlaces(c),
  ...leakage(c),
  ...deviceTypes(c),
  ...inrush(c),
  ...voltsUnbalance(c),
  ...dimmedTooLittle(c),
  ...breakerSizesOdd(c),
  ...inverterFeeds(c),
];
