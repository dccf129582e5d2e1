import {
  dataCableName,
  lineLengths,
  linesInOrder,
  needsTerminator,
  startPort,
} from '../derive/data-lines.ts';
import { recordLabel } from '../derive/labels.ts';
import { compareNatural } from '../kernel/ids.ts';
import { formatCableLength } from '../kernel/units.ts';
import { printAddress } from '../plan/address.ts';
import { patchedMode } from '../plan/footprint.ts';
import { planInSetup } from '../plan/moves.ts';
import { partsOf } from '../plan/part-levels.ts';
import { kindOf, recordOf, recordsOf, setupsOf } from '../plan/plan.ts';
import { lineLabel, networkOf, placesOf, universeUse } from '../report/control.ts';
import { computeRadio } from '../report/radio.ts';
import { cardProgress } from '../report/setup-steps.ts';
import type { ListTable } from './lists.ts';
import { rounded } from './power-lists.ts';
import { cardWalk } from './setup-cards.ts';
import type { SetInfo } from './sheet-info.ts';

/** Every stop of every data line in its order, with the cable that leads there. */
export const lineTable = (info: SetInfo): ListTable => {
  const { plan } = info;
  const lengths = new Map(lineLengths(plan).map((l) => [l.lineId, l]));
  return {
    name: 'lines',
    head: ['line', 'from', 'port', 'stop', 'unit', 'address', 'cable', 'way m', 'stock pieces', 'terminator'],
    rows: linesInOrder(plan).flatMap((l) => {
      const length = lengths.get(l.id);
      const hops = new Map(length?.hops.map((h) => [h.index, h]));
      return l.stops.map((id, i) => {
        const r = plan.records.get(id);
        const hop = hops.get(i);
        const last = i === l.stops.length - 1 && needsTerminator(plan, l);
        return [
          lineLabel(plan, l),
          recordLabel(plan, plan.records.get(l.from.recordId)),
          startPort(plan, l)?.label ?? l.from.portId,
          i + 1,
          recordLabel(plan, r),
          r?.type === 'fixture' ? placesOf(plan, r).map(printAddress).join(' ') : '',
          length ? dataCableName(plan, length) : '',
          hop ? rounded(hop.neededMm / 1000, 2) : Number.NaN,
          hop ? hop.piecesMm.map((mm) => formatCableLength(mm, info.units)).join(' + ') : '',
          last ? (l.terminated ? 'yes' : 'no') : '',
        ];
      });
    }),
  };
};

/** Every port of desks, nodes, splitters and radio gear with what it carries. */
export const portTable = (info: SetInfo): ListTable => ({
  name: 'ports',
  head: ['device', 'kind', 'port', 'universes', 'lines'],
  rows: networkOf(info.plan).nodes.flatMap((n) =>
    n.ports.map((p) => [n.label, n.kindName, p.words, p.universes.join(' '), p.lines.join(', ')]),
  ),
});

/** Universes with their use, their time on a line and their place on a network. */
export const universeTable = (info: SetInfo): ListTable => {
  const net = new Map(networkOf(info.plan).universes.map((u) => [u.number, u]));
  return {
    name: 'universes',
    head: [
      ...['universe', 'name', 'units', 'slots used', 'slots free', 'highest slot', 'refresh Hz'],
      ...['streaming ACN universe', 'multicast group', 'bandwidth kbit/s', 'on ports of'],
    ],
    rows: universeUse(info.plan).map((u) => {
      const n = net.get(u.number);
      return [
        u.number,
        recordOf(info.plan, 'universe', u.universeId)?.name ?? '',
        u.fixtures,
        u.usedSlots,
        u.freeSlots,
        u.highestSlot,
        rounded(u.refreshHz, 1),
        n?.sacn ?? Number.NaN,
        n?.group ?? '',
        rounded(n?.kbps ?? Number.NaN, 1),
        n?.devices.join(', ') ?? '',
      ];
    }),
  };
};

/** Levels and colours of the parts of units that are set part by part. */
export const partTable = (info: SetInfo): ListTable => {
  const fixtures = [...recordsOf(info.plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));
  return {
    name: 'parts',
    head: ['setup', 'unit', 'kind', 'part', 'level %', 'colour'],
    rows: setupsOf(info.plan).flatMap((s) =>
      fixtures.flatMap((f) =>
        (partsOf(info.plan, s.id, f.id) ?? []).map((p, i) => [
          s.name,
          f.unit,
          kindOf(info.plan, f.kindId)?.name ?? '',
          i + 1,
          rounded(p.levelPct, 1),
          p.color ?? '',
        ]),
      ),
    ),
  };
};

/** The steps of every setup card, in the order of a walk past the units, with who did them. */
export const stepTable = (info: SetInfo): ListTable => ({
  name: 'steps',
  head: ['position', 'unit', 'kind', 'address', 'mode', 'step', 'what', 'done by', 'done when'],
  rows: cardWalk(info.plan).flatMap((g) =>
    g.fixtures.flatMap((f) =>
      cardProgress(info.plan, f).steps.map((s, i) => [
        g.position.name,
        f.unit,
        kindOf(info.plan, f.kindId)?.name ?? '',
        placesOf(info.plan, f).map(printAddress).join(' '),
        patchedMode(info.plan, f)?.name ?? '',
        i + 1,
        s.text,
        s.tick ? s.tick.by || 'done' : '',
        s.tick?.when ?? '',
      ]),
    ),
  ),
});

/** Transmitters and repeaters with band, radiated power and universes. */
export const senderTable = (info: SetInfo): ListTable => {
  const plan = planInSetup(info.plan, info.setupId);
  const r = computeRadio(plan);
  const links = [...r.links.values()];
  return {
    name: 'transmitters',
    head: ['label', 'kind', 'from MHz', 'to MHz', 'radiates dBm', 'height m', 'universes', 'links'],
    rows: [...r.model.senders.values()]
      .sort((a, b) => compareNatural(a.label, b.label))
      .map((s) => [
        s.label,
        kindOf(plan, recordOf(plan, 'device', s.id)?.kindId ?? '')?.name ?? '',
        s.band.fromMhz,
        s.band.toMhz,
        s.eirpDbm,
        rounded(s.heightM, 3),
        (r.carried.get(s.id) ?? []).flatMap((u) => recordOf(plan, 'universe', u)?.number ?? []).join(' '),
        links.filter((l) => (l.viaIds.at(-1) ?? l.senderId) === s.id).length,
      ]),
  };
};
