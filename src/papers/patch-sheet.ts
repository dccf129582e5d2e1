import { compareNatural } from '../kernel/ids.ts';
import { printAddress } from '../plan/address.ts';
import { footprintOf, patchedMode } from '../plan/footprint.ts';
import { kindOf, recordOf, recordsOf } from '../plan/plan.ts';
import type { Fixture } from '../plan/records/index.ts';
import {
  bandwidthKbps,
  multicastGroup,
  type PatchRow,
  type UniverseUse,
  universeUse,
} from '../report/control.ts';
import { controlBy } from '../report/control-by.ts';
import { type Block, flowArea, flowPages, type Section } from './flow.ts';
import { markFor } from './revision-marks.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Cell, type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'address', head: 'Address', leastMm: 18, align: 'right' },
  { id: 'last', head: 'Last slot', leastMm: 16, align: 'right' },
  { id: 'slots', head: 'Slots', leastMm: 12, align: 'right' },
  { id: 'between', head: '', leastMm: 2 },
  { id: 'unit', head: 'Unit', leastMm: 14 },
  { id: 'channel', head: 'Channel', leastMm: 16, dispensable: 2 },
  { id: 'kind', head: 'Kind', leastMm: 46, grow: 2 },
  { id: 'mode', head: 'Mode', leastMm: 40, grow: 2 },
  { id: 'use', head: 'Use', leastMm: 34, grow: 2, dispensable: 1 },
  { id: 'link', head: 'Link', leastMm: 12 },
  { id: 'remark', head: 'Remark', leastMm: 34, grow: 1.5 },
];

const UNPATCHED: readonly Column[] = [
  { id: 'unit', head: 'Unit', leastMm: 14 },
  { id: 'channel', head: 'Channel', leastMm: 16, dispensable: 1 },
  { id: 'kind', head: 'Kind', leastMm: 60, grow: 2 },
  { id: 'use', head: 'Use', leastMm: 50, grow: 2 },
  { id: 'remark', head: 'Remark', leastMm: 50, grow: 2 },
];

/** Universe in figures: what is used, how often it can be sent, where it is on a network. */
export const universeRemark = (u: UniverseUse): string => {
  const group = multicastGroup(u.number);
  return [
    `${u.usedSlots} of 512 slots used`,
    `${u.fixtures} ${u.fixtures === 1 ? 'unit' : 'units'}`,
    `at most ${u.refreshHz.toFixed(1)} Hz to slot ${u.highestSlot}`,
    group.ok ? `streaming ACN ${group.value}` : 'no network number',
  ].join(', ');
};

const remarkOf = (info: SetInfo, f: Fixture, r: PatchRow): string => {
  const mode = patchedMode(info.plan, f);
  const spans = f.patch?.spans ?? [];
  const after = spans.find((s) => s.fromSlot > r.fromSlot);
  const next = after && recordOf(info.plan, 'universe', after.universeId);
  const parts = mode ? footprintOf(mode) : undefined;
  return [
    r.paired ? 'paired' : '',
    r.fromSlot > 1 ? `from its slot ${r.fromSlot}` : '',
    next && after ? `goes on at ${printAddress({ universe: next.number, address: after.address })}` : '',
    parts && parts.parts > 1 && spans.length === 0
      ? `${parts.parts} parts${parts.partSlots === undefined ? '' : ` of ${parts.partSlots}`}`
      : '',
  ]
    .filter(Boolean)
    .join(', ');
};

/** A dimmer's row: its label in place of a unit's number, its ways in place of a mode. */
const dimmerCells = (info: SetInfo, u: UniverseUse, r: PatchRow): Record<string, Cell> => {
  const box = recordOf(info.plan, 'box', r.fixtureId);
  if (!box) return {};
  return {
    address: { text: printAddress({ universe: u.number, address: r.address }), weight: 'semibold' },
    last: String(r.last),
    slots: String(r.slots),
    unit: { text: box.label, weight: 'semibold' },
    kind: kindOf(info.plan, box.kindId)?.name ?? 'kind not in the plan',
    mode: r.modeName,
  };
};

