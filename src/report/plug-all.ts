import { recordLabel } from '../derive/labels.ts';
import { newRunParts } from '../derive/lengths.ts';
import { levelFixtureId } from '../derive/loads.ts';
import { makeUp } from '../derive/stock.ts';
import { legVoltsV, lineToLineV } from '../derive/systems.ts';
import {
  computedSetups,
  computePower,
  nominalAmps,
  type Place,
  type PowerResult,
} from '../engines/power/index.ts';
import type { Id, NewId } from '../kernel/ids.ts';
import { applyChanges, type ChangeSet, compose, noChanges } from '../plan/change-set.ts';
import { connector } from '../plan/connectors.ts';
import { type Bridge, bridges, plugByBridge } from '../plan/edits/adapters.ts';
import type { AdapterKind } from '../plan/kinds/adapter.ts';
import type { CableKind } from '../plan/kinds/kinds.ts';
import { levelOf, type Plan, recordsOf } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import { Groups, inGroups, type Unit, unpluggedUnits } from './plug-units.ts';
import { freePlaces, placeLabel, plugsAt } from './where-to-plug.ts';

/** One unit plugged in by the program, as a change of its own. */
export interface PlugStep {
  readonly recordId: Id;
  readonly label: string;
  readonly toLabel: string;
  readonly kindName: string;
  readonly lengthMm: number;
  readonly amps: number;
  readonly changes: ChangeSet;
  readonly basis: PlugBasis;
}

