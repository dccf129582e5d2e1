import type { Id } from '../kernel/ids.ts';
import type { InletPort, OutletPort, Way } from '../plan/kinds/ports.ts';
import { kindOf, type Plan, recordsOf } from '../plan/plan.ts';
import { boxFamilies, inletsOf, outletsOf, waysOf } from '../plan/ports.ts';
import type { Ballast, Box, Cable, Charger, Device, Fixture, Outlet, Source } from '../plan/records/index.ts';
import { bypassFeed, hasBypass } from './bypass.ts';
import { loadBranches } from './connections.ts';
import { recordLabel, wayLabel } from './labels.ts';
import { cableLength } from './lengths.ts';
import { loadSpecOf } from './loads.ts';
import { otherLoadBranches } from './other-loads.ts';
import { SupplyIndex } from './supply-checks.ts';
import { circuitInto, circuitKey, circuitLabel, dimmerWay, outputNode } from './supply-circuits.ts';
import { cableFault, loadFault, straightFault } from './supply-faults.ts';
import { chargingNode, steadyNode } from './supply-loads.ts';
import { type NewNode, nodeFrom, reachFrom } from './supply-node.ts';
import { linesOf, nowhere, type Reach, startAt } from './supply-reach.ts';
import { noteReads, type Segment, touchedBetween } from './supply-reuse.ts';
import { isInverter, rootKind, supplyRoots } from './supply-roots.ts';
import type { SupplyNode, SupplyTree } from './supply-types.ts';
import { systemShape } from './systems.ts';
import { type Transformer, transformerOn } from './transformers.ts';

const memo = new WeakMap<Plan, SupplyTree>();

/** Most things that hang one on another. More is no supply, and would overflow whatever walks along it. */
const DEEPEST = 600;

/**
 * The supply tree of a plan: sources, their ways, wall outlets, cables, boxes with their ways, and loads, in tree order.
 * What is wrong in the walk (a loop, two cables into one inlet, an end that is not there, connectors that do not mate,
 * legs that are not there, something not plugged in) is a defect; it and what hangs on it is kept and not computed.
 * With the tree of an earlier plan, sources nothing of which was touched keep their nodes; the answer is the same.
 */
export const supplyTree = (plan: Plan, previous?: SupplyTree): SupplyTree => {
  const known = memo.get(plan);
  if (known) return known;
  const touched = previous && touchedBetween(previous.plan, plan);
  const tree =
    previous && touched?.size === 0 ? { ...previous, plan } : new Walk(plan, previous, touched).run();
  memo.set(plan, tree);
  return tree;
};

class Walk {
  readonly #plan: Plan;
  readonly #index: SupplyIndex;
  readonly #nodes: SupplyNode[] = [];
  readonly #seen = new Set<Id>();
  readonly #segments = new Map<Id, Segment>();
  readonly #previous: SupplyTree | undefined;
  readonly #touched: ReadonlySet<Id> | undefined;
  #reads = new Set<Id>();

  constructor(plan: Plan, previous: SupplyTree | undefined, touched: ReadonlySet<Id> | undefined) {
    this.#plan = plan;
    this.#index = new SupplyIndex(plan);
    this.#previous = previous;
    this.#touched = touched;
  }

  run(): SupplyTree {
    const plan = this.#plan;
    for (const s of supplyRoots(plan)) if (!this.#reuse(s.id)) this.#segment(s);
    this.#unfed();
    const children: number[][] = this.#nodes.map(() => []);
    for (const n of this.#nodes) if (n.parent >= 0) children[n.parent]?.push(n.index);
    return {
      nodes: this.#nodes,
      byKey: new Map(this.#nodes.map((n) => [n.key, n])),
      children,
      defects: this.#index.defects,
      plan,
      segments: this.#segments,
    };
  }

  /** Takes over the nodes under a source of which nothing was touched, where they stand at the same place. */
  #reuse(sourceId: Id): boolean {
    const segment = this.#previous?.segments.get(sourceId);
    const touched = this.#touched;
    if (!segment || !touched || segment.start !== this.#nodes.length) return false;
    for (const id of touched) if (segment.reads.has(id)) return false;
    const nodes = this.#previous?.nodes ?? [];
    for (let i = segment.start; i < segment.end; i++) {
      const n = nodes[i];
      if (!n) return false;
      this.#nodes.push(n);
      this.#seen.add(n.recordId);
    }
    this.#index.defects.push(...segment.defects);
    this.#segments.set(sourceId, segment);
    return true;
  }

  #segment(s: Source | Box): void {
    this.#reads = new Set();
    const start = this.#nodes.length;
    const defects = this.#index.defects.length;
    this.#source(s);
    this.#segments.set(s.id, {
      start,
      end: this.#nodes.length,
      reads: this.#reads,
      defects: this.#index.defects.slice(defects),
    });
  }

