import { type LoadPower, levelFixtureId, loadSpecOf, powerAtLevel } from '../../derive/loads.ts';
import type { Segment } from '../../derive/supply-reuse.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import type { Id } from '../../kernel/ids.ts';
import { differences } from '../../plan/differences.ts';
import type { LoadSpec } from '../../plan/kinds/ports.ts';
import { type Plan, recordsOf, wholeLevelPct } from '../../plan/plan.ts';
import type { Level } from '../../plan/records/index.ts';
import { isPhaseCut } from './phase-cut.ts';
import type { SetupName } from './setup-name.ts';

/** Watts and vars of every load of the tree by setup: at (index × setups + setup) × 2. */
export interface LoadPowers {
  readonly values: Float64Array;
  /** Loads without a level in at least one setup. */
  readonly assumedLevels: readonly Id[];
  /** Of each source: its part of the tree, and those of its loads that have no level somewhere. */
  readonly parts: ReadonlyMap<Id, { readonly segment: Segment; readonly assumed: readonly Id[] }>;
}

/** What an earlier run began with and gave. */
interface Earlier {
  readonly plan: Plan;
  readonly setups: readonly SetupName[];
  readonly powers: LoadPowers;
}

/**
 * Powers of all loads in all setups. Reads the level records once, in place of one look-up for each load and setup.
 * With an earlier run, a source's loads keep their powers where its part of the tree is the very one and no level of theirs changed.
 */
export const loadPowers = (
  plan: Plan,
  tree: SupplyTree,
  setups: readonly SetupName[],
  previous?: Earlier,
): LoadPowers => {
  const old = previous?.setups === setups ? previous : undefined;
  const count = setups.length;
  const levels = levelRows(plan, setups, old?.plan);
  const changed = old ? changedFixtures(old.plan, plan) : undefined;
  const values = new Float64Array(tree.nodes.length * count * 2);
  const assumedLevels: Id[] = [];
  const parts = new Map<Id, { readonly segment: Segment; readonly assumed: readonly Id[] }>();
  const make = (from: number, to: number): readonly Id[] => {
    const assumed = partPowers(plan, tree, levels, values, count, from, to);
    assumedLevels.push(...assumed);
    return assumed;
  };
  let end = 0;
  for (const [id, segment] of tree.segments) {
    make(end, segment.start);
    end = segment.end;
    const before = old?.powers.parts.get(id);
    if (old && changed && before?.segment === segment && ![...changed].some((f) => segment.reads.has(f))) {
      const row = count * 2;
      values.set(old.powers.values.subarray(segment.start * row, segment.end * row), segment.start * row);
      assumedLevels.push(...before.assumed);
      parts.set(id, before);
    } else parts.set(id, { segment, assumed: make(segment.start, segment.end) });
  }
  make(end, tree.nodes.length);
  return { values, assumedLevels, parts };
};

/** Powers of the loads among some nodes that lie together, written into `values`; gives those without a level somewhere. */
const partPowers = (
  plan: Plan,
  tree: SupplyTree,
  levels: ReadonlyMap<Id, Float64Array>,
  values: Float64Array,
  count: number,
  from: number,
  to: number,
): readonly Id[] => {
  const assumedLevels: Id[] = [];
  const dimmed: SupplyNode[] = [];
  for (let i = from; i < to; i++) {
    const n = tree.nodes[i];
    if (!n || n.branches.length === 0) continue;
    if (n.dimmer) {
      dimmed.push(n);
      continue;
    }
    if (n.steady && n.load) {
      const p = powerAtLevel(n.load, 100);
      for (let s = 0; s < count; s++) {
        values[(n.index * count + s) * 2] = p.wattsW;
        values[(n.index * count + s) * 2 + 1] = p.varsVar;
      }
      continue;
    }
    const r = plan.records.get(n.recordId);
    if (r?.type !== 'fixture' && r?.type !== 'ballast') continue;
    const spec = loadSpecOf(plan, r);
    if (!spec) continue;
    const row = levels.get(levelFixtureId(r));
    let assumed = false;
    const at = isPhaseCut(n) ? cutPower : powerAtLevel;
    const atFull = at(spec, 100);
    for (let s = 0; s < count; s++) {
      const level = row?.[s] ?? Number.NaN;
      const known = !Number.isNaN(level);
      if (!known) assumed = true;
      const p = known && level !== 100 ? at(spec, level) : atFull;
      values[(n.index * count + s) * 2] = p.wattsW;
      values[(n.index * count + s) * 2 + 1] = p.varsVar;
    }
    if (assumed) assumedLevels.push(n.recordId);
  }
  if (dimmed.length > 0) dimmerLosses(tree, dimmed, values, count);
  return assumedLevels;
};

