import { recordLabel } from '../derive/labels.ts';
import { newRunMm } from '../derive/lengths.ts';
import { loadSpecOf } from '../derive/loads.ts';
import { makeUp } from '../derive/stock.ts';
import {
  computedSetups,
  computePower,
  nominalAmps,
  type Place,
  type PowerResult,
} from '../engines/power/index.ts';
import type { Id, NewId } from '../kernel/ids.ts';
import { applyChanges, type ChangeSet, compose, noChanges } from '../plan/change-set.ts';
import { cablesThatFit, plug } from '../plan/edits/plug.ts';
import type { CableKind } from '../plan/kinds/kinds.ts';
import type { InletPort } from '../plan/kinds/ports.ts';
import { levelOf, type Plan, recordsOf } from '../plan/plan.ts';
import { feedOf, inletsOf, placeOf } from '../plan/ports.ts';
import type { Ballast, Fixture } from '../plan/records/index.ts';
import { freePlaces, placeLabel } from './where-to-plug.ts';

/** One unit plugged in by the program, as a change of its own. */
export interface PlugStep {
  readonly recordId: Id;
  readonly label: string;
  readonly toLabel: string;
  readonly kindName: string;
  readonly lengthMm: number;
  readonly amps: number;
  readonly changes: ChangeSet;
}

export interface PluggedAll {
  readonly steps: readonly PlugStep[];
  /** Units that stay unplugged, and why in words. */
  readonly left: readonly { readonly recordId: Id; readonly label: string; readonly why: string }[];
  /** All steps as one change. */
  readonly changes: ChangeSet;
}

export interface PlugAllOptions {
  readonly newId: NewId;
  /** Cable kinds to choose from; those of the plan when absent. */
  readonly book?: readonly CableKind[];
}

/** Amps already on the legs of each limited thing by setup, kept up to date as units are plugged in. */
class Sums {
  readonly #power: PowerResult;
  readonly #amps: Float64Array;
  readonly setups: number;

