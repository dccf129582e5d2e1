import { colourLine } from '../derive/colours.ts';
import { cableLength } from '../derive/lengths.ts';
import { loadPower } from '../derive/loads.ts';
import { rootKind } from '../derive/supply-roots.ts';
import { legName, legNames, systemShape } from '../derive/systems.ts';
import { type CurrentLimit, figureKey, type Quantity, type SupplyEntity } from '../derive/types.ts';
import { sourceRating, sourceVolts } from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import { kindOf, type Plan, planRecord, recordOf } from '../plan/plan.ts';
import { waysOf } from '../plan/ports.ts';
import { setRow } from './set-row.ts';
import type { CircuitRow, LoadRow, Meter, PowerMeter, SourceRow, SupplySummary } from './summary-types.ts';
import type { Assessment } from './types.ts';

export type {
  CircuitRow,
  LoadRow,
  Meter,
  PowerMeter,
  SetRow,
  SourceRow,
  SupplySummary,
} from './summary-types.ts';

const LEGS: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

/**
 * The supply as rows: each source with its legs, neutral and power, and each circuit with its loads, in one setup and in
 * the worst of all. Meter rail, power table, circuit schedule and command line all print these rows.
 * Without a setup, or with one the assessment does not hold, the first one is taken.
 */
export const supplySummary = (plan: Plan, a: Assessment, setupId?: Id): SupplySummary => {
  const now = Math.max(
    0,
    a.setups.findIndex((s) => s.id === setupId),
  );
  const v = new Rows(plan, a, now);
  return {
    setupId: a.setups[now]?.id ?? '',
    setup: a.setups[now]?.name ?? '',
    sources: a.entities.filter((e) => e.what === 'source').map((e) => v.source(e)),
    unfed: a.entities.filter((e) => e.what === 'load' && e.sourceId === undefined).map((e) => v.load(e)),
  };
};

class Rows {
  readonly #plan: Plan;
  readonly #a: Assessment;
  readonly #now: number;
  readonly #byKey: ReadonlyMap<string, SupplyEntity>;
  readonly #under = new Map<string, SupplyEntity[]>();

  constructor(plan: Plan, a: Assessment, now: number) {
    this.#plan = plan;
    this.#a = a;
    this.#now = now;
    this.#byKey = new Map(a.entities.map((e) => [e.key, e]));
    for (const e of a.entities) {
      const circuit = this.#circuitOf(e);
      if (!circuit) continue;
      const list = this.#under.get(circuit.key);
      if (list) list.push(e);
      else this.#under.set(circuit.key, [e]);
    }
  }

