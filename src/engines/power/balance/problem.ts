import { cableLength } from '../../../derive/lengths.ts';
import { isShortAltogether } from '../../../derive/loaded-hours.ts';
import type { SupplyNode } from '../../../derive/supply-types.ts';
import { systemShape } from '../../../derive/systems.ts';
import type { Id } from '../../../kernel/ids.ts';
import { mates } from '../../../plan/connectors.ts';
import { kindOf, type Plan, recordOf } from '../../../plan/plan.ts';
import { autoRoute, placeOf } from '../../../plan/ports.ts';
import type { Cable, PortRef } from '../../../plan/records/index.ts';
import type { Computed } from '../types.ts';
import { nominalAmps, type Place, placesOf, zoneRoots } from './places.ts';
import type { BalanceProblem, Plug, Slot } from './types.ts';

/** A problem with what its numbers stand for. */
export interface SourceProblem {
  readonly sourceId: Id;
  /** The source, or the output of a transformer. */
  readonly root: SupplyNode;
  readonly problem: BalanceProblem;
  readonly places: readonly Place[];
  readonly cables: readonly Cable[];
  /** Nodes by thing number. */
  readonly things: readonly SupplyNode[];
}

/** Length of a run in mm if it started somewhere else, on an automatic route; undefined where an end has no place. */
export const runFrom = (plan: Plan, cable: Cable, from: PortRef): number | undefined => {
  const a = placeOf(plan, from.recordId);
  const b = placeOf(plan, cable.to.recordId);
  if (!a || !b) return undefined;
  const route = { auto: true, points: [...autoRoute(a.at, b.at)] };
  return cableLength(plan, { ...cable, from, route })?.neededMm;
};

/**
 * What can be balanced on one source, or behind one transformer (by the key of its output): plugs of cables that lead to loads and nothing else, are not locked and start at an
 * outlet with a breaker. A plug may go to any outlet on a way of the same source that takes it, has its legs, and is either
 * on the same thing or within reach of the cable as it is.
 */
export const balanceProblem = (c: Computed, rootKey: string): SourceProblem | undefined => {
  const source = c.tree.byKey.get(rootKey);
  const shape = source?.transformer?.shape ?? (source?.system && systemShape(source.system));
  const sourceId = source?.sourceId;
  if (!source || !shape || sourceId === undefined || source.notComputed !== undefined) return undefined;
  const roots = zoneRoots(c.tree);
  const setups = c.setups.length;
  const amps = nominalAmps(c);
  const places = placesOf(c, sourceId).filter((p) => p.chain.at(-1) === source);
  const placeAt = new Map(places.map((p, i) => [`${p.ref.recordId}/${p.ref.portId}`, i]));
  const movable = movableCables(c, source, roots, placeAt);
  const things: SupplyNode[] = [source];
  const thingAt = new Map([[source.index, 0]]);
  for (const p of places)
    for (const n of p.chain)
      if (!thingAt.has(n.index)) {
        thingAt.set(n.index, things.length);
        things.push(n);
      }
  // Which plug each load moves with.
  const owner = new Int32Array(c.tree.nodes.length).fill(-1);
  movable.forEach((m, i) => {
    owner[m.node.index] = i;
  });
  for (const n of c.tree.nodes)
    if (n.parent >= 0 && owner[n.index] === -1) owner[n.index] = owner[n.parent] as number;
  const fixedA = new Float64Array(things.length * shape.legs * setups);
  const fixedNeutral = new Float64Array(setups * 2);
  const plugAmps = movable.map((m) => new Float64Array(setups * m.node.legs.length));
  const plugNeutral = movable.map((m) => new Float64Array(setups * m.node.legs.length * 2));
  for (const n of c.tree.nodes) {
    if (roots[n.index] !== source.index || (n.branches.length === 0 && !amps.through[n.index])) continue;
    const own = owner[n.index] as number;
    for (let l = 0; l < shape.legs; l++)
      for (let s = 0; s < setups; s++) {
        const at = (n.index * 3 + l) * setups + s;
        const a = amps.legA[at] as number;
        const [re, im] = [amps.neutral[at * 2] as number, amps.neutral[at * 2 + 1] as number];
        if (a === 0 && re === 0 && im === 0) continue;
        const m = movable[own];
        if (m) {
          const width = m.node.legs.length;
          const k = m.node.legs.indexOf(l);
          const to = plugAmps[own];
          const toN = plugNeutral[own];
          if (k < 0 || !to || !toN) continue;
          to[s * width + k] = (to[s * width + k] as number) + a;
          toN[(s * width + k) * 2] = (toN[(s * width + k) * 2] as number) + re;
          toN[(s * width + k) * 2 + 1] = (toN[(s * width + k) * 2 + 1] as number) + im;
          continue;
        }
        for (
          let up: SupplyNode | undefined = n;
          up;
          up = up === source ? undefined : c.tree.nodes[up.parent]
        ) {
          const t = thingAt.get(up.index);
          if (t === undefined) continue;
          const r = (t * shape.legs + l) * setups + s;
          fixedA[r] = (fixedA[r] as number) + a;
        }
        const angle = shape.anglesRad[l] ?? 0;
        fixedNeutral[s * 2] = (fixedNeutral[s * 2] as number) + re * Math.cos(angle) - im * Math.sin(angle);
        fixedNeutral[s * 2 + 1] =
          (fixedNeutral[s * 2 + 1] as number) + re * Math.sin(angle) + im * Math.cos(angle);
      }
  }
  const moving = new Set(movable.map((m) => m.cable.id));
  // Where nothing on the source burns for long, no move makes a breaker's load continuous.
  const asItIs = isShortAltogether(c.plan, source.key);
  const held = heldPlugs(c, moving);
  const slots: Slot[] = places.map((p) => ({
    key: `${p.ref.recordId}/${p.ref.portId}`,
    way: thingAt.get(p.way.index) ?? 0,
    chain: p.chain.map((n) => thingAt.get(n.index) ?? 0),
    legs: p.legs,
    capacity: Math.max(0, p.capacity - (held.get(`${p.ref.recordId}/${p.ref.portId}`) ?? 0)),
  }));
  const plugs: Plug[] = movable.map((m, i) => {
    const own = placeAt.get(`${m.cable.from.recordId}/${m.cable.from.portId}`) ?? -1;
    const reach = slotsFor(c, m, places, slots, own);
    return {
      key: m.cable.id,
      amps: plugAmps[i] ?? new Float64Array(),
      neutral: plugNeutral[i] ?? new Float64Array(),
      positions: m.node.legs.length,
      slots: reach.map((r) => r.slot),
      runMm: reach.map((r) => r.runMm),
      at: own,
    };
  });
  return {
    sourceId,
    root: source,
    places,
    cables: movable.map((m) => m.cable),
    things,
    problem: {
      setups,
      legs: shape.legs,
      anglesRad: shape.anglesRad,
      limitA: Float64Array.from(things, (n) => {
        const leg = c.limits[n.index]?.leg;
        if (!leg) return Number.NaN;
        return asItIs ? leg.limitA : (leg.planningA ?? leg.limitA);
      }),
      fixedA,
      fixedNeutral,
      slots,
      plugs,
    },
  };
};

