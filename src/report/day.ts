import { limitOf } from '../derive/limits.ts';
import { loadedHoursOfDay } from '../derive/loaded-hours.ts';
import { blockFault, blocksOfDay, type Day, dayNumbers, shootingDays } from '../derive/schedule.ts';
import { skyOf } from '../derive/sun.ts';
import { supplyTree } from '../derive/supply.ts';
import {
  batteryUnits,
  dayAtHand,
  leastBays,
  leastPacks,
  overnight,
  packsByRule,
  type Rotation,
  type RotationResult,
  rotationOf,
  sharedPacks,
  stockOf,
  supplyOf,
} from '../engines/battery/index.ts';
import { formatClock } from '../kernel/units.ts';
import { kindOf, type Plan, planRecord, recordOf } from '../plan/plan.ts';
import type { Block } from '../plan/records/index.ts';
import { backUps } from './back-up.ts';
import { sharedLane, unitLane } from './day-lanes.ts';
import { dayPower } from './day-power.ts';
import type { BayLane, BlockRow, CircuitHours, DaySummary, LeastRow, PoolRow } from './day-types.ts';
import { airWords } from './pack-air.ts';

import { stationLoads } from './station-loads.ts';

export { formatMinutes } from '../engines/battery/index.ts';
export type * from './day-types.ts';

const WHAT: Readonly<Record<Block['what'], string>> = {
  setup: 'Setup',
  'pre-light': 'Pre-light',
  meal: 'Meal',
  move: 'Company move',
  wrap: 'Wrap',
  other: 'Other',
};

const FAULT = {
  empty: 'does not end after it starts',
  outside: 'lies outside the day',
  'no-setup': 'its setup is not in the plan',
} as const;

/** What a block is called: its own words, else its setup with its scene, else what it is. */
export const blockName = (plan: Plan, b: Block): string => {
  const setup = b.setupId === undefined ? undefined : recordOf(plan, 'setup', b.setupId);
  const own = [setup?.scene, setup?.name].filter(Boolean).join(' ');
  const what = WHAT[b.what];
  if (b.what === 'setup') return b.label || own || what;
  return [b.label || what, b.what === 'pre-light' ? own : ''].filter(Boolean).join(' ');
};

const memo = new WeakMap<Plan, Map<number, DaySummary>>();

/** Days a plan has blocks on; one day where it has none, to begin with. */
export const daysOf = (plan: Plan): readonly number[] => {
  const days = dayNumbers(plan);
  return days.length > 0 ? days : [1];
};

/** One shooting day as rows and lanes. */
export const daySummary = (plan: Plan, day: number): DaySummary => {
  let known = memo.get(plan);
  if (!known) {
    known = new Map();
    memo.set(plan, known);
  }
  const old = known.get(day);
  if (old) return old;
  const made = summarise(plan, day);
  known.set(day, made);
  return made;
};

const noDay = (plan: Plan, day: number): Day => ({
  day,
  date: planRecord(plan).dates[day - 1],
  blocks: [],
  startMin: 0,
  endMin: 0,
  segments: [],
});

const summarise = (plan: Plan, number: number): DaySummary => {
  const day = shootingDays(plan).find((d) => d.day === number) ?? noDay(plan, number);
  const r = rotationOf(plan, day);
  const result = named(r, dayAtHand(r));
  const { place } = planRecord(plan);
  const sources = dayPower(plan, day, r, result);
  const on = day.segments.filter((s) => s.burning.size > 0);
  return {
    day: number,
    date: day.date ?? '',
    startMin: day.startMin,
    endMin: day.endMin,
    hoursOn: on.reduce((sum, s) => sum + s.endMin - s.startMin, 0) / 60,
    blocks: blockRows(plan, number, day),
    sky: place && day.date ? skyOf(place, day.date) : undefined,
    sources,
    circuits: circuitHours(plan, day),
    lanes: batteryUnits(plan).map((u) => unitLane(plan, day, u, r, result)),
    sharedPacks: sharedPacks(plan).map((p) => sharedLane(plan, day, p, r, result)),
    stationLoads: stationLoads(plan, day, sources),
    bays: bayLanes(r, result),
    pools: poolRows(plan, r, result),
    overnight: overnight(plan).filter((o) => o.day === number),
    backUps: backUps(plan, day),
  };
};

/** Packs by the letter of their pool and their number, `A3`, where there is more than one pool; else by the number. */
const named = (r: Rotation, d: RotationResult): RotationResult => {
  if (r.pools.length < 2) return d;
  const letter = new Map(r.pools.map((p, i) => [p.id, String.fromCharCode(65 + (i % 26))]));
  const name = (pool: string, pack: string): string => `${letter.get(pool) ?? ''}${pack}`;
  const of = (unit: number, packs: readonly string[]): readonly string[] =>
    packs.map((p) => name(r.units[unit]?.pool ?? '', p));
  return {
    ...d,
    spans: d.spans.map((s) => ({ ...s, packs: of(s.unit, s.packs) })),
    swaps: d.swaps.map((s) => ({ ...s, out: of(s.unit, s.out), into: of(s.unit, s.into) })),
    bays: d.bays.map((b) => ({ ...b, pack: name(b.pool, b.pack) })),
  };
};

