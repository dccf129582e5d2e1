import { figureOffset, figureTable } from '../../derive/figures.ts';
import { supplyTree } from '../../derive/supply.ts';
import type { SupplyNode } from '../../derive/supply-types.ts';
import { QUANTITIES, type SupplyEntity } from '../../derive/types.ts';
import type { Id } from '../../kernel/ids.ts';
import { type Plan, setupsOf } from '../../plan/plan.ts';
import { extract } from './extract.ts';
import { powerFindings } from './findings/index.ts';
import { type NodeLimits, nodeLimits } from './limits.ts';
import { loadPowers } from './load-powers.ts';
import { type SourceModel, sourceModel } from './model.ts';
import { type Feeder, onePass, type Sweep, sweep } from './solve.ts';
import type { Computed, PowerResult, SetupName, SolvedSetup, SolvedSource } from './types.ts';

export const EVERYTHING_AT_FULL: SetupName = { id: 'all', name: 'Everything at full' };

export const computedSetups = (plan: Plan): readonly SetupName[] => {
  const setups = setupsOf(plan).map((s) => ({ id: s.id, name: s.name }));
  return setups.length > 0 ? setups : [EVERYTHING_AT_FULL];
};

/** The earlier list of setups where it says the same. */
const setupsOnce = (
  now: readonly SetupName[],
  before: readonly SetupName[] | undefined,
): readonly SetupName[] =>
  before?.length === now.length && before.every((s, i) => s.id === now[i]?.id && s.name === now[i]?.name)
    ? before
    : now;

const memo = new WeakMap<Plan, PowerResult>();

/**
 * Currents, powers, volts, limits and findings of a plan, for every setup.
 * With the result of an earlier plan, a source whose network or whose loads in a setup did not change is not solved again;
 * the answer is the same either way.
 */
export const computePower = (plan: Plan, previous?: PowerResult): PowerResult => {
  const known = memo.get(plan);
  if (known) return known;
  const tree = supplyTree(plan, previous?.tree);
  const setups = setupsOnce(computedSetups(plan), previous?.setups);
  const limits = nodeLimits(plan, tree, previous);
  const powers = loadPowers(plan, tree, setups, previous);
  const sources = new Map<Id, SolvedSource>();
  for (const root of tree.nodes) {
    if (root.what !== 'source') continue;
    const before = previous?.sources.get(root.recordId);
    const model =
      before && previous && unchanged(previous, tree, limits, root.recordId)
        ? before.model
        : sourceModel(plan, tree, root, limits);
    if (!model) continue;
    // The very part of the earlier run: nothing of its loads changed.
    const part = powers.parts.get(root.recordId);
    const solved =
      before?.model === model && part !== undefined && part === previous?.powers.parts.get(root.recordId)
        ? before
        : solveSource(model, powers.values, setups.length, before);
    sources.set(root.recordId, solved);
  }
  const values = tableValues(tree, setups.length, sources, previous);
  const entities = tree.nodes.map((n, i) => {
    const old =
      previous?.tree.nodes[i] === n && previous.limits[i] === limits[i] ? previous.entities[i] : undefined;
    return old ?? entityOf(n, tree.nodes[n.parent]?.key, limits[i]);
  });
  const figures = figureTable(
    entities.map((e) => e.key),
    setups.map((s) => s.id),
    values,
  );
  const { assumedLevels } = powers;
  const result: Computed = { plan, setups, tree, limits, entities, figures, sources, powers, assumedLevels };
  const done: PowerResult = { ...result, ...powerFindings(result, previous) };
  memo.set(plan, done);
  return done;
};

/** The values of all figures: those of an earlier result where none is different, else that with what is. */
const tableValues = (
  tree: Computed['tree'],
  setups: number,
  sources: Computed['sources'],
  previous: PowerResult | undefined,
): Float64Array => {
  if (previous && sameFigures(tree, setups, sources, previous)) return previous.figures.values;
  const { values, kept } = startValues(tree, setups, previous);
  for (const [id, { model, setups: solved }] of sources) {
    const before = previous?.sources.get(id);
    const same = kept.has(id) && before?.model === model;
    solved.forEach((r, s) => {
      if (!same || before?.setups[s]?.figures !== r.figures) spread(values, r.figures, model, s, setups);
    });
  }
  return values;
};

const sameFigures = (
  tree: Computed['tree'],
  setups: number,
  sources: Computed['sources'],
  previous: PowerResult,
): boolean =>
  tree.nodes.length === previous.tree.nodes.length &&
  setups === previous.setups.length &&
  sources.size === previous.sources.size &&
  [...sources].every(([id, now]) => {
    const before = previous.sources.get(id);
    return (
      before !== undefined &&
      (before === now ||
        (sameNumbers(before.model.nodeOf, now.model.nodeOf) &&
          now.setups.every((r, s) => r.figures === before.setups[s]?.figures)))
    );
  });

/**
 * The figure table to fill: nothing known, or where the tree is as long as before the earlier figures of the sources whose
 * nodes are the very ones at the same place; `kept` names them.
 */
const startValues = (
  tree: Computed['tree'],
  setups: number,
  previous: PowerResult | undefined,
): { readonly values: Float64Array; readonly kept: ReadonlySet<Id> } => {
  const size = tree.nodes.length * QUANTITIES.length * setups;
  const old = previous?.figures.values;
  if (!previous || !old || old.length !== size || previous.setups.length !== setups)
    return { values: new Float64Array(size).fill(Number.NaN), kept: new Set() };
  const values = old.slice();
  const kept = new Set<Id>();
  const row = QUANTITIES.length * setups;
  let at = 0;
  for (const [id, segment] of tree.segments) {
    if (previous.tree.segments.get(id) === segment) {
      kept.add(id);
      values.fill(Number.NaN, at * row, segment.start * row);
      at = segment.end;
    }
  }
  values.fill(Number.NaN, at * row);
  return { values, kept };
};

