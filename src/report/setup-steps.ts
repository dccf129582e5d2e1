import { deviceKind, isWire, startPort } from '../derive/data-lines.ts';
import { dataNet, portUniverses } from '../derive/data-net.ts';
import { recordLabel } from '../derive/labels.ts';
import { breakPlaces, lineLabel, type PatchPlace, placesOf } from '../engines/control/index.ts';
import type { Id } from '../kernel/ids.ts';
import { patchedMode } from '../plan/footprint.ts';
import type { FixtureKind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf, recordsOf } from '../plan/plan.ts';
import { dataPortsOf } from '../plan/ports.ts';
import type { Device, Fixture, Tick } from '../plan/records/index.ts';

/** One thing done at a unit when it is set up. Ids stay the same from plan to plan: ticks go by them. */
export interface SetupStep {
  readonly id: string;
  readonly text: string;
  /** In fewer words, where mode and address stand beside it. */
  readonly short: string;
}

/** What a unit's radio link is with, and over which of its ports. */
export interface SetupLink {
  readonly transmitter: Device | undefined;
  /** Words of the port that sends its universe; empty where that is not known. */
  readonly port: string;
  /** The receiver plugged into the unit, where there is one. */
  readonly receiver: Device | undefined;
}

/** Settings of a unit that a person sets by its menu. */
export type UnitSetting = 'curve' | 'frequency' | 'fan' | 'loss';

/**
 * Settings a kind has to be set: those it names, else what units of its sort have as a rule. LED units dim by their own
 * electronics, so they have a curve and a frequency, and those above 100 W a fan; this is assumed.
 */
export const settingsOf = (kind: FixtureKind | undefined): readonly UnitSetting[] => {
  if (!kind) return [];
  if (kind.settings) return kind.settings;
  if (kind.source !== 'led') return ['loss'];
  return (kind.load?.wattsW ?? 0) >= 100
    ? ['curve', 'frequency', 'fan', 'loss']
    : ['curve', 'frequency', 'loss'];
};

const sends = (plan: Plan, d: Device | undefined): boolean =>
  d !== undefined && ['transmitter', 'repeater'].includes(deviceKind(plan, d.id)?.family ?? '');

/** The transmitter, port and receiver of a unit reached by radio. */
export const setupLink = (plan: Plan, f: Fixture): SetupLink => {
  const devices = recordsOf(plan, 'device');
  const named = f.linkId === undefined ? undefined : recordOf(plan, 'device', f.linkId);
  const receiver =
    devices.find((d) => d.fixtureId === f.id) ??
    (named && deviceKind(plan, named.id)?.family === 'receiver' ? named : undefined);
  const universeId = f.patch?.universeId;
  const heard =
    receiver?.listensToId === undefined ? undefined : recordOf(plan, 'device', receiver.listensToId);
  const transmitter =
    [heard, sends(plan, named) ? named : undefined].find((d) => d !== undefined) ??
    devices.find((d) => sends(plan, d) && universeId !== undefined && portUniverses(d).includes(universeId));
  const portId = transmitter?.ports.find((p) => p.universeId === universeId)?.portId;
  const ports = transmitter ? dataPortsOf(plan, transmitter.id) : undefined;
  const port = [...(ports?.dataIn ?? []), ...(ports?.dataOut ?? [])].find((p) => p.id === portId);
  return { transmitter, port: port?.label ?? portId ?? '', receiver };
};

const linkText = (plan: Plan, f: Fixture): string => {
  const { transmitter, port, receiver } = setupLink(plan, f);
  const what = receiver ? `Link receiver ${receiver.label}` : 'Link';
  if (!transmitter) return `${what} to a transmitter`;
  return `${what} to ${transmitter.label}${port ? `, port ${port}` : ''}`;
};

/** The line a unit hangs on, what it is plugged into there, and whether it is the last. */
const lineSteps = (plan: Plan, f: Fixture): readonly SetupStep[] => {
  const lines = (dataNet(plan).into.get(f.id) ?? []).filter((l) =>
    isWire(startPort(plan, l)?.connector ?? 'xlr-5'),
  );
  if (lines.length === 0)
    return f.link === 'line'
      ? [
          { id: 'line', text: 'Connect the data line', short: 'Data line' },
          { id: 'end', text: 'Terminator if last', short: 'Terminator if last' },
        ]
      : [];
  return lines.flatMap((l, i): readonly SetupStep[] => {
    const at = l.stops.indexOf(f.id);
    const before = at === 0 ? l.from.recordId : (l.stops[at - 1] ?? '');
    const port = at === 0 ? startPort(plan, l)?.label : undefined;
    const nth = i === 0 ? '' : String(i + 1);
    const from = `${recordLabel(plan, plan.records.get(before))}${port ? `, ${port}` : ''}`;
    const name = lineLabel(plan, l).replace(/^Line /, '');
    const last = at === l.stops.length - 1;
    return [
      {
        id: `line${nth}`,
        text: `Line ${name} in, from ${from}`,
        short: `Line ${name} from ${before === l.from.recordId ? recordLabel(plan, plan.records.get(before)) : from}`,
      },
      ...(last && l.terminated
        ? [{ id: `end${nth}`, text: 'Terminator in its through', short: 'Terminator' }]
        : []),
    ];
  });
};

