import type { EngineFinding } from '../../derive/findings.ts';
import { whateverChangesIn } from '../../plan/remembered.ts';
import { checkPatch } from './check.ts';
import { lineFindings } from './line-check.ts';
import { chainFindings, hopFindings } from './line-segments.ts';
import { reachFindings } from './reach-check.ts';

export { assignAddresses } from './assign/assign.ts';
export { type AssignOptions, type Common, DEFAULT_ASSIGN, ORDERS } from './assign/options.ts';
export { type Order, orderFixtures } from './assign/order.ts';
export { breakPlaces, placesOf } from './assign/outcome.ts';
export type { Assignment, AssignRow, PatchPlace } from './assign/types.ts';
export { DIP_WEIGHTS, type DipConvention, dipSwitches } from './dip.ts';
export { controlFigure, controlSource } from './figures.ts';
export { lineLabel, unitLoadsOf, universeWords } from './line-words.ts';
export { bandwidthKbps, multicastGroup, packetBytes, universesOnLink, wireBytes } from './network.ts';
export { type NetUniverse, type Network, type NodePort, type NodeRow, networkOf } from './nodes.ts';
export { placeProblem } from './place-problem.ts';
export { hasLines } from './reach-check.ts';
export { type LineTiming, packetUs, RECEIVE, refreshHz, TRANSMIT } from './timing.ts';
export type { Gap, PatchRow, UniverseUse } from './types.ts';
export { universeUse } from './use.ts';

/** Types the findings do not look at. */
const NOT_LOOKED_AT = ['level', 'setup', 'block', 'tick', 'stock', 'acknowledgement', 'issue'] as const;

/** What is wrong with the patch, with the data lines, and with what reaches whom. */
export const controlFindings = whateverChangesIn(NOT_LOOKED_AT, (plan): readonly EngineFinding[] => [
  ...checkPatch(plan).findings,
  ...lineFindings(plan),
  ...hopFindings(plan),
  ...chainFindings(plan),
  ...reachFindings(plan),
]);
