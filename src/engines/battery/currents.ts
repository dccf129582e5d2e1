import type { PackKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan } from '../../plan/plan.ts';
import { inrushOf } from './inrush.ts';
import { batteryUnits, drawAt } from './model.ts';
import { fullLoad, type SharedPack, sharedPacks } from './shared.ts';
import type { BatteryUnit } from './types.ts';

/** What each of some packs gives with all they feed at full and the packs nearly empty, and what it may. */
export interface PackCurrents {
  /** The unit the packs are on, or the pack on the floor. */
  readonly recordId: string;
  readonly label: string;
  readonly pack: PackKind;
  readonly count: number;
  readonly units: readonly BatteryUnit[];
  /** For long: watts drawn from the packs together, amps of one of them. */
  readonly watts: number;
  readonly amps: number;
  /** Amps one plate of the unit carries for long, where its kind says so and nothing is between. */
  readonly plateA: number | undefined;
  /** For a moment, the unit with the greatest inrush switched on last; undefined where nothing more is taken. */
  readonly inrush:
    | {
        readonly unit: BatteryUnit;
        readonly multiple: number;
        readonly inverter: boolean;
        readonly watts: number;
        readonly amps: number;
      }
    | undefined;
}

const currents = (
  plan: Plan,
  recordId: string,
  label: string,
  pack: PackKind,
  count: number,
  units: readonly BatteryUnit[],
  watts: number,
): PackCurrents => {
  const [worst] = units
    .flatMap((unit) => {
      const i = inrushOf(plan, unit);
      return i ? [{ unit, ...i, extraW: i.watts - drawAt(unit, 100).packW }] : [];
    })
    .filter((x) => x.extraW > 0)
    .sort((a, b) => b.extraW - a.extraW);
  const [only] = units;
  const own = only && !only.floorPack ? only.fixture : undefined;
  return {
    recordId,
    label,
    pack,
    count,
    units,
    watts,
    amps: watts / count / pack.emptyV,
    plateA:
      own && own.packs?.converterId === undefined
        ? kindOf(plan, own.kindId, 'fixture')?.packIn?.maxA
        : undefined,
    inrush: worst && {
      unit: worst.unit,
      multiple: worst.multiple,
      inverter: worst.inverter,
      watts: watts + worst.extraW,
      amps: (watts + worst.extraW) / count / pack.emptyV,
    },
  };
};

/** Currents of a unit's own packs; undefined for one on a pack on the floor, on its own cells, or that cannot be reckoned. */
export const unitCurrents = (plan: Plan, u: BatteryUnit): PackCurrents | undefined => {
  if (u.problem !== undefined || u.mode !== 'packs' || !u.pack || u.floorPack) return undefined;
  const watts = drawAt(u, 100).packW;
  return Number.isFinite(watts)
    ? currents(plan, u.fixture.id, u.label, u.pack, u.count, [u], watts)
    : undefined;
};

/** Currents of a pack on the floor, over the sum of its units. */
export const sharedCurrents = (plan: Plan, s: SharedPack): PackCurrents | undefined => {
  const pack = kindOf(plan, s.record.kindId, 'pack');
  return pack && currents(plan, s.record.id, s.label, pack, s.record.count, s.units, fullLoad(s).watts);
};

/** Currents by the id of a fixture or of a pack on the floor. */
export const packCurrents = (plan: Plan, id: string): PackCurrents | undefined => {
  const u = batteryUnits(plan).find((x) => x.fixture.id === id);
  if (u) return unitCurrents(plan, u);
  const s = sharedPacks(plan).find((x) => x.record.id === id);
  return s && sharedCurrents(plan, s);
};
