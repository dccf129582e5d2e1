import { recordLabel } from '../derive/labels.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import { computePower, type PowerResult } from '../engines/power/index.ts';
import type { NewId } from '../kernel/ids.ts';
import { replug } from '../plan/edits/replug.ts';
import type { AdapterKind } from '../plan/kinds/adapter.ts';
import type { CableKind, Kind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import { inletsOf, placeOf } from '../plan/ports.ts';
import type { Cable } from '../plan/records/index.ts';
import type { Assessment, Finding, Remedy } from './types.ts';
import { voltsOver, whereToPlug } from './where-to-plug.ts';

const LEGS = ['leg0A', 'leg1A', 'leg2A'] as const;
/** Ways offered for one finding, and runs looked at for them. */
const MOST = 3;
const MOST_RUNS = 4;
/** A way of other volts is not offered: most that its volts may differ from those of now, as a share. */
const VOLTS_APART = 0.1;

interface Run {
  readonly node: SupplyNode;
  readonly cable: Cable;
  /** Amps on its fullest leg in its worst setup. */
  readonly amps: number;
  /** The way is within its limit in every setup without it. */
  readonly relieves: boolean;
}

/**
 * Ways anywhere on the floor that a load of an overloaded way can move to, the nearest first: a free outlet that takes it by
 * its own cable, another or an adapter, with room on it and all ahead of it in every setup. Loads whose leaving is enough come
 * first; where none is, the largest. Room counts the load where it is now too, which is never too kind. Each is one change.
 */
export const moveRemedies = (
  plan: Plan,
  a: Assessment,
  f: Pick<Finding, 'rule' | 'id' | 'remedies'>,
  book: readonly Kind[],
  newId: NewId,
): readonly Remedy[] => {
  if (f.rule !== 'power-breaker') return [];
  const power = computePower(plan);
  const way = power.tree.byKey.get(f.id.slice(f.rule.length + 1));
  const limitA = way && power.limits[way.index]?.leg?.limitA;
  if (!way || limitA === undefined) return [];
  const runs = runsOf(power, way, limitA);
  const enough = runs.filter((r) => r.relieves);
  const known = new Set(f.remedies.map((r) => r.label));
  return (enough.length > 0 ? enough : runs.slice(0, 1))
    .slice(0, MOST_RUNS)
    .flatMap((r) => movesOf(plan, a, power, r, book, newId))
    .sort((x, y) => x.neededMm - y.neededMm)
    .filter(({ label }) => !known.has(label) && known.add(label))
    .slice(0, MOST)
    .map(({ label, changes }) => ({ label, changes }));
};

/** Cables that hang on a way by its outlets and adapters, those that draw most first. */
const runsOf = (power: PowerResult, way: SupplyNode, limitA: number): readonly Run[] => {
  const found: Run[] = [];
  const walk = (index: number): void => {
    const node = power.tree.nodes[index];
    const cable = node?.what === 'cable' ? recordOf(power.plan, 'cable', node.recordId) : undefined;
    if (!node || !cable) {
      for (const i of power.tree.children[index] ?? []) walk(i);
      return;
    }
    const at = (n: SupplyNode, leg: number, s: number): number =>
      power.figures.get(n.key, LEGS[leg] ?? 'leg0A', s);
    const setups = power.setups.map((_, s) => s);
    const amps = Math.max(...setups.flatMap((s) => node.legs.map((l) => at(node, l, s))));
    const relieves = setups.every((s) =>
      way.legs.every((l) => at(way, l, s) - (node.legs.includes(l) ? at(node, l, s) : 0) <= limitA),
    );
    if (!cable.locked && amps > 0) found.push({ node, cable, amps, relieves });
  };
  for (const i of power.tree.children[way.index] ?? []) walk(i);
  return found.sort((x, y) => y.amps - x.amps);
};

const movesOf = (
  plan: Plan,
  a: Assessment,
  power: PowerResult,
  { node, cable, amps }: Run,
  book: readonly Kind[],
  newId: NewId,
): readonly (Remedy & { readonly neededMm: number })[] => {
  const load = plan.records.get(cable.to.recordId);
  const inlet = inletsOf(plan, cable.to.recordId).find((i) => i.id === cable.to.portId);
  const place = placeOf(plan, cable.to.recordId);
  const shape = shapeAt(power, node);
  if (!load || !inlet || !place || !shape) return [];
  const { overV } = voltsOver(shape, node.legs, inlet.neutral);
  const now = kindOf(plan, cable.kindId, 'cable');
  const carries = (k: CableKind): number => k.ampacityA * k.parallel;
  const cables = book.filter((k): k is CableKind => k.family === 'cable' && carries(k) >= amps);
  const strong = cables.filter((k) => !now || carries(k) >= carries(now));
  const places = whereToPlug(plan, a, {
    floorId: place.floorId,
    at: place.at,
    heightMm: place.heightMm,
    loadW: amps * overV,
    powerFactor: 1,
    connector: inlet.connector,
    legs: inlet.legs,
    neutral: inlet.neutral,
    most: Number.POSITIVE_INFINITY,
    book: [...(now ? [now] : []), ...strong, ...cables.filter((k) => !strong.includes(k))],
    adapters: book.filter(
      (k): k is AdapterKind => k.family === 'adapter' && k.what === 'adapter' && (k.ampacityA ?? 0) >= amps,
    ),
  });
  return places
    .filter(
      (p) => Math.abs(p.basis.overV / overV - 1) <= VOLTS_APART && !isBelow(power, p.basis.outletKey, node),
    )
    .flatMap((p) =>
      p.kind
        ? {
            label: `Move ${recordLabel(plan, load)} to ${p.label}`,
            neededMm: p.neededMm,
            changes: replug(
              plan,
              cable.to,
              { ref: p.ref, kind: p.kind, ...(p.bridge ? { bridge: p.bridge } : {}) },
              newId,
            ),
          }
        : [],
    )
    .slice(0, MOST);
};

/** The volts of what feeds a node: of the nearest transformer ahead, else of its source. */
const shapeAt = (power: PowerResult, node: SupplyNode) => {
  for (let n: SupplyNode | undefined = node; n; n = power.tree.nodes[n.parent])
    if (n.transformer) return n.transformer.shape;
  return power.sources.get(node.sourceId ?? '')?.model.shape;
};

/** Whether an outlet gets its power by the run that is to move. */
const isBelow = (power: PowerResult, outletKey: string, run: SupplyNode): boolean => {
  for (let n = power.tree.byKey.get(outletKey); n; n = power.tree.nodes[n.parent])
    if (n.index === run.index) return true;
  return false;
};