const universeSection = (info: SetInfo, u: UniverseUse): Section => {
  const columns = placeColumns(COLUMNS, flowArea(info).w);
  const name = recordOf(info.plan, 'universe', u.universeId)?.name ?? '';
  const row = (r: PatchRow): Block => {
    const f = recordOf(info.plan, 'fixture', r.fixtureId);
    const cells: Record<string, Cell> = f
      ? {
          address: { text: printAddress({ universe: u.number, address: r.address }), weight: 'semibold' },
          last: String(r.last),
          slots: String(r.slots),
          unit: { text: f.unit, weight: 'semibold' },
          channel: f.channel,
          kind: kindOf(info.plan, f.kindId, 'fixture')?.name ?? 'kind not in the plan',
          mode: r.modeName,
          use: f.use,
          link: f.link === 'none' ? '' : f.link,
          remark: remarkOf(info, f, r),
        }
      : dimmerCells(info, u, r);
    return tableRow(columns, cells, { mark: markFor(info, r.fixtureId) });
  };
  return {
    head: (continued) =>
      stacked(
        headingBlock(
          `U${u.number}${name ? ` ${name}` : ''}${continued ? ' (continued)' : ''}`,
          universeRemark(u),
        ),
        tableHead(columns),
      ),
    blocks: u.rows.map(row),
  };
};

const restSection = (
  info: SetInfo,
  title: string,
  remark: string,
  fixtures: readonly Fixture[],
  why: (f: Fixture) => string,
): readonly Section[] => {
  if (fixtures.length === 0) return [];
  const columns = placeColumns(UNPATCHED, flowArea(info).w);
  return [
    {
      head: (continued) =>
        stacked(headingBlock(continued ? `${title} (continued)` : title, remark), tableHead(columns)),
      blocks: fixtures.map((f) =>
        tableRow(
          columns,
          {
            unit: { text: f.unit, weight: 'semibold' },
            channel: f.channel,
            kind: kindOf(info.plan, f.kindId, 'fixture')?.name ?? 'kind not in the plan',
            use: f.use,
            remark: why(f),
          },
          { mark: markFor(info, f.id) },
        ),
      ),
    },
  ];
};

/** The patch by universe and address, then what has no address, then what takes no control data, so that nothing is forgotten. */
export const patchSheets = (info: SetInfo): readonly PageMaker[] => {
  const uses = universeUse(info.plan);
  const fixtures = [...recordsOf(info.plan, 'fixture')].sort((a, b) => compareNatural(a.unit, b.unit));
  const listed = new Set(uses.flatMap((u) => u.rows.map((r) => r.fixtureId)));
  const modes = (f: Fixture): number =>
    kindOf(info.plan, f.kindId, 'fixture')?.modes.filter((m) => m.slots > 0).length ?? 0;
  const mbps = bandwidthKbps(uses.length) / 1000;
  return flowPages(
    info,
    {
      title: 'Patch sheet',
      subtitle: 'Units by universe and address',
      documentType: 'List',
      scale: 'none',
      units: 'slots',
    },
    [
      ...uses.filter((u) => u.rows.length > 0).map((u) => universeSection(info, u)),
      ...restSection(
        info,
        'Without an address',
        'they take control data and have none yet, or theirs does not fit: see the findings',
        fixtures.filter((f) => !listed.has(f.id) && (modes(f) > 0 || f.patch)),
        (f) => (f.patch ? `address ${f.patch.address}: see the findings` : ''),
      ),
      ...restSection(
        info,
        'Not on control data',
        'switched or dimmed by hand, or controlled by other means',
        fixtures.filter((f) => !f.patch && modes(f) === 0),
        (f) => controlBy(info.plan, f).words,
      ),
    ],
    [
      `${uses.length} ${uses.length === 1 ? 'universe' : 'universes'} as streaming ACN at 44 Hz take ${mbps.toFixed(2)} Mbit/s on the wire (ANSI E1.31).`,
      'Highest rate from the times of ANSI E1.11: break 92 µs, mark 12 µs, 44 µs a slot. Modes and addresses are set at the unit; its maker’s manual comes first.',
    ],
  );
};
