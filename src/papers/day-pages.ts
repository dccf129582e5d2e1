import { dayNumbers } from '../derive/schedule.ts';
import { compareNatural } from '../kernel/ids.ts';
import { formatClock, formatFuel, formatWatts } from '../kernel/units.ts';
import { type DaySummary, daySummary } from '../report/day.ts';
import { dayTroubles, sourceNote } from '../report/day-words.ts';
import { bayLane, blocksLane, powerLane, stationUnitLane, unitLane } from './day-lanes.ts';
import { rulerBlock } from './day-ruler.ts';
import { dayScale } from './day-scale.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Cell, type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const BLOCKS: readonly Column[] = [
  { id: 'from', head: 'From', leastMm: 18 },
  { id: 'to', head: 'To', leastMm: 18 },
  { id: 'what', head: 'Block', leastMm: 60, grow: 3 },
  { id: 'setup', head: 'Setup', leastMm: 40, grow: 2 },
  { id: 'crew', head: 'Crew', leastMm: 20 },
  { id: 'units', head: 'Units on', leastMm: 16, align: 'right' },
];

const SOURCES: readonly Column[] = [
  { id: 'source', head: 'Source', leastMm: 40, grow: 2 },
  { id: 'peak', head: 'Peak', leastMm: 22, align: 'right' },
  { id: 'average', head: 'Average', leastMm: 22, align: 'right' },
  { id: 'energy', head: 'Energy', leastMm: 24, align: 'right' },
  { id: 'fuel', head: 'Fuel', leastMm: 22, align: 'right' },
  { id: 'note', head: '', leastMm: 40, grow: 6 },
];

const heading = (d: DaySummary): string => `Day ${d.day}${d.date ? `, ${d.date}` : ''}`;

const skyText = (d: DaySummary): string => {
  if (!d.sky) return '';
  const at = (name: string, m: number | undefined): string =>
    m === undefined ? '' : `${name} ${formatClock(m)}`;
  return [
    at('first light', d.sky.dawnMin),
    at('sunrise', d.sky.sunriseMin),
    at('sunset', d.sky.sunsetMin),
    at('last light', d.sky.duskMin),
    `${d.sky.moonPhase}, ${Math.round(100 * d.sky.moonShare)} % lit`,
  ]
    .filter(Boolean)
    .join(', ');
};

const TROUBLES: readonly Column[] = [{ id: 'what', head: '', leastMm: 100, grow: 1 }];

const timeLine = (d: DaySummary, w: number): Section => {
  const troubles = placeColumns(TROUBLES, w);
  const s = dayScale(d);
  const crews = [...new Set(d.blocks.map((b) => b.block.crew))].sort().reverse();
  return {
    head: (continued) =>
      stacked(
        headingBlock(continued ? `${heading(d)} (continued)` : heading(d), skyText(d)),
        rulerBlock(d, s),
      ),
    blocks: [
      ...dayTroubles(d).map((t) =>
        tableRow(troubles, { what: { text: t.text, weight: 'semibold', role: t.dark ? 'stop' : 'ink' } }),
      ),
      ...crews.map((c) =>
        blocksLane(
          c === 'shooting' ? 'Blocks' : 'Rigging crew',
          d.blocks.filter((b) => b.block.crew === c && !b.fault),
          s,
        ),
      ),
      ...d.lanes.filter((l) => l.sharedPackId === undefined).map((l) => unitLane(l, s)),
      ...d.sharedPacks.flatMap((p) => [
        unitLane(p, s),
        ...d.lanes.filter((l) => l.sharedPackId === p.id).map((l) => unitLane(l, s, true)),
      ]),
      ...d.bays.map((b) => bayLane(b, s)),
      ...d.sources
        .filter((p) => p.peakW > 0)
        .flatMap((p) => [
          powerLane(p, s),
          ...d.stationLoads.filter((l) => l.sourceId === p.id).map((l) => stationUnitLane(l, p, s)),
        ]),
    ],
  };
};

/** At most so many circuits side by side. */
const ACROSS = 5;

const hours = (h: number): string => `${Number(h.toFixed(1))} h`;

