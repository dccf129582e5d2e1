import { limitOf } from '../../derive/limits.ts';
import { rootKind } from '../../derive/supply-roots.ts';
import type { SupplyNode, SupplyTree } from '../../derive/supply-types.ts';
import { NEUTRAL } from '../../derive/supply-types.ts';
import { type SystemShape, systemShape } from '../../derive/systems.ts';
import { ratioMatrix } from '../../derive/transformers.ts';
import type { Id } from '../../kernel/ids.ts';
import type { LoadSpec } from '../../plan/kinds/ports.ts';
import { type Plan, recordOf } from '../../plan/plan.ts';
import { type Coupling, openVolts } from './coupling.ts';
import { impedances, ownImpedance } from './impedance.ts';
import type { NodeLimits } from './limits.ts';
import { isPhaseCut } from './phase-cut.ts';
import type { Branches, Feeder } from './solve.ts';

/** Exponents of P and Q over volts for a load. */
export const loadExponents = (plan: Plan, spec: LoadSpec): readonly [number, number] => {
  switch (spec.model) {
    case 'constant-power':
      return [0, 0];
    case 'constant-current':
      return [1, 1];
    case 'constant-impedance':
      return [2, 2];
    case 'tungsten': {
      const e = 1 + limitOf(plan, 'tungsten-current-exponent').value;
      return [e, e];
    }
    case 'exponential':
      return [spec.expP ?? 0, spec.expQ ?? 0];
  }
};

/** How a source's volts are known: given in the plan, a set's nominal (assumed), or not at all. */
export type VoltsBasis = 'given' | 'set-nominal' | 'unknown';

/** One source as the solver needs it. `nodeOf` gives the tree's index of each of the feeder's nodes. */
export interface SourceModel {
  readonly sourceId: Id;
  readonly shape: SystemShape;
  readonly basis: VoltsBasis;
  readonly volts: number;
  readonly feeder: Feeder;
  readonly branches: Branches;
  readonly nodeOf: Int32Array;
  /** The tree's index of the load of each branch, and its share of that load's power. */
  readonly branchLoad: Int32Array;
  readonly branchShare: Float64Array;
  /** Third harmonic over fundamental of each branch's current; `harmonics` tells whether any has some. */
  readonly third: Float64Array;
  /** 1 for a branch behind a phase-cut dimmer, whose third harmonic follows from how far it is dimmed. */
  readonly phaseCut: Uint8Array;
  readonly harmonics: boolean;
  /** The source's own legs, then the output of each transformer; and which of them each node lies in. */
  readonly zones: readonly Zone[];
  readonly zoneOf: Int32Array;
  /** Legs that reach each node. */
  readonly legCount: Uint8Array;
  /** Pairs of wires across which each node's volts are read: those of node k are from `pairStart[k]` to `pairStart[k + 1]`. */
  readonly pairStart: Int32Array;
  readonly pairs: Uint8Array;
  /** Limits of each node's legs and neutral in A, NaN where none is known. */
  readonly legLimitA: Float64Array;
  readonly neutralLimitA: Float64Array;
}

/** A part of a network with legs and volts of its own. */
export interface Zone {
  readonly shape: SystemShape;
  /** Volts of its four wires with nothing switched on. */
  readonly openV: Float64Array;
}

/** Volts to neutral of a source (between lines where it has no neutral) and how they are known. Only a set that makes its own may be taken at nominal. */
export const sourceVolts = (plan: Plan, sourceId: Id): { volts: number; basis: VoltsBasis } => {
  const record = recordOf(plan, 'source', sourceId);
  const kind = rootKind(plan, sourceId);
  const nominal = (kind && systemShape(kind.system)?.nominalV) ?? Number.NaN;
  if (record?.voltsV !== undefined) return { volts: record.voltsV, basis: 'given' };
  const own = kind?.what === 'generator' || kind?.what === 'power-station';
  return { volts: nominal, basis: own ? 'set-nominal' : 'unknown' };
};

