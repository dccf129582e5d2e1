import { type Day, type Stretch, stretchesOf } from '../derive/schedule.ts';
import {
  type BatteryUnit,
  besideW,
  formatRuntime,
  fullLoad,
  leadDrop,
  ownCellsDay,
  type Rotation,
  type RotationResult,
  runtimeAt,
  runtimeKey,
  type SharedPack,
  type Swap,
  sharedRuntime,
  type UnitSpan,
} from '../engines/battery/index.ts';
import { levelOf, type Plan, recordOf } from '../plan/plan.ts';
import type { RuntimeCell, SharedPackLane, SwapRow, UnitLane } from './day-types.ts';
import { packCurrentRows } from './pack-currents.ts';

const packName = (pack: string, count: number): string => (count === 1 ? pack : `${count} × ${pack}`);

const packList = (packs: readonly string[]): string => packs.map((p) => `#${p}`).join(' ');

/** Minutes of spans in one state. */
export const minutesIn = <S extends string>(
  spans: readonly { readonly startMin: number; readonly endMin: number; readonly state: S }[],
  state: NoInfer<S>,
): number => spans.filter((s) => s.state === state).reduce((sum, s) => sum + s.endMin - s.startMin, 0);

const runtimesOf = (plan: Plan, day: Day, u: BatteryUnit): readonly RuntimeCell[] => {
  const seen = new Map<string, RuntimeCell>();
  for (const s of stretchesOf(day, u.fixture.id)) {
    if (seen.has(s.setupId)) continue;
    const { minutes } = runtimeAt(u, s.levelPct, besideW(plan, u, s.setupId));
    seen.set(s.setupId, {
      setupId: s.setupId,
      setupName: recordOf(plan, 'setup', s.setupId)?.name ?? '',
      levelPct: s.levelPct,
      minutes,
      text: formatRuntime(minutes),
      key: runtimeKey(u.fixture.id, s.setupId),
    });
  }
  return [...seen.values()];
};

/** A pack's spans cut to when one of its units should burn, at that unit's level. */
const spansOfUnit = (spans: readonly UnitSpan[], stretches: readonly Stretch[]): readonly UnitSpan[] =>
  spans.flatMap((s) =>
    stretches.flatMap((x): UnitSpan[] => {
      const [startMin, endMin] = [Math.max(s.startMin, x.startMin), Math.min(s.endMin, x.endMin)];
      if (endMin <= startMin + 1e-9) return [];
      const socAt = (m: number): number =>
        s.fromSoc + ((s.toSoc - s.fromSoc) * (m - s.startMin)) / (s.endMin - s.startMin);
      return [
        {
          ...s,
          startMin,
          endMin,
          fromSoc: socAt(startMin),
          toSoc: socAt(endMin),
          levelPct: x.levelPct,
          setupId: x.setupId,
        },
      ];
    }),
  );

const swapRows = (swaps: readonly Swap[], label: string): readonly SwapRow[] =>
  swaps.map((s, i) => ({
    first: i === 0,
    atMin: s.atMin,
    label,
    out: packList(s.out),
    into: packList(s.into),
    outPct: 100 * s.outSoc,
    darkMin: s.darkMin,
  }));

/** A unit's lane: its packs, or what the pack on the floor does while it burns, or its own cells. */
export const unitLane = (
  plan: Plan,
  day: Day,
  u: BatteryUnit,
  r: Rotation,
  result: RotationResult,
): UnitLane => {
  const at = r.units.findIndex((x) => x.feeds.includes(u.fixture.id));
  const own = at < 0 && u.problem === undefined ? ownCellsDay(plan, day, u) : undefined;
  const stretches = u.floorPack ? stretchesOf(day, u.fixture.id) : [];
  const of = result.spans.filter((s) => s.unit === at);
  const spans = own
    ? own.spans.map((s) => ({ ...s, unit: -1 }))
    : u.floorPack
      ? spansOfUnit(of, stretches)
      : of;
  // Of a pack on the floor only those changes are the unit's that find it burning.
  const swaps = result.swaps.filter(
    (s) =>
      s.unit === at &&
      (!u.floorPack || stretches.some((x) => x.startMin < s.atMin - 1e-9 && x.endMin > s.atMin + 1e-9)),
  );
  const rows = swapRows(swaps, u.label);
  return {
    fixtureId: u.fixture.id,
    label: u.label,
    kindName: u.kindName,
    on:
      u.mode === 'own-cells'
        ? `own cells ${Math.round(u.ratedWh)} Wh`
        : `${u.floorPack ? `${u.floorPack.label}, ` : ''}${packName(u.pack?.name ?? 'no packs', u.count)}`,
    sharedPackId: u.floorPack?.id,
    problem: u.problem,
    spans,
    swaps: u.floorPack ? rows.map((x) => ({ ...x, first: x.out === '' })) : rows,
    charges: own?.charges ?? [],
    runtimes: u.problem === undefined ? runtimesOf(plan, day, u) : [],
    currents: u.floorPack ? [] : packCurrentRows(plan, u.fixture.id),
    burnsMin: minutesIn(spans, 'burning'),
    darkMin: minutesIn(spans, 'dark'),
  };
};

/** The lane of a pack on the floor: its charge, its changes, its runtime by setup, and the lead of each unit. */
export const sharedLane = (
  plan: Plan,
  day: Day,
  s: SharedPack,
  r: Rotation,
  result: RotationResult,
): SharedPackLane => {
  const at = r.units.findIndex((x) => x.id === s.record.id);
  const spans = result.spans.filter((x) => x.unit === at);
  const setups = new Set(s.units.flatMap((u) => stretchesOf(day, u.fixture.id).map((x) => x.setupId)));
  const pack = s.units[0]?.pack;
  return {
    id: s.record.id,
    label: s.record.label,
    on: packName(pack?.name ?? 'no packs', s.record.count),
    units: s.units.map((u) => ({
      fixtureId: u.fixture.id,
      label: u.label,
      leadMm: u.lead?.lengthMm ?? 0,
      leadAssumed: u.lead?.assumed ?? false,
      dropPct: leadDrop(u)?.dropPct,
    })),
    spans,
    swaps: swapRows(
      result.swaps.filter((x) => x.unit === at),
      s.label,
    ),
    runtimes: [...setups].flatMap((setupId) => {
      const run = sharedRuntime(s, (id) => levelOf(plan, setupId, id).levelPct);
      return run
        ? [
            {
              setupId,
              setupName: recordOf(plan, 'setup', setupId)?.name ?? '',
              minutes: run.minutes,
              text: formatRuntime(run.minutes),
            },
          ]
        : [];
    }),
    fullA: fullLoad(s).amps,
    continuousA: pack?.continuousA ?? Number.NaN,
    currents: packCurrentRows(plan, s.record.id),
    burnsMin: minutesIn(spans, 'burning'),
    darkMin: minutesIn(spans, 'dark'),
  };
};
