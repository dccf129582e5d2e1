import { limitOf } from '../../derive/limits.ts';
import { type Day, stretchesOf } from '../../derive/schedule.ts';
import { compareNatural } from '../../kernel/ids.ts';
import type { ChargerKind, PackKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordsOf } from '../../plan/plan.ts';
import type { Charger } from '../../plan/records/index.ts';
import { chargeTimes } from './calc.ts';
import { batteryUnits, runtimeAt, swapAt } from './model.ts';
import type { DrainStretch, Rotation, RotationBay, RotationPool, RotationUnit } from './rotation-types.ts';
import { type SharedPack, sharedDrain, sharedPacks } from './shared.ts';
import type { BatteryUnit } from './types.ts';

/** Runtimes shorter than this are not played through: the packs are no match for the unit. */
const LEAST_RUN_MIN = 1;

/** Stretches in which a unit drains its packs on a day, at planning values. */
const drainOf = (day: Day, u: BatteryUnit): readonly DrainStretch[] =>
  stretchesOf(day, u.fixture.id).flatMap((s) => {
    const minutes = runtimeAt(u, s.levelPct).minutes.plan;
    if (!(minutes >= LEAST_RUN_MIN)) return [];
    return [{ ...s, drain: Number.isFinite(minutes) ? 1 / minutes : 0 }];
  });

/** Whether a charger takes packs of a kind: plate, chemistry and volts. */
export const takesPack = (c: ChargerKind, p: PackKind): boolean =>
  c.plates.includes(p.plate) &&
  c.chemistries.includes(p.chemistry) &&
  p.voltsV >= c.packVolts.minV - 1e-9 &&
  p.voltsV <= c.packVolts.maxV + 1e-9;

/** Bays of a charger that charge at once. */
export const baysOf = (charger: Charger, kind: ChargerKind): number =>
  Math.max(0, Math.min(charger.bays ?? kind.bays, kind.together));

/** Watts that go into one pack in a bay of a charger with all its bays busy. */
export const bayWatts = (kind: ChargerKind, p: PackKind): number => {
  const shared = kind.sharedW === undefined ? kind.bayW : kind.sharedW / kind.together;
  return Math.min(kind.bayW, shared, p.chargeW);
};

const chargersOf = (plan: Plan): readonly Charger[] =>
  [...recordsOf(plan, 'charger')].sort(
    (a, b) => compareNatural(a.label, b.label) || compareNatural(a.id, b.id),
  );

const baysFor = (plan: Plan, packs: readonly PackKind[]): readonly RotationBay[] =>
  chargersOf(plan).flatMap((charger) => {
    const kind = kindOf(plan, charger.kindId, 'charger');
    const taken = kind ? packs.filter((p) => takesPack(kind, p)) : [];
    if (!kind || taken.length === 0) return [];
    return Array.from(
      { length: baysOf(charger, kind) },
      (_, i): RotationBay => ({
        id: `${charger.id}/${i + 1}`,
        chargerId: charger.id,
        label: `${charger.label} bay ${i + 1}`,
        pools: new Set(taken.map((p) => p.id)),
        slower: new Map(taken.map((p) => [p.id, Math.max(1, p.chargeW / Math.max(1e-6, bayWatts(kind, p)))])),
      }),
    );
  });

/** Packs of a kind in stock: those at hand and those kept back; undefined where the plan has no stock of it. */
export const stockOf = (
  plan: Plan,
  kindId: string,
): { readonly atHand: number; readonly count: number; readonly reserve: number } | undefined => {
  const rows = recordsOf(plan, 'stock').filter((s) => s.kindId === kindId);
  if (rows.length === 0) return undefined;
  const sum = (f: (s: (typeof rows)[number]) => number): number => rows.reduce((a, s) => a + f(s), 0);
  const count = sum((s) => s.count);
  const reserve = Math.min(
    count,
    sum((s) => s.reserve),
  );
  return { atHand: count - reserve, count, reserve };
};