/**
 * A resistance held down by a phase-cut dimmer: with a share p of its watts it draws √p of its amps, so that its volt-amperes
 * are √p of those at full. What it draws beyond its watts is carried as vars.
 */
const cutPower = (spec: LoadSpec, levelPct: number): LoadPower => {
  const p = powerAtLevel(spec, levelPct);
  const full = powerAtLevel(spec, 100);
  const share = full.wattsW > 0 ? p.wattsW / full.wattsW : 0;
  const va = Math.hypot(full.wattsW, full.varsVar) * Math.sqrt(Math.min(1, Math.max(0, share)));
  return { wattsW: p.wattsW, varsVar: Math.sqrt(Math.max(p.varsVar ** 2, va * va - p.wattsW ** 2)) };
};

/** What dimmers turn to heat: a share of the watts on each of their ways. */
const dimmerLosses = (
  tree: SupplyTree,
  ways: readonly SupplyNode[],
  values: Float64Array,
  count: number,
): void => {
  for (const way of ways) {
    for (let i = way.index + 1; i < tree.nodes.length; i++) {
      const n = tree.nodes[i];
      if (!n || n.depth <= way.depth) break;
      if (n.branches.length === 0 || n.notComputed !== undefined) continue;
      for (let s = 0; s < count; s++) {
        const at = (way.index * count + s) * 2;
        values[at] =
          (values[at] as number) +
          ((values[(i * count + s) * 2] as number) * (way.dimmer?.lossPct ?? 0)) / 100;
      }
    }
  }
};

type Rows = ReadonlyMap<Id, Float64Array>;

const rowsOf = new WeakMap<readonly Level[], { readonly ids: string; readonly rows: Rows }>();

/** Fixtures any level of which is not the same record in two plans. */
const changedFixtures = (before: Plan, after: Plan): ReadonlySet<Id> => {
  const ids = new Set<Id>();
  differences(recordsOf(before, 'level'), recordsOf(after, 'level'), (l) => {
    if (l.type === 'level') ids.add(l.fixtureId);
  });
  return ids;
};

/** Levels by fixture, in the order of the setups, NaN where there is none. Kept as long as the list of levels is the same. */
const levelRows = (plan: Plan, setups: readonly SetupName[], before: Plan | undefined): Rows => {
  const list = recordsOf(plan, 'level');
  const ids = setups.map((s) => s.id).join('\n');
  const known = rowsOf.get(list);
  if (known?.ids === ids) return known.rows;
  const earlier = before && rowsOf.get(recordsOf(before, 'level'));
  const changed = before && earlier?.ids === ids ? changedFixtures(before, plan) : undefined;
  const setupAt = new Map(setups.map((s, i) => [s.id, i]));
  const rows = new Map<Id, Float64Array>(changed ? earlier?.rows : undefined);
  for (const id of changed ?? []) rows.delete(id);
  for (const l of list) {
    if (changed && !changed.has(l.fixtureId)) continue;
    const s = setupAt.get(l.setupId);
    if (s === undefined) continue;
    let row = rows.get(l.fixtureId);
    if (!row) {
      row = new Float64Array(setups.length).fill(Number.NaN);
      rows.set(l.fixtureId, row);
    }
    row[s] = wholeLevelPct(l);
  }
  rowsOf.set(list, { ids, rows });
  return rows;
};
