import { recordLabel } from '../derive/labels.ts';
import { coverageItems, coverageTones, toneOnWhite } from '../drawing/coverage.ts';
import { drawFloor } from '../drawing/draw-floor.ts';
import type { Id } from '../kernel/ids.ts';
import { formatLength } from '../kernel/units.ts';
import { planInSetup } from '../plan/moves.ts';
import { kindOf, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import {
  backupOf,
  type CoverageGrid,
  computeRadio,
  coverage,
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
import { type Ink, PITCH_MM, widthOf } from './ink.ts';
import { placeList } from './place-list.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { fittingScale, scaleText } from './sheets.ts';
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
    tested: { draw: (ink, cell) => ink.rect(cell.x, cell.y + 0.9, 3, 3, { weightMm: 0.18 }) },
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

const LEGEND_MM = 12;
/** Metres between the places of a picture on paper, and how far its outlines may lie off, on paper. */
const STEP_M = 0.4;
const TOLERANCE_PAPER_MM = 0.15;

const drawLegend = (
  ink: Ink,
  x: number,
  y: number,
  grid: CoverageGrid,
  info: SetInfo,
  scale: string,
): void => {
  const tones = coverageTones();
  const w = 13;
  tones.forEach((t, i) => {
    ink.add([
      {
        kind: 'path',
        d: [
          ['M', x + i * w, y],
          ['L', x + (i + 1) * w, y],
          ['L', x + (i + 1) * w, y + 3.6],
          ['L', x + i * w, y + 3.6],
          ['Z'],
        ],
        fill: { role: 'ink-faint', color: toneOnWhite(t) },
        stroke: { role: 'ink-soft', weightMm: 0.13 },
      },
    ]);
    ink.text(x + i * w, y + 6.6, `${t.fromDb}${i === tones.length - 1 ? ' dB and more' : ''}`);
  });
  ink.text(x, y + 10, 'weak', { role: 'ink-soft' });
  ink.text(x + 2 * w, y + 10, 'fair', { role: 'ink-soft' });
  ink.text(x + 4 * w, y + 10, 'good', { role: 'ink-soft' });
  const right = x + (tones.length + 1.6) * w;
  const who = grid.senderIds.map((id) => recordLabel(info.plan, info.plan.records.get(id))).join(', ');
  ink.text(
    right,
    y + 2.6,
    `Margin of ${who} for a receiver ${formatLength(grid.heightM * 1000, info.units)} up that needs ${String(grid.sensitivityDbm).replace('-', '−')} dBm. No tone: not expected to reach.`,
  );
  ink.text(right, y + 2.6 + PITCH_MM, `${scale} at full size on ${info.sheet.text}. ${HINT}`);
};

interface Tag {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly strong: boolean;
}

/** What is written into the picture: transmitters by their label, receivers with their margin. */
const tagsOf = (r: RadioResult, floorId: Id): readonly Tag[] => [
  ...[...r.model.senders.values()]
    .filter((s) => s.floorId === floorId)
    .map((s): Tag => ({ text: s.label, x: s.spot.x, y: s.spot.y, strong: true })),
  ...[...r.model.listeners.values()]
    .filter((l) => l.floorId === floorId && l.what !== 'repeater')
    .map((l): Tag => {
      const link = r.links.get(l.id);
      const margin = link && Number.isFinite(link.marginDb) ? formatDb(link.marginDb) : 'no link';
      return { text: `${l.label}: ${margin}`, x: l.spot.x, y: l.spot.y, strong: false };
    }),
];

const TAG_MM = 3.4;

/** Writes tags beside their places, each below those before it where they would lie on one another. */
const drawTags = (
  ink: Ink,
  tags: readonly Tag[],
  at: (xM: number, yM: number) => { readonly x: number; readonly y: number },
): void => {
  const taken: { x: number; y: number; w: number }[] = [];
  for (const t of tags) {
    const p = at(t.x, t.y);
    const style = { weight: t.strong ? 'semibold' : 'regular' } as const;
    const w = widthOf(t.text, style) + 1.6;
    const x = p.x + 1.8;
    let y = p.y - TAG_MM / 2;
    const meets = (): boolean =>
      taken.some((o) => x < o.x + o.w && o.x < x + w && y < o.y + TAG_MM && o.y < y + TAG_MM);
    for (let n = 0; n < 12 && meets(); n++) y += TAG_MM + 0.3;
    taken.push({ x, y, w });
    ink.circle(p.x, p.y, t.strong ? 1.1 : 0.7, {
      fill: t.strong ? 'accent' : 'ink',
      role: 'paper',
      weightMm: 0.2,
    });
    ink.line(p.x, p.y, x, y + TAG_MM / 2, 0.13);
    ink.rect(x, y, w, TAG_MM, { fill: 'paper', weightMm: t.strong ? 0.35 : 0.13 });
    ink.text(x + 0.8, y + 2.5, t.text, style);
  }
};

/** The floor with its coverage picture under it, as large as the page takes. */
const pictureSection = (info: SetInfo, r: RadioResult, floorId: Id): Section[] => {
  const senderIds = [...r.model.senders.values()].filter((s) => s.floorId === floorId).map((s) => s.id);
  const grid = senderIds.length > 0 ? coverage(info.plan, { floorId, senderIds, stepM: STEP_M }) : undefined;
  if (!grid) return [];
  const area = flowArea(info);
  const heightMm = area.h - 12;
  const room = { width: area.w - 2, height: heightMm - LEGEND_MM - 4 };
  const size = { width: (grid.columns - 1) * grid.stepMm, height: (grid.rows - 1) * grid.stepMm };
  const { ratio } = fittingScale(info.units, size, room);
  const list = drawFloor(info.plan, {
    floorId,
    setupId: info.setupId,
    nominalScale: ratio,
    options: { beams: false, aims: false, cables: false, dimensions: false, labels: false },
  });
  const items = [...coverageItems(grid, TOLERANCE_PAPER_MM * ratio, 'white'), ...list.items];
  const centreX = grid.originXMm + size.width / 2;
  const centreY = grid.originYMm + size.height / 2;
  const floor = recordOf(info.plan, 'floor', floorId)?.name ?? '';
  const several = recordsOf(info.plan, 'floor').length > 1;
  const picture: Block = {
    heightMm,
    draw: (ink, a) => {
      const h = heightMm - LEGEND_MM - 2;
      ink.add([
        {
          kind: 'clip',
          xMm: a.x,
          yMm: a.y,
          widthMm: a.w,
          heightMm: h,
          items: placeList(
            { ...list, items },
            { floorXMm: centreX, floorYMm: centreY, pageXMm: a.x + a.w / 2, pageYMm: a.y + h / 2 },
          ),
        },
      ]);
      drawTags(ink, tagsOf(r, floorId), (xM, yM) => ({
        x: a.x + a.w / 2 + (xM * 1000 - centreX) / ratio,
        y: a.y + h / 2 + (yM * 1000 - centreY) / ratio,
      }));
      drawLegend(ink, a.x, a.y + h + 2, grid, info, scaleText(ratio, info.units));
    },
  };
  return [
    {
      head: () =>
        headingBlock(
          several ? `Coverage, ${floor}` : 'Coverage',
          'margin in dB, the best of all transmitters',
        ),
      blocks: [picture],
    },
  ];
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