/** Hours each circuit is loaded on a day, several side by side, in the order of their names down the columns. */
const hoursLoaded = (d: DaySummary, w: number): Section[] => {
  if (d.circuits.length === 0) return [];
  const circuits = [...d.circuits].sort((a, b) => compareNatural(a.label, b.label));
  const rows = Math.ceil(circuits.length / ACROSS);
  const across = Math.ceil(circuits.length / rows);
  const columns = placeColumns(
    [
      ...Array.from({ length: across }, (_, i): Column[] => [
        { id: `name${i}`, head: 'Circuit', leastMm: 30 },
        { id: `total${i}`, head: 'Loaded', leastMm: 13, align: 'right' },
        { id: `long${i}`, head: 'At a stretch', leastMm: 19, align: 'right' },
      ]).flat(),
      { id: 'rest', head: '', leastMm: 1, grow: 1 },
    ],
    w,
  );
  const cells = (c: (typeof circuits)[number] | undefined, i: number): Record<string, Cell> =>
    c
      ? {
          [`name${i}`]: { text: c.label, weight: 'semibold' },
          [`total${i}`]: hours(c.totalH),
          [`long${i}`]: hours(c.longestH),
        }
      : {};
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            `Hours the circuits are loaded on day ${d.day}${continued ? ' (continued)' : ''}`,
            'at a stretch: a long enough pause ends it',
          ),
          tableHead(columns),
        ),
      blocks: Array.from({ length: rows }, (_, row) =>
        tableRow(
          columns,
          Object.assign({}, ...Array.from({ length: across }, (_, i) => cells(circuits[row + i * rows], i))),
        ),
      ),
    },
  ];
};

/** The shooting days: time line with packs, bays and sources, then blocks and what the sources give, as tables. */
export const dayPages = (info: SetInfo): readonly PageMaker[] => {
  const days = dayNumbers(info.plan).map((n) => daySummary(info.plan, n));
  if (days.length === 0) return [];
  const w = flowArea(info).w;
  const blocks = placeColumns(BLOCKS, w);
  const sources = placeColumns(SOURCES, w);
  const sections = days.flatMap((d): Section[] => [
    timeLine(d, w),
    {
      head: () => stacked(headingBlock(`Blocks of day ${d.day}`, ''), tableHead(blocks)),
      blocks: d.blocks.map((b) =>
        tableRow(blocks, {
          from: formatClock(b.block.startMin),
          to: formatClock(b.block.endMin),
          what: { text: b.fault ? `${b.name}: left out, ${b.fault}` : b.name, weight: 'semibold' },
          setup: b.setupName,
          crew: b.block.crew,
          units: b.fault ? '–' : String(b.unitsOn),
        }),
      ),
    },
    ...(d.sources.length === 0
      ? []
      : [
          {
            head: () =>
              stacked(
                headingBlock(`Power on day ${d.day}`, `light for ${Number(d.hoursOn.toFixed(1))} h`),
                tableHead(sources),
              ),
            blocks: d.sources.map((s) =>
              tableRow(sources, {
                source: { text: s.label, weight: 'semibold' },
                peak: formatWatts(s.peakW),
                average: formatWatts(s.averageW),
                energy: `${(s.energyWh / 1000).toFixed(1)} kWh`,
                fuel: s.fuelL === undefined ? '–' : formatFuel(s.fuelL, info.units),
                note: sourceNote(s),
              }),
            ),
          },
        ]),
    ...hoursLoaded(d, w),
  ]);
  return flowPages(
    info,
    {
      title: 'Shooting day',
      subtitle: 'Time line of setups, packs and power',
      documentType: 'Schedule',
      scale: 'none',
      units: 'h',
    },
    sections,
    [
      'Height of a unit’s lane is the charge of its packs; a heavy tick is a change, hatched is dark. Runtimes are planning values; the packs’ own state, cold and age decide.',
      'Power at nominal volts, cable loss left out. Fuel by a chart of typical diesel sets; each begins the day with a full tank. Power stations begin it full.',
    ],
  );
};
