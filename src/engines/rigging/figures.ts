import { limitOf } from '../../derive/limits.ts';
import type { Id } from '../../kernel/ids.ts';
import type { Plan } from '../../plan/plan.ts';
import { guyPullN, WIND_SPEEDS_MPS } from './calc.ts';
import { type RiggingUse, riggingUses } from './lifts.ts';
import { type Base, type Factors, type Model, modelOf, type Sail, type StandUse } from './model.ts';
import {
  bagsFor,
  liftForceN,
  momentsAt,
  sailForceN,
  sideForceN,
  type Tipping,
  tippingOf,
} from './tipping.ts';

/** A frame at one speed of wind. */
export interface WindLine {
  readonly speedMps: number;
  readonly forceN: number;
  /** The part that lifts it; 0 on an upright one. */
  readonly liftN: number;
  /** NaN where it stands on nothing in the plan. */
  readonly tipFactor: number;
  readonly bagsPerStand: number;
  /** Pull in one windward line; infinite without lines. */
  readonly guyN: number;
}

export interface RiggingResult {
  readonly model: Model;
  /** By stand and by grip: how what it is part of stands up. */
  readonly tipping: ReadonlyMap<Id, Tipping>;
  readonly stands: ReadonlyMap<Id, StandUse>;
  readonly sails: ReadonlyMap<Id, Sail>;
  readonly rigging: ReadonlyMap<Id, RiggingUse>;
}

const memo = new WeakMap<Plan, RiggingResult>();
const tippings = new WeakMap<Base, { readonly factors: Factors; readonly tipping: Tipping }>();

/** How a base stands, reckoned once while it and the factors are the same objects. */
const tippingOnce = (model: Model, base: Base): Tipping => {
  const last = tippings.get(base);
  if (last?.factors === model.factors) return last.tipping;
  const tipping = tippingOf(model, base);
  tippings.set(base, { factors: model.factors, tipping });
  return tipping;
};

/** Everything the stands engine computes from a plan, once per plan. */
export const computeRigging = (plan: Plan): RiggingResult => {
  const known = memo.get(plan);
  if (known) return known;
  const model = modelOf(plan);
  const tipping = new Map<Id, Tipping>();
  for (const base of model.bases) {
    const t = tippingOnce(model, base);
    for (const u of base.uses) tipping.set(u.stand.id, t);
    for (const s of base.sails) tipping.set(s.grip.id, t);
  }
  const result: RiggingResult = {
    model,
    tipping,
    stands: model.uses,
    sails: model.sails,
    rigging: new Map(riggingUses(plan).map((u) => [u.rigging.id, u])),
  };
  memo.set(plan, result);
  return result;
};

/** Height of a frame's top edge: its middle and half its own height, less where it leans. */
export const topOf = (s: Sail): number =>
  s.grip.heightMm + ((s.kind.sizeMm.heightMm ?? 0) / 2) * Math.cos((s.tiltDeg * Math.PI) / 180);

/** Pull in one windward line of a frame at a speed. */
export const guyAt = (m: Model, s: Sail, speedMps: number): number =>
  guyPullN(
    (sideForceN(m.factors, s, speedMps) * Math.max(0, s.grip.heightMm)) / 1000,
    topOf(s),
    s.grip.guys,
    limitOf(m.plan, 'rigging-guy-angle').value,
    liftForceN(m.factors, s, speedMps),
  );

/** A frame at a speed of wind. */
export const windLine = (r: RiggingResult, s: Sail, speedMps: number): WindLine => {
  const base: Base | undefined = r.tipping.get(s.grip.id)?.base;
  const moments = base && momentsAt(r.model, base, speedMps);
  return {
    speedMps,
    forceN: sailForceN(r.model.factors, s, speedMps),
    liftN: liftForceN(r.model.factors, s, speedMps),
    tipFactor: moments?.factor ?? Number.NaN,
    bagsPerStand: base && moments ? bagsFor(r.model, base, moments) : Number.NaN,
    guyN: guyAt(r.model, s, speedMps),
  };
};

/** A frame at the table of speeds, to be shown where the plan does not give the wind. */
export const windTable = (r: RiggingResult, s: Sail): readonly WindLine[] =>
  WIND_SPEEDS_MPS.map((v) => windLine(r, s, v));
