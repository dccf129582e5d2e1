import { rootKind } from '../../../derive/supply-roots.ts';
import { NEUTRAL, type SupplyNode, type SupplyTree } from '../../../derive/supply-types.ts';
import { systemShape } from '../../../derive/systems.ts';
import { feedAmps } from '../../../derive/transformers.ts';
import type { Id } from '../../../kernel/ids.ts';
import type { OutletPort } from '../../../plan/kinds/ports.ts';
import { outletSockets } from '../../../plan/outlet-sockets.ts';
import { kindOf, recordOf } from '../../../plan/plan.ts';
import { outletsOf } from '../../../plan/ports.ts';
import type { PortRef } from '../../../plan/records/index.ts';
import { loadPowers } from '../load-powers.ts';
import type { Computed } from '../types.ts';

/** A thing with a limit ahead of a transformer, and the amps it sees for one amp on each leg of a place behind it. */
export interface Beyond {
  readonly node: SupplyNode;
  readonly perAmp: readonly number[];
}

/** An outlet that a unit can be plugged into, on one source. */
export interface Place {
  readonly ref: PortRef;
  readonly port: OutletPort;
  /** The way it is guarded by: its own, or the nearest ahead of a tee, splitter or fan. */
  readonly way: SupplyNode;
  /** The node it is an outlet of: its way, wall outlet, tee or fan. */
  readonly at: SupplyNode;
  readonly legs: readonly number[];
  /** Nodes with a limit that it is fed through: its way first, the source or the transformer it hangs on last. */
  readonly chain: readonly SupplyNode[];
  /** Nodes with a limit ahead of that transformer. */
  readonly beyond: readonly Beyond[];
  /** Plugs it takes: sockets of a wall outlet, else one. */
  readonly capacity: number;
}

/** For each node the index of what its legs are those of: its source, or the output of a transformer; -1 for neither. */
export const zoneRoots = (tree: SupplyTree): Int32Array => {
  const roots = new Int32Array(tree.nodes.length).fill(-1);
  for (const n of tree.nodes)
    roots[n.index] =
      n.what === 'source' || n.transformer ? n.index : n.parent < 0 ? -1 : (roots[n.parent] as number);
  return roots;
};

/** Amps of every load on each leg by setup at nominal volts, and what it puts on the neutral. */
export interface NominalAmps {
  /** At (node × 3 + leg) × setups + setup. What lies behind a transformer stands at its box as well, on the legs of its feed. */
  readonly legA: Float64Array;
  /** Relative to the leg's own angle, at ((node × 3 + leg) × setups + setup) × 2. */
  readonly neutral: Float64Array;
  /** 1 for the box of a transformer with something behind it. */
  readonly through: Uint8Array;
}

export const nominalAmps = (c: Computed): NominalAmps => {
  const setups = c.setups.length;
  const { values } = loadPowers(c.plan, c.tree, c.setups);
  const legA = new Float64Array(c.tree.nodes.length * 3 * setups);
  const neutral = new Float64Array(c.tree.nodes.length * 3 * setups * 2);
  const through = new Uint8Array(c.tree.nodes.length);
  for (const n of c.tree.nodes)
    for (const b of n.branches)
      for (let s = 0; s < setups; s++) {
        const p = (values[(n.index * setups + s) * 2] as number) * b.share;
        const q = (values[(n.index * setups + s) * 2 + 1] as number) * b.share;
        const a = Math.hypot(p, q) / b.nominalV;
        for (const w of [b.from, b.to])
          if (w !== NEUTRAL) {
            const at = (n.index * 3 + w) * setups + s;
            legA[at] = (legA[at] as number) + a;
          }
        if (b.to !== NEUTRAL) continue;
        const at = ((n.index * 3 + b.from) * setups + s) * 2;
        neutral[at] = (neutral[at] as number) + p / b.nominalV;
        neutral[at + 1] = (neutral[at + 1] as number) - q / b.nominalV;
      }
  const outputs = c.tree.nodes.filter((n) => n.transformer && n.notComputed === undefined);
  if (outputs.length === 0) return { legA, neutral, through };
  const roots = zoneRoots(c.tree);
  // From the last to the first: what hangs behind a transformer behind another is passed on twice.
  for (const out of outputs.reverse()) {
    const t = out.transformer;
    if (!t || out.parent < 0) continue;
    for (let s = 0; s < setups; s++) {
      const sums = [0, 0, 0];
      for (const n of c.tree.nodes)
        if (roots[n.index] === out.index)
          for (let l = 0; l < 3; l++)
            sums[l] = (sums[l] ?? 0) + (legA[(n.index * 3 + l) * setups + s] as number);
      if (!sums.some((a) => a > 0)) continue;
      through[out.parent] = 1;
      feedAmps(t, sums).forEach((a, l) => {
        const at = (out.parent * 3 + l) * setups + s;
        legA[at] = (legA[at] as number) + a;
      });
      for (const w of t.windings)
        if (w.to === NEUTRAL) {
          const at = ((out.parent * 3 + w.from) * setups + s) * 2;
          neutral[at] = (neutral[at] as number) + w.sign * t.ratio * (sums[w.leg] ?? 0);
        }
    }
  }
  return { legA, neutral, through };
};