/** Turns the part of the tree under one source into the solver's arrays. Nodes that are not computed are left out. */
export const sourceModel = (
  plan: Plan,
  tree: SupplyTree,
  root: SupplyNode,
  limits: readonly NodeLimits[],
): SourceModel | undefined => {
  const shape = root.system && systemShape(root.system);
  if (!shape || root.notComputed !== undefined) return undefined;
  const { volts, basis } = sourceVolts(plan, root.recordId);
  const own = ownImpedance(plan, root.recordId, shape, volts);
  // With an impedance of its own a source is two nodes: the volts it makes, and its terminals.
  const nodes: SupplyNode[] = own ? [root] : [];
  const local = new Map<number, number>();
  for (let i = root.index; i < tree.nodes.length; i++) {
    const n = tree.nodes[i];
    if (!n || (n !== root && n.sourceId !== root.sourceId)) break;
    if (n.notComputed !== undefined) continue;
    local.set(n.index, nodes.length);
    nodes.push(n);
  }
  const parent = Int32Array.from(nodes, (n) => local.get(n.parent) ?? 0);
  const sourceV = new Float64Array(8);
  shape.anglesRad.forEach((a, l) => {
    const v = volts * (shape.ratios[l] ?? 1);
    sourceV[l * 2] = v * Math.cos(a);
    sourceV[l * 2 + 1] = v * Math.sin(a);
  });
  const ohms = impedances(plan, nodes);
  if (own) ohms.set(own, 8);
  const couplings: Coupling[] = nodes.flatMap((n, k) =>
    n.transformer ? [{ node: k, ratio: ratioMatrix(n.transformer) }] : [],
  );
  const feeder: Feeder = {
    nodes: nodes.length,
    parent,
    impedance: { kind: 'diagonal', ohms },
    sourceV,
    ...(couplings.length > 0 ? { couplings } : {}),
  };
  return {
    sourceId: root.recordId,
    shape,
    basis,
    volts,
    feeder,
    nodeOf: Int32Array.from(nodes, (n) => n.index),
    ...zonesOf(shape, feeder, nodes),
    ...loadArrays(plan, nodes),
    ...pairArrays(nodes),
    legCount: Uint8Array.from(nodes, (n) => n.legs.length),
    legLimitA: Float64Array.from(nodes, (n) => limits[n.index]?.leg?.limitA ?? Number.NaN),
    neutralLimitA: Float64Array.from(nodes, (n) => limits[n.index]?.neutral?.limitA ?? Number.NaN),
  };
};

const zonesOf = (
  shape: SystemShape,
  feeder: Feeder,
  nodes: readonly SupplyNode[],
): Pick<SourceModel, 'zones' | 'zoneOf'> => {
  const zones: Zone[] = [{ shape, openV: feeder.sourceV }];
  const zoneOf = new Int32Array(nodes.length);
  if (!feeder.couplings) return { zones, zoneOf };
  const open = openVolts(feeder);
  nodes.forEach((n, k) => {
    if (n.transformer) {
      zoneOf[k] = zones.length;
      zones.push({ shape: n.transformer.shape, openV: open.slice(k * 8, k * 8 + 8) });
    } else zoneOf[k] = zoneOf[feeder.parent[k] as number] as number;
  });
  return { zones, zoneOf };
};

/** Pairs of wires across which a node's volts are read: leg to neutral where it has one, else leg to leg. */
export const voltPairs = (n: SupplyNode): readonly (readonly [number, number])[] => {
  if (n.branches.length > 0) return n.branches.map((b) => [b.from, b.to] as const);
  if (n.neutral) return n.legs.map((l) => [l, NEUTRAL] as const);
  return n.legs.flatMap((a, i) => n.legs.slice(i + 1).map((b) => [a, b] as const));
};

const pairArrays = (nodes: readonly SupplyNode[]): Pick<SourceModel, 'pairStart' | 'pairs'> => {
  const pairStart = new Int32Array(nodes.length + 1);
  const flat: number[] = [];
  nodes.forEach((n, k) => {
    for (const [a, b] of voltPairs(n)) flat.push(a, b);
    pairStart[k + 1] = flat.length / 2;
  });
  return { pairStart, pairs: Uint8Array.from(flat) };
};

const loadArrays = (
  plan: Plan,
  nodes: readonly SupplyNode[],
): Pick<SourceModel, 'branches' | 'branchLoad' | 'branchShare' | 'third' | 'phaseCut' | 'harmonics'> => {
  const all = nodes.flatMap((n, k) => n.branches.map((b) => ({ n, k, b })));
  const third = Float64Array.from(all, ({ n, b }) =>
    b.to === NEUTRAL ? Math.max(0, n.load?.thirdHarmonicPct ?? 0) / 100 : 0,
  );
  const phaseCut = Uint8Array.from(all, ({ n, b }) => (b.to === NEUTRAL && isPhaseCut(n) ? 1 : 0));
  const exponents = all.map(({ n }) => (n.load ? loadExponents(plan, n.load) : ([0, 0] as const)));
  return {
    branches: {
      node: Int32Array.from(all, (x) => x.k),
      from: Uint8Array.from(all, (x) => x.b.from),
      to: Uint8Array.from(all, (x) => x.b.to),
      nominalV: Float64Array.from(all, (x) => x.b.nominalV),
      expP: Float64Array.from(exponents, (e) => e[0]),
      expQ: Float64Array.from(exponents, (e) => e[1]),
    },
    branchLoad: Int32Array.from(all, (x) => x.n.index),
    branchShare: Float64Array.from(all, (x) => x.b.share),
    third,
    phaseCut,
    harmonics: third.some((k) => k > 0) || phaseCut.some((k) => k > 0),
  };
};
