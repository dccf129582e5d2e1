import { CONNECTOR_WORDS, deviceKind, linesInOrder } from '../../derive/data-lines.ts';
import { dataNet, portUniverses } from '../../derive/data-net.ts';
import { recordLabel } from '../../derive/labels.ts';
import { compareNatural, type Id } from '../../kernel/ids.ts';
import type { DataPort } from '../../plan/kinds/data-ports.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../../plan/plan.ts';
import { dataPortsOf } from '../../plan/ports.ts';
import { controlFigure } from './figures.ts';
import { bandwidthKbps, multicastGroup, universesOnLink } from './network.ts';

/** One data port of a device with what it is set to. */
export interface NodePort {
  readonly port: DataPort;
  readonly side: 'in' | 'out';
  /** `line 2, five-pin`. */
  readonly words: string;
  /** Universe numbers it is set to, rising. */
  readonly universes: readonly number[];
  /** Labels of the lines that start here; for an input, of those that come to the device. */
  readonly lines: readonly string[];
}

/** A device of the control network. */
export interface NodeRow {
  readonly deviceId: Id;
  readonly label: string;
  readonly kindName: string;
  readonly family: string;
  readonly ports: readonly NodePort[];
  readonly universes: readonly number[];
  /** What its universes take on the network it hangs on, every one sent whole, kbit/s; 0 for gear without a network port. */
  readonly kbps: number;
}

/** A universe as streaming ACN sends it. */
export interface NetUniverse {
  readonly id: Id;
  readonly number: number;
  readonly name: string;
  /** The number it has in streaming ACN: its own. */
  readonly sacn: number;
  readonly group: string;
  readonly kbps: number;
  /** Labels of devices with a port set to it. */
  readonly devices: readonly string[];
}

/** The control network in all. */
export interface Network {
  readonly nodes: readonly NodeRow[];
  readonly universes: readonly NetUniverse[];
  readonly kbps: number;
  /** Share of a link of 100 Mbit/s, and how much of it is advised. */
  readonly sharePct: number;
  readonly advisedPct: number;
  /** Universes such a link carries by arithmetic alone. */
  readonly most: number;
}

const LINK_MBPS = 100;

const numbersOf = (plan: Plan, ids: Iterable<Id>): readonly number[] =>
  [...new Set(ids)]
    .map((id) => recordOf(plan, 'universe', id)?.number)
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b);

const portsOf = (plan: Plan, id: Id): readonly NodePort[] => {
  const d = recordOf(plan, 'device', id);
  if (!d) return [];
  const { dataIn, dataOut } = dataPortsOf(plan, id);
  const net = dataNet(plan);
  const row =
    (side: 'in' | 'out') =>
    (port: DataPort): NodePort => {
      const universes = numbersOf(plan, portUniverses(d, port.id));
      const starts = linesInOrder(plan).filter((l) => l.from.recordId === id && l.from.portId === port.id);
      const comes = side === 'in' && port.connector !== 'radio' ? (net.into.get(id) ?? []) : [];
      const matching = comes.filter((l) => {
        const carried = net.carried.get(l.id);
        // A line comes to the port that is set to what it carries, or to the only one.
        return (
          dataIn.length === 1 ||
          carried?.all ||
          numbersOf(plan, carried?.universes ?? []).some((n) => universes.includes(n))
        );
      });
      return {
        port,
        side,
        words: [...new Set([port.label ?? port.id, CONNECTOR_WORDS[port.connector]])].join(', '),
        universes,
        lines: [...new Set([...starts, ...matching].map((l) => l.label || 'a line'))],
      };
    };
  return [...dataOut.map(row('out')), ...dataIn.map(row('in'))];
};

const kept = new WeakMap<Plan, Network>();

/** Desks, nodes, splitters and links with their ports, and every universe of the plan as a network carries it. */
export const networkOf = (plan: Plan): Network => {
  const known = kept.get(plan);
  if (known) return known;
  // Monitors and picture links carry no control data.
  const devices = recordsOf(plan, 'device')
    .filter((d) => kindOf(plan, d.kindId, 'video') === undefined)
    .sort((a, b) => compareNatural(a.label, b.label));
  const nodes = devices.map((d): NodeRow => {
    const universes = numbersOf(plan, portUniverses(d));
    const kind = deviceKind(plan, d.id);
    const ports = portsOf(plan, d.id);
    return {
      deviceId: d.id,
      label: recordLabel(plan, d),
      kindName: kind?.name ?? 'kind missing',
      family: kind?.family ?? '',
      ports,
      universes,
      kbps: ports.some((p) => p.port.connector === 'ethernet') ? bandwidthKbps(universes.length) : 0,
    };
  });
  const universes = [...recordsOf(plan, 'universe')]
    .sort((a, b) => a.number - b.number)
    .map((u): NetUniverse => {
      const group = multicastGroup(u.number);
      return {
        id: u.id,
        number: u.number,
        name: u.name,
        sacn: u.number,
        group: group.ok ? group.value : 'none',
        kbps: bandwidthKbps(1),
        devices: nodes.filter((n) => n.universes.includes(u.number)).map((n) => n.label),
      };
    });
  const kbps = bandwidthKbps(universes.length);
  const made: Network = {
    nodes,
    universes,
    kbps,
    sharePct: (kbps / (LINK_MBPS * 1000)) * 100,
    advisedPct: controlFigure('network-share'),
    most: universesOnLink(LINK_MBPS),
  };
  kept.set(plan, made);
  return made;
};
