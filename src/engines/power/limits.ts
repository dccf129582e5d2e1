import { ambientFactor, conductor } from '../../derive/conductors.ts';
import { limitOf } from '../../derive/limits.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import { balancedV, systemShape } from '../../derive/systems.ts';
import type { CurrentLimit } from '../../derive/types.ts';
import { connector } from '../../plan/connectors.ts';
import type { CableKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, planRecord, recordOf } from '../../plan/plan.ts';

/** What limits the current of a node's legs and of its neutral. */
export interface NodeLimits {
  readonly leg: CurrentLimit | undefined;
  readonly neutral: CurrentLimit | undefined;
  /** Rating of the smallest breaker on the way from the source, this node's own included; undefined where there is none. */
  readonly aheadA: number | undefined;
  readonly aheadKey: string | undefined;
}

/** Rated kilowatts and kVA of a source, the one that is not given derived from the other. */
export interface Rating {
  readonly kw: number | undefined;
  readonly kva: number | undefined;
  readonly derived: 'kw' | 'kva' | undefined;
  readonly legA: number | undefined;
}

export const sourceRating = (plan: Plan, sourceId: string): Rating => {
  const record = recordOf(plan, 'source', sourceId);
  const kind = record && kindOf(plan, record.kindId, 'source');
  const kwGiven = positive(record?.ratedKw) ?? positive(kind?.ratedKw);
  const kvaGiven = positive(record?.ratedKva) ?? positive(kind?.ratedKva);
  const pf = limitOf(plan, 'generator-rating-pf').value;
  const kva = kvaGiven ?? (kwGiven === undefined ? undefined : kwGiven / pf);
  const kw = kwGiven ?? (kvaGiven === undefined ? undefined : kvaGiven * pf);
  const shape = kind && systemShape(kind.system);
  return {
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

const positive = (n: number | undefined): number | undefined =>
  n !== undefined && Number.isFinite(n) && n > 0 ? n : undefined;

/** Ampacity in A of a cable's leg and neutral, parallel conductors and ambient counted, before the practice's rule. */
export const cableAmpacity = (
  plan: Plan,
  kind: CableKind,
): { readonly legA: number; readonly neutralA: number; readonly factor: number } => {
  const factor = ambientFactor(planRecord(plan).ambientC);
  const legA = kind.ampacityA * Math.max(1, kind.parallel) * factor;
  const leg = conductor(kind.conductor);
  const neutral = kind.neutralConductor ? conductor(kind.neutralConductor) : leg;
  // A thinner neutral is scaled by its area, a cautious measure; a thicker one is not counted in favour.
  const scale = leg && neutral ? Math.min(1, neutral.areaMm2 / leg.areaMm2) : 1;
  return { legA, neutralA: legA * scale, factor };
};

const least = (limits: readonly (CurrentLimit | undefined)[]): CurrentLimit | undefined =>
  limits.reduce((a, b) => (b && (!a || b.limitA < a.limitA) ? b : a), undefined);

/** Limits of every node, in tree order. */
export const nodeLimits = (plan: Plan, tree: SupplyTree): readonly NodeLimits[] => {
  const value = (id: string): number => limitOf(plan, id).value;
  const breaker = (ratingA: number | undefined, setBy: string): CurrentLimit | undefined =>
    positive(ratingA) === undefined
      ? undefined
      : limit(ratingA as number, value('breaker-load-factor'), setBy, 'breaker-load-factor');
  const plugs = (n: SupplyNode, factor: string, setBy: string): CurrentLimit | undefined =>
    least(
      n.connectors.map((id) => {
        const ratingA = positive(connector(id)?.ratingA);
        return ratingA === undefined ? undefined : limit(ratingA, value(factor), setBy, factor);
      }),
    );
  const out: NodeLimits[] = [];
  for (const n of tree.nodes) {
    const up = out[n.parent];
    let leg: CurrentLimit | undefined;
    let neutral: CurrentLimit | undefined;
    let ownA: number | undefined;
    switch (n.what) {
      case 'source': {
        const rating = sourceRating(plan, n.recordId);
        const set =
          rating.legA === undefined
            ? undefined
            : limit(rating.legA, value('generator-leg-factor'), 'generator', 'generator-leg-factor');
        leg = least([set, breaker(n.mainBreakerA, 'main-breaker')]);
        neutral =
          rating.legA === undefined
            ? undefined
            : limit(rating.legA, value('generator-neutral-factor'), 'generator', 'generator-neutral-factor');
        ownA = positive(n.mainBreakerA);
        break;
      }
      case 'way':
        leg = breaker(n.way?.breakerA, 'breaker');
        ownA = positive(n.way?.breakerA);
        break;
      case 'box':
        leg = least([
          breaker(n.mainBreakerA, 'main-breaker'),
          plugs(n, 'connector-load-factor', 'connector'),
        ]);
        neutral = plugs(n, 'neutral-load-factor', 'connector');
        ownA = positive(n.mainBreakerA);
        break;
      case 'outlet':
        leg = plugs(n, 'connector-load-factor', 'outlet');
        neutral = plugs(n, 'neutral-load-factor', 'outlet');
        break;
      case 'load':
        leg = plugs(n, 'connector-load-factor', 'connector');
        neutral = plugs(n, 'neutral-load-factor', 'connector');
        break;
      case 'cable': {
        const cable = recordOf(plan, 'cable', n.recordId);
        const kind = cable && kindOf(plan, cable.kindId, 'cable');
        const a = kind && positive(kind.ampacityA) !== undefined ? cableAmpacity(plan, kind) : undefined;
        leg = least([
          a && limit(a.legA, value('cable-load-factor'), 'cable', 'cable-load-factor'),
          plugs(n, 'connector-load-factor', 'connector'),
        ]);
        neutral = least([
          a && limit(a.neutralA, value('neutral-load-factor'), 'cable', 'neutral-load-factor'),
          plugs(n, 'neutral-load-factor', 'connector'),
        ]);
        break;
      }
    }
    const nearer = ownA !== undefined && !(up?.aheadA !== undefined && up.aheadA <= ownA);
    out.push({
      leg,
      neutral: n.neutral ? neutral : undefined,
      aheadA: nearer ? ownA : up?.aheadA,
      aheadKey: nearer ? n.key : up?.aheadKey,
    });
  }
  return out;
};

const limit = (ratingA: number, factor: number, setBy: string, rule: string): CurrentLimit => ({
  limitA: ratingA * factor,
  ratingA,
  setBy,
  rule,
});