/** Every address that is set at the unit: that of each break, and where a parted unit goes on. */
const addresses = (plan: Plan, f: Fixture): readonly PatchPlace[] => {
  const all = new Map([...placesOf(plan, f), ...breakPlaces(plan, f)].map((p) => [p.fromSlot, p]));
  return [...all.values()].sort((x, y) => x.fromSlot - y.fromSlot);
};

const address = (plan: Plan, f: Fixture): string =>
  addresses(plan, f)
    .map((p) => `U${p.universe} ${p.address}`)
    .join(' and ');

/**
 * What is done at a unit, in order: reset before anything else, an old radio link cleared before a new one is made (common
 * practice, no published source). Steps that its kind or link does not have are left out.
 */
export const setupSteps = (plan: Plan, f: Fixture): readonly SetupStep[] => {
  const kind = kindOf(plan, f.kindId, 'fixture');
  const mode = patchedMode(plan, f);
  const settings = settingsOf(kind);
  const has = (s: UnitSetting): boolean => settings.includes(s);
  const parted = addresses(plan, f).length > 1;
  const radio = f.link === 'radio';
  const step = (id: string, text: string, wanted = true, short = text): readonly SetupStep[] =>
    wanted ? [{ id, text, short }] : [];
  return [
    ...step('reset', 'Reset to defaults'),
    ...step('mode', `Mode ${mode?.name ?? ''}`.trim(), true, 'Mode as above'),
    ...step(
      'address',
      kind?.addressBy === 'switches'
        ? 'Set the switches'
        : `${parted ? 'Addresses' : 'Address'} ${address(plan, f)}`,
    ),
    ...step(
      'curve',
      has('frequency') ? 'Dimming curve and frequency' : 'Dimming curve',
      has('curve'),
      has('frequency') ? 'Curve and frequency' : 'Dimming curve',
    ),
    ...step('fan', 'Fan', has('fan')),
    ...step('loss', 'Behaviour at signal loss', has('loss'), 'Signal loss'),
    ...step('wireless', 'Wireless on', radio),
    ...step('unlink', 'Clear the old link', radio),
    ...(radio ? step('link', linkText(plan, f)) : []),
    ...lineSteps(plan, f),
    ...step('identify', 'Identify: it answers'),
  ];
};

/** How far a unit's card is. */
export interface CardProgress {
  readonly steps: readonly (SetupStep & { readonly tick: Tick | undefined })[];
  readonly done: number;
  readonly all: boolean;
  /** Who ticked last. */
  readonly by: string;
}

const ticksOf = new WeakMap<readonly Tick[], ReadonlyMap<Id, ReadonlyMap<string, Tick>>>();

const ticksBy = (plan: Plan): ReadonlyMap<Id, ReadonlyMap<string, Tick>> => {
  const list = recordsOf(plan, 'tick');
  const known = ticksOf.get(list);
  if (known) return known;
  const map = new Map<Id, Map<string, Tick>>();
  for (const t of list) {
    const own = map.get(t.fixtureId) ?? new Map<string, Tick>();
    own.set(t.step, t);
    map.set(t.fixtureId, own);
  }
  ticksOf.set(list, map);
  return map;
};

/** The steps of a unit with what is ticked. Ticks of steps it does not have any more are not counted. */
export const cardProgress = (plan: Plan, f: Fixture): CardProgress => {
  const own = ticksBy(plan).get(f.id);
  const steps = setupSteps(plan, f).map((s) => ({ ...s, tick: own?.get(s.id) }));
  const ticks = steps.flatMap((s) => (s.tick ? [s.tick] : []));
  const last = [...ticks].sort((a, b) => (a.when < b.when ? -1 : 1)).at(-1);
  return {
    steps,
    done: ticks.length,
    all: steps.length > 0 && ticks.length === steps.length,
    by: last?.by ?? '',
  };
};

/** Units that get a setup card: those with a mode to be set. */
export const cardUnits = (plan: Plan): readonly Fixture[] =>
  recordsOf(plan, 'fixture').filter((f) => patchedMode(plan, f) !== undefined);