/** What the figures of a step were reckoned from. */
export interface PlugBasis {
  /** Of the setup in which it draws most: its name, and the watts at its level there. */
  readonly setup: string;
  readonly wattsW: number;
  readonly ratedW: number;
  /** No level is set there: at full. */
  readonly levelAssumed: boolean;
  readonly powerFactor: number;
  /** Nominal volts its volt-amperes are divided by: over all its legs where it takes each to neutral. */
  readonly voltsV: number;
  readonly run: ReturnType<typeof newRunParts>;
  readonly piecesMm: readonly number[];
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
  /** Adapters to choose from where no cable fits; those of the plan when absent. */
  readonly adapters?: readonly AdapterKind[];
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
      const n = power.tree.nodes[i];
      const up = n?.parent ?? -1;
      // What hangs behind a transformer stands at its box already.
      if (up < 0 || n?.transformer) continue;
      for (let k = 0; k < 3 * this.setups; k++)
        this.#amps[up * 3 * this.setups + k] =
          (this.#amps[up * 3 * this.setups + k] ?? 0) + (this.#amps[i * 3 * this.setups + k] ?? 0);
    }
  }

  /** Whether so many amps by setup fit on a place's legs, on it and on all it is fed through. */
  fits(p: Place, amps: readonly number[]): boolean {
    return this.#through(p).every(({ node, perAmp }) => {
      const limit = this.#power.limits[node.index]?.leg;
      if (!limit) return true;
      const limitA = limit.planningA ?? limit.limitA;
      return perAmp.every(
        (per, l) =>
          per === 0 || amps.every((a, s) => this.#at(node.index, l, s) + a * per <= limitA * (1 + 1e-9)),
      );
    });
  }

  /** What a place is fed through, with the amps on each leg there for one on each leg of the place. */
  #through(p: Place): readonly Pick<Place['beyond'][number], 'node' | 'perAmp'>[] {
    const perAmp = [0, 1, 2].map((l) => (p.legs.includes(l) ? 1 : 0));
    return [...p.chain.map((node) => ({ node, perAmp })), ...p.beyond];
  }

  add(p: Place, amps: readonly number[]): void {
    for (const { node, perAmp } of this.#through(p))
      perAmp.forEach((per, l) => {
        amps.forEach((a, s) => {
          const at = (node.index * 3 + l) * this.setups + s;
          this.#amps[at] = (this.#amps[at] ?? 0) + a * per;
        });
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
 * Plugs in every unit, ballast, charger and piece of control gear that has no feed: the largest first, each by the shortest
 * made-up cable to an outlet that takes it with room in every setup, among equals where the legs stay most even. What is in
 * one group goes to one box as long as that has room. An adapter of the book is used where no cable fits. Nothing that is
 * plugged in moves, nothing that is locked is touched; what does not fit is left with the reason. At nominal currents, legs as
 * plain sums.
 */
export const plugEverything = (plan: Plan, options: PlugAllOptions): PluggedAll => {
  const power = computePower(plan);
  const sums = new Sums(power);
  const setups = computedSetups(plan);
  const book = options.book ?? recordsOf(plan, 'kind').filter((k): k is CableKind => k.family === 'cable');
  const adapters =
    options.adapters ??
    recordsOf(plan, 'kind').filter((k): k is AdapterKind => k.family === 'adapter' && k.what !== 'data');
  const open = [...power.sources.keys()].flatMap((id) =>
    freePlaces(plan, power, id).map((p) => ({ p, left: p.capacity - plugsAt(plan, p) })),
  );
  const groups = new Groups(plan);
  const steps: PlugStep[] = [];
  const left: PluggedAll['left'][number][] = [];
  let after = plan;
  for (const unit of inGroups(unpluggedUnits(plan))) {
    const { r, inlet, watts, powerFactor } = unit;
    const label = recordLabel(plan, r);
    const drawn = setups.map((s) => watts(s.id) / powerFactor);
    const found = open
      .filter((o) => o.left > 0)
      .flatMap((o) => candidate(plan, power, unit, o.p, book, adapters) ?? [])
      .map((c) => ({ ...c, amps: drawn.map((va) => va / c.volts) }));
    const fit = groups.narrow(
      r,
      found.filter((c) => sums.fits(c.p, c.amps)),
      open,
    );
    const best = fit.reduce<(typeof fit)[number] | undefined>((a, b) => {
      if (!a) return b;
      const d =
        Number(a.bridge.adapter !== undefined) - Number(b.bridge.adapter !== undefined) ||
        a.lengthMm - b.lengthMm ||
        sums.legAfter(a.p, a.amps) - sums.legAfter(b.p, b.amps) ||
        sums.wayAfter(a.p, a.amps) - sums.wayAfter(b.p, b.amps);
      return d > 0 ? b : a;
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
    groups.plugged(r, best.p.ref.recordId);
    const place = open.find((o) => o.p === best.p);
    if (place) place.left--;
    const most = drawn.reduce((m, va, i) => (va > (drawn[m] ?? 0) ? i : m), 0);
    const changes = plugByBridge(
      after,
      best.p.ref,
      { recordId: r.id, portId: inlet.id },
      best.bridge,
      options.newId,
    );
    after = applyChanges(after, changes);
    steps.push({
      recordId: r.id,
      label,
      toLabel: placeLabel(plan, best.p),
      kindName: [best.bridge.adapter?.name, best.bridge.cable.name].filter(Boolean).join(', '),
      lengthMm: best.lengthMm,
      amps: Math.max(...best.amps),
      changes,
      basis: {
        setup: setups[most]?.name ?? '',
        wattsW: watts(setups[most]?.id ?? ''),
        ratedW: unit.spec.wattsW,
        levelAssumed:
          (r.type === 'fixture' || r.type === 'ballast') &&
          levelOf(plan, setups[most]?.id ?? '', levelFixtureId(r)).assumed,
        powerFactor,
        voltsV: best.volts,
        run: best.run,
        piecesMm: best.piecesMm,
      },
    });
  }
  return { steps, left, changes: steps.reduce((all, s) => compose(all, s.changes), noChanges) };
};

const candidate = (
  plan: Plan,
  power: PowerResult,
  unit: Unit,
  p: Place,
  book: readonly CableKind[],
  adapters: readonly AdapterKind[],
):
  | {
      readonly p: Place;
      readonly bridge: Bridge;
      readonly lengthMm: number;
      readonly volts: number;
      readonly run: PlugBasis['run'];
      readonly piecesMm: readonly number[];
    }
  | undefined => {
  const { r, inlet, spec } = unit;
  const here = placeOf(plan, r.id);
  const there = placeOf(plan, p.ref.recordId);
  if (!here || !there || here.floorId !== there.floorId) return undefined;
  if (p.legs.length !== inlet.legs || p.port.neutral !== inlet.neutral) return undefined;
  const shape = p.chain.at(-1)?.transformer?.shape ?? power.sources.get(p.way.sourceId ?? '')?.model.shape;
  if (!shape) return undefined;
  const [a, b] = p.legs;
  const volts = inlet.neutral || b === undefined ? legVoltsV(shape, a ?? 0) : lineToLineV(shape, a ?? 0, b);
  if (volts < spec.voltsMinV || volts > spec.voltsMaxV) return undefined;
  const share = inlet.legs > 1 && inlet.neutral ? inlet.legs : 1;
  const legA = spec.wattsW / spec.powerFactor / volts / share;
  // A plate of several sockets carries more than one plug may.
  if (legA > (connector(p.port.connector)?.ratingA || Number.POSITIVE_INFINITY)) return undefined;
  const run = newRunParts(plan, there, here);
  const neededMm = run.drawnMm + run.risesMm + run.slackMm;
  for (const bridge of bridges(p.port, inlet, book, adapters)) {
    const { totalMm: lengthMm, piecesMm } = makeUp(neededMm, bridge.cable.stockLengthsMm);
    // A cable or adapter that would be the weakest part is passed over.
    if (bridge.cable.ampacityA * bridge.cable.parallel < legA) continue;
    if ((bridge.adapter?.ampacityA ?? Number.POSITIVE_INFINITY) < legA) continue;
    if ((bridge.adapter?.upstreamA ?? Number.POSITIVE_INFINITY) < (p.way.way?.breakerA ?? 0)) continue;
    return { p, bridge, lengthMm, volts: volts * share, run, piecesMm };
  }
  return undefined;
};
