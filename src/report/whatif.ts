import { loadSpecOf } from '../derive/loads.ts';
import { NEUTRAL, type SupplyNode } from '../derive/supply-types.ts';
import { legName } from '../derive/systems.ts';
import { QUANTITIES, type Quantity } from '../derive/types.ts';
import {
  computePower,
  floatingNeutral,
  lostLeg,
  lostNeutral,
  onNeutral,
  type PowerResult,
  type SourceModel,
} from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import { fail, ok, type Problem, type Result } from '../kernel/result.ts';
import { applyChanges, Draft } from '../plan/change-set.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import type {
  Fault,
  FaultLoad,
  FaultMeter,
  FaultPart,
  Reckoned,
  TriedFault,
  WhatIf,
} from './whatif-types.ts';

export type { Fault, FaultLoad, FaultMeter, WhatIf } from './whatif-types.ts';

const LEGS: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

const GENERAL =
  'Reckoned from this plan. The fault itself is for a qualified person: isolate, find out, then restore.';

/**
 * What a fault would do in one setup, without changing the plan: a way trips, a source loses a leg, or the neutral comes
 * off ahead of a thing. Without a setup, or with one the plan does not have, the first one is taken.
 */
export const whatIf = (plan: Plan, fault: Fault, setupId?: Id): Result<WhatIf> => {
  const tried = tryFault(plan, fault, setupId);
  return tried.ok ? ok(tried.value.result) : tried;
};

/** As `whatIf`, with what its figures were reckoned from. */
export const tryFault = (plan: Plan, fault: Fault, setupId?: Id): Result<TriedFault> => {
  const power = computePower(plan);
  const setup = Math.max(
    0,
    power.setups.findIndex((s) => s.id === setupId),
  );
  const c = new Case(plan, power, setup);
  const result =
    'trip' in fault
      ? c.trip(fault.trip.ownerId, fault.trip.wayId)
      : 'loseLeg' in fault
        ? c.loseLeg(fault.loseLeg.sourceId, fault.loseLeg.leg)
        : c.loseNeutral(fault.loseNeutral.recordId);
  return result.ok ? ok({ result: result.value, power, setup, ...c.reckoned }) : result;
};

class Case {
  readonly #plan: Plan;
  readonly #power: PowerResult;
  readonly #setup: number;
  /** What the figures of the case were reckoned from, filled as they are. */
  reckoned: Reckoned = { parts: new Map() };

  constructor(plan: Plan, power: PowerResult, setup: number) {
    this.#plan = plan;
    this.#power = power;
    this.#setup = setup;
  }

