import { legName } from '../derive/systems.ts';
import type { Quantity, SupplyEntity } from '../derive/types.ts';
import { planRecord } from '../plan/plan.ts';
import type { Assessment } from '../report/types.ts';
import { loadBar } from './bars.ts';
import { cell, LEG_QUANTITIES, pctOf, type Reader, readerOf } from './figures.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import {
  type Cell,
  type Column,
  headingBlock,
  type PlacedColumn,
  placeColumns,
  stacked,
  tableHead,
  tableRow,
} from './table.ts';

interface Wire {
  readonly name: string;
  readonly q: Quantity;
  readonly limit: number | undefined;
}

const wiresOf = (info: SetInfo, e: SupplyEntity): readonly Wire[] => {
  const practice = planRecord(info.plan).practice;
  return [
    ...e.legs.map((l) => ({
      name: legName(practice, e.system, l),
      q: LEG_QUANTITIES[l] ?? ('leg0A' as const),
      limit: e.legLimit?.limitA,
    })),
    ...(e.neutral ? [{ name: 'N', q: 'neutralA' as const, limit: e.neutralLimit?.limitA }] : []),
  ];
};

const WIRE_COLUMNS: readonly Column[] = [
  { id: 'wire', head: 'Leg', leastMm: 14 },
  { id: 'here', head: 'this setup A', leastMm: 20, align: 'right' },
  { id: 'worst', head: 'worst A', leastMm: 16, align: 'right' },
  { id: 'limit', head: 'limit A', leastMm: 14, align: 'right' },
  { id: 'bar', head: '% of limit, worst', leastMm: 60, grow: 3 },
  { id: 'pct', head: '%', leastMm: 10, align: 'right' },
  { id: 'in', head: 'worst in', leastMm: 40, grow: 2 },
];

/** In place of a bar where the plan knows no limit. */
const NO_LIMIT: Cell = { text: 'no limit in the plan: read it off the label', role: 'ink-soft' };

const wireRow = (r: Reader, e: SupplyEntity, w: Wire): Readonly<Record<string, Cell>> => {
  const here = r.here(e.key, w.q);
  const worst = r.worst(e.key, w.q);
  const pct = pctOf(worst, w.limit);
  const over = pct > 100;
  return {
    wire: { text: w.name, weight: 'semibold' },
    here: cell(here, 1),
    worst: { text: cell(worst, 1), weight: 'semibold', role: over ? 'stop' : 'ink' },
    limit: w.limit === undefined ? '–' : cell(w.limit),
    bar:
      w.limit === undefined
        ? NO_LIMIT
        : { draw: (ink, c) => loadBar(ink, c.x, c.y + 1.4, c.w, c.h - 2.8, { here, worst, limit: w.limit }) },
    pct: { text: cell(pct), weight: over ? 'semibold' : 'regular', role: over ? 'stop' : 'ink' },
    in: worst > 0 ? (r.worstSetup(e.key, w.q) ?? '') : '',
  };
};

/** A figure with a box around it where it is the worst of its column. */
const marked = (text: string, worst: boolean): Cell =>
  worst
    ? {
        draw: (ink, c) => {
          ink.rect(c.x + Math.max(0, c.w - 14), c.y + 0.6, Math.min(14.8, c.w + 0.8), c.h - 1.2, {
            weightMm: 0.25,
          });
          ink.text(c.x + c.w, c.y + c.h / 2 + c.capMm / 2, text, {
            capMm: c.capMm,
            align: 'right',
            weight: 'semibold',
            maxMm: c.w,
          });
        },
      }
    : text;

const setupColumns = (wires: readonly Wire[]): readonly Column[] => [
  { id: 'setup', head: 'Setup', leastMm: 40, grow: 2 },
  ...wires.map((w): Column => ({ id: w.q, head: `${w.name} A`, leastMm: 16, align: 'right' })),
  { id: 'kw', head: 'kW', leastMm: 16, align: 'right' },
  { id: 'kva', head: 'kVA', leastMm: 16, align: 'right' },
  { id: 'bar', head: 'fullest leg, % of limit', leastMm: 40, grow: 2, dispensable: 1 },
  { id: 'pct', head: '%', leastMm: 10, align: 'right' },
];

const setupRows = (
  a: Assessment,
  e: SupplyEntity,
  wires: readonly Wire[],
  columns: readonly PlacedColumn[],
) => {
  const { figures } = a;
  const legs = wires.filter((w) => w.q !== 'neutralA');
  return a.setups.map((setup, i) => {
    const amps = legs.map((w) => figures.get(e.key, w.q, i)).filter(Number.isFinite);
    const fullest = amps.length > 0 ? Math.max(...amps) : Number.NaN;
    const limit = legs[0]?.limit;
    const pct = pctOf(fullest, limit);
    const value = (q: Quantity, decimals: number, per = 1): Cell => {
      const v = figures.get(e.key, q, i) / per;
      const worst = figures.worst(e.key, q);
      return marked(cell(v, decimals), worst.setupIndex === i && worst.value > 0 && a.setups.length > 1);
    };
    // All of a column with as many decimals as its largest figure asks for.
    const kilo = (q: Quantity): Cell => value(q, figures.worst(e.key, q).value < 9950 ? 2 : 1, 1000);
    return tableRow(columns, {
      setup: setup.name,
      ...Object.fromEntries(wires.map((w) => [w.q, value(w.q, 1)])),
      kw: kilo('loadW'),
      kva: kilo('loadVa'),
      bar:
        limit === undefined
          ? NO_LIMIT
          : {
              draw: (ink, c) =>
                loadBar(ink, c.x, c.y + 1.4, c.w, c.h - 2.8, { here: -1, worst: fullest, limit }),
            },
      pct: { text: cell(pct), role: pct > 100 ? 'stop' : 'ink' },
    });
  });
};

/** Amps of every source by leg and by setup, with bars, the worst setup of each in a box. */
export const legSummaryPages = (info: SetInfo): readonly PageMaker[] => {
  const r = readerOf(info.assessment, info.setupId);
  const w = flowArea(info).w;
  const wireColumns = placeColumns(WIRE_COLUMNS, w);
  const sections = r.roots().flatMap((e): readonly Section[] => {
    const wires = wiresOf(info, e);
    if (wires.length === 0) return [];
    const columns = placeColumns(setupColumns(wires), w);
    const why = e.notComputed
      ? `not computed: ${e.notComputed}`
      : `in “${info.setupName}” and the worst of all setups`;
    return [
      {
        head: (continued) =>
          stacked(headingBlock(continued ? `${e.label} (continued)` : e.label, why), tableHead(wireColumns)),
        blocks: wires.map((x) => tableRow(wireColumns, wireRow(r, e, x))),
      },
      {
        head: (continued) =>
          stacked(
            headingBlock(
              `${e.label} by setup${continued ? ' (continued)' : ''}`,
              'the worst of each column stands in a box',
            ),
            tableHead(columns),
          ),
        blocks: setupRows(info.assessment, e, wires, columns),
      },
    ];
  });
  if (sections.length === 0) return [];
  return flowPages(
    info,
    {
      title: 'Leg summary',
      subtitle: 'Amps by source, leg and setup',
      documentType: 'Schedule',
      scale: 'none',
      units: 'A, kW, kVA',
    },
    sections,
    [
      'Amps are rms; the neutral is the phasor sum with the third harmonics the gear states. Filled is the worst setup, dotted tick this setup, heavy tick the limit.',
      'The neutral has no breaker: its limit is the rating of the conductor, connectors and set, with no load rule on it.',
    ],
  );
};
