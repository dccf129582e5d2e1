import { conductor } from '../derive/conductors.ts';
import { limitOf, limitsOf } from '../derive/limits.ts';
import { rootKind } from '../derive/supply-roots.ts';
import type { SupplyNode } from '../derive/supply-types.ts';
import { legVoltsV, lineToLineV, type SystemShape, systemShape } from '../derive/systems.ts';
import type { Quantity } from '../derive/types.ts';
import { cableAmpacity, type PowerResult, wireImpedance } from '../engines/power/index.ts';
import { formatAmps, formatCableLength, formatPct } from '../kernel/units.ts';
import { mates } from '../plan/connectors.ts';
import type { CableKind, Kind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, planRecord, recordOf } from '../plan/plan.ts';
import { inletsOf, outletsOf } from '../plan/ports.ts';
import { headroomInput, runWorking, sizeInput, worstInput } from './explain-size.ts';
import type { RunAsked, RunChoice, Sized } from './size-types.ts';

export type { RunAsked, RunChoice } from './size-types.ts';

/** Sets of single conductors side by side that are tried. */
const MOST_SETS = 4;

/** Least area of conductors that run side by side for one leg: 1/0 AWG, NEC 310.10(G) (from memory); taken in Europe as well. */
const LEAST_PARALLEL_MM2 = 50;

const inSets = (k: CableKind): boolean =>
  k.construction === 'single-conductors' &&
  (conductor(k.conductor)?.areaMm2 ?? 0) * Math.max(1, k.parallel) >= LEAST_PARALLEL_MM2;

const choiceOf = (plan: Plan, a: RunAsked, kind: CableKind, sets: number): RunChoice => {
  const z = wireImpedance(plan, kind);
  const sin = Math.sqrt(Math.max(0, 1 - a.powerFactor ** 2));
  const m = a.lengthMm / 1000 / sets;
  const leg = (z.legOhmPerM * a.powerFactor + z.reactanceOhmPerM * sin) * m * a.amps;
  const back = (z.neutralOhmPerM * a.powerFactor + z.neutralReactanceOhmPerM * sin) * m * a.neutralA;
  const dropV = a.neutral ? leg + back : a.legs === 3 ? Math.sqrt(3) * leg : 2 * leg;
  const ampacityA = cableAmpacity(plan, kind, a.cable).legA * sets;
  return { kind, sets, ampacityA, dropV, dropPct: (100 * dropV) / a.volts };
};

/** Whether a cable may stand behind a larger breaker by the exceptions of the practice. */
const excused = (plan: Plan, kind: CableKind, breakerA: number): boolean => {
  const value = (id: string): number => limitsOf(plan).get(id)?.value ?? Number.NaN;
  return (
    (conductor(kind.conductor)?.areaMm2 ?? 0) >= value('cord-under-breaker-area') &&
    breakerA <= value('cord-under-breaker-max')
  );
};

const bears = (plan: Plan, a: RunAsked, c: RunChoice): boolean =>
  c.ampacityA >= a.amps &&
  (a.breakerA === undefined || c.ampacityA >= a.breakerA || excused(plan, c.kind, a.breakerA));

const carries = (plan: Plan, a: RunAsked, c: RunChoice): boolean =>
  bears(plan, a, c) && c.dropPct <= a.dropPct;

/**
 * The lightest cable of the kinds given (several sets of single conductors where one does not do) that carries a run's amps,
 * is not weaker than the breaker ahead and loses no more volts than asked. Undefined where none does.
 */
export const sizeRun = (plan: Plan, a: RunAsked, book: readonly Kind[]): RunChoice | undefined => {
  const tries = book
    .filter((k): k is CableKind => k.family === 'cable' && k.circuits === undefined)
    .filter((k) => k.legs === a.legs && k.neutral === a.neutral && (a.fits?.(k) ?? true))
    .flatMap((k) =>
      Array.from({ length: inSets(k) ? MOST_SETS : 1 }, (_, i) => ({
        k,
        sets: i + 1,
        copper: (conductor(k.conductor)?.areaMm2 ?? 0) * Math.max(1, k.parallel) * (i + 1),
        extra: k.massKg,
      })),
    )
    .sort((x, y) => x.sets - y.sets || x.copper - y.copper || x.extra - y.extra);
  for (const t of tries) {
    const c = choiceOf(plan, a, t.k, t.sets);
    if (carries(plan, a, c)) return c;
  }
  return undefined;
};

const LEGS: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

const worst = (power: PowerResult, key: string, q: Quantity): number => {
  const v = power.figures.worst(key, q).value;
  return Number.isNaN(v) ? 0 : v;
};

const fullestLeg = (power: PowerResult, key: string): Quantity =>
  LEGS.reduce((x, q) => (worst(power, key, q) > worst(power, key, x) ? q : x), 'leg0A');

const shapeAt = (power: PowerResult, n: SupplyNode): SystemShape | undefined => {
  for (let at: SupplyNode | undefined = n; at; at = power.tree.nodes[at.parent])
    if (at.transformer) return at.transformer.shape;
  return n.system && systemShape(n.system);
};