/** Whether a source's nodes and their limits are the very ones of an earlier result, so that its model is as well. */
const unchanged = (
  previous: PowerResult,
  tree: Computed['tree'],
  limits: Computed['limits'],
  sourceId: Id,
): boolean => {
  const segment = tree.segments.get(sourceId);
  if (!segment || previous.tree.segments.get(sourceId) !== segment) return false;
  for (let i = segment.start; i < segment.end; i++) if (limits[i] !== previous.limits[i]) return false;
  return true;
};

/** Writes one source's figures of one setup into the plan's table. */
const spread = (
  values: Float64Array,
  figures: Float64Array,
  m: SourceModel,
  setup: number,
  setups: number,
): void => {
  const width = QUANTITIES.length;
  for (let k = 0; k < m.feeder.nodes; k++) {
    const row = figureOffset(m.nodeOf[k] as number, 0, setup, setups);
    for (let i = 0; i < width; i++) values[row + i * setups] = figures[k * width + i] as number;
  }
};

/**
 * Solves one source in all setups. A setup whose network and loads are those of an earlier run, in the last result or in
 * this one, takes over that run: it is a function of those numbers alone.
 */
const solveSource = (
  model: SourceModel,
  powers: Float64Array,
  setups: number,
  before: SolvedSource | undefined,
): SolvedSource => {
  const earlier =
    before !== undefined && (before.model === model || sameNetwork(before.model, model)) ? before.setups : [];
  const solved: SolvedSetup[] = [];
  for (let s = 0; s < setups; s++) {
    const n = model.branchLoad.length;
    const wattsW = new Float64Array(n);
    const varsVar = new Float64Array(n);
    for (let b = 0; b < n; b++) {
      const at = ((model.branchLoad[b] as number) * setups + s) * 2;
      const share = model.branchShare[b] as number;
      wattsW[b] = (powers[at] as number) * share;
      varsVar[b] = (powers[at + 1] as number) * share;
    }
    const same = (x: SolvedSetup | undefined): boolean =>
      x !== undefined && sameNumbers(x.wattsW, wattsW) && sameNumbers(x.varsVar, varsVar);
    const old = same(earlier[s]) ? earlier[s] : (earlier.find(same) ?? solved.find(same));
    if (old) solved.push(old);
    else {
      const run = runSweep(model, wattsW, varsVar);
      solved.push({ wattsW, varsVar, sweep: run, figures: extract(model, run, wattsW, varsVar) });
    }
  }
  return { model, setups: solved };
};

/** Volts known: the full load flow. Unknown: currents at nominal volts, and the drops they make. */
export const runSweep = (m: SourceModel, wattsW: Float64Array, varsVar: Float64Array): Sweep =>
  (m.basis === 'unknown' ? onePass : sweep)(m.feeder, m.branches, wattsW, varsVar);

const sameNumbers = (
  a: Float64Array | Int32Array | Uint8Array,
  b: Float64Array | Int32Array | Uint8Array,
): boolean => {
  if (a.length !== b.length) return false;
  // NaN stands for “no limit” and equals itself here.
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
};

const sameCouplings = (a: Feeder, b: Feeder): boolean => {
  const [x, y] = [a.couplings ?? [], b.couplings ?? []];
  return (
    x.length === y.length &&
    x.every((c, i) => c.node === y[i]?.node && sameNumbers(c.ratio, y[i]?.ratio ?? new Float64Array()))
  );
};

/** Whether two networks are the same to the solver, number by number. */
const sameNetwork = (a: SourceModel, b: SourceModel): boolean =>
  a.basis === b.basis &&
  sameNumbers(a.feeder.parent, b.feeder.parent) &&
  sameNumbers(a.feeder.impedance.ohms, b.feeder.impedance.ohms) &&
  sameNumbers(a.feeder.sourceV, b.feeder.sourceV) &&
  sameNumbers(a.branches.node, b.branches.node) &&
  sameNumbers(a.branches.from, b.branches.from) &&
  sameNumbers(a.branches.to, b.branches.to) &&
  sameNumbers(a.branches.nominalV, b.branches.nominalV) &&
  sameNumbers(a.branches.expP, b.branches.expP) &&
  sameNumbers(a.branches.expQ, b.branches.expQ) &&
  sameNumbers(a.third, b.third) &&
  sameNumbers(a.phaseCut, b.phaseCut) &&
  sameNumbers(a.zoneOf, b.zoneOf) &&
  sameCouplings(a.feeder, b.feeder) &&
  sameNumbers(a.legCount, b.legCount) &&
  sameNumbers(a.pairStart, b.pairStart) &&
  sameNumbers(a.pairs, b.pairs) &&
  sameNumbers(a.legLimitA, b.legLimitA) &&
  sameNumbers(a.neutralLimitA, b.neutralLimitA);

const entityOf = (n: SupplyNode, parentKey: string | undefined, l: NodeLimits | undefined): SupplyEntity => ({
  key: n.key,
  what: n.what,
  recordId: n.recordId,
  wayId: n.wayId,
  label: n.label,
  parentKey,
  sourceId: n.sourceId,
  system: n.system,
  legs: n.legs,
  neutral: n.neutral,
  legLimit: l?.leg,
  neutralLimit: l?.neutral,
  notComputed: n.notComputed,
  depth: n.depth,
  transformer: n.transformer,
});
