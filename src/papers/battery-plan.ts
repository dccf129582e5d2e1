import { dayNumbers } from '../derive/schedule.ts';
import { formatAmps, formatClock, formatLength } from '../kernel/units.ts';
import { recordsOf } from '../plan/plan.ts';
import { type DaySummary, daySummary, type PoolRow, type UnitLane } from '../report/day.ts';
import { dayEvents } from '../report/day-events.ts';
import { floorPackRows, outletsLeft } from '../report/floor-packs.ts';
import { fewest } from './battery-fewest.ts';
import { flowArea, flowPages, type Section } from './flow.ts';
import type { PageMaker, SetInfo } from './sheet-info.ts';
import { type Column, headingBlock, placeColumns, stacked, tableHead, tableRow } from './table.ts';

const POOLS: readonly Column[] = [
  { id: 'name', head: 'Packs', leastMm: 54, grow: 2 },
  { id: 'hand', head: 'At hand', leastMm: 16, align: 'right' },
  { id: 'back', head: 'Kept back', leastMm: 18, align: 'right' },
  { id: 'need', head: 'Needed', leastMm: 16, align: 'right' },
  { id: 'bays', head: 'Bays', leastMm: 14, align: 'right' },
  { id: 'changes', head: 'Changes', leastMm: 16, align: 'right' },
  { id: 'day', head: 'On the day', leastMm: 44, grow: 2 },
  { id: 'air', head: 'By air', leastMm: 60, grow: 3, dispensable: 3 },
];

const RUNS: readonly Column[] = [
  { id: 'unit', head: 'Unit', leastMm: 20 },
  { id: 'kind', head: 'Kind', leastMm: 44, grow: 2, dispensable: 2 },
  { id: 'on', head: 'Runs on', leastMm: 54, grow: 2 },
  { id: 'setup', head: 'Setup', leastMm: 40, grow: 2 },
  { id: 'level', head: 'Level', leastMm: 13, align: 'right' },
  { id: 'time', head: 'Runtime, worst to best', leastMm: 46, grow: 1 },
];

const SWAPS: readonly Column[] = [
  { id: 'at', head: 'Time', leastMm: 18 },
  { id: 'unit', head: 'Unit', leastMm: 40 },
  { id: 'out', head: 'Off', leastMm: 26 },
  { id: 'left', head: 'Left in it', leastMm: 16, align: 'right' },
  { id: 'into', head: 'On', leastMm: 26 },
  { id: 'dark', head: 'Dark', leastMm: 40, grow: 2 },
  { id: 'done', head: 'Done', leastMm: 14 },
];

const poolDay = (p: PoolRow): string =>
  p.short
    ? p.short.darkMin === undefined
      ? `${p.short.label} waits from ${formatClock(p.short.dueMin)}`
      : `${p.short.label} dark at ${formatClock(p.short.darkMin)}`
    : 'nobody waits';

const pools = (d: DaySummary, w: number): Section[] => {
  if (d.pools.length === 0) return [];
  const columns = placeColumns(POOLS, w);
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(continued ? `Packs, day ${d.day} (continued)` : `Packs, day ${d.day}`, ''),
          tableHead(columns),
        ),
      blocks: d.pools.map((p) =>
        tableRow(columns, {
          name: { text: p.exchange ? `${p.name} (spare units)` : p.name, weight: 'semibold' },
          hand: p.atHand === undefined ? 'not said' : String(p.atHand),
          back: String(p.reserve),
          need: String(p.need),
          bays: p.exchange ? '–' : String(p.bays),
          changes: String(p.swaps),
          day: p.short ? { text: poolDay(p), weight: 'semibold', role: 'stop' } : poolDay(p),
          air: p.airText,
        }),
      ),
    },
  ];
};

const runtimes = (d: DaySummary, w: number): Section => {
  const columns = placeColumns(RUNS, w);
  const rows = (l: UnitLane) =>
    l.problem || l.runtimes.length === 0
      ? [
          tableRow(columns, {
            unit: { text: l.label, weight: 'semibold' },
            kind: l.kindName,
            on: l.on,
            time: l.problem ? `not computed: ${l.problem}` : 'off all day',
          }),
        ]
      : l.runtimes.map((r, i) =>
          tableRow(
            columns,
            {
              ...(i === 0
                ? { unit: { text: l.label, weight: 'semibold' as const }, kind: l.kindName, on: l.on }
                : {}),
              setup: r.setupName,
              level: `${Math.round(r.levelPct)} %`,
              time: r.text,
            },
            { keep: i < l.runtimes.length - 1 },
          ),
        );
  return {
    head: (continued) =>
      stacked(
        headingBlock(
          continued ? `Runtimes, day ${d.day} (continued)` : `Runtimes, day ${d.day}`,
          'of one loading, down to empty',
        ),
        tableHead(columns),
      ),
    blocks: d.lanes.flatMap(rows),
  };
};

