import { recordLabel } from '../derive/labels.ts';
import type { Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { planInSetup } from '../plan/moves.ts';
import { kindOf, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import {
  backupOf,
  computeRadio,
  devicePower,
  formatDb,
  HINT,
  hopsOf,
  type Listener,
  type RadioResult,
  type Sender,
  servedBy,
  VERDICT_WORDS,
} from '../report/radio.ts';
import { type Block, flowArea, flowPages, type Section } from './flow.ts';
import { pictureSection } from './radio-picture.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const LINKS: readonly Column[] = [
  { id: 'unit', head: 'Receiver', leastMm: 22 },
  { id: 'kind', head: 'Kind', leastMm: 40, grow: 2, dispensable: 3 },
  { id: 'universe', head: 'Universe', leastMm: 17 },
  { id: 'over', head: 'Linked to', leastMm: 26, grow: 1 },
  { id: 'distance', head: 'Distance', leastMm: 18, align: 'right', dispensable: 1 },
  { id: 'height', head: 'Height', leastMm: 16, align: 'right', dispensable: 2 },
  { id: 'between', head: '', leastMm: 2 },
  { id: 'way', head: 'In the way', leastMm: 44, grow: 3, dispensable: 1 },
  { id: 'margin', head: 'Margin', leastMm: 16, align: 'right' },
  { id: 'gap', head: '', leastMm: 2 },
  { id: 'verdict', head: 'By estimate', leastMm: 34, grow: 1 },
  { id: 'tested', head: 'Tested', leastMm: 16 },
];

const SENDERS: readonly Column[] = [
  { id: 'label', head: 'Label', leastMm: 16 },
  { id: 'kind', head: 'Kind', leastMm: 50, grow: 2 },
  { id: 'band', head: 'Band', leastMm: 30 },
  { id: 'eirp', head: 'Radiates', leastMm: 18, align: 'right' },
  { id: 'height', head: 'Height', leastMm: 16, align: 'right' },
  { id: 'between', head: '', leastMm: 2 },
  { id: 'universes', head: 'Universes', leastMm: 24, grow: 1 },
  { id: 'links', head: 'Links', leastMm: 12, align: 'right' },
  { id: 'gap', head: '', leastMm: 2 },
  { id: 'fed', head: 'Fed from', leastMm: 28, grow: 1 },
  { id: 'backup', head: 'On its own cell', leastMm: 26 },
];

/** Words of what a link crosses: `2 walls, plasterboard; door`. */
const inTheWay = (r: RadioResult, l: Listener): string => {
  const link = r.links.get(l.id);
  if (!link) return '';
  const counts = new Map<string, number>();
  for (const hop of hopsOf(r, link))
    for (const t of hop.terms)
      if (['wall', 'opening', 'setPiece', 'over', 'floors', 'crowd'].includes(t.id))
        counts.set(t.name, (counts.get(t.name) ?? 0) + 1);
  return [...counts].map(([name, n]) => (n > 1 ? `${n} × ${name}` : name)).join('; ') || 'nothing';
};

const universesText = (info: SetInfo, ids: readonly Id[]): string =>
  ids
    .flatMap((u) => recordOf(info.plan, 'universe', u)?.number ?? [])
    .sort((a, b) => a - b)
    .map((n) => `U${n}`)
    .join(', ');

const linkRow = (
  info: SetInfo,
  r: RadioResult,
  columns: ReturnType<typeof placeColumns>,
  l: Listener,
): Block => {
  const link = r.links.get(l.id);
  const s = link && r.model.senders.get(link.viaIds.at(-1) ?? link.senderId);
  const record = info.plan.records.get(l.id);
  const kind =
    record && 'kindId' in record && typeof record.kindId === 'string'
      ? kindOf(info.plan, record.kindId)?.name
      : '';
  const far = s
    ? Math.hypot(s.spot.x - l.spot.x, s.spot.y - l.spot.y, s.spot.z - l.spot.z) * 1000
    : Number.NaN;
  const thin = link?.verdict === 'none' || link?.verdict === 'weak';
  return tableRow(columns, {
    unit: { text: l.label, weight: 'semibold' },
    kind: `${kind ?? ''}${l.assumed ? ' (receiver assumed)' : ''}`,
    universe: universesText(info, l.universeIds) || 'none',
    over: link
      ? link.viaIds.map((id) => recordLabel(info.plan, info.plan.records.get(id))).join(', ')
      : 'no link',
    distance: Number.isFinite(far) ? formatLength(far, info.units) : '–',
    height: formatLength(l.heightM * 1000, info.units),
    way: inTheWay(r, l),
    margin: link ? { text: formatDb(link.marginDb), weight: 'semibold' } : '–',
    verdict: link
      ? {
          text: link.notComputed ?? VERDICT_WORDS[link.verdict],
          ...(thin ? { weight: 'semibold' as const, role: 'warn' as const } : {}),
        }
      : '',
    tested: { draw: (ink, cell) => ink.rect(cell.x, cell.y + cell.h / 2 - 1.5, 3, 3, { weightMm: 0.18 }) },
  });
};

const linkSection = (info: SetInfo, r: RadioResult): Section[] => {
  const listeners = [...r.model.listeners.values()].sort(
    (a, b) =>
      Number(a.what !== 'fixture') - Number(b.what !== 'fixture') ||
      a.label.localeCompare(b.label, 'en', { numeric: true }),
  );
  if (listeners.length === 0) return [];
  const columns = placeColumns(LINKS, flowArea(info).w);
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(continued ? 'Radio links (continued)' : 'Radio links', HINT),
          tableHead(columns),
        ),
      blocks: listeners.map((l) => linkRow(info, r, columns, l)),
    },
  ];
};

