import { cableLength } from '../derive/lengths.ts';
import type { SupplyEntity } from '../derive/types.ts';
import { stockText } from '../drawing/one-line/words.ts';
import { connector } from '../plan/connectors.ts';
import { recordName } from '../plan/names.ts';
import { kindOf, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { outletsOf, pluggedInto, waysOf } from '../plan/ports.ts';
import { cell, largestLegA, legsText, type Reader, readerOf } from './figures.ts';
import { type Block, flowArea, flowPages, type Section } from './flow.ts';
import { markFor } from './revision-marks.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import {
  type Column,
  headingBlock,
  type PlacedColumn,
  placeColumns,
  stacked,
  tableHead,
  tableRow,
} from './table.ts';

const COLUMNS: readonly Column[] = [
  { id: 'outlet', head: 'Outlet', leastMm: 22, grow: 1 },
  { id: 'breaker', head: 'Breaker', leastMm: 18 },
  { id: 'leg', head: 'Leg', leastMm: 16 },
  { id: 'connector', head: 'Connector', leastMm: 44, grow: 0.3, dispensable: 2, note: true },
  { id: 'plugged', head: 'What plugs in', leastMm: 44, grow: 3 },
  { id: 'cable', head: 'Cable', leastMm: 34, grow: 2, dispensable: 1 },
  { id: 'worst', head: 'worst A', leastMm: 14, align: 'right' },
  { id: 'limit', head: 'limit A', leastMm: 14, align: 'right' },
];

const outletRows = (
  info: SetInfo,
  r: Reader,
  e: SupplyEntity,
  columns: readonly PlacedColumn[],
): readonly Block[] => {
  const { plan } = info;
  const { practice, lengthUnits } = planRecord(plan);
  const ways = waysOf(plan, e.recordId);
  return outletsOf(plan, e.recordId).flatMap((port) => {
    const way = ways.find((w) => w.id === port.wayId);
    const wayEntity = way && r.entity(`${e.recordId}/${way.id}`);
    const lead = {
      outlet: { text: port.label ?? (way ? `Way ${way.label}` : port.id), weight: 'semibold' as const },
      breaker: way ? `${way.breakerA} A ${way.poles}P${way.curve === 'na' ? '' : ` ${way.curve}`}` : 'none',
      leg: wayEntity
        ? legsText(practice, wayEntity)
        : legsText(practice, { ...e, legs: e.legs.slice(0, port.legs) }),
      connector: connector(port.connector)?.name ?? port.connector,
      limit: cell(wayEntity?.legLimit?.limitA ?? Number.NaN),
    };
    const cables = pluggedInto(plan, { recordId: e.recordId, portId: port.id });
    if (cables.length === 0)
      return [tableRow(columns, { ...lead, plugged: { text: 'free', role: 'ink-soft' } })];
    return cables.map((c, i) => {
      const run = r.entity(c.id);
      return tableRow(
        columns,
        {
          ...(i === 0 ? lead : {}),
          plugged: pluggedText(info, c.to.recordId),
          cable: `${kindOf(plan, c.kindId)?.name ?? ''}, ${stockText(cableLength(plan, c)?.piecesMm ?? [], lengthUnits)}`,
          worst: run ? cell(largestLegA(r, run, 'worst'), 1) : '–',
        },
        { mark: markFor(info, c.id, c.to.recordId) },
      );
    });
  });
};

const pluggedText = (info: SetInfo, recordId: string): string => {
  const { plan } = info;
  const ballast = recordOf(plan, 'ballast', recordId);
  const fixture = recordOf(plan, 'fixture', ballast ? ballast.fixtureId : recordId);
  if (!fixture) return recordName(plan, recordId);
  const name = kindOf(plan, fixture.kindId)?.name ?? '';
  return [`Unit ${fixture.unit}${ballast ? ', ballast' : ''}: ${name}`, fixture.use]
    .filter(Boolean)
    .join(', ');
};

/** Every box with its outlets in their order: breaker, leg, connector and what plugs in, for a card taped to its lid. */
export const boxLayoutPages = (info: SetInfo): readonly PageMaker[] => {
  const r = readerOf(info.assessment, info.setupId);
  const columns = placeColumns(COLUMNS, flowArea(info).w);
  const fed = info.assessment.entities.filter((e) => e.what === 'box');
  const sections = fed.flatMap((e): readonly Section[] => {
    const box = recordOf(info.plan, 'box', e.recordId);
    if (!box) return [];
    const feed = recordsOf(info.plan, 'cable').find((c) => c.to.recordId === box.id);
    const from = feed ? `fed from ${recordName(info.plan, feed.from.recordId)}` : 'no feed is drawn';
    const blocks = outletRows(info, r, e, columns);
    if (blocks.length === 0) return [];
    return [
      {
        head: (continued) =>
          stacked(
            headingBlock(
              continued ? `${e.label} (continued)` : e.label,
              `${kindOf(info.plan, box.kindId)?.name ?? ''}; ${from}`,
            ),
            tableHead(columns),
          ),
        blocks,
      },
    ];
  });
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Box layout',
      subtitle: 'What plugs where, box by box',
      documentType: 'Schedule',
      scale: 'none',
      units: 'A',
    },
    sections,
    [
      'Amps are those of the run in its worst setup; the limit is that of the way, for all its outlets together. De-energize before re-plugging.',
    ],
  );
};
