import { limitOf } from '../../derive/limits.ts';
import { type Day, stretchesOf } from '../../derive/schedule.ts';
import type { Plan } from '../../plan/plan.ts';
import { runtimeAt } from './model.ts';
import type { UnitSpan } from './rotation-types.ts';
import type { BatteryUnit } from './types.ts';

/** A stretch in which a unit charges on its own lead. */
export interface OwnCharge {
  readonly startMin: number;
  readonly endMin: number;
  readonly fromSoc: number;
  readonly toSoc: number;
}

/** One unit's day on its own cells. */
export interface OwnCellsDay {
  readonly spans: readonly Omit<UnitSpan, 'unit'>[];
  readonly charges: readonly OwnCharge[];
  readonly darkMin: number | undefined;
}

/**
 * A unit that starts full and burns on its own cells at planning values. With `recharge` it is plugged in whenever it is off
 * between its first and its last minute, and takes up charge at an even rate.
 */
export const ownCellsDay = (plan: Plan, day: Day, u: BatteryUnit): OwnCellsDay => {
  const spans: Omit<UnitSpan, 'unit'>[] = [];
  const charges: OwnCharge[] = [];
  const chargeMin = u.fixture.ownCells?.chargeMin ?? limitOf(plan, 'battery-own-charge').value;
  let soc = 1;
  let until: number | undefined;
  let darkMin: number | undefined;
  for (const s of stretchesOf(day, u.fixture.id)) {
    if (until !== undefined && s.startMin > until && u.fixture.ownCells?.when === 'recharge') {
      const toSoc = Math.min(1, soc + (s.startMin - until) / Math.max(1, chargeMin));
      if (toSoc > soc) charges.push({ startMin: until, endMin: s.startMin, fromSoc: soc, toSoc });
      soc = toSoc;
    }
    const minutes = runtimeAt(u, s.levelPct).minutes.plan;
    const runs = Number.isFinite(minutes) ? soc * minutes : Number.POSITIVE_INFINITY;
    const lit = Math.min(s.endMin, s.startMin + runs);
    const rest = { packs: [], levelPct: s.levelPct, setupId: s.setupId };
    const toSoc = Number.isFinite(minutes) ? Math.max(0, soc - (lit - s.startMin) / minutes) : soc;
    if (lit > s.startMin)
      spans.push({ ...rest, startMin: s.startMin, endMin: lit, state: 'burning', fromSoc: soc, toSoc });
    soc = toSoc;
    if (lit < s.endMin - 1e-9) {
      darkMin ??= lit;
      spans.push({ ...rest, startMin: lit, endMin: s.endMin, state: 'dark', fromSoc: 0, toSoc: 0 });
    }
    until = s.endMin;
  }
  return { spans, charges, darkMin };
};