const blockRows = (plan: Plan, number: number, day: Day): readonly BlockRow[] =>
  blocksOfDay(plan, number).map((block) => {
    const fault = blockFault(plan, block);
    const segment = day.segments.find((s) => s.blocks.includes(block));
    return {
      id: block.id,
      block,
      name: blockName(plan, block),
      setupName: block.setupId === undefined ? '' : (recordOf(plan, 'setup', block.setupId)?.name ?? ''),
      fault: fault && FAULT[fault],
      unitsOn: segment?.burning.size ?? 0,
    };
  });

/** Circuits that are loaded on the day: ways, and cables that hang on no way. */
const circuitHours = (plan: Plan, day: Day): readonly CircuitHours[] =>
  supplyTree(plan)
    .nodes.filter((n) => n.what === 'way' && n.notComputed === undefined)
    .flatMap((n) => {
      const h = loadedHoursOfDay(plan, day, n.key);
      return h && h.totalH > 0 ? [{ key: n.key, label: n.label, ...h }] : [];
    });

const bayLanes = (r: Rotation, result: RotationResult): readonly BayLane[] =>
  r.bays.map((b, i) => ({
    label: b.label,
    charger: b.label.replace(/ bay \d+$/, ''),
    spans: result.bays.filter((s) => s.bay === i),
  }));

const airText = (plan: Plan, kindId: string): string => {
  const pack = kindOf(plan, kindId, 'pack');
  return pack ? airWords(pack.chemistry, pack.energyWh) : '';
};

const poolRows = (plan: Plan, r: Rotation, result: RotationResult): readonly PoolRow[] => {
  const need = packsByRule(r);
  return r.pools.map((p) => {
    const stock = stockOf(plan, p.id);
    const short = result.shortPools.get(p.id);
    const first = short?.dark ?? short?.short;
    return {
      id: p.id,
      name: p.name,
      exchange: p.exchange,
      count: stock?.count,
      reserve: p.reserve,
      atHand: p.packs,
      need: need.get(p.id) ?? 0,
      bays: r.bays.filter((b) => b.pools.has(p.id)).length,
      swaps: result.swaps.filter((s) => r.units[s.unit]?.pool === p.id && s.out.length > 0).length,
      short: first && {
        label: r.units[first.unit]?.label ?? '',
        dueMin: first.dueMin,
        darkMin: short?.dark?.darkMin,
      },
      airText: airText(plan, p.id),
    };
  });
};

/** The fewest packs of each kind, looked for on demand, each with what happens with one fewer. Tells whose turn it is by name. */
export const leastOf = (
  plan: Plan,
  dayNumber: number,
  tell?: (name: string) => void,
): readonly LeastRow[] => {
  const day = shootingDays(plan).find((d) => d.day === dayNumber);
  if (!day) return [];
  const r = rotationOf(plan, day);
  return leastPacks(r, tell && ((p) => tell(p.name))).map((l) => {
    const pool = r.pools.find((p) => p.id === l.pool);
    const what = pool?.exchange ? 'units' : 'packs';
    const fewer = l.fewer?.dark ?? l.fewer?.short;
    const unit = fewer && r.units[fewer.unit]?.label;
    const then = l.fewer?.dark
      ? `${unit} goes dark at ${formatClock(l.fewer.dark.darkMin)}`
      : `${unit} has to wait for a charged one from ${formatClock(fewer?.dueMin ?? 0)}`;
    const how =
      l.by === 'rule'
        ? ''
        : l.by === 'fitted'
          ? ', with changes ahead of time and each pack where its charge fits'
          : ', with changes ahead of time';
    const proof =
      l.bound === l.packs
        ? `${l.packs} ${l.packs === 1 ? `${what.slice(0, -1)} is` : `${what} are`} the fewest that can do${how}`
        : `${l.packs} ${what} do${how}; no fewer than ${l.bound} can, and what lies between is not known`;
    return {
      pool: l.pool,
      name: pool?.name ?? '',
      packs: l.packs,
      bound: l.bound,
      by: l.by,
      text: `${proof}.${l.fewer && unit ? ` With ${l.fewer.packs} ${l.fewer.packs === 1 ? what.slice(0, -1) : what}, ${then}.` : ''}`,
    };
  });
};

/** The fewest bays with which the packs at hand leave no unit waiting; undefined where all bays do not do. */
export const leastBaysOf = (plan: Plan, dayNumber: number): number | undefined => {
  const day = shootingDays(plan).find((d) => d.day === dayNumber);
  if (!day) return undefined;
  const r = rotationOf(plan, day);
  return leastBays(r, supplyOf(r));
};

/** The efficiency chargers are reckoned with, for words. */
export const chargerEfficiencyPct = (plan: Plan): number => limitOf(plan, 'battery-charger-efficiency').value;