  source(e: SupplyEntity): SourceRow {
    const kind = rootKind(this.#plan, e.recordId);
    const { basis, volts } = sourceVolts(this.#plan, e.recordId);
    const rating = sourceRating(this.#plan, e.recordId);
    const power = basis === 'unknown' ? (['loadW', 'loadVa'] as const) : (['inW', 'inVa'] as const);
    const kilo = (n: number | undefined): number | undefined => (n === undefined ? undefined : n * 1000);
    return {
      id: e.recordId,
      label: e.label,
      kindName: kind?.name ?? '',
      what: kind?.what ?? '',
      system: (kind && systemShape(kind.system)?.name) ?? '',
      colours: colourLine(this.#plan, kind?.system),
      voltsBasis: basis,
      voltsV: basis === 'unknown' ? undefined : volts,
      legs: e.legs.map((l) => this.#meter(e, LEGS[l] ?? 'leg0A', this.#legName(e, l), e.legLimit)),
      neutral: this.#meter(e, 'neutralA', 'N', e.neutralLimit),
      watts: this.#power(e, power[0], kilo(rating.kw), rating.derived === 'kw', rating.share),
      voltAmps: this.#power(e, power[1], kilo(rating.kva), rating.derived === 'kva', rating.share),
      set: kind?.what === 'generator' ? setRow(this.#plan, this.#a, e, power[0], this.#now) : undefined,
      circuits: this.#a.entities
        .filter((x) => x.sourceId === e.sourceId && (x.what === 'way' || this.#isOpen(x)))
        .map((x) => this.#circuit(x)),
      notComputed: e.notComputed,
    };
  }

  load(e: SupplyEntity): LoadRow {
    const r = this.#plan.records.get(e.recordId);
    const kind = r?.type === 'fixture' || r?.type === 'ballast' ? kindOf(this.#plan, r.kindId) : undefined;
    const parent = e.parentKey === undefined ? undefined : this.#byKey.get(e.parentKey);
    const cable = parent?.what === 'cable' ? recordOf(this.#plan, 'cable', parent.recordId) : undefined;
    const level =
      r?.type === 'fixture' || r?.type === 'ballast'
        ? loadPower(this.#plan, r, this.#a.setups[this.#now]?.id ?? '')
        : undefined;
    const amps = this.#most(e);
    const drop = this.#a.figures.worst(e.key, 'dropPct');
    return {
      key: e.key,
      recordId: e.recordId,
      label: e.label,
      kindName: r?.type === 'otherLoad' ? 'other load' : (kind?.name ?? ''),
      legs: this.#legs(e),
      nowA: amps.nowA,
      worstA: amps.worstA,
      worstSetupId: amps.worstSetupId,
      figureKey: amps.figureKey,
      nowW: this.#at(e, 'loadW'),
      nowVa: this.#at(e, 'loadVa'),
      voltsV: this.#at(e, 'voltsV'),
      dropPct: this.#at(e, 'dropPct'),
      dropV: this.#at(e, 'dropV'),
      least: {
        setupId: this.#a.setups[drop.setupIndex]?.id,
        voltsV: this.#a.figures.get(e.key, 'voltsV', drop.setupIndex),
        dropPct: drop.value,
      },
      levelPct: level?.levelPct,
      levelAssumed: level?.levelAssumed ?? false,
      cable: parent?.what === 'cable' ? parent.label : '',
      cableId: cable?.id,
      cableMm: cable ? (cableLength(this.#plan, cable)?.totalMm ?? 0) : 0,
      notComputed: e.notComputed,
    };
  }

  #circuit(e: SupplyEntity): CircuitRow {
    const under = this.#under.get(e.key) ?? [];
    const way = waysOf(this.#plan, e.recordId).find((w) => w.id === e.wayId);
    const owner = this.#byKey.get(e.recordId);
    return {
      key: e.key,
      ownerId: e.recordId,
      owner: owner?.label ?? '',
      wayId: e.wayId,
      label: e.what === 'way' ? e.label : `${e.label}, straight through`,
      legs: this.#legs(e),
      breakerA: way ? way.breakerA : this.#mainA(e),
      poles: way?.poles ?? 0,
      curve: way?.curve,
      rcdMa: way?.rcdMa,
      amps: this.#most(e),
      nowW: this.#at(e, 'loadW'),
      nowVa: this.#at(e, 'loadVa'),
      loads: under.filter((x) => x.what === 'load').map((x) => this.load(x)),
      outlets: under.filter((x) => x.what === 'outlet').map((x) => x.label),
      feeds: under.filter((x) => x.what === 'box').map((x) => x.label),
      notComputed: e.notComputed,
    };
  }

  /** What guards a thing: the nearest way, or main breaker of a box, or else the source. A box without breakers is passed over. */
  #circuitOf(e: SupplyEntity): SupplyEntity | undefined {
    let up = e.parentKey === undefined ? undefined : this.#byKey.get(e.parentKey);
    while (up && up.what !== 'way' && up.what !== 'source' && !this.#hasMain(up))
      up = up.parentKey === undefined ? undefined : this.#byKey.get(up.parentKey);
    return up;
  }

  #hasMain(e: SupplyEntity): boolean {
    return e.what === 'box' && this.#mainA(e) !== undefined;
  }

  #mainA(e: SupplyEntity): number | undefined {
    const r = this.#plan.records.get(e.recordId);
    if (r?.type === 'source') return r.mainBreakerA ?? kindOf(this.#plan, r.kindId, 'source')?.mainBreakerA;
    return r?.type === 'box' ? kindOf(this.#plan, r.kindId, 'box')?.mainBreakerA : undefined;
  }

  /** A source or box with loads that have no way of its own between. */
  #isOpen(e: SupplyEntity): boolean {
    if (e.what !== 'source' && e.what !== 'box') return false;
    return (this.#under.get(e.key) ?? []).some((x) => x.what === 'load');
  }

  #at(e: SupplyEntity, q: Quantity): number {
    return this.#a.figures.get(e.key, q, this.#now);
  }

  #legName(e: SupplyEntity, leg: number): string {
    return legName(planRecord(this.#plan).practice, e.system, leg);
  }

  #legs(e: SupplyEntity): string {
    return legNames(planRecord(this.#plan).practice, e.system, e.legs);
  }

  /** The meter of the leg that carries most in its worst setup. */
  #most(e: SupplyEntity): Meter {
    const leg = e.legs.reduce((x, y) => {
      const [a, b] = [x, y].map((l) => this.#a.figures.worst(e.key, LEGS[l] ?? 'leg0A').value);
      return (b ?? 0) > (a ?? 0) ? y : x;
    }, e.legs[0] ?? 0);
    return this.#meter(e, LEGS[leg] ?? 'leg0A', this.#legName(e, leg), e.legLimit);
  }

  #meter(e: SupplyEntity, q: Quantity, name: string, limit: CurrentLimit | undefined): Meter {
    const nowA = this.#at(e, q);
    const worst = this.#a.figures.worst(e.key, q);
    const pct = (amps: number): number => (limit ? (100 * amps) / limit.limitA : Number.NaN);
    return {
      name,
      nowA,
      worstA: worst.value,
      worstSetupId: this.#a.setups[worst.setupIndex]?.id,
      worstSetup: this.#a.setups[worst.setupIndex]?.name ?? '',
      limitA: limit?.limitA,
      ratingA: limit?.ratingA,
      setBy: limit?.setBy,
      nowPct: pct(nowA),
      worstPct: pct(worst.value),
      figureKey: figureKey(q, e.key, this.#a.setups[this.#now]?.id ?? ''),
    };
  }

  #power(
    e: SupplyEntity,
    q: Quantity,
    rated: number | undefined,
    ratedDerived: boolean,
    share: number,
  ): PowerMeter {
    const now = this.#at(e, q);
    const worst = this.#a.figures.worst(e.key, q);
    const pct = (n: number): number => (rated === undefined ? Number.NaN : (100 * n) / (rated * share));
    return {
      now,
      worst: worst.value,
      worstSetupId: this.#a.setups[worst.setupIndex]?.id,
      worstSetup: this.#a.setups[worst.setupIndex]?.name ?? '',
      rated,
      ratedDerived,
      gives: rated === undefined ? undefined : rated * share,
      nowPct: pct(now),
      worstPct: pct(worst.value),
      figureKey: figureKey(q, e.key, this.#a.setups[this.#now]?.id ?? ''),
    };
  }
}
