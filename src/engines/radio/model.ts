import { recordLabel } from '../../derive/labels.ts';
import { limitCitation, limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import type { RepeaterKind, TransmitterKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import { placeOf } from '../../plan/ports.ts';
import type { Device, Fixture } from '../../plan/records/index.ts';
import { remembered, rememberedEach } from '../../plan/remembered.ts';
import type { Spot } from './path.ts';
import type { Air, Band, Listener, Sender } from './types.ts';
import { assumedWifi } from './wifi.ts';

/** All that sends and receives in a plan, and the air between. */
export interface RadioModel {
  readonly plan: Plan;
  readonly senders: ReadonlyMap<Id, Sender>;
  readonly listeners: ReadonlyMap<Id, Listener>;
  readonly air: Air;
}

/** A usual band, for what does not say which it uses. */
export const USUAL_BAND: Band = { fromMhz: 2400, toMhz: 2483.5 };

const finite = (n: number): number => (Number.isFinite(n) ? n : 0);

/** Where the aerial of a record is, in metres; height above its own floor apart. */
const aerial = (
  plan: Plan,
  recordId: Id,
): { readonly floorId: Id; readonly spot: Spot; readonly heightM: number } | undefined => {
  const place = placeOf(plan, recordId);
  if (!place) return undefined;
  const heightM = finite(place.heightMm) / 1000;
  const levelM = finite(recordOf(plan, 'floor', place.floorId)?.levelMm ?? 0) / 1000;
  return {
    floorId: place.floorId,
    heightM,
    spot: { x: finite(place.at.xMm) / 1000, y: finite(place.at.yMm) / 1000, z: levelM + heightM },
  };
};

const universesOf = (d: Device): readonly Id[] => [...new Set(d.ports.map((p) => p.universeId))];

const bandOf = (d: Device, kind: TransmitterKind | RepeaterKind | undefined) =>
  kind?.bands[d.band] ?? kind?.bands[0];

const senderOf = (plan: Plan, d: Device): Sender | undefined => {
  const kind = kindOf(plan, d.kindId, 'transmitter', 'repeater');
  const at = aerial(plan, d.id);
  if (!kind || !at) return undefined;
  const b = bandOf(d, kind);
  const band = b ?? USUAL_BAND;
  const basis = kind.basis.bands ?? kind.basis.all ?? '';
  return {
    id: d.id,
    role: kind.family,
    label: recordLabel(plan, d),
    ...at,
    band,
    fMhz: (band.fromMhz + band.toMhz) / 2,
    eirpDbm: d.eirpDbm ?? b?.eirpDbm ?? 10,
    eirpFrom: d.eirpDbm === undefined ? `gear book: ${basis || 'no source given'}` : 'plan',
    eirpAssumed: d.eirpDbm === undefined,
    antenna: kind.antenna,
    facingDeg: d.rotationDeg,
    universeIds: universesOf(d),
    linksMax: d.linksMax ?? kind.linksMax,
    mesh: kind.mesh,
    listensToId: d.listensToId,
  };
};

/** Receiver devices by the fixture they are plugged into. */
const pluggedReceivers = remembered(
  (plan, devices: readonly Device[]): ReadonlyMap<Id, Device> =>
    new Map(
      devices.flatMap((d) =>
        d.fixtureId !== undefined && kindOf(plan, d.kindId, 'receiver') ? [[d.fixtureId, d] as const] : [],
      ),
    ),
);

/** What a device hears with, by its own figure or its kind's. */
const deviceEars = (plan: Plan, d: Device) => {
  const kind = kindOf(plan, d.kindId, 'receiver', 'repeater', 'transmitter');
  return {
    sensitivityDbm: d.sensitivityDbm ?? kind?.sensitivityDbm ?? limitOf(plan, 'radio-sensitivity').value,
    gainDbi: kind?.antennaGainDbi ?? 0,
    bands: kind?.bands,
    from: d.sensitivityDbm === undefined ? `gear book, ${kind?.name ?? 'kind missing'}` : 'plan',
    assumed: d.sensitivityDbm === undefined && kind === undefined,
  };
};

const fixtureEars = (plan: Plan, f: Fixture, plugged: Device | undefined) => {
  if (plugged) return deviceEars(plan, plugged);
  const own = kindOf(plan, f.kindId, 'fixture')?.radioIn;
  if (own)
    return {
      sensitivityDbm: own.sensitivityDbm,
      gainDbi: own.antennaGainDbi,
      bands: [{ fromMhz: own.fromMhz, toMhz: own.toMhz }],
      from: 'gear book, built in',
      assumed: false,
    };
  const usual = limitOf(plan, 'radio-sensitivity');
  return {
    sensitivityDbm: usual.value,
    gainDbi: 0,
    bands: undefined,
    from: `no receiver in the plan: ${limitCitation(usual)}`,
    assumed: true,
  };
};

const fixtureListener = (plan: Plan, f: Fixture, plugged: ReadonlyMap<Id, Device>): Listener | undefined => {
  const at = aerial(plan, f.id);
  if (!at) return undefined;
  const own = plugged.get(f.id);
  const stretches = f.patch ? [f.patch.universeId, ...(f.patch.spans ?? []).map((s) => s.universeId)] : [];
  const named = f.linkId === undefined ? own : recordOf(plan, 'device', f.linkId);
  // A receiver stands for what it listens to.
  const link =
    named && kindOf(plan, named.kindId, 'receiver') ? named.listensToId : (f.linkId ?? own?.listensToId);
  return {
    id: f.id,
    what: 'fixture',
    label: recordLabel(plan, f),
    ...at,
    ...fixtureEars(plan, f, own),
    universeIds: [...new Set(stretches)],
    linkId: link,
  };
};

const deviceListener = (plan: Plan, d: Device, what: 'receiver' | 'repeater'): Listener | undefined => {
  const at = aerial(plan, d.id);
  return at
    ? {
        id: d.id,
        what,
        label: recordLabel(plan, d),
        ...at,
        ...deviceEars(plan, d),
        universeIds: universesOf(d),
        linkId: d.listensToId,
      }
    : undefined;
};

const airOf = (plan: Plan): Air => {
  const r = planRecord(plan).radio;
  return {
    crowd: r?.crowd ?? 'few',
    crowdAssumed: r?.crowd === undefined,
    wifiChannels: r?.wifiChannels ?? assumedWifi,
    wifiAssumed: r?.wifiChannels === undefined,
    coefficient: r?.distanceCoefficient,
  };
};

/** Units and devices with their places and figures, from edit to edit: the same objects while nothing of them changes. */
const unitsListening = rememberedEach(fixtureListener);

const deviceEnds = rememberedEach((plan, d: Device) => {
  const sender = senderOf(plan, d);
  const receives =
    sender?.role === 'repeater'
      ? 'repeater'
      : d.fixtureId === undefined && kindOf(plan, d.kindId, 'receiver')
        ? 'receiver'
        : undefined;
  return { sender, listener: receives ? deviceListener(plan, d, receives) : undefined };
});

const models = new WeakMap<Plan, RadioModel>();

/**
 * Transmitters and repeaters, and what listens: units linked by radio, receivers at the head of a line, repeaters.
 * A receiver plugged into a unit is that unit's ear.
 */
export const radioModel = (plan: Plan): RadioModel => {
  const known = models.get(plan);
  if (known) return known;
  const senders = new Map<Id, Sender>();
  const listeners = new Map<Id, Listener>();
  const devices = recordsOf(plan, 'device');
  const units = recordsOf(plan, 'fixture').filter((f) => f.link === 'radio');
  for (const l of unitsListening(plan, units, pluggedReceivers(plan, devices))) if (l) listeners.set(l.id, l);
  for (const { sender, listener } of deviceEnds(plan, devices)) {
    if (sender) senders.set(sender.id, sender);
    if (listener) listeners.set(listener.id, listener);
  }
  const made: RadioModel = { plan, senders, listeners, air: airOf(plan) };
  models.set(plan, made);
  return made;
};