/** All outlets of a source that a unit can be plugged into and that are computed: on ways, wall outlets, tees, splitters, fans. */
export const placesOf = (c: Computed, sourceId: Id): readonly Place[] => {
  const out: Place[] = [];
  const seen = new Set<string>();
  const add = (recordId: Id, port: OutletPort, way: SupplyNode, at: SupplyNode, capacity: number): void => {
    const key = `${recordId}/${port.id}`;
    const legs = at.legs.slice(0, port.legs);
    if (seen.has(key) || legs.length < port.legs) return;
    if (port.neutral && port.legs === 1 && legs[0] === highLegOf(c, at)) return;
    seen.add(key);
    const chain: SupplyNode[] = [way];
    if (at !== way) chain.push(at);
    let root: SupplyNode = at;
    for (let n: SupplyNode | undefined = at; n; n = n.transformer ? undefined : c.tree.nodes[n.parent]) {
      if (!chain.includes(n) && (c.limits[n.index]?.leg || n.what === 'source' || n.transformer))
        chain.push(n);
      root = n;
    }
    // What the legs are those of comes last, also where it is the way itself.
    if (chain.at(-1) !== root) chain.push(root);
    out.push({
      ref: { recordId, portId: port.id },
      port,
      way,
      at,
      legs,
      chain,
      beyond: root.transformer ? beyond(c, root, legs) : [],
      capacity,
    });
  };
  for (const n of c.tree.nodes) {
    if (n.sourceId !== sourceId || n.notComputed !== undefined) continue;
    if (n.what === 'source' && rootKind(c.plan, n.recordId)?.what === 'power-station') {
      // Its inverter guards itself, with or without a breaker ahead of an outlet.
      for (const port of outletsOf(c.plan, n.recordId))
        if (port.wayId === undefined && port.circuitWayIds === undefined) add(n.recordId, port, n, n, 1);
    } else if (n.what === 'way') {
      for (const port of outletsOf(c.plan, n.recordId))
        if (n.transformer ? port.wayId === undefined : port.wayId === n.wayId) add(n.recordId, port, n, n, 1);
    } else if (n.what === 'outlet') {
      const way = c.tree.nodes[n.parent];
      const port = outletsOf(c.plan, n.recordId)[0];
      const record = recordOf(c.plan, 'outlet', n.recordId);
      if (way?.what === 'way' && port && record) add(n.recordId, port, way, n, outletSockets(record).count);
    } else if (n.what === 'box' && passesOn(c, n)) {
      const way = wayAhead(c, n);
      if (way)
        for (const port of outletsOf(c.plan, n.recordId))
          if (port.circuits === undefined && (port.circuit === undefined || port.circuit === n.circuit))
            add(n.recordId, port, way, n, 1);
    }
  }
  return out;
};

/** Tees, splitters, strips and fans: boxes without ways of their own. */
const passesOn = (c: Computed, n: SupplyNode): boolean => {
  const box = recordOf(c.plan, 'box', n.recordId);
  const kind = box && kindOf(c.plan, box.kindId, 'box', 'adapter');
  return kind?.family === 'adapter' || (kind?.family === 'box' && kind.ways.length === 0);
};

const wayAhead = (c: Computed, n: SupplyNode): SupplyNode | undefined => {
  let at: SupplyNode | undefined = n;
  while (at && at.what !== 'way') at = c.tree.nodes[at.parent];
  return at;
};

/** Things with a limit ahead of a transformer, and the one ahead of that. */
const beyond = (c: Computed, root: SupplyNode, legs: readonly number[]): readonly Beyond[] => {
  const out: Beyond[] = [];
  let perAmp: readonly number[] = [0, 1, 2].map((l) => (legs.includes(l) ? 1 : 0));
  for (let n: SupplyNode | undefined = root; n; n = c.tree.nodes[n.parent]) {
    if (n !== root && (c.limits[n.index]?.leg || n.what === 'source')) out.push({ node: n, perAmp });
    if (n.transformer) perAmp = feedAmps(n.transformer, perAmp);
  }
  return out;
};

/** The high leg of what a node's legs are those of. */
const highLegOf = (c: Computed, n: SupplyNode): number | undefined => {
  for (let at: SupplyNode | undefined = n; at; at = c.tree.nodes[at.parent])
    if (at.transformer) return at.transformer.shape.highLeg;
  return n.system && systemShape(n.system)?.highLeg;
};
