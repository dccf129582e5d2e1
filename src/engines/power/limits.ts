import { bypassVa, hasBypass } from '../../derive/bypass.ts';
import { limitOf, limitsOf } from '../../derive/limits.ts';
import { isNotContinuous } from '../../derive/loaded-hours.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import { balancedV } from '../../derive/systems.ts';
import type { CurrentLimit } from '../../derive/types.ts';
import { connector } from '../../plan/connectors.ts';
import type { CableKind } from '../../plan/kinds/kinds.ts';
import { outletSockets } from '../../plan/outlet-sockets.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../../plan/plan.ts';
import type { Cable } from '../../plan/records/index.ts';
import { type CableAmpacity, cableAmpacity } from './ampacity.ts';
import { loadedNeutrals } from './nonlinear.ts';
import { positive, sourceRating } from './rating.ts';

/** What limits the current of a node's legs and of its neutral. */
export interface NodeLimits {
  readonly leg: CurrentLimit | undefined;
  readonly neutral: CurrentLimit | undefined;
  /** Rating of the smallest breaker on the way from the source, this node's own included; undefined where there is none. */
  readonly aheadA: number | undefined;
  readonly aheadKey: string | undefined;
}

const least = (limits: readonly (CurrentLimit | undefined)[]): CurrentLimit | undefined => {
  let first: CurrentLimit | undefined;
  let planningA: number | undefined;
  for (const l of limits) {
    if (!l) continue;
    if (!first || l.limitA < first.limitA) first = l;
    if (l.planningA !== undefined) planningA = Math.min(planningA ?? l.planningA, l.planningA);
  }
  if (!first || planningA === undefined) return first;
  return { ...first, planningA: Math.min(planningA, first.limitA) };
};

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
    const usual = limit(ratingA as number, value('breaker-load-factor'), setBy, 'breaker-load-factor');
    if (!short || !isNotContinuous(plan, n.key)) return usual;
    const row = 'breaker-short-load-factor';
    return { ...limit(ratingA as number, value(row), setBy, row), planningA: usual.limitA };
  };
  const plugs = (n: SupplyNode, factor: string, setBy: string): CurrentLimit | undefined =>
    least(
      n.connectors.map((id) => {
        const ratingA = positive(connector(id)?.ratingA);
        return ratingA === undefined ? undefined : limit(ratingA, value(factor), setBy, factor);
      }),
    );
  // Each plug of a plate is judged by itself, at its cable; all together carry more than one socket's rating.
  const severalSockets = (n: SupplyNode, one: CurrentLimit | undefined): CurrentLimit | undefined => {
    const outlet = one && recordOf(plan, 'outlet', n.recordId);
    const total = 'outlet-sockets-total';
    return outlet && one.limitA < value(total) && outletSockets(outlet).count > 1
      ? limit(value(total), 1, 'outlet', total)
      : one;
  };
  const neutrals = loadedNeutrals(plan, tree);
  // Cables of one kind that lie alone have the same ampacity: reckoned once.
  const alone = new Map<CableKind, CableAmpacity>();
  const ampacityOf = (kind: CableKind, cable: Cable, n: SupplyNode): CableAmpacity => {
    const fourth = n.legs.length === 3 && neutrals(n);
    if (cable.bundled !== undefined || cable.onDrum !== undefined || fourth)
      return cableAmpacity(plan, kind, cable, fourth);
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
      case 'way': {
        leg = least([
          breaker(n, n.way?.breakerA, 'breaker'),
          n.dimmer &&
            limit(
              n.dimmer.wayW / (n.branches[0]?.nominalV ?? Number.NaN),
              value('dimmer-load-factor'),
              'dimmer',
              'dimmer-load-factor',
            ),
          n.transformer &&
            limit(
              n.transformer.ratedVa / balancedV(n.transformer.shape),
              value('transformer-load-factor'),
              'transformer',
              'transformer-load-factor',
            ),
        ]);
        // The middle or star point is made for the amps of a leg.
        neutral = n.transformer && leg;
        ownA = positive(n.way?.breakerA);
        break;
      }
      case 'box': {
        const box = recordOf(plan, 'box', n.recordId);
        const ownAmps = positive(box && kindOf(plan, box.kindId, 'adapter')?.ampacityA);
        const wires =
          ownAmps === undefined
            ? undefined
            : limit(ownAmps, value('cable-load-factor'), 'adapter', 'cable-load-factor');
        const converter = box && kindOf(plan, box.kindId, 'converter');
        const through =
          hasBypass(converter) && n.branches.length > 0
            ? limit(
                bypassVa(converter) / (n.branches.length * (n.branches[0]?.nominalV ?? Number.NaN)),
                value('transformer-load-factor'),
                'inverter',
                'transformer-load-factor',
              )
            : undefined;
        leg = least([
          breaker(n, n.mainBreakerA, 'main-breaker'),
          plugs(n, 'connector-load-factor', 'connector'),
          wires,
          through,
        ]);
        neutral = least([plugs(n, 'neutral-load-factor', 'connector'), wires]);
        ownA = positive(n.mainBreakerA);
        break;
      }
      case 'outlet':
        leg = severalSockets(n, plugs(n, 'connector-load-factor', 'outlet'));
        neutral = severalSockets(n, plugs(n, 'neutral-load-factor', 'outlet'));
        break;
      case 'load':
        leg = plugs(n, 'connector-load-factor', 'connector');
        neutral = plugs(n, 'neutral-load-factor', 'connector');
        break;
      case 'cable': {
        const cable = recordOf(plan, 'cable', n.recordId);
        const kind = cable && kindOf(plan, cable.kindId, 'cable');
        const a = kind && positive(kind.ampacityA) !== undefined ? ampacityOf(kind, cable, n) : undefined;
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
    const aheadA = aheadOf(n, up?.aheadA);
    const nearer = ownA !== undefined && !(aheadA !== undefined && aheadA <= ownA);
    // The very object where nothing came out differently, so that what is made from it can stay.
    if (before && before.leg?.limitA === leg?.limitA && before.leg?.rule === leg?.rule) {
      out.push(before);
      continue;
    }
    out.push({
      leg,
      neutral: n.neutral ? neutral : undefined,
      aheadA: nearer ? ownA : aheadA,
      aheadKey: nearer ? n.key : aheadA === undefined ? undefined : up?.aheadKey,
    });
  }
  return out;
};

/** The breaker ahead as it guards a node: through a transformer by its ratio, and only where one leg goes in and one comes out. */
const aheadOf = (n: SupplyNode, aheadA: number | undefined): number | undefined => {
  if (!n.transformer || aheadA === undefined) return aheadA;
  return n.transformer.twoWire ? aheadA / n.transformer.ratio : undefined;
};

const limit = (ratingA: number, factor: number, setBy: string, rule: string): CurrentLimit => ({
  limitA: ratingA * factor,
  ratingA,
  setBy,
  rule,
});
