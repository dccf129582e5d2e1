import { connector } from '../../plan/connectors.ts';
import type { InletPort, OutletPort } from '../../plan/kinds/ports.ts';
import type { Practice } from '../../plan/records/index.ts';
import { inletFor } from '../mains.ts';
import type { FilePower } from './gdtf-power.ts';
import { cleanText, numberOf } from './gdtf-values.ts';
import type { Visit } from './gdtf-walk.ts';
import type { Notices } from './notices.ts';
import { attrOf, childOf, childrenOf, type XmlNode } from './xml.ts';

export interface FilePorts {
  readonly inlets: readonly InletPort[];
  readonly outlets: readonly OutletPort[];
  /** Data connectors as the file writes them. */
  readonly data: readonly string[];
  /** Where the inlet is from, in words; begins with `assumed` where the file does not say. */
  readonly inletBasis: string;
}

/** Current up to which the locking appliance connector is assumed, in amperes. */
const APPLIANCE_A = 16;

/**
 * Power inlet, through outlets and data connectors. Wiring of version 1.2 comes first, then the connector of the
 * power consumption, then the old list of connectors. A connector the table does not know is kept in words and one
 * that carries the load is assumed.
 */
export const filePorts = (
  type: XmlNode,
  visits: readonly Visit[],
  power: FilePower | undefined,
  practice: Practice,
  notices: Notices,
): FilePorts => {
  const wiring = visits.map((v) => v.geometry.xml).filter((x) => x.name === 'WiringObject');
  const powered = wiring.filter((x) => (attrOf(x, 'SignalType') ?? '') === 'Power');
  const ofType = (...types: readonly string[]): readonly XmlNode[] =>
    powered.filter((x) => types.includes(attrOf(x, 'ComponentType') ?? ''));
  const physical = childOf(type, 'PhysicalDescriptions');
  const old = childrenOf(childOf(physical, 'Connectors'), 'Connector').map((c) => attrOf(c, 'Type') ?? '');
  const pins = (x: XmlNode | undefined): number | undefined => numberOf(attrOf(x, 'PinCount'));
  const inlet = [...ofType('Input'), ...ofType('PowerSource'), ...ofType('Consumer')].find(
    (x) => attrOf(x, 'ConnectorType') !== undefined,
  );
  const listed = childrenOf(childOf(physical, 'Properties'), 'PowerConsumption')
    .map((p) => attrOf(p, 'Connector'))
    .find((c) => c !== undefined);
  const given = attrOf(inlet, 'ConnectorType') ?? listed ?? old.find((c) => connectorId(c, undefined));
  const known = given === undefined ? undefined : connectorId(given, pins(inlet));
  const row = known === undefined ? undefined : connector(known);
  const assumed = assumedInlet(power, practice);
  if (given !== undefined && !row)
    notices.add(
      `The file names its power connector “${cleanText(given, 40)}”, which the connector table does not list; another one was assumed. Choose the right one.`,
    );
  const base: InletPort = row
    ? { id: 'in', connector: row.id, legs: row.legs, neutral: row.neutral }
    : assumed;
  return {
    inlets: [given === undefined ? base : { ...base, connectorGiven: cleanText(given, 60) }],
    outlets: ofType('Output').map((x, i) => throughOutlet(x, i, base, pins(x))),
    data: dataConnectors(wiring, old),
    inletBasis: row
      ? 'the fixture file'
      : given === undefined
        ? 'assumed: the file names no power connector'
        : `assumed: the file says “${cleanText(given, 60)}”`,
  };
};

const throughOutlet = (x: XmlNode, i: number, inlet: InletPort, pins: number | undefined): OutletPort => {
  const given = attrOf(x, 'ConnectorType');
  const row = given === undefined ? undefined : connector(connectorId(given, pins) ?? '');
  return {
    id: i === 0 ? 'through' : `through-${i + 1}`,
    connector: row?.id ?? inlet.connector,
    legs: row?.legs ?? inlet.legs,
    neutral: row?.neutral ?? inlet.neutral,
    label: 'through',
    ...(given === undefined ? {} : { connectorGiven: cleanText(given, 60) }),
  };
};

const dataConnectors = (wiring: readonly XmlNode[], old: readonly string[]): readonly string[] => {
  const wired = wiring
    .filter((x) => (attrOf(x, 'ComponentType') ?? '').startsWith('Network'))
    .map(
      (x) =>
        `${cleanText(attrOf(x, 'ConnectorType') ?? 'connector', 30)} (${cleanText(attrOf(x, 'SignalType') ?? 'data', 30)})`,
    );
  const all =
    wired.length > 0
      ? wired
      : old.filter((c) => /^(xlr|rj45|d-?sub|bnc)/i.test(c)).map((c) => cleanText(c, 30));
  return [...new Set(all)].slice(0, 12);
};

/** Row of the connector table for a connector type as fixture files write it. */
const connectorId = (given: string, pins: number | undefined): string | undefined => {
  const text = given.toUpperCase().replace(/[\s_]+/g, ' ');
  const phases = /^(16|32|63|125) ?A?[- ]?CEE$/.exec(text);
  if (phases) return `iec-${phases[1]}-${pins !== undefined && pins >= 4 ? 3 : 1}`;
  if (/60320.*C1[34]/.test(text)) return 'iec-c13';
  if (/60320.*C(19|20)/.test(text)) return 'iec-c19';
  if (/^CEE ?7/.test(text)) return 'schuko-16';
  if (/BS ?1363/.test(text)) return 'bs-1363';
  if (/^STAGE ?PIN$/.test(text)) return 'stage-pin-20';
  const nema = /NEMA ?(L?\d+-\d+)/.exec(text);
  return nema ? `nema-${nema[1]?.toLowerCase()}` : undefined;
};

/** The locking appliance connector up to 16 A, above it the practice's plug for so many amperes, else bare tails. */
const assumedInlet = (power: FilePower | undefined, practice: Practice): InletPort => {
  const volts = practice === 'europe' ? 230 : 208;
  const amps = power
    ? power.wattsW / (power.powerFactor ?? 0.9) / Math.max(power.voltsMinV ?? volts, 100)
    : 0;
  if (amps <= APPLIANCE_A) return inletFor(practice, 'chain', amps);
  const largest = practice === 'europe' ? 125 : 100;
  return amps <= largest
    ? inletFor(practice, 'high', amps)
    : { id: 'in', connector: 'bare-tails', legs: 3, neutral: true };
};
