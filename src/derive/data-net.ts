import type { Id } from '../kernel/ids.ts';
import type { DataPort } from '../plan/kinds/data-ports.ts';
import { type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { dataPortsOf } from '../plan/ports.ts';
import type { DataLine, Device } from '../plan/records/index.ts';
import { remembered } from '../plan/remembered.ts';
import { deviceKind, isWire, lineLengths, linesInOrder, startPort } from './data-lines.ts';

/**
 * What a line carries. `all` is a network without universes named for it: it may carry every one. `unset` tells that
 * its port names no universe where it must.
 */
export interface Carried {
  readonly universes: ReadonlySet<Id>;
  readonly all: boolean;
  readonly unset: boolean;
  /** What it starts from gets no data itself. */
  readonly dead: boolean;
  /** It leads back into itself. */
  readonly ring: boolean;
}

/** Wire without anything active on it: the unit loads, the length and the one terminator count over all of it. */
export interface Segment {
  readonly lineIds: readonly Id[];
  /** The line that starts at what drives it. */
  readonly firstId: Id;
  readonly stops: readonly Id[];
  readonly lengthMm: number;
}

export interface DataNet {
  readonly lines: readonly DataLine[];
  readonly carried: ReadonlyMap<Id, Carried>;
  /** Lines that stop at a record. */
  readonly into: ReadonlyMap<Id, readonly DataLine[]>;
  /** Lines that start from a record. */
  readonly outOf: ReadonlyMap<Id, readonly DataLine[]>;
  readonly segments: readonly Segment[];
  /** What of it stays the same object while nothing but lengths changes. */
  readonly shape: NetShape;
}

const NOTHING: Carried = { universes: new Set(), all: false, unset: false, dead: true, ring: false };

/** Universes set for a port of a device; of any port where none is named. */
export const portUniverses = (d: Device, portId?: string): readonly Id[] =>
  d.ports.filter((p) => portId === undefined || p.portId === portId).map((p) => p.universeId);

/** A line that goes on from a passive socket: a unit's through, or the through of a splitter. */
const goesOn = (plan: Plan, line: DataLine): boolean => {
  const from = plan.records.get(line.from.recordId);
  if (from?.type === 'fixture' || from?.type === 'box') return true;
  return deviceKind(plan, line.from.recordId)?.family === 'dataSplitter' && line.from.portId === 'through';
};

/** All of the net but lengths, which change whenever something is moved. */
export interface NetShape extends Omit<DataNet, 'segments' | 'shape'> {
  readonly segments: readonly Omit<Segment, 'lengthMm'>[];
}

/** Who gets data from whom. Remembered from edit to edit: of things off the lines it does not ask. */
const netShape = remembered((plan, lines: readonly DataLine[]): NetShape => {
  const into = new Map<Id, DataLine[]>();
  const outOf = new Map<Id, DataLine[]>();
  const push = (map: Map<Id, DataLine[]>, id: Id, line: DataLine): void => {
    const list = map.get(id);
    if (!list) map.set(id, [line]);
    else if (!list.includes(line)) list.push(line);
  };
  for (const l of lines) {
    push(outOf, l.from.recordId, l);
    for (const s of l.stops) push(into, s, l);
  }
  const carried = new Map<Id, Carried>();
  const busy = new Set<Id>();
  const of = (l: DataLine): Carried => {
    const done = carried.get(l.id);
    if (done) return done;
    if (busy.has(l.id)) return { ...NOTHING, ring: true };
    busy.add(l.id);
    const made = carriedBy(plan, l, into, of);
    busy.delete(l.id);
    carried.set(l.id, made);
    return made;
  };
  for (const l of lines) of(l);
  return { lines, carried, into, outOf, segments: segmentsOf(plan, lines, into) };
});

const kept = new WeakMap<Plan, DataNet>();

/** Who gets data from whom by wire. Kept per plan. */
export const dataNet = (plan: Plan): DataNet => {
  const known = kept.get(plan);
  if (known) return known;
  const shape = netShape(plan, linesInOrder(plan));
  const mm = new Map(lineLengths(plan).map((x) => [x.lineId, x.totalMm]));
  const lengthMm = (ids: readonly Id[]): number => ids.reduce((s, id) => s + (mm.get(id) ?? 0), 0);
  const segments = shape.segments.map((s) => ({ ...s, lengthMm: lengthMm(s.lineIds) }));
  const net: DataNet = { ...shape, shape, segments };
  kept.set(plan, net);
  return net;
};

type Into = ReadonlyMap<Id, readonly DataLine[]>;

/** What comes to a record over lines of one sort, wire or network. */
const arriving = (
  plan: Plan,
  id: Id,
  wire: boolean | undefined,
  into: Into,
  of: (l: DataLine) => Carried,
): Carried => {
  const lines = (into.get(id) ?? []).filter(
    (l) => wire === undefined || isWire(startPort(plan, l)?.connector ?? 'xlr-5') === wire,
  );
  if (lines.length === 0) return NOTHING;
  const all = lines.map(of);
  return {
    universes: new Set(all.flatMap((c) => [...c.universes])),
    all: all.some((c) => c.all),
    unset: all.every((c) => c.unset),
    dead: all.every((c) => c.dead),
    ring: all.some((c) => c.ring),
  };
};

const carriedBy = (plan: Plan, l: DataLine, into: Into, of: (l: DataLine) => Carried): Carried => {
  const d = recordOf(plan, 'device', l.from.recordId);
  if (!d) return arriving(plan, l.from.recordId, undefined, into, of);
  const kind = deviceKind(plan, d.id);
  const own = new Set(portUniverses(d, l.from.portId));
  const network = startPort(plan, l)?.connector === 'ethernet';
  if (kind?.family === 'dataSplitter') return arriving(plan, d.id, true, into, of);
  if (kind?.family === 'receiver') {
    const from = d.listensToId === undefined ? undefined : recordOf(plan, 'device', d.listensToId);
    const heard = new Set(from ? portUniverses(from) : []);
    const universes = own.size > 0 ? own : heard.size === 1 ? heard : own;
    return { universes, all: false, unset: universes.size === 0, dead: false, ring: false };
  }
  if (kind?.family === 'node' && kind.what === 'desk') {
    if (network) return { universes: own, all: own.size === 0, unset: false, dead: false, ring: false };
    return { universes: own, all: false, unset: own.size === 0, dead: false, ring: false };
  }
  // A switch, a node's second network socket, a merger: what comes in goes out, cut down to what the port is set to.
  const incoming = arriving(plan, d.id, network ? false : undefined, into, of);
  if (network || own.size === 0)
    return own.size > 0
      ? { ...incoming, universes: own, all: false }
      : { ...incoming, unset: unsetOut(plan, d, network, incoming) };
  const universes = incoming.all ? own : new Set([...own].filter((u) => incoming.universes.has(u)));
  return {
    universes: incoming.dead ? own : universes,
    all: false,
    unset: false,
    dead: incoming.dead || universes.size === 0,
    ring: incoming.ring,
  };
};

/** A wire port of a node must be told its universe; a merger's carries what comes in. */
const unsetOut = (plan: Plan, d: Device, network: boolean, incoming: Carried): boolean => {
  const kind = deviceKind(plan, d.id);
  return !network && (kind?.family !== 'node' || kind.what !== 'merger' || incoming.universes.size !== 1);
};

const segmentsOf = (plan: Plan, lines: readonly DataLine[], into: Into): NetShape['segments'] => {
  const wire = lines.filter((l) => isWire(startPort(plan, l)?.connector ?? 'xlr-5'));
  const headOf = new Map<Id, Id>();
  const head = (l: DataLine, seen: ReadonlySet<Id>): Id => {
    const known = headOf.get(l.id);
    if (known) return known;
    const before = goesOn(plan, l)
      ? (into.get(l.from.recordId) ?? []).find((o) => !seen.has(o.id) && wire.includes(o))
      : undefined;
    const found = before ? head(before, new Set([...seen, l.id])) : l.id;
    headOf.set(l.id, found);
    return found;
  };
  const byHead = new Map<Id, DataLine[]>();
  for (const l of wire) {
    const h = head(l, new Set([l.id]));
    const list = byHead.get(h);
    if (list) list.push(l);
    else byHead.set(h, [l]);
  }
  return [...byHead].map(([firstId, own]) => ({
    firstId,
    lineIds: own.map((l) => l.id),
    stops: [...new Set(own.flatMap((l) => l.stops))],
  }));
};

const plugs = new WeakMap<readonly Device[], ReadonlyMap<Id, Device>>();

/** The first device plugged into each unit. */
const pluggedInto = (devices: readonly Device[]): ReadonlyMap<Id, Device> => {
  let known = plugs.get(devices);
  if (!known) {
    const made = new Map<Id, Device>();
    for (const d of devices)
      if (d.fixtureId !== undefined && !made.has(d.fixtureId)) made.set(d.fixtureId, d);
    known = made;
    plugs.set(devices, known);
  }
  return known;
};

/** How control data comes to a unit. */
export interface Reach {
  readonly lineIds: readonly Id[];
  /** Universes that come over its lines; `all` where a network brings any. */
  readonly universes: ReadonlySet<Id>;
  readonly all: boolean;
  /** The receiver plugged into it, or what its radio link is with. */
  readonly radioId: Id | undefined;
}

/** What reaches a unit by wire, by a receiver plugged into it, or by its own radio link where that names its other end. */
export const reachOf = (plan: Plan, fixtureId: Id, net: NetShape = dataNet(plan).shape): Reach => {
  const lines = net.into.get(fixtureId) ?? [];
  const universes = new Set<Id>();
  let all = false;
  for (const l of lines) {
    const c = net.carried.get(l.id);
    for (const u of c?.universes ?? []) universes.add(u);
    if (c?.all) all = true;
  }
  const f = recordOf(plan, 'fixture', fixtureId);
  const plugged = pluggedInto(recordsOf(plan, 'device')).get(fixtureId);
  const linked =
    f?.link === 'radio' && f.linkId !== undefined ? recordOf(plan, 'device', f.linkId) : undefined;
  return { lineIds: lines.map((l) => l.id), universes, all, radioId: plugged?.id ?? linked?.id };
};

/** Data ports of a record that a line can start from: its outputs, and the sockets of nodes and switches that have several. */
export const startPorts = (plan: Plan, id: Id): readonly DataPort[] => {
  const { dataIn, dataOut } = dataPortsOf(plan, id);
  const network = recordOf(plan, 'device', id) ? dataIn.filter((p) => p.connector === 'ethernet') : [];
  return [...dataOut.filter((p) => p.connector !== 'radio'), ...(network.length > 1 ? network : [])];
};
