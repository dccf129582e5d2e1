import {
  ambientFactor,
  circuitsFactor,
  conductor,
  conductorsFactor,
  drumFactor,
  threeLoadedA,
} from '../../derive/conductors.ts';
import { limitOf, limitsOf } from '../../derive/limits.ts';
import { isNotContinuous } from '../../derive/loaded-hours.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import { balancedV, systemShape } from '../../derive/systems.ts';
import type { CurrentLimit } from '../../derive/types.ts';
import { connector } from '../../plan/connectors.ts';
import type { CableKind } from '../../plan/kinds/kinds.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Cable } from '../../plan/records/index.ts';

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
  const kind = record && kindOf(plan, record.kindId, 'source');
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

const positive = (n: number | undefined): number | undefined =>
  n !== undefined && Number.isFinite(n) && n > 0 ? n : undefined;

/** Ampacity of one cable and how it came about. */
export interface CableAmpacity {
  readonly legA: number;
  readonly neutralA: number;
  /** Product of the three factors below. */
  readonly factor: number;
  readonly ambient: number;
  readonly grouping: number;
  readonly drum: number;
  /** Ampacity of one conductor before the factors: of the kind, or its value for three loaded conductors in a bundle. */
  readonly baseA: number;
  /** Loaded conductors in the bundle (North America) or cables in it (Europe). */
  readonly together: number;
}

/**
 * Ampacity in A of a cable's leg and neutral, parallel conductors, ambient, bundle and drum counted, before the practice's
 * rule. Without the cable's record it lies on its own and off the drum.
 */
export const cableAmpacity = (
  plan: Plan,
  kind: CableKind,
  cable?: Pick<Cable, 'bundled' | 'onDrum'>,
): CableAmpacity => {
  const { practice, ambientC } = planRecord(plan);
  const ambient = ambientFactor(ambientC);
  const bundled = Math.max(1, cable?.bundled ?? 1);
  const loadedEach = kind.legs + (kind.neutral && kind.legs < 3 ? 1 : 0);
  const together = practice === 'europe' ? bundled : bundled * loadedEach;
  const alone = bundled === 1;
  const grouping = alone ? 1 : practice === 'europe' ? circuitsFactor(together) : conductorsFactor(together);
  const three = alone || practice === 'europe' ? undefined : threeLoadedA(kind.conductor, kind.ampacityA);
  const baseA = Math.min(kind.ampacityA, three ?? kind.ampacityA);
  const drum = drumFactor(cable?.onDrum ?? 0);
  const factor = ambient * grouping * drum;
  const legA = baseA * Math.max(1, kind.parallel) * factor;
  const leg = conductor(kind.conductor);
  const neutral = kind.neutralConductor ? conductor(kind.neutralConductor) : leg;
  // A thinner neutral is scaled by its area, a cautious measure; a thicker one is not counted in favour.
  const scale = leg && neutral ? Math.min(1, neutral.areaMm2 / leg.areaMm2) : 1;
  return { legA, neutralA: legA * scale, factor, ambient, grouping, drum, baseA, together };
};

const least = (limits: readonly (CurrentLimit | undefined)[]): CurrentLimit | undefined =>
  limits.reduce((a, b) => (b && (!a || b.limitA < a.limitA) ? b : a), undefined);

/** Whether two plans have the same levels, setups, blocks and units, so that circuits are loaded for the same hours. */
const sameDay = (a: Plan, b: Plan): boolean =>
  (['level', 'setup', 'block'] as const).every((type) => {
    const [x, y] = [recordsOf(a, type), recordsOf(b, type)];
    return x === y || (x.length === y.length && x.every((r, i) => r === y[i]));
  }) &&
  recordsOf(a, 'fixture').length === recordsOf(b, 'fixture').length &&
  recordsOf(a, 'fixture').every((f, i) => f.id === recordsOf(b, 'fixture')[i]?.id);

const guardsByBreaker = (n: SupplyNode): boolean =>
  n.what === 'source' || n.what === 'way' || n.what === 'box';

/** Limits of every node, in tree order. Nodes taken over from an earlier tree under the same plan record keep theirs. */
export const nodeLimits = (
  plan: Plan,
  tree: SupplyTree,
  previous?: { readonly plan: Plan; readonly tree: SupplyTree; readonly limits: readonly NodeLimits[] },
): readonly NodeLimits[] => {
  const old = previous && planRecord(previous.plan) === planRecord(plan) ? previous : undefined;
  const rows = limitsOf(plan);
  const known = new Map<string, number>();
  const value = (id: string): number => {
    let v = known.get(id);
    if (v === undefined) {
      v = rows.get(id)?.value ?? limitOf(plan, id).value;
      known.set(id, v);
    }
    return v;
  };
  const short = limitsOf(plan).has('breaker-short-load-factor');
  const breaker = (n: SupplyNode, ratingA: number | undefined, setBy: string): CurrentLimit | undefined => {
    if (positive(ratingA) === undefined) return undefined;
    // By the shooting day alone a load counts as less than continuous.
    const row = short && isNotContinuous(plan, n.key) ? 'breaker-short-load-factor' : 'breaker-load-factor';
    return limit(ratingA as number, value(row), setBy, row);
  };
  const plugs = (n: SupplyNode, factor: string, setBy: string): CurrentLimit | undefined =>
    least(
      n.connectors.map((id) => {
        const ratingA = positive(connector(id)?.ratingA);
        return ratingA === undefined ? undefined : limit(ratingA, value(factor), setBy, factor);
      }),
    );
  // Cables of one kind that lie alone have the same ampacity: reckoned once.
  const alone = new Map<CableKind, CableAmpacity>();
  const ampacityOf = (kind: CableKind, cable: Cable): CableAmpacity => {
    if (cable.bundled !== undefined || cable.onDrum !== undefined) return cableAmpacity(plan, kind, cable);
    let a = alone.get(kind);
    if (!a) {
      a = cableAmpacity(plan, kind);
      alone.set(kind, a);
    }
    return a;
  };
  // Where hours of the shooting day ease a breaker, its limit hangs on levels, setups, blocks and all units of a circuit.
  const dayKept = !short || (old !== undefined && sameDay(old.plan, plan));
  const out: NodeLimits[] = [];
  for (const n of tree.nodes) {
    const before = old?.tree.nodes[n.index] === n ? old.limits[n.index] : undefined;
    const kept = dayKept || !guardsByBreaker(n) ? before : undefined;
    if (kept) {
      out.push(kept);
      continue;
    }
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
            : limit(
                rating.legA,
                value('generator-leg-factor') * rating.share,
                'generator',
                'generator-leg-factor',
              );
        leg = least([set, breaker(n, n.mainBreakerA, 'main-breaker')]);
        neutral =
          rating.legA === undefined
            ? undefined
            : limit(
                rating.legA,
                value('generator-neutral-factor') * rating.share,
                'generator',
                'generator-neutral-factor',
              );
        ownA = positive(n.mainBreakerA);
        break;
      }
      case 'way':
        leg = breaker(n, n.way?.breakerA, 'breaker');
        ownA = positive(n.way?.breakerA);
        break;
      case 'box':
        leg = least([
          breaker(n, n.mainBreakerA, 'main-breaker'),
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
        const a = kind && positive(kind.ampacityA) !== undefined ? ampacityOf(kind, cable) : undefined;
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
    // The very object where nothing came out differently, so that what is made from it can stay.
    if (before && before.leg?.limitA === leg?.limitA && before.leg?.rule === leg?.rule) {
      out.push(before);
      continue;
    }
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
