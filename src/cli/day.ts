import { formatClock, formatFuel, formatWatts, type LengthUnits } from '../kernel/units.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { CAUTION_LINE } from '../report/cautions.ts';
import {
  blockName,
  type DaySummary,
  daySummary,
  daysOf,
  leastBaysOf,
  leastOf,
  type PoolRow,
  type SharedPackLane,
  type SourceDay,
  type StationLoadLane,
  type UnitLane,
} from '../report/day.ts';
import { dayKeysOf } from '../report/day-keys.ts';
import { dayTroubles, sourceNote } from '../report/day-words.ts';
import type { PackCurrentRow } from '../report/pack-currents.ts';
import { unitHours } from '../report/unit-hours.ts';

const hours = (h: number): string => `${Number(h.toFixed(1))} h`;
const kWh = (wh: number): string => `${(wh / 1000).toFixed(1)} kWh`;
const span = (a: number, b: number): string => `${formatClock(a).padEnd(8)} to ${formatClock(b).padEnd(8)}`;

/** Every day with blocks in words: time line, power, runtimes, changes of packs, the fewest packs and bays. */
export const dayText = (plan: Plan): string => {
  const lines = [planRecord(plan).title || 'Untitled plan', ''];
  for (const n of daysOf(plan)) lines.push(...dayLines(plan, daySummary(plan, n)), '');
  lines.push(CAUTION_LINE);
  return lines.join('\n');
};

const dayLines = (plan: Plan, d: DaySummary): string[] => [
  `Day ${d.day}${d.date ? `, ${d.date}` : ''}`,
  ...(d.blocks.length === 0 ? ['  No blocks: the day is not planned.'] : []),
  ...d.blocks.map(
    (b) =>
      `  ${span(b.block.startMin, b.block.endMin)}  ${blockName(plan, b.block)}${b.fault ? ` (left out: ${b.fault})` : `, ${b.unitsOn} units on`}`,
  ),
  ...dayTroubles(d).map((t) => `  ${t.dark ? 'DARK' : 'LATE'}: ${t.text}`),
  ...skyLines(d),
  ...(d.blocks.length > 0 ? [`  Hours with light: ${hours(d.hoursOn)}`] : []),
  ...d.sources.flatMap((s) => sourceLines(s, planRecord(plan).lengthUnits)),
  ...d.circuits.map((c) => `  ${c.label}: loaded ${hours(c.totalH)}, at a stretch ${hours(c.longestH)}`),
  ...d.lanes.flatMap(laneLines),
  ...d.sharedPacks.flatMap(sharedLines),
  ...d.stationLoads.flatMap(stationLoadLines),
  ...d.pools.map(poolLine),
  ...leastOf(plan, d.day).map((l) => `  ${l.name}: ${l.text}`),
  ...bayLine(plan, d),
  ...d.backUps.map((b) => `  ${b.label}: ${b.text}`),
];

const skyLines = (d: DaySummary): string[] => {
  if (!d.sky) return [];
  const at = (name: string, m: number | undefined): string =>
    `${name} ${m === undefined ? 'none' : formatClock(m)}`;
  const s = d.sky;
  return [
    `  Sky: ${[at('dawn', s.dawnMin), at('sunrise', s.sunriseMin), at('sunset', s.sunsetMin), at('dusk', s.duskMin)].join(', ')}; ${s.moonPhase} (${Math.round(100 * s.moonShare)} % lit), ${at('moonrise', s.moonriseMin)}`,
  ];
};

const sourceLines = (s: SourceDay, units: LengthUnits): string[] =>
  s.energyWh === 0
    ? []
    : [
        `  ${s.label}: peak ${formatWatts(s.peakW)}, average ${formatWatts(s.averageW)}, ${kWh(s.energyWh)}${s.fuelL === undefined ? '' : `, ${formatFuel(s.fuelL, units)} of diesel`}${sourceNote(s) ? `, ${sourceNote(s)}` : ''}`,
      ];