const changes = (d: DaySummary, w: number): Section[] => {
  const columns = placeColumns(SWAPS, w);
  const events = dayEvents(d);
  if (events.length === 0) return [];
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? `Changes, day ${d.day} (continued)` : `Changes, day ${d.day}`,
            'in the order of the clock',
          ),
          tableHead(columns),
        ),
      blocks: events.map((e) =>
        tableRow(columns, {
          at: formatClock(e.atMin),
          unit: { text: e.label, weight: 'semibold' },
          ...(e.swap
            ? {
                out: e.swap.out,
                left: e.swap.out ? `${Math.round(e.swap.outPct)} %` : '',
                into: e.swap.into,
                dark: e.swap.darkMin > 0 ? `${e.swap.darkMin} min for the change` : '',
                done: { draw: (ink, c) => ink.rect(c.x, c.y + c.h / 2 - 1.5, 3, 3, { weightMm: 0.18 }) },
              }
            : {
                dark: {
                  text: `dark until ${formatClock(e.untilMin ?? e.atMin)}${e.because ? `: ${e.because}` : ''}`,
                  weight: 'semibold',
                  role: 'stop',
                },
              }),
        }),
      ),
    },
  ];
};

const FLOOR: readonly Column[] = [
  { id: 'pack', head: 'Pack', leastMm: 16 },
  { id: 'kind', head: 'Kind', leastMm: 54, grow: 2 },
  { id: 'outlets', head: 'Outlets', leastMm: 34, grow: 1 },
  { id: 'full', head: 'At full, of it', leastMm: 34, align: 'right' },
  { id: 'unit', head: 'Feeds', leastMm: 22 },
  { id: 'lead', head: 'Lead', leastMm: 26, align: 'right' },
  { id: 'drop', head: 'Volts lost', leastMm: 20, align: 'right' },
  { id: 'time', head: 'Runtime, worst to best', leastMm: 60, grow: 2 },
];

/** Packs on the floor that feed several units: a row for each lead. */
const floorPacks = (info: SetInfo, d: DaySummary, w: number): Section[] => {
  if (d.sharedPacks.length === 0) return [];
  const columns = placeColumns(FLOOR, w);
  const rows = floorPackRows(info.plan);
  return [
    {
      head: (continued) =>
        stacked(
          headingBlock(
            continued ? `Packs on the floor, day ${d.day} (continued)` : `Packs on the floor, day ${d.day}`,
            'each feeds several units by leads and is changed for all of them at once',
          ),
          tableHead(columns),
        ),
      blocks: d.sharedPacks.flatMap((p) => {
        const row = rows.find((r) => r.record.id === p.id);
        const lines = Math.max(p.units.length, p.runtimes.length);
        return Array.from({ length: lines }, (_, i) => {
          const u = p.units[i];
          const r = p.runtimes[i];
          return tableRow(
            columns,
            {
              ...(i === 0
                ? {
                    pack: { text: p.label, weight: 'semibold' as const },
                    kind: p.on,
                    outlets: row ? `${outletsLeft(row)} of ${row.outlets.length}` : '',
                    full: `${formatAmps(p.fullA)} of ${formatAmps(p.continuousA)}`,
                  }
                : {}),
              unit: u?.label ?? '',
              lead: u ? `${formatLength(u.leadMm, info.units)}${u.leadAssumed ? '*' : ''}` : '',
              drop: u ? (u.dropPct === undefined ? 'cannot start' : `${u.dropPct.toFixed(1)} %`) : '',
              time: r ? `${r.setupName}: ${r.text}` : '',
            },
            { keep: i < lines - 1 },
          );
        });
      }),
    },
  ];
};

const BACK_UPS: readonly Column[] = [
  { id: 'what', head: 'Plugged in', leastMm: 50, grow: 1 },
  { id: 'minutes', head: 'On its cell', leastMm: 26, align: 'right' },
  { id: 'text', head: 'When its plug is pulled', leastMm: 100, grow: 3 },
];

const backUps = (d: DaySummary, w: number): Section[] => {
  const columns = placeColumns(BACK_UPS, w);
  return d.backUps.length === 0
    ? []
    : [
        {
          head: (continued) =>
            stacked(headingBlock(continued ? 'Back-up (continued)' : 'Back-up', ''), tableHead(columns)),
          blocks: d.backUps.map((b) =>
            tableRow(columns, {
              what: { text: b.label, weight: 'semibold' },
              minutes: b.minutes > 0 ? `${Math.round(b.minutes)} min` : 'none',
              text: b.text,
            }),
          ),
        },
      ];
};

/** The battery plan: packs needed, runtimes, and every change of packs by the clock, for each day. */
export const batteryPlanPages = (info: SetInfo): readonly PageMaker[] => {
  if (!recordsOf(info.plan, 'fixture').some((f) => f.onPacks)) return [];
  const days = dayNumbers(info.plan).map((n) => daySummary(info.plan, n));
  if (days.length === 0) return [];
  const w = flowArea(info).w;
  return flowPages(
    info,
    {
      title: 'Battery plan',
      subtitle: 'Packs, runtimes and changes',
      documentType: 'Schedule',
      scale: 'none',
      units: 'h',
    },
    [
      ...days.flatMap((d) => [
        ...pools(d, w),
        ...fewest(info, d, w),
        ...floorPacks(info, d, w),
        runtimes(d, w),
        ...changes(d, w),
      ]),
      ...days.slice(0, 1).flatMap((d) => backUps(d, w)),
    ],
    [
      ...(days.some((d) => d.sharedPacks.some((p) => p.units.some((u) => u.leadAssumed)))
        ? ['* The length of the lead is the way on the floor, assumed.']
        : []),
      'Runtimes are planning values for packs of usual health; the packs’ own state, cold and age decide. Keep spare packs. Do not charge lithium cells in frost.',
      'By air: 49 CFR 175.10, IATA Dangerous Goods Regulations, as on public pages up to March 2026. Operators may be stricter: ask.',
    ],
  );
};