/** Most per cent of its volts lost to any load behind a run, and the part of it lost in the run itself. */
const lossesOf = (power: PowerResult, n: SupplyNode, volts: number): { total: number; own: number } => {
  const pct = (x: SupplyNode, s: number): number => (100 * power.figures.get(x.key, 'dropV', s)) / volts;
  const parent = power.tree.nodes[n.parent];
  let total = 0;
  let own = 0;
  power.setups.forEach((_, s) => {
    if (parent) own = Math.max(own, pct(n, s) - pct(parent, s));
    for (let i = n.index; i < power.tree.nodes.length; i++) {
      const x = power.tree.nodes[i];
      if (!x || (x !== n && x.depth <= n.depth)) break;
      const base = x.branches[0]?.nominalV;
      if (base !== undefined && x.load)
        total = Math.max(total, (100 * power.figures.get(x.key, 'dropV', s)) / base);
    }
  });
  return { total: Number.isNaN(total) ? 0 : total, own: Number.isNaN(own) ? 0 : own };
};

/** Least share of volts a run is given, so that a long way elsewhere does not ask the impossible of it. */
const LEAST_PCT = 0.5;

/** The lightest cable of the book for one run of the plan, with headroom, between the ends it has now. */
export const sizeCable = (
  plan: Plan,
  power: PowerResult,
  node: SupplyNode,
  grow: number,
  book: readonly Kind[],
): Sized | undefined => {
  const cable = recordOf(plan, 'cable', node.recordId);
  const own = cable && kindOf(plan, cable.kindId, 'cable');
  const shape = shapeAt(power, node);
  if (!cable || !own || !shape || node.notComputed !== undefined || node.circuit !== undefined)
    return undefined;
  const legA = Math.max(...LEGS.map((q) => worst(power, node.key, q)));
  if (legA === 0) return undefined;
  const outlet = outletsOf(plan, cable.from.recordId).find((o) => o.id === cable.from.portId);
  const inlet = inletsOf(plan, cable.to.recordId).find((i) => i.id === cable.to.portId);
  const [a, b] = node.legs;
  const volts = own.neutral || b === undefined ? legVoltsV(shape, a ?? 0) : lineToLineV(shape, a ?? 0, b);
  const va = worst(power, node.key, 'loadVa');
  const kind = rootKind(plan, node.sourceId ?? '')?.what;
  const privateRow = kind === 'generator' || kind === 'power-station' ? 'drop-total-private' : 'drop-total';
  const advice = (limitsOf(plan).get(privateRow) ?? limitOf(plan, 'drop-total')).value;
  const lost = lossesOf(power, node, volts);
  const asked: RunAsked = {
    amps: legA * grow,
    neutralA: worst(power, node.key, 'neutralA') * grow,
    legs: own.legs,
    neutral: own.neutral,
    lengthMm: node.lengthMm,
    volts,
    powerFactor: va > 0 ? Math.min(1, worst(power, node.key, 'loadW') / va) : 1,
    dropPct: Math.max(LEAST_PCT, advice - (lost.total - lost.own)),
    breakerA: power.limits[node.index]?.aheadA,
    cable,
    fits: (k) =>
      (outlet === undefined || mates(outlet.connector, k.plug)) &&
      (inlet === undefined || mates(k.socket, inlet.connector)),
  };
  const choice = sizeRun(plan, asked, book);
  const now = choiceOf(plan, asked, own, 1);
  const good = carries(plan, asked, now);
  const copper = (k: CableKind, sets: number): number =>
    (conductor(k.conductor)?.areaMm2 ?? 0) * Math.max(1, k.parallel) * sets;
  const units = planRecord(plan).lengthUnits;
  const pct = Math.round((grow - 1) * 100);
  const working = runWorking(plan, node.label, asked, choice, [
    worstInput(power, node.key, fullestLeg(power, node.key), 'amps on its fullest leg', formatAmps),
    headroomInput(grow),
    sizeInput(
      privateRow === 'drop-total-private' && limitsOf(plan).has(privateRow) ? privateRow : 'drop-total',
      formatPct(advice),
      `advice for the whole way; ${formatPct(lost.total)} is lost to the furthest load now, ${formatPct(lost.own)} of it here`,
    ),
  ]);
  return {
    working,
    recordId: cable.id,
    label: node.label,
    what: 'cable',
    nowName: own.name,
    kind: choice?.kind,
    sets: choice?.sets ?? 1,
    now: !good
      ? bears(plan, asked, now)
        ? 'loses too much'
        : 'too small'
      : choice && copper(choice.kind, choice.sets) < copper(own, 1) * (1 - 1e-9)
        ? 'larger'
        : 'fits',
    reasons: [
      `${formatAmps(asked.amps)} on a leg with ${pct} % headroom over ${formatCableLength(node.lengthMm, units)}${asked.breakerA === undefined ? '' : `, behind ${formatAmps(asked.breakerA)}`}; ${formatPct(asked.dropPct)} of the ${formatPct(advice)} of advice are left for it`,
      choice
        ? `${choice.sets > 1 ? `${choice.sets} × ` : ''}${choice.kind.name} carries ${formatAmps(choice.ampacityA)} and loses ${choice.dropV.toFixed(1)} V, ${formatPct(choice.dropPct)}`
        : bears(plan, asked, now)
          ? `this one loses ${now.dropV.toFixed(1)} V, ${formatPct(now.dropPct)}; no cable of the book with these ends loses little enough`
          : 'no cable of the book with these ends carries it',
    ],
  };
};