  trip(ownerId: Id, wayId: string): Result<WhatIf> {
    const way = this.#power.tree.byKey.get(`${ownerId}/${wayId}`);
    if (!way) return missing(`a way ${wayId} of ${ownerId}`);
    if (way.notComputed !== undefined) return notComputed(way);
    const below = this.#below(way);
    const loads = this.#loads(way.sourceId).map((n) =>
      this.#row(n, below.has(n.index) ? 'dark' : 'as before', Number.NaN, Number.NaN),
    );
    return this.#done(`${way.label} trips`, way.sourceId, loads, [], this.#without(way.sourceId, loads));
  }

  loseLeg(sourceId: Id, leg: number): Result<WhatIf> {
    const source = this.#power.tree.byKey.get(sourceId);
    if (source?.what !== 'source') return missing(`a source ${sourceId}`);
    if (source.notComputed !== undefined) return notComputed(source);
    if (!source.legs.includes(leg)) return missing(`leg ${leg} of ${source.label}`);
    const name = legName(planRecord(this.#plan).practice, source.system, leg);
    const solved = this.#power.sources.get(sourceId);
    const before = solved?.setups[this.#setup];
    const after = solved && before && lostLeg(solved.model, before, leg);
    if (!solved || !after)
      return fail({
        what: `${source.label} without leg ${name} has no answer.`,
        todo: 'Settle first what its findings say.',
      });
    const { model } = solved;
    const seen = new Map<number, { volts: number[]; nominal: number[]; legs: boolean[]; wattsW: number }>();
    model.branchLoad.forEach((index, b) => {
      const at = seen.get(index) ?? { volts: [], nominal: [], legs: [], wattsW: 0 };
      at.volts.push(after.voltsV[b] ?? Number.NaN);
      at.nominal.push(model.branches.nominalV[b] ?? Number.NaN);
      at.legs.push(
        model.zoneOf[model.branches.node[b] ?? 0] === 0 &&
          (model.branches.from[b] === leg || model.branches.to[b] === leg),
      );
      at.wattsW += after.wattsW[b] ?? 0;
      seen.set(index, at);
    });
    const loads = this.#loads(sourceId).map((n) => {
      const s = seen.get(n.index);
      if (!s) return this.#row(n, 'as before', Number.NaN, Number.NaN);
      // Of several windings or elements the one furthest from its volts.
      const off = (i: number): number => Math.abs((s.volts[i] ?? 0) / (s.nominal[i] ?? 1) - 1);
      const worst = s.volts.reduce((x, _, i) => (off(i) > off(x) ? i : x), 0);
      const volts = s.volts[worst] ?? Number.NaN;
      // Less than a volt comes only of rounding and of drops in the neutral.
      if (s.volts.every((v) => v < 1)) return this.#row(n, 'dark', Number.NaN, Number.NaN);
      if (s.volts.length > 1 && s.legs.includes(true)) return this.#row(n, 'fewer legs', volts, s.wattsW);
      const wrong = n.load !== undefined && (volts > n.load.voltsMaxV || volts < n.load.voltsMinV);
      const changed = wrong && off(worst) > 0.01;
      return this.#row(n, changed ? 'wrong volts' : 'as before', volts, changed ? s.wattsW : Number.NaN);
    });
    this.reckoned = {
      lostLeg: after,
      parts: this.#parts(solved.model, (b) => ({
        atV: after.model.branches.nominalV[b] ?? Number.NaN,
        atW: after.solved.wattsW[b] ?? Number.NaN,
        voltsV: after.voltsV[b] ?? Number.NaN,
        wattsW: after.wattsW[b] ?? Number.NaN,
      })),
    };
    const uneven = [...seen.values()].some(
      (s) => s.volts.length > 2 && Math.max(...s.volts) - Math.min(...s.volts) > 0.1 * (s.nominal[0] ?? 1),
    );
    const notes = [
      'The open line is solved with each load as the impedance it has as it runs. What lies between the lost leg and another feeds back into it: a leg that is lost is not dead.',
      ...(uneven
        ? ['Three-leg loads that stay on two legs or on uneven volts can be destroyed: switch them off.']
        : []),
    ];
    return this.#done(`${source.label} loses leg ${name}`, sourceId, loads, notes, (q, l) =>
      l === leg ? 0 : (after.solved.figures[QUANTITIES.indexOf(q)] ?? Number.NaN),
    );
  }

  loseNeutral(recordId: Id): Result<WhatIf> {
    const node = this.#power.tree.byKey.get(recordId);
    if (!node) return missing(recordId);
    if (node.notComputed !== undefined) return notComputed(node);
    const solved = this.#power.sources.get(node.sourceId ?? '');
    const run = solved?.setups[this.#setup];
    if (!solved || !run || !node.neutral)
      return fail({
        what: `${node.label} has no neutral to lose.`,
        todo: 'Name a source, box, cable or outlet with one.',
      });
    // Behind a transformer the neutral is another one.
    const below = this.#below(node, true);
    const { model } = solved;
    const parts: { index: number; branch: number; load: Parameters<typeof floatingNeutral>[0][number] }[] =
      [];
    model.branches.node.forEach((_, b) => {
      const index = model.branchLoad[b] ?? -1;
      const to = model.branches.to[b] ?? 0;
      if (!below.has(index) || !onNeutral({ to })) return;
      parts.push({
        index,
        branch: b,
        load: {
          leg: model.branches.from[b] ?? 0,
          wattsW: run.wattsW[b] ?? 0,
          varsVar: run.varsVar[b] ?? 0,
          ratedV: model.branches.nominalV[b] ?? 1,
        },
      });
    });
    const legV =
      model.zones[model.zoneOf[model.nodeOf.indexOf(node.index)] ?? 0]?.openV ?? model.feeder.sourceV;
    const answer = floatingNeutral(
      parts.map((p) => p.load),
      legV,
    );
    // With the cables' impedance where that has an answer; by the star point alone where not.
    const net = lostNeutral(model, run, model.nodeOf.indexOf(node.index));
    const seenBy = parts.map((p, i) =>
      net
        ? { voltsV: net.voltsV[p.branch] ?? Number.NaN, wattsW: net.wattsW[p.branch] ?? Number.NaN }
        : answer.loads[i],
    );
    const placeOfBranch = new Map(parts.map((p, i) => [p.branch, i]));
    this.reckoned = {
      floating: {
        node,
        legV,
        answer,
        passes: net?.sweep.passes,
        loads: parts.map((p) => ({ index: p.index, load: p.load })),
      },
      parts: this.#parts(model, (b) => {
        const i = placeOfBranch.get(b) ?? -1;
        const [load, a] = [parts[i]?.load, seenBy[i]];
        return load && a && { atV: load.ratedV, atW: load.wattsW, voltsV: a.voltsV, wattsW: a.wattsW };
      }),
    };
    const seen = new Map<number, { voltsV: number; wattsW: number }>();
    parts.forEach((p, i) => {
      const a = seenBy[i];
      const known = seen.get(p.index);
      if (a)
        seen.set(p.index, {
          voltsV: Math.max(a.voltsV, known?.voltsV ?? 0),
          wattsW: a.wattsW + (known?.wattsW ?? 0),
        });
    });
    const loads = this.#loads(node.sourceId).map((n) => {
      const s = seen.get(n.index);
      if (!s) return this.#row(n, 'as before', Number.NaN, Number.NaN);
      const wrong = n.load !== undefined && (s.voltsV > n.load.voltsMaxV || s.voltsV < n.load.voltsMinV);
      // Less than a volt comes only of rounding: one leg alone drives nothing.
      return this.#row(n, s.voltsV < 1 ? 'dark' : wrong ? 'wrong volts' : 'as before', s.voltsV, s.wattsW);
    });
    const notes = [
      'Each load is taken as the impedance it has at its rated volts; the smaller load gets the higher volts. No breaker need open.',
      'Open the legs before the neutral is touched.',
    ];
    return this.#done(`The neutral comes off at ${node.label}`, node.sourceId, loads, notes, undefined);
  }

  /** Windings and elements of each load, with the wires they lie between and what `of` says of them. */
  #parts(
    model: SourceModel,
    of: (branch: number) => Omit<FaultPart, 'between'> | undefined,
  ): ReadonlyMap<string, readonly FaultPart[]> {
    const practice = planRecord(this.#plan).practice;
    const out = new Map<string, FaultPart[]>();
    model.branchLoad.forEach((index, b) => {
      const [node, part] = [this.#power.tree.nodes[index], of(b)];
      if (!node || !part) return;
      const name = (wire: number | undefined): string =>
        wire === undefined || wire === NEUTRAL ? 'N' : legName(practice, node.system, wire);
      const between = `${name(model.branches.from[b])} to ${name(model.branches.to[b])}`;
      out.set(node.key, [...(out.get(node.key) ?? []), { between, ...part }]);
    });
    return out;
  }

  #below(top: SupplyNode, sameNeutral = false): ReadonlySet<number> {
    const all = new Set([top.index]);
    for (const n of this.#power.tree.nodes)
      if (all.has(n.parent) && !(sameNeutral && n.transformer)) all.add(n.index);
    return all;
  }

  #loads(sourceId: Id | undefined): readonly SupplyNode[] {
    return this.#power.tree.nodes.filter(
      (n) =>
        n.sourceId === sourceId &&
        n.load !== undefined &&
        n.branches.length > 0 &&
        n.notComputed === undefined,
    );
  }

  #row(n: SupplyNode, state: FaultLoad['state'], voltsV: number, wattsW: number): FaultLoad {
    const before = (q: Quantity): number => this.#power.figures.get(n.key, q, this.#setup);
    const gone = state === 'dark';
    return {
      key: n.key,
      recordId: n.recordId,
      label: n.label,
      state,
      voltsV: gone ? 0 : Number.isNaN(voltsV) ? before('voltsV') : voltsV,
      wattsW: gone ? 0 : Number.isNaN(wattsW) ? before('loadW') : wattsW,
      voltsMinV: n.load?.voltsMinV ?? Number.NaN,
      voltsMaxV: n.load?.voltsMaxV ?? Number.NaN,
      restrikeMin: gone && before('loadW') > 0 ? this.#restrikeMin(n) : undefined,
    };
  }

  #restrikeMin(n: SupplyNode): number | undefined {
    const r = this.#plan.records.get(n.recordId);
    const head = r?.type === 'ballast' ? recordOf(this.#plan, 'fixture', r.fixtureId) : r;
    return head?.type === 'fixture' ? kindOf(this.#plan, head.kindId, 'fixture')?.hotRestrikeMin : undefined;
  }

  #done(
    title: string,
    sourceId: Id | undefined,
    loads: readonly FaultLoad[],
    notes: readonly string[],
    afterA: AfterA | undefined,
  ): Result<WhatIf> {
    const order = { 'wrong volts': 0, dark: 1, 'fewer legs': 2, 'as before': 3 } as const;
    const sorted = loads
      .map((l, i) => ({ l, i }))
      .sort((a, b) => order[a.l.state] - order[b.l.state] || a.i - b.i)
      .map((x) => x.l);
    const model = this.#power.sources.get(sourceId ?? '')?.model;
    return ok({
      title,
      setupId: this.#power.setups[this.#setup]?.id ?? '',
      setup: this.#power.setups[this.#setup]?.name ?? '',
      loads: sorted,
      voltsKnown: model !== undefined && model.basis !== 'unknown',
      meter: afterA && sourceId !== undefined ? this.#meter(sourceId, afterA) : undefined,
      notes: [...notes, GENERAL],
    });
  }

  /** Amps at a source with the dark loads gone. */
  #without(sourceId: Id | undefined, loads: readonly FaultLoad[]): AfterA {
    const draft = new Draft(this.#plan);
    for (const l of loads) {
      if (l.state !== 'dark') continue;
      const r = this.#plan.records.get(l.recordId);
      // A fixture stays in its place, so that what it passes on stays fed.
      if (r?.type === 'fixture' && loadSpecOf(this.#plan, r)) draft.put({ ...r, onPacks: true });
      else if (r?.type === 'ballast')
        for (const cable of recordsOf(this.#plan, 'cable'))
          if (cable.to.recordId === r.id) draft.remove(cable.id);
      if (r?.type === 'otherLoad') draft.remove(r.id);
    }
    const left = applyChanges(this.#plan, draft.changes());
    this.reckoned = { parts: new Map(), left };
    const after = computePower(left);
    return (q) => after.figures.get(sourceId ?? '', q, this.#setup);
  }

  #meter(sourceId: Id, afterA: AfterA): FaultMeter {
    const source = this.#power.tree.byKey.get(sourceId);
    const practice = planRecord(this.#plan).practice;
    const legs = source?.legs ?? [];
    return {
      sourceId,
      label: source?.label ?? '',
      wires: [...legs, ...(source?.neutral ? [undefined] : [])].map((l) => {
        const q: Quantity = l === undefined ? 'neutralA' : (LEGS[l] ?? 'leg0A');
        return {
          name: l === undefined ? 'N' : legName(practice, source?.system, l),
          beforeA: this.#power.figures.get(sourceId, q, this.#setup),
          afterA: afterA(q, l),
        };
      }),
    };
  }
}

/** Amps on a wire of the source after the fault; without a leg it is the neutral. */
type AfterA = (quantity: Quantity, leg: number | undefined) => number;

const missing = (what: string): { readonly ok: false; readonly error: Problem } =>
  fail({
    what: `The plan’s supply has no ${what}.`,
    todo: 'Take a key from the list that “check --json” prints.',
  });

const notComputed = (n: SupplyNode): { readonly ok: false; readonly error: Problem } =>
  fail({ what: `${n.label} is not computed: ${n.notComputed ?? ''}.`, todo: 'Settle that first.' });