  #push(reach: Reach, n: NewNode): { node: SupplyNode; reach: Reach } {
    const node = nodeFrom(this.#nodes.length, n, reach);
    this.#nodes.push(node);
    if (!this.#reads.has(node.recordId)) noteReads(this.#plan, node.recordId, this.#reads);
    return { node, reach: reachFrom(node, reach) };
  }

  #source(s: Source | Box): void {
    const plan = this.#plan;
    this.#seen.add(s.id);
    const kind = rootKind(plan, s.id);
    const shape = kind && systemShape(kind.system);
    const fault = this.#index.sourceFault(s, kind, shape);
    const own = s.type === 'source' ? s.mainBreakerA : undefined;
    const { reach } = this.#push(startAt(s, kind?.system, shape), {
      key: s.id,
      what: 'source',
      recordId: s.id,
      label: recordLabel(plan, s),
      mainBreakerA: own ?? kind?.mainBreakerA,
      notComputed: fault,
    });
    this.#owner(s, reach, waysOf(plan, s.id), this.#index.wallOutlets(s.id));
  }

  /** Ways, wall outlets and cables of a source or a box. */
  #owner(owner: Source | Box, reach: Reach, ways: readonly Way[], walls: readonly Outlet[]): void {
    const ports = outletsOf(this.#plan, owner.id);
    const dimmer = kindOf(this.#plan, owner.kindId, 'dimmer');
    this.#others(owner.id, reach);
    for (const way of ways) {
      const legs = way.legs.map((l) => reach.legs[l]);
      const label = wayLabel(recordLabel(this.#plan, owner), way);
      const there = legs.every((l) => l !== undefined);
      const fault = this.#index.wayFault(owner, way, label, reach, there);
      const { reach: inside } = this.#push(reach, {
        key: `${owner.id}/${way.id}`,
        what: 'way',
        recordId: owner.id,
        wayId: way.id,
        label,
        legs: there ? (legs as readonly number[]) : [],
        way,
        notComputed: fault,
        ...(dimmer ? dimmerWay(dimmer, reach, there ? (legs as readonly number[]) : []) : {}),
      });
      this.#others(`${owner.id}/${way.id}`, inside);
      for (const w of walls) if (w.wayId === way.id) this.#wallOutlet(w, inside);
      for (const p of ports) {
        if (p.wayId === way.id) this.#port(owner.id, p, inside);
        p.circuitWayIds?.forEach((id, i) => {
          if (id === way.id) this.#port(owner.id, p, inside, false, i + 1);
        });
      }
    }
    for (const p of ports)
      if (p.wayId === undefined && p.circuitWayIds === undefined) this.#open(owner.id, p, reach);
  }

  /** An outlet without a breaker. One that carries several circuits hangs on those that come in, one by one. */
  #open(recordId: Id, port: OutletPort, reach: Reach, circuit?: number): void {
    if (port.circuit !== undefined && circuit !== undefined && port.circuit !== circuit) return;
    this.#port(recordId, port, reach, false, port.circuits === undefined ? undefined : circuit);
  }

  #wallOutlet(w: Outlet, reach: Reach): void {
    if (this.#seen.has(w.id)) return;
    this.#seen.add(w.id);
    const port = outletsOf(this.#plan, w.id)[0];
    const { reach: out } = this.#push(reach, {
      key: w.id,
      what: 'outlet',
      recordId: w.id,
      label: recordLabel(this.#plan, w),
      connectors: [w.connector],
      legs: reach.legs.slice(0, linesOf(reach, w)),
      neutral: reach.neutral && w.neutral,
      notComputed: port && this.#index.portFault(w, port, reach.legs.length, reach.notComputed !== undefined),
    });
    if (port) this.#port(w.id, port, out, true);
    else this.#others(w.id, out);
  }

  #port(recordId: Id, port: OutletPort, reach: Reach, checked = false, circuit?: number): void {
    const cables = this.#index.cablesAt(recordId, port.id);
    const straight = this.#index.pluggedInto(recordId, port.id);
    const wall = this.#plan.records.get(recordId)?.type === 'outlet';
    const others = [`${recordId}:${port.id}`, ...(wall ? [recordId] : [])].filter(
      (k) => this.#index.othersAt(k).length > 0,
    );
    if (cables.length + straight.length + others.length === 0) return;
    const owner = this.#plan.records.get(recordId);
    const fault =
      checked || !owner
        ? undefined
        : this.#index.portFault(owner, port, reach.legs.length, reach.notComputed !== undefined);
    const out: Reach = {
      ...reach,
      legs: reach.legs.slice(0, linesOf(reach, port)),
      neutral: reach.neutral && port.neutral,
      notComputed: reach.notComputed ?? fault,
    };
    if (circuit === undefined || circuit === 1) this.#index.checkShared(recordId, port, cables, straight);
    for (const k of others) this.#others(k, out);
    for (const b of straight) this.#straight(b, out, port, circuit);
    for (const c of cables) this.#cable(c, out, port, circuit);
  }

  /** An adapter, tee or splitter plugged straight into an outlet. */
  #straight(b: Box, reach: Reach, from: OutletPort, circuit: number | undefined): void {
    const inlet = inletsOf(this.#plan, b.id)[0];
    const fault = straightFault(this.#plan, this.#index, b, from, inlet);
    this.#into(b.id, inlet, { ...reach, notComputed: reach.notComputed ?? fault }, circuit);
  }

  /** Other people's loads at one place: a way, a port, an outlet, or a source or box itself. */
  #others(place: string, reach: Reach): void {
    for (const o of this.#index.othersAt(place)) {
      if (this.#seen.has(o.id)) continue;
      this.#seen.add(o.id);
      const drawn = otherLoadBranches(reach.shape, reach.legs, reach.neutral, o);
      this.#push(reach, {
        key: o.id,
        what: 'load',
        recordId: o.id,
        label: recordLabel(this.#plan, o),
        steady: true,
        ...(typeof drawn === 'string' || reach.notComputed !== undefined ? {} : drawn),
        notComputed:
          reach.notComputed === undefined && typeof drawn === 'string'
            ? this.#index.otherFault(o, drawn)
            : undefined,
      });
    }
  }

  #cable(c: Cable, reach: Reach, from: OutletPort | undefined, circuit?: number): void {
    const kind = kindOf(this.#plan, c.kindId, 'cable');
    const own = kind?.circuits === undefined ? undefined : circuit;
    const key = circuitKey(c.id, own);
    if (this.#seen.has(key)) return;
    this.#seen.add(key).add(c.id);
    noteReads(this.#plan, c.to.recordId, this.#reads);
    const length = cableLength(this.#plan, c);
    const inlet = inletsOf(this.#plan, c.to.recordId).find((i) => i.id === c.to.portId);
    const fault = cableFault(this.#plan, this.#index, c, kind, from, inlet, length);
    const { reach: end } = this.#push(reach, {
      key,
      what: 'cable',
      recordId: c.id,
      label: circuitLabel(recordLabel(this.#plan, c), own),
      circuit: own,
      legs: reach.legs.slice(0, kind ? linesOf(reach, kind) : 3),
      neutral: reach.neutral && (kind?.neutral ?? true),
      connectors: kind ? [kind.plug, kind.socket] : [],
      lengthMm: length?.totalMm ?? 0,
      notComputed: fault,
    });
    this.#into(c.to.recordId, inlet, end, own);
  }

  #into(recordId: Id, inlet: InletPort | undefined, reach: Reach, circuit?: number): void {
    const r = this.#plan.records.get(recordId);
    if (reach.depth > DEEPEST) return this.#index.tooDeep(r);
    if (r?.type === 'source') {
      this.#push(reach, chargingNode(this.#plan, this.#index, r, inlet, reach));
      return;
    }
    const own = r?.type === 'box' ? circuitInto(this.#plan, r, inlet, circuit) : undefined;
    if (this.#seen.has(circuitKey(recordId, own))) return;
    if (r?.type === 'box') this.#box(r, inlet, reach, own);
    else if (r?.type === 'fixture' || r?.type === 'ballast') this.#load(r, inlet, reach);
    else if (r?.type === 'charger' || r?.type === 'device') this.#steady(r, inlet, reach);
  }

  #box(b: Box, inlet: InletPort | undefined, reach: Reach, circuit?: number): void {
    const kind = kindOf(this.#plan, b.kindId, ...boxFamilies);
    // An inverter begins a supply of its own, whatever cable is drawn to it.
    if (kind?.family === 'converter' && isInverter(kind)) return;
    const passing = kind?.family === 'converter' && hasBypass(kind);
    if (kind?.family === 'converter' && kind.what !== 'transformer' && !passing)
      return this.#steady(b, inlet, reach);
    const key = circuitKey(b.id, circuit);
    this.#seen.add(key).add(b.id);
    const on = kind?.family === 'converter' && inlet && reach.shape && reach.notComputed === undefined;
    const output =
      on && !passing ? transformerOn(kind, inlet, reach.shape, reach.legs, reach.neutral) : undefined;
    const fed = on && passing ? bypassFeed(kind, inlet, reach) : output;
    const { reach: inside } = this.#push(reach, {
      key,
      what: 'box',
      recordId: b.id,
      label: circuitLabel(recordLabel(this.#plan, b), circuit),
      circuit,
      ...(typeof fed === 'object' ? { load: fed.load, branches: fed.branches, steady: true } : {}),
      connectors: inlet ? [inlet.connector] : [],
      legs: reach.legs.slice(0, inlet ? linesOf(reach, inlet) : 3),
      neutral: reach.neutral && (inlet?.neutral ?? true),
      mainBreakerA: kind?.family === 'box' || kind?.family === 'dimmer' ? kind.mainBreakerA : undefined,
      notComputed: !kind
        ? this.#index.kindFault(b, b.kindId)
        : typeof fed === 'string'
          ? this.#index.otherFault(b, fed)
          : undefined,
    });
    if (kind?.family === 'converter' && !passing)
      this.#output(b, inside, typeof output === 'object' ? output.transformer : undefined);
    else if (circuit === undefined) this.#owner(b, inside, waysOf(this.#plan, b.id), []);
    else for (const p of outletsOf(this.#plan, b.id)) this.#open(b.id, p, inside, circuit);
  }

  /** The output of a transformer: a supply of its own volts and legs. */
  #output(b: Box, reach: Reach, t: Transformer | undefined): void {
    const { reach: out } = this.#push(reach, outputNode(b, recordLabel(this.#plan, b), t));
    this.#others(b.id, out);
    for (const p of outletsOf(this.#plan, b.id)) this.#port(b.id, p, out);
  }

  #load(r: Fixture | Ballast, inlet: InletPort | undefined, reach: Reach): void {
    this.#seen.add(r.id);
    const spec = loadSpecOf(this.#plan, r);
    const branches =
      spec && inlet && reach.shape && reach.notComputed === undefined
        ? loadBranches(reach.shape, inlet, reach.legs, reach.neutral, spec)
        : [];
    const words = typeof branches === 'string' ? branches : undefined;
    const fault = loadFault(this.#plan, this.#index, r, spec, words);
    const { reach: through } = this.#push(reach, {
      key: r.id,
      what: 'load',
      recordId: r.id,
      label: recordLabel(this.#plan, r),
      connectors: inlet ? [inlet.connector] : [],
      load: spec,
      branches: typeof branches === 'string' || fault !== undefined ? [] : branches,
      notComputed: fault,
    });
    for (const p of outletsOf(this.#plan, r.id)) this.#port(r.id, p, through);
  }

  #steady(r: Charger | Device | Box, inlet: InletPort | undefined, reach: Reach): void {
    this.#seen.add(r.id);
    const { reach: through } = this.#push(reach, steadyNode(this.#plan, this.#index, r, inlet, reach));
    if (r.type !== 'box') for (const p of outletsOf(this.#plan, r.id)) this.#port(r.id, p, through);
  }

  /** Whether a box is plugged straight into an outlet that is there. */
  #hangsOn(b: Box): boolean {
    const at = b.plugsInto;
    return at !== undefined && outletsOf(this.#plan, at.recordId).some((p) => p.id === at.portId);
  }

  /** What no source reaches: boxes and loads without a feed, cables from nowhere, loops. */
  #unfed(): void {
    const plan = this.#plan;
    for (const w of recordsOf(plan, 'outlet'))
      if (!this.#seen.has(w.id)) this.#wallOutlet(w, nowhere(this.#index.outletFault(w)));
    for (const b of recordsOf(plan, 'box'))
      if (!this.#seen.has(b.id) && this.#index.feeds(b.id).length === 0 && !this.#hangsOn(b))
        this.#box(b, inletsOf(plan, b.id)[0], nowhere(this.#index.unfedFault(b)));
    for (const r of [...recordsOf(plan, 'fixture'), ...recordsOf(plan, 'ballast')])
      if (!this.#seen.has(r.id) && this.#index.feeds(r.id).length === 0) {
        const why = this.#index.unpluggedFault(r);
        if (why) this.#load(r, inletsOf(plan, r.id)[0], nowhere(why));
      }
    const loose = recordsOf(plan, 'cable').filter((c) => !this.#seen.has(c.id));
    for (const c of loose) {
      const why =
        this.#index.fromFault(c) ??
        (this.#seen.has(c.from.recordId) ? this.#index.deadEndFault(c) : undefined);
      if (why) this.#cable(c, nowhere(why), undefined);
    }
    for (const c of loose)
      if (!this.#seen.has(c.id)) this.#cable(c, nowhere(this.#index.loopFault(c)), undefined);
    // Adapters plugged straight into one another.
    for (const b of recordsOf(plan, 'box'))
      if (!this.#seen.has(b.id))
        this.#box(b, inletsOf(plan, b.id)[0], nowhere(this.#index.straightLoopFault(b)));
  }
}