  constructor(power: PowerResult) {
    this.#power = power;
    this.setups = power.setups.length;
    this.#amps = nominalAmps(power).legA.slice();
    for (let i = power.tree.nodes.length - 1; i >= 0; i--) {
      const up = power.tree.nodes[i]?.parent ?? -1;
      if (up < 0) continue;
      for (let k = 0; k < 3 * this.setups; k++)
        this.#amps[up * 3 * this.setups + k] =
          (this.#amps[up * 3 * this.setups + k] ?? 0) + (this.#amps[i * 3 * this.setups + k] ?? 0);
    }
  }

  /** Whether so many amps by setup fit on a place's legs, on it and on all it is fed through. */
  fits(p: Place, amps: readonly number[]): boolean {
    return p.chain.every((n) => {
      const limitA = this.#power.limits[n.index]?.leg?.limitA;
      if (limitA === undefined) return true;
      return p.legs.every((l) => amps.every((a, s) => this.#at(n.index, l, s) + a <= limitA * (1 + 1e-9)));
    });
  }

  add(p: Place, amps: readonly number[]): void {
    for (const n of p.chain)
      for (const l of p.legs)
        amps.forEach((a, s) => {
          const at = (n.index * 3 + l) * this.setups + s;
          this.#amps[at] = (this.#amps[at] ?? 0) + a;
        });
  }

  /** Most amps on a leg of the place's source with these added, over all setups. */
  legAfter(p: Place, amps: readonly number[]): number {
    const source = p.chain.at(-1);
    if (!source) return 0;
    return Math.max(...p.legs.map((l) => Math.max(...amps.map((a, s) => this.#at(source.index, l, s) + a))));
  }

  /** Most amps on the way itself: spreads units over ways that are alike. */
  wayAfter(p: Place, amps: readonly number[]): number {
    return Math.max(...p.legs.map((l) => Math.max(...amps.map((a, s) => this.#at(p.way.index, l, s) + a))));
  }

  #at(node: number, leg: number, setup: number): number {
    return this.#amps[(node * 3 + leg) * this.setups + setup] ?? 0;
  }
}

/**
 * Plugs in every unit and ballast that has no feed: the largest first, each by the shortest made-up cable to an outlet that
 * takes it with room in every setup, and among equals where the legs stay most even. Nothing that is plugged in moves; what
 * does not fit is left with the reason. At nominal currents, legs as plain sums.
 */
export const plugEverything = (plan: Plan, options: PlugAllOptions): PluggedAll => {
  const power = computePower(plan);
  const sums = new Sums(power);
  const setups = computedSetups(plan);
  const book = options.book ?? recordsOf(plan, 'kind').filter((k): k is CableKind => k.family === 'cable');
  const sources = [...power.sources.keys()];
  const open = sources.flatMap((id) => freePlaces(plan, power, id).map((p) => ({ p, left: p.capacity })));
  for (const o of open) o.left = o.p.capacity - usedAt(plan, o.p);
  const steps: PlugStep[] = [];
  const left: PluggedAll['left'][number][] = [];
  let after = plan;
  for (const unit of unpluggedUnits(plan)) {
    const { r, inlet, watts, powerFactor } = unit;
    const label = recordLabel(plan, r);
    const drawn = setups.map((s) => watts(s.id) / powerFactor);
    const found = open
      .filter((o) => o.left > 0)
      .flatMap((o) => candidate(plan, power, r, inlet, o.p, book) ?? [])
      .map((c) => ({ ...c, amps: drawn.map((va) => va / c.volts) }));
    const fit = found.filter((c) => sums.fits(c.p, c.amps));
    const best = fit.reduce<(typeof fit)[number] | undefined>((a, b) => {
      if (!a) return b;
      const d =
        b.lengthMm - a.lengthMm ||
        sums.legAfter(b.p, b.amps) - sums.legAfter(a.p, a.amps) ||
        sums.wayAfter(b.p, b.amps) - sums.wayAfter(a.p, a.amps);
      return d < 0 ? b : a;
    }, undefined);
    if (!best) {
      left.push({
        recordId: r.id,
        label,
        why:
          found.length === 0
            ? 'no free outlet on its floor takes its connector with a cable of the book'
            : 'no free outlet that takes it has room for it in every setup',
      });
      continue;
    }
    sums.add(best.p, best.amps);
    const place = open.find((o) => o.p === best.p);
    if (place) place.left--;
    const changes = plug(after, best.p.ref, { recordId: r.id, portId: inlet.id }, best.kind, options.newId);
    after = applyChanges(after, changes);
    steps.push({
      recordId: r.id,
      label,
      toLabel: placeLabel(plan, best.p),
      kindName: best.kind.name,
      lengthMm: best.lengthMm,
      amps: Math.max(...best.amps),
      changes,
    });
  }
  return { steps, left, changes: steps.reduce((all, s) => compose(all, s.changes), noChanges) };
};

const usedAt = (plan: Plan, p: Place): number =>
  recordsOf(plan, 'cable').filter((c) => c.from.recordId === p.ref.recordId && c.from.portId === p.ref.portId)
    .length;

interface Unit {
  readonly r: Fixture | Ballast;
  readonly inlet: InletPort;
  readonly watts: (setupId: Id) => number;
  readonly powerFactor: number;
}

/** Units and ballasts that draw mains and have no feed, the largest first. Locked ones are left alone. */
const unpluggedUnits = (plan: Plan): readonly Unit[] => {
  const all = [...recordsOf(plan, 'fixture'), ...recordsOf(plan, 'ballast')].flatMap((r): Unit[] => {
    const spec = loadSpecOf(plan, r);
    const inlet = inletsOf(plan, r.id)[0];
    if (!spec || !inlet || r.locked || spec.unknown === true) return [];
    if (inletsOf(plan, r.id).some((i) => feedOf(plan, { recordId: r.id, portId: i.id }))) return [];
    const head = r.type === 'ballast' ? r.fixtureId : r.id;
    return [
      {
        r,
        inlet,
        watts: (s) => spec.standbyW + ((spec.wattsW - spec.standbyW) * levelOf(plan, s, head).levelPct) / 100,
        powerFactor: spec.powerFactor,
      },
    ];
  });
  const full = (u: Unit): number => loadSpecOf(plan, u.r)?.wattsW ?? 0;
  return all
    .map((u, i) => ({ u, i }))
    .sort((a, b) => full(b.u) / b.u.powerFactor - full(a.u) / a.u.powerFactor || a.i - b.i)
    .map((x) => x.u);
};

const candidate = (
  plan: Plan,
  power: PowerResult,
  r: Fixture | Ballast,
  inlet: InletPort,
  p: Place,
  book: readonly CableKind[],
):
  | { readonly p: Place; readonly kind: CableKind; readonly lengthMm: number; readonly volts: number }
  | undefined => {
  const here = placeOf(plan, r.id);
  const there = placeOf(plan, p.ref.recordId);
  if (!here || !there || here.floorId !== there.floorId) return undefined;
  if (p.legs.length !== inlet.legs || p.port.neutral !== inlet.neutral) return undefined;
  const shape = power.sources.get(p.way.sourceId ?? '')?.model.shape;
  const spec = loadSpecOf(plan, r);
  if (!shape || !spec) return undefined;
  const leg = shape.nominalV * (shape.ratios[p.legs[0] ?? 0] ?? 1);
  const between = shape.legs === 2 ? 2 * leg : Math.sqrt(3) * leg;
  const volts = inlet.neutral ? leg : between;
  if (volts < spec.voltsMinV || volts > spec.voltsMaxV) return undefined;
  const share = inlet.legs > 1 && inlet.neutral ? inlet.legs : 1;
  const neededMm = newRunMm(plan, there, here);
  for (const kind of cablesThatFit(p.port, inlet, book)) {
    const lengthMm = makeUp(neededMm, kind.stockLengthsMm).totalMm;
    // A cable that would be the weakest part is passed over.
    if (kind.ampacityA * kind.parallel < spec.wattsW / spec.powerFactor / volts / share) continue;
    return { p, kind, lengthMm, volts: volts * share };
  }
  return undefined;
};
