import type { Id } from '../kernel/ids.ts';
import { levelOf, type Plan, setupsOf } from '../plan/plan.ts';
import { limitsOf } from './limits.ts';
import { levelFixtureId } from './loads.ts';
import { type Day, minutesOn, shootingDays } from './schedule.ts';
import { supplyTree } from './supply.ts';

/** How long a circuit is loaded by the shooting days of the plan. */
export interface LoadedHours {
  /** The longest stretch of any day, pauses shorter than `continuous-rest` counted in. */
  readonly longestH: number;
  /** Hours of all days together. */
  readonly totalH: number;
}

const memo = new WeakMap<Plan, Map<string, LoadedHours | undefined>>();

/**
 * Hours that what hangs on one node of the supply tree burns, by the shooting days; with a `wire` (a leg by its position,
 * or `NEUTRAL`) only what draws by that conductor. Undefined where they are not known: no shooting day, nothing on it, a load
 * that nothing switches (a charger, other people's loads), or a setup that loads it and is in no day.
 */
export const loadedHours = (plan: Plan, entityKey: string, wire?: number): LoadedHours | undefined => {
  let known = memo.get(plan);
  if (!known) {
    known = new Map();
    memo.set(plan, known);
  }
  const key = wire === undefined ? entityKey : `${entityKey}@${wire}`;
  if (!known.has(key)) known.set(key, reckon(plan, entityKey, wire));
  return known.get(key);
};

const reckon = (plan: Plan, entityKey: string, wire?: number): LoadedHours | undefined => {
  const days = shootingDays(plan);
  if (days.length === 0) return undefined;
  const fixtures = fixturesBehind(plan, entityKey, wire);
  if (!fixtures || fixtures.size === 0) return undefined;
  const planned = new Set(
    days.flatMap((d) => d.segments.flatMap((s) => [...s.burning.values()].map((b) => b.setupId))),
  );
  for (const d of days) for (const b of d.blocks) if (b.setupId !== undefined) planned.add(b.setupId);
  for (const s of setupsOf(plan)) {
    if (planned.has(s.id)) continue;
    for (const id of fixtures) if (levelOf(plan, s.id, id).levelPct > 0) return undefined;
  }
  const each = days.map((d) => minutesOn(d, fixtures, restMinOf(plan)));
  return {
    longestH: Math.max(0, ...each.map((e) => e.longestMin)) / 60,
    totalH: each.reduce((sum, e) => sum + e.totalMin, 0) / 60,
  };
};

/** Hours of one day that what hangs on a node burns; undefined where nothing there is switched by a level. */
export const loadedHoursOfDay = (plan: Plan, day: Day, entityKey: string): LoadedHours | undefined => {
  const fixtures = fixturesBehind(plan, entityKey);
  if (!fixtures) return undefined;
  const { totalMin, longestMin } = minutesOn(day, fixtures, restMinOf(plan));
  return { totalH: totalMin / 60, longestH: longestMin / 60 };
};

const restMinOf = (plan: Plan): number => (limitsOf(plan).get('continuous-rest')?.value ?? 1) * 60;

/**
 * Fixtures whose levels switch what hangs on a node, or what draws there by one conductor; undefined where something of it is
 * not switched by a level. What hangs behind a transformer, or does not say between what it lies, counts on every conductor.
 */
export const fixturesBehind = (plan: Plan, entityKey: string, wire?: number): ReadonlySet<Id> | undefined => {
  const tree = supplyTree(plan);
  const top = tree.byKey.get(entityKey);
  if (!top) return undefined;
  const found = new Set<Id>();
  const walk = (index: number, only = wire): boolean => {
    const n = tree.nodes[index];
    if (!n) return true;
    if (n.transformer && n !== top) only = undefined;
    const elsewhere =
      only !== undefined &&
      n.branches.length > 0 &&
      n.branches.every((b) => b.from !== only && b.to !== only);
    if (n.what === 'load' && !elsewhere) {
      const r = plan.records.get(n.recordId);
      if (n.steady || (r?.type !== 'fixture' && r?.type !== 'ballast')) return false;
      found.add(levelFixtureId(r));
    }
    return (tree.children[index] ?? []).every((i) => walk(i, only));
  };
  return walk(top.index) ? found : undefined;
};

/**
 * The longest stretch in hours that one conductor of a circuit (a node of the supply tree, by its key) is loaded; without a
 * `wire`, the longest of its legs. Undefined where the plan does not say. A load of three hours or more is continuous (NEC
 * article 100).
 */
export const continuousHours = (plan: Plan, entityKey: string, wire?: number): number | undefined => {
  if (wire !== undefined) return loadedHours(plan, entityKey, wire)?.longestH;
  // A circuit of which not everything is known is not known, on whichever leg that hangs; a leg with nothing on it is no matter.
  const whole = loadedHours(plan, entityKey);
  if (whole === undefined) return undefined;
  const legs = supplyTree(plan).byKey.get(entityKey)?.legs ?? [];
  if (legs.length < 2) return whole.longestH;
  const each = legs.flatMap((l) => loadedHours(plan, entityKey, l)?.longestH ?? []);
  return each.length === 0 ? undefined : Math.max(...each);
};

/**
 * Whether the shooting day shows that a circuit's load is not continuous: each of its legs loaded for less than
 * `continuous-hours` less `continuous-margin` at a stretch. False wherever that is not known.
 */
export const isNotContinuous = (plan: Plan, entityKey: string): boolean =>
  isShortAltogether(plan, entityKey) || isShort(plan, continuousHours(plan, entityKey));

/** Whether all that hangs on a node, on whatever legs, burns for less than that, taken together. */
export const isShortAltogether = (plan: Plan, entityKey: string): boolean =>
  isShort(plan, loadedHours(plan, entityKey)?.longestH);

const isShort = (plan: Plan, hours: number | undefined): boolean => {
  const limits = limitsOf(plan);
  const most = limits.get('continuous-hours')?.value;
  const margin = limits.get('continuous-margin')?.value;
  return hours !== undefined && most !== undefined && margin !== undefined && hours <= most - margin;
};
