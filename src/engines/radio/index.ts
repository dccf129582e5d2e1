import type { EngineFinding } from '../../derive/findings.ts';
import { whateverChangesIn } from '../../plan/remembered.ts';
import { findingsOf } from './findings.ts';
import { computeRadio } from './links.ts';

export { type CoverageAsk, type CoverageGrid, coverage, usualReceiver } from './coverage.ts';
export {
  explainRadio,
  formatDb,
  HINT,
  type HopSum,
  hopsOf,
  linkBetween,
  type RadioWorking,
  VERDICT_WORDS,
} from './explain.ts';
export { servedBy } from './findings-senders.ts';
export type { FreePlace } from './free-places.ts';
export { RADIO_QUANTITIES, type RadioQuantity, radioKey } from './keys.ts';
export { computeRadio, type RadioResult } from './links.ts';
export { bestSpots, type SpotChoice, type Spots, type SpotsAsk } from './spots.ts';
export { type Backup, backupOf, devicePower } from './supply.ts';
export { hopTerms } from './terms.ts';
export type { Air, Band, Link, Listener, Sender, Term, TermId, Verdict } from './types.ts';
export { freeHopsMhz, wifiCentreMhz } from './wifi.ts';

/** Types the findings do not look at. */
const NOT_LOOKED_AT = [
  'level',
  'setup',
  'block',
  'tick',
  'stock',
  'acknowledgement',
  'issue',
  'line',
] as const;

/** What is wrong or worth knowing with the radio links of a plan. */
export const radioFindings = whateverChangesIn(NOT_LOOKED_AT, (plan): readonly EngineFinding[] =>
  findingsOf(computeRadio(plan)),
);
