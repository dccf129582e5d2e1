import {
  CONNECTOR_WORDS,
  dataCableName,
  lineLengths,
  linesInOrder,
  needsTerminator,
  startPort,
} from '../derive/data-lines.ts';
import { dataNet } from '../derive/data-net.ts';
import { recordLabel } from '../derive/labels.ts';
import { formatCableLength, formatLength } from '../kernel/units.ts';
import { kindOf, recordOf, recordsOf } from '../plan/plan.ts';
import type { DataLine } from '../plan/records/index.ts';
import { networkOf } from '../report/control.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import { markFor } from './revision-marks.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const STOPS: readonly Column[] = [
  { id: 'n', head: '', leastMm: 6, align: 'right' },
  { id: 'unit', head: 'Stop', leastMm: 22 },
  { id: 'kind', head: 'Kind', leastMm: 44, grow: 2, dispensable: 2 },
  { id: 'address', head: 'Address', leastMm: 20 },
  { id: 'way', head: 'Way', leastMm: 18, align: 'right' },
  { id: 'between', head: '', leastMm: 2 },
  { id: 'cable', head: 'Cable', leastMm: 34, grow: 1 },
  { id: 'remark', head: 'Remark', leastMm: 30, grow: 1.5 },
];

const PORTS: readonly Column[] = [
  { id: 'device', head: 'Device', leastMm: 20 },
  { id: 'kind', head: 'Kind', leastMm: 50, grow: 2 },
  { id: 'port', head: 'Port', leastMm: 34, grow: 1 },
  { id: 'universes', head: 'Universes', leastMm: 24 },
  { id: 'lines', head: 'Lines', leastMm: 24, grow: 1 },
];

const UNIVERSES: readonly Column[] = [
  { id: 'universe', head: 'Universe', leastMm: 18 },
  { id: 'name', head: 'Name', leastMm: 40, grow: 2 },
  { id: 'sacn', head: 'Streaming ACN', leastMm: 24, align: 'right' },
  { id: 'between', head: '', leastMm: 2 },
  { id: 'group', head: 'Multicast group', leastMm: 28 },
  { id: 'rate', head: 'Bandwidth', leastMm: 24, align: 'right' },
  { id: 'gap', head: '', leastMm: 2 },
  { id: 'devices', head: 'On ports of', leastMm: 40, grow: 2 },
];

const carries = (info: SetInfo, l: DataLine): string => {
  const c = dataNet(info.plan).carried.get(l.id);
  const numbers = [...(c?.universes ?? [])]
    .map((id) => recordOf(info.plan, 'universe', id)?.number)
    .filter((n): n is number => n !== undefined)
    .sort((a, b) => a - b)
    .map((n) => `U${n}`);
  return c?.all ? 'network, any universe' : numbers.length > 0 ? numbers.join(', ') : 'no universe set';
};

