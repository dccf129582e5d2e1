import { recordLabel } from '../../derive/labels.ts';
import { type Day, stretchesOf } from '../../derive/schedule.ts';
import { compareNatural, type Id } from '../../kernel/ids.ts';
import { levelOf, type Plan, recordsOf } from '../../plan/plan.ts';
import type { FloorPack } from '../../plan/records/index.ts';
import { batteryUnits, drawAt, runtimeAt } from './model.ts';
import type { DrainStretch } from './rotation-types.ts';
import type { BatteryUnit, Runtime } from './types.ts';

/** A pack on the floor with the units it feeds that can be reckoned, each by a lead of its own. */
export interface SharedPack {
  readonly record: FloorPack;
  /** `P1 (units 3, 4, 5)`. */
  readonly label: string;
  readonly units: readonly BatteryUnit[];
}

const memo = new WeakMap<Plan, readonly SharedPack[]>();

/** Packs on the floor that feed anything, by label. */
export const sharedPacks = (plan: Plan): readonly SharedPack[] => {
  const known = memo.get(plan);
  if (known) return known;
  const packs = recordsOf(plan, 'pack')
    .flatMap((record): SharedPack[] => {
      const units = batteryUnits(plan).filter(
        (u) => u.floorPack?.id === record.id && u.problem === undefined,
      );
      if (units.length === 0) return [];
      const numbers = units.map((u) => u.fixture.unit).filter((n) => n !== '');
      const fed =
        numbers.length > 0 ? ` (${numbers.length === 1 ? 'unit' : 'units'} ${numbers.join(', ')})` : '';
      return [{ record, label: `${recordLabel(plan, record)}${fed}`, units }];
    })
    .sort((a, b) => compareNatural(a.label, b.label));
  memo.set(plan, packs);
  return packs;
};

/** Watts a unit takes from its pack at a level; none where its lead lets it not start. */
const packWatts = (u: BatteryUnit, levelPct: number): number => {
  const { packW } = drawAt(u, levelPct);
  return Number.isFinite(packW) ? packW : 0;
};

/** Runtime of a pack with each of its units at a level: from what all of them draw together. Undefined where nothing is on. */
export const sharedRuntime = (s: SharedPack, levelPct: (fixtureId: Id) => number): Runtime | undefined => {
  const on = s.units.filter((u) => levelPct(u.fixture.id) > 0);
  const [first, ...rest] = on;
  if (!first) return undefined;
  const othersW = rest.reduce((sum, u) => sum + packWatts(u, levelPct(u.fixture.id)), 0);
  return runtimeAt(first, levelPct(first.fixture.id), othersW);
};

/** What the other units of its pack draw beside one unit in a setup, in watts at the pack. 0 for a unit on packs of its own. */
export const besideW = (plan: Plan, u: BatteryUnit, setupId: Id): number => {
  const shared = u.floorPack && sharedPacks(plan).find((s) => s.record.id === u.floorPack?.id);
  if (!shared) return 0;
  return shared.units
    .filter((x) => x.fixture.id !== u.fixture.id)
    .reduce((sum, x) => {
      const { levelPct } = levelOf(plan, setupId, x.fixture.id);
      return levelPct > 0 ? sum + packWatts(x, levelPct) : sum;
    }, 0);
};

/** What a pack on the floor gives with all its units at full level and the packs nearly empty: watts, and amps of one of its packs. */
export const fullLoad = (s: SharedPack): { readonly watts: number; readonly amps: number } => {
  const watts = s.units.reduce((sum, u) => sum + packWatts(u, 100), 0);
  const [first] = s.units;
  return { watts, amps: first?.pack ? watts / first.count / first.pack.emptyV : Number.NaN };
};

/** Stretches in which a pack on the floor drains on a day, at planning values, for all its units together. */
export const sharedDrain = (day: Day, s: SharedPack, leastMin: number): readonly DrainStretch[] => {
  const each = new Map(s.units.map((u) => [u.fixture.id, stretchesOf(day, u.fixture.id)]));
  const edges = [...new Set([...each.values()].flat().flatMap((x) => [x.startMin, x.endMin]))].sort(
    (a, b) => a - b,
  );
  return edges.slice(1).flatMap((endMin, i): DrainStretch[] => {
    const startMin = edges[i] ?? endMin;
    const on = (id: Id) => each.get(id)?.find((x) => x.startMin <= startMin && x.endMin >= endMin);
    const r = sharedRuntime(s, (id) => on(id)?.levelPct ?? 0);
    const burning = s.units.flatMap((u) => on(u.fixture.id) ?? []);
    if (!r || !(r.minutes.plan >= leastMin)) return [];
    return [
      {
        startMin,
        endMin,
        drain: Number.isFinite(r.minutes.plan) ? 1 / r.minutes.plan : 0,
        levelPct: burning.reduce((sum, b) => sum + b.levelPct, 0) / Math.max(1, burning.length),
        setupId: burning[0]?.setupId ?? '',
      },
    ];
  });
};