const poolsOf = (plan: Plan, units: readonly BatteryUnit[]): readonly RotationPool[] => {
  const pools = new Map<string, RotationPool>();
  for (const u of units) {
    if (u.mode === 'packs' && u.pack && !pools.has(u.pack.id)) {
      const stock = stockOf(plan, u.pack.id);
      pools.set(u.pack.id, {
        id: u.pack.id,
        name: u.pack.name,
        packs: stock?.atHand,
        reserve: stock?.reserve ?? 0,
        chargeMin: u.pack.chargeMin,
        chargeW: u.pack.chargeW,
        exchange: false,
      });
    }
    if (u.mode === 'own-cells' && u.fixture.ownCells?.when === 'exchange') {
      const old = pools.get(u.fixture.kindId);
      const spares = stockOf(plan, u.fixture.kindId);
      pools.set(u.fixture.kindId, {
        id: u.fixture.kindId,
        name: u.kindName,
        packs: (old?.packs ?? spares?.atHand ?? 0) + 1,
        reserve: spares?.reserve ?? 0,
        chargeMin: u.fixture.ownCells.chargeMin ?? limitOf(plan, 'battery-own-charge').value,
        chargeW: u.ratedWh / 2,
        exchange: true,
      });
    }
  }
  return [...pools.values()].sort((a, b) => compareNatural(a.name, b.name));
};

/** Units of a day that can be reckoned: those on packs, and those that are exchanged when their own cells are empty. */
const rotating = (u: BatteryUnit): boolean =>
  u.problem === undefined && (u.mode === 'packs' || u.fixture.ownCells?.when === 'exchange');

/** Packs are taken to charge at half their capacity an hour: it sets how the time parts, not how long it is. */
const CHARGE_C = 0.5;

/** Share of the charging time until the change-over, and how far the current falls after it. */
const chargeShape = (plan: Plan): Pick<Rotation, 'changeOver' | 'changeOverTime' | 'taper'> => {
  const changeOver = Math.min(0.95, Math.max(0.05, limitOf(plan, 'battery-change-over').value / 100));
  const endC = Math.min(0.4, Math.max(0.01, limitOf(plan, 'battery-charge-end').value));
  const t = chargeTimes(1, CHARGE_C, changeOver, endC);
  return { changeOver, changeOverTime: t.toChangeOverMin / t.fullMin, taper: CHARGE_C / endC };
};

/** A pack on the floor as one unit of the rotation: it is changed for all it feeds at once. */
const sharedUnit = (day: Day, s: SharedPack): RotationUnit => ({
  id: s.record.id,
  label: s.label,
  feeds: s.units.map((u) => u.fixture.id),
  pool: s.record.kindId,
  count: Math.max(1, s.record.count),
  hotSwap: s.record.hotSwap,
  swapMin: s.units[0]?.swapMin ?? 0,
  stretches: sharedDrain(day, s, LEAST_RUN_MIN),
});

const memo = new WeakMap<Day, Rotation>();

/** The rotation of one day as numbers: what every unit drains when, the packs at hand, the bays. */
export const rotationOf = (plan: Plan, day: Day): Rotation => {
  const known = memo.get(day);
  if (known) return known;
  const units = batteryUnits(plan).filter(rotating);
  const packs = [...new Map(units.flatMap((u) => (u.pack ? [[u.pack.id, u.pack] as const] : []))).values()];
  const rotation: Rotation = {
    units: [
      ...units
        .filter((u) => !u.floorPack)
        .map(
          (u): RotationUnit => ({
            id: u.fixture.id,
            label: u.label,
            feeds: [u.fixture.id],
            pool: u.mode === 'packs' ? (u.pack?.id ?? '') : u.fixture.kindId,
            count: u.count,
            hotSwap: u.hotSwap,
            swapMin: u.swapMin,
            stretches: drainOf(day, u),
          }),
        ),
      ...sharedPacks(plan).map((s) => sharedUnit(day, s)),
    ],
    pools: poolsOf(plan, units),
    bays: baysFor(plan, packs),
    swapAt: swapAt(plan),
    ...chargeShape(plan),
  };
  memo.set(day, rotation);
  return rotation;
};

/** Packs at hand of every pool; as many as are needed where the plan has no stock. */
export const supplyOf =
  (r: Rotation) =>
  (pool: string): number =>
    r.pools.find((p) => p.id === pool)?.packs ?? Number.POSITIVE_INFINITY;