const lineSection = (info: SetInfo, l: DataLine): Section => {
  const columns = placeColumns(STOPS, flowArea(info).w);
  const { plan, units } = info;
  const length = lineLengths(plan).find((x) => x.lineId === l.id);
  const hops = new Map(length?.hops.map((h) => [h.index, h]));
  const port = startPort(plan, l);
  const from = recordLabel(plan, plan.records.get(l.from.recordId));
  const head = `${l.label || 'Line'}  ${carries(info, l)}`;
  const remark = [
    `from ${from}, ${port?.label ?? l.from.portId} (${CONNECTOR_WORDS[port?.connector ?? 'xlr-5']})`,
    length
      ? `${dataCableName(plan, length)}, ${formatLength(length.totalMm, units)} in ${length.pieces}`
      : '',
    needsTerminator(plan, l) ? (l.terminated ? 'terminator in the last' : 'no terminator') : '',
    l.remote ? 'remote management wanted' : '',
  ]
    .filter(Boolean)
    .join(', ');
  return {
    head: (continued) =>
      stacked(headingBlock(`${head}${continued ? ' (continued)' : ''}`, remark), tableHead(columns)),
    blocks: l.stops.map((id, i) => {
      const r = plan.records.get(id);
      const hop = hops.get(i);
      const universe =
        r?.type === 'fixture' && r.patch ? recordOf(plan, 'universe', r.patch.universeId) : undefined;
      const kind =
        r && 'kindId' in r && typeof r.kindId === 'string' ? kindOf(plan, r.kindId)?.name : undefined;
      return tableRow(
        columns,
        {
          n: String(i + 1),
          unit: { text: recordLabel(plan, r), weight: 'semibold' },
          kind: kind ?? '',
          address:
            r?.type === 'fixture' && r.patch && universe ? `U${universe.number} ${r.patch.address}` : '',
          way: hop ? formatLength(hop.neededMm, units) : 'no place',
          cable: hop ? hop.piecesMm.map((mm) => formatCableLength(mm, units)).join(' + ') : '',
          remark: [
            hop?.byHand ? 'laid by hand' : '',
            i === l.stops.length - 1 && l.terminated && needsTerminator(plan, l) ? 'terminator' : '',
          ]
            .filter(Boolean)
            .join(', '),
        },
        { mark: markFor(info, id, i === 0 ? l.id : undefined) },
      );
    }),
  };
};

/** Ports of desks, nodes and splitters with what each carries. */
const portSection = (info: SetInfo): readonly Section[] => {
  const { nodes } = networkOf(info.plan);
  if (nodes.length === 0) return [];
  const columns = placeColumns(PORTS, flowArea(info).w);
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            `Nodes and ports${continued ? ' (continued)' : ''}`,
            `${nodes.length} pieces of control gear`,
          ),
          tableHead(columns),
        ),
      blocks: nodes.flatMap((n) =>
        n.ports.map((p, i) =>
          tableRow(columns, {
            device: i === 0 ? { text: n.label, weight: 'semibold' } : '',
            kind: i === 0 ? n.kindName : '',
            port: p.words,
            universes: p.universes.map((u) => `U${u}`).join(', '),
            lines: p.lines.join(', '),
          }),
        ),
      ),
    },
  ];
};

const universeSection = (info: SetInfo): readonly Section[] => {
  const net = networkOf(info.plan);
  if (net.universes.length === 0) return [];
  const columns = placeColumns(UNIVERSES, flowArea(info).w);
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            `Network${continued ? ' (continued)' : ''}`,
            `streaming ACN, each universe sent whole at 44 Hz: ${(net.kbps / 1000).toFixed(2)} Mbit/s in all, ${net.sharePct.toFixed(1)} % of 100 Mbit/s`,
          ),
          tableHead(columns),
        ),
      blocks: net.universes.map((u) =>
        tableRow(columns, {
          universe: { text: `U${u.number}`, weight: 'semibold' },
          name: u.name,
          sacn: String(u.sacn),
          group: u.group,
          rate: `${u.kbps.toFixed(1)} kbit/s`,
          devices: u.devices.join(', '),
        }),
      ),
    },
  ];
};

/** Data lines stop by stop with their cables, ports with their universes, and the universes on a network. */
export const lineSheets = (info: SetInfo): readonly PageMaker[] => {
  const { plan } = info;
  if (recordsOf(plan, 'line').length === 0 && recordsOf(plan, 'device').length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Data lines',
      subtitle: 'What each line reaches, in order, with its cables; ports and universes',
      documentType: 'List',
      scale: 'none',
      units: info.units === 'imperial' ? 'feet' : 'metres',
    },
    [...linesInOrder(plan).map((l) => lineSection(info, l)), ...portSection(info), ...universeSection(info)],
    [
      'A line is one wire from unit to unit: it branches in a splitter only and has a terminator of 120 Ω in the last unit and nowhere else.',
      'Ways are along the floor with drops, rises and slack; a cable for every hop.',
    ],
  );
};