const senderRow = (
  info: SetInfo,
  r: RadioResult,
  columns: ReturnType<typeof placeColumns>,
  s: Sender,
): Block => {
  const d = recordOf(info.plan, 'device', s.id);
  const power = d && devicePower(info.plan, d);
  const backup = d && backupOf(info.plan, d);
  const minutes = backup ? Math.round(backup.minutes) : 0;
  return tableRow(columns, {
    label: { text: s.label, weight: 'semibold' },
    kind: d ? (kindOf(info.plan, d.kindId)?.name ?? 'kind missing') : '',
    band: `${s.band.fromMhz} to ${s.band.toMhz} MHz`,
    eirp: `${s.eirpDbm} dBm`.replace('-', '−'),
    height: formatLength(s.heightM * 1000, info.units),
    universes: universesText(info, r.carried.get(s.id) ?? []) || 'none',
    links: String(servedBy(r).get(s.id)?.length ?? 0),
    fed: power?.way?.label ?? (power?.takesMains ? 'not plugged in' : 'small supply or cell'),
    backup: backup
      ? minutes >= 120
        ? `about ${Math.round(minutes / 60)} h`
        : `about ${minutes} min`
      : 'no cell',
  });
};

const senderSection = (info: SetInfo, r: RadioResult): Section => {
  const columns = placeColumns(SENDERS, flowArea(info).w);
  const senders = [...r.model.senders.values()].sort((a, b) =>
    a.label.localeCompare(b.label, 'en', { numeric: true }),
  );
  const { air } = r.model;
  const people = { none: 'no people', few: 'few people', many: 'many people' }[air.crowd];
  const wifi = air.wifiChannels.length === 0 ? 'no Wi-Fi' : `Wi-Fi on ${air.wifiChannels.join(', ')}`;
  return {
    head: (continued) =>
      stacked(
        headingBlock(
          continued ? 'Transmitters (continued)' : 'Transmitters and repeaters',
          `${people}${air.crowdAssumed ? ', assumed' : ''}; ${wifi}${air.wifiAssumed ? ', assumed' : ''}`,
        ),
        tableHead(columns),
      ),
    blocks: senders.map((s) => senderRow(info, r, columns, s)),
  };
};

/** Coverage pictures, margins of all radio links and the transmitters: for those who set up and test the radio. */
export const radioPages = (set: SetInfo): readonly PageMaker[] => {
  const info: SetInfo = { ...set, plan: planInSetup(set.plan, set.setupId) };
  const r = computeRadio(info.plan);
  if (r.model.senders.size === 0) return [];
  const floors = recordsOf(info.plan, 'floor').map((f) => f.id);
  const sections = [
    ...floors.flatMap((f) => pictureSection(info, r, f)),
    ...linkSection(info, r),
    senderSection(info, r),
  ];
  return flowPages(
    info,
    {
      title: 'Radio',
      subtitle: 'Coverage, links and transmitters',
      documentType: 'Diagram',
      scale: 'as noted',
      units: planRecord(info.plan).lengthUnits === 'imperial' ? 'dB, ft-in' : 'dB, m',
    },
    sections,
    [
      'A margin is a planning estimate from free space, walls, floors, people and Wi-Fi (ITU-R P.525, P.526, P.1238, P.2040; losses of walls are estimates). Reflections are not counted. It is a hint, not a guarantee: test every link on the day, with the crowd and the Wi-Fi that will be there.',
      'Approval of the equipment and the local radio rules apply.',
    ],
  );
};