interface Movable {
  readonly node: SupplyNode;
  readonly cable: Cable;
}

const movableCables = (
  c: Computed,
  root: SupplyNode,
  roots: Int32Array,
  placeAt: ReadonlyMap<string, number>,
): readonly Movable[] => {
  const leadsOn = new Uint8Array(c.tree.nodes.length);
  for (let i = c.tree.nodes.length - 1; i >= 0; i--) {
    const n = c.tree.nodes[i];
    if (n && n.parent >= 0 && (n.what === 'box' || n.notComputed !== undefined || leadsOn[i]))
      leadsOn[n.parent] = 1;
  }
  return c.tree.nodes.flatMap((node) => {
    if (node.what !== 'cable' || roots[node.index] !== root.index || node.notComputed !== undefined)
      return [];
    const cable = recordOf(c.plan, 'cable', node.recordId);
    if (!cable || cable.locked || leadsOn[node.index] || node.circuit !== undefined) return [];
    return placeAt.has(`${cable.from.recordId}/${cable.from.portId}`) ? [{ node, cable }] : [];
  });
};

/** Plugs and other people's loads that stay in an outlet, by outlet. */
const heldPlugs = (c: Computed, moving: ReadonlySet<Id>): ReadonlyMap<string, number> => {
  const held = new Map<string, number>();
  const add = (key: string): void => {
    held.set(key, (held.get(key) ?? 0) + 1);
  };
  for (const r of c.plan.records.values()) {
    if (r.type === 'cable' && !moving.has(r.id)) add(`${r.from.recordId}/${r.from.portId}`);
    if (r.type === 'box' && r.plugsInto) add(`${r.plugsInto.recordId}/${r.plugsInto.portId}`);
    if (r.type === 'otherLoad' && r.on.portId !== undefined) add(`${r.on.recordId}/${r.on.portId}`);
    if (r.type === 'otherLoad' && r.on.portId === undefined && recordOf(c.plan, 'outlet', r.on.recordId))
      add(`${r.on.recordId}/out`);
  }
  return held;
};

/** Types of residual-current devices by what they open on, the least first. */
const TYPES = ['AC', 'A', 'F', 'B'];

const typeRank = (way: SupplyNode): number => TYPES.indexOf(way.way?.rcdType ?? 'A');

const slotsFor = (
  c: Computed,
  m: Movable,
  places: readonly Place[],
  slots: readonly Slot[],
  own: number,
): readonly { readonly slot: number; readonly runMm: number }[] => {
  const kind = kindOf(c.plan, m.cable.kindId, 'cable');
  const here = places[own];
  if (!kind || !here) return [];
  const runs = new Map<Id, number | undefined>();
  const total = cableLength(c.plan, m.cable)?.totalMm ?? 0;
  return places.flatMap((p, slot) => {
    if (slot !== own && (slots[slot]?.capacity ?? 0) === 0) return [];
    if (p.legs.length !== here.legs.length || p.port.neutral !== here.port.neutral) return [];
    if (!mates(p.port.connector, kind.plug)) return [];
    // A plug behind a residual-current device stays behind one that opens no later.
    const deviceMa = here.way.way?.rcdMa;
    if (deviceMa !== undefined && !((p.way.way?.rcdMa ?? Number.POSITIVE_INFINITY) <= deviceMa)) return [];
    // Nor one of a type that opens on more to one that opens on less; of no type is taken as A.
    if (deviceMa !== undefined && typeRank(p.way) < typeRank(here.way)) return [];
    const id = p.ref.recordId;
    if (!runs.has(id)) runs.set(id, runFrom(c.plan, m.cable, p.ref));
    const runMm = runs.get(id);
    if (runMm === undefined || (id !== m.cable.from.recordId && runMm > total + 0.5)) return [];
    return [{ slot, runMm }];
  });
};