const currentLine = (c: PackCurrentRow): string =>
  `      one pack nearly empty, ${c.name}: ${c.text}${c.over ? ', too much' : ''}  [${c.key}]`;

const laneLines = (l: UnitLane): string[] => [
  `  ${l.label} on ${l.on}${l.problem ? `: ${l.problem}` : ''}`,
  ...l.runtimes.map((r) => `      ${r.setupName} at ${r.levelPct} %: ${r.text}  [${r.key}]`),
  ...l.currents.map(currentLine),
  ...l.swaps
    .filter((s) => !s.first)
    .map(
      (s) =>
        `      ${formatClock(s.atMin)} ${s.out ? `change ${s.out} (${Math.round(s.outPct)} % left) for` : 'put on'} ${s.into}${s.darkMin > 0 ? `, ${s.darkMin} min dark` : ''}`,
    ),
  ...l.spans
    .filter((s) => s.state === 'dark')
    .map((s) => `      DARK ${formatClock(s.startMin)} to ${formatClock(s.endMin)}`),
];

/** A pack on the floor: its runtimes with all its units, leads, currents and changes. */
const sharedLines = (p: SharedPackLane): string[] => [
  `  ${p.label}, ${p.on}, feeds ${p.units.map((u) => u.label).join(', ')}`,
  ...p.currents.map(currentLine),
  ...p.units.map(
    (u) =>
      `      lead to ${u.label}: ${(u.leadMm / 1000).toFixed(1)} m${u.leadAssumed ? ' (assumed)' : ''}, ${u.dropPct === undefined ? 'cannot start' : `${u.dropPct.toFixed(1)} % lost`}`,
  ),
  ...p.runtimes.map((r) => `      ${r.setupName}: ${r.text}`),
  ...p.swaps.map(
    (s) =>
      `      ${formatClock(s.atMin)} ${s.out ? `change ${s.out} (${Math.round(s.outPct)} % left) for` : 'put on'} ${s.into}`,
  ),
  ...p.spans
    .filter((s) => s.state === 'dark')
    .map((s) => `      DARK ${formatClock(s.startMin)} to ${formatClock(s.endMin)}`),
];

const stationLoadLines = (l: StationLoadLane): string[] =>
  l.spans
    .filter((s) => s.state === 'dark')
    .map(
      (s) => `  ${l.label} on ${l.sourceLabel}: DARK ${formatClock(s.startMin)} to ${formatClock(s.endMin)}`,
    );

const poolLine = (p: PoolRow): string => {
  const stock =
    p.atHand === undefined
      ? 'no stock given'
      : `${p.atHand} at hand${p.reserve > 0 ? `, ${p.reserve} more kept back` : ''}`;
  const short = p.short
    ? `; ${p.short.label} falls due at ${formatClock(p.short.dueMin)}${p.short.darkMin === undefined ? '' : ` and is dark from ${formatClock(p.short.darkMin)}`}`
    : '';
  return `  ${p.name}: ${stock}, a plain rotation takes ${p.need}, ${p.bays} bays, ${p.swaps} changes${short}${p.airText ? `. By air ${p.airText}` : ''}`;
};

const bayLine = (plan: Plan, d: DaySummary): string[] => {
  if (d.bays.length === 0) return [];
  const least = leastBaysOf(plan, d.day);
  return [
    least === undefined
      ? `  Bays: all ${d.bays.length} do not get the packs at hand through the day`
      : `  Bays: ${least} of ${d.bays.length} do`,
  ];
};

/** The same as data, one object for each day. */
export const dayJson = (plan: Plan): unknown => ({
  format: 'lampwright-day',
  version: 1,
  days: daysOf(plan).map((n) => ({
    ...daySummary(plan, n),
    workings: dayKeysOf(daySummary(plan, n), unitHours(plan, n)),
    least: leastOf(plan, n),
    leastBays: leastBaysOf(plan, n) ?? null,
  })),
});
