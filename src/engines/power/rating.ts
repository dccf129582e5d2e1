import { limitOf } from '../../derive/limits.ts';
import { rootKind } from '../../derive/supply-roots.ts';
import { balancedV, systemShape } from '../../derive/systems.ts';
import { type Plan, planRecord, recordOf } from '../../plan/plan.ts';

/** Rated kilowatts and kVA of a source, the one that is not given derived from the other. */
export interface Rating {
  readonly kw: number | undefined;
  readonly kva: number | undefined;
  readonly derived: 'kw' | 'kva' | undefined;
  /** Rated kVA of one leg over its volts, before derating. */
  readonly legA: number | undefined;
  /** Share of the rating the set gives where it stands: by its maker where the plan says so, else by height and heat. */
  readonly share: number;
  readonly shareFrom: 'rating' | 'plan' | 'table';
}

/**
 * Share of its rating a set gives at a height above the sea and in warm air: so much less per 500 m and per 5 °C beyond
 * where it begins, the two multiplied. Rules differ from maker to maker.
 */
export const deratingShare = (plan: Plan, altitudeM: number, airC: number): number => {
  const value = (id: string): number => limitOf(plan, id).value;
  const high = Math.max(0, altitudeM - value('derate-altitude-from')) / 500;
  const warm = Math.max(0, airC - value('derate-air-from')) / 5;
  return Math.max(
    0,
    (1 - (value('derate-altitude') * high) / 100) * (1 - (value('derate-air') * warm) / 100),
  );
};

export const sourceRating = (plan: Plan, sourceId: string): Rating => {
  const record = recordOf(plan, 'source', sourceId);
  const kind = rootKind(plan, sourceId);
  const kwGiven = positive(record?.ratedKw) ?? positive(kind?.ratedKw);
  const kvaGiven = positive(record?.ratedKva) ?? positive(kind?.ratedKva);
  const pf = limitOf(plan, 'generator-rating-pf').value;
  const kva = kvaGiven ?? (kwGiven === undefined ? undefined : kwGiven / pf);
  const kw = kwGiven ?? (kvaGiven === undefined ? undefined : kvaGiven * pf);
  const shape = kind && systemShape(kind.system);
  const { altitudeM, ambientC } = planRecord(plan);
  const own = positive(record?.ratingShare);
  const table = kind?.what === 'generator' ? deratingShare(plan, altitudeM ?? 0, ambientC) : 1;
  return {
    share: own ?? table,
    shareFrom: own !== undefined ? 'plan' : table < 1 ? 'table' : 'rating',
    kw,
    kva,
    derived:
      kw === undefined
        ? undefined
        : kwGiven === undefined
          ? 'kw'
          : kvaGiven === undefined
            ? 'kva'
            : undefined,
    legA: kva === undefined || !shape ? undefined : (kva * 1000) / balancedV(shape),
  };
};

/** The number where it is one above nothing. */
export const positive = (n: number | undefined): number | undefined =>
  n !== undefined && Number.isFinite(n) && n > 0 ? n : undefined;
