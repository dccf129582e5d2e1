import { limitOf } from '../derive/limits.ts';
import { balancedV, systemShape } from '../derive/systems.ts';
import type { Quantity } from '../derive/types.ts';
import { computePower, deratingShare, type PowerResult, sourceRating } from '../engines/power/index.ts';
import type { Id } from '../kernel/ids.ts';
import { formatAmps, formatVoltAmps, formatWatts } from '../kernel/units.ts';
import { connector, mates } from '../plan/connectors.ts';
import type { BoxKind, Kind, SourceKind } from '../plan/kinds/kinds.ts';
import { kindOf, type Plan, planRecord, recordOf, recordsOf } from '../plan/plan.ts';
import { feedOf, inletsOf, outletsOf, waysOf } from '../plan/ports.ts';
import { headroomInput, sizeInput, sizeWorking, worstInput } from './explain-size.ts';
import { sizeCable } from './size-cable.ts';
import type { Sized } from './size-types.ts';

export type { Sized } from './size-types.ts';

const LEGS: readonly Quantity[] = ['leg0A', 'leg1A', 'leg2A'];

export interface SizeOptions {
  /** Share kept free, in per cent of the load; 20 when absent (common practice). */
  readonly headroomPct?: number;
  readonly book: readonly Kind[];
}

/**
 * The smallest standard generator for each set, box for each box and cable for each run that carries the plan in every setup
 * with headroom.
 */
export const sizePlan = (plan: Plan, options: SizeOptions): readonly Sized[] => {
  const power = computePower(plan);
  const grow = 1 + Math.max(0, options.headroomPct ?? 20) / 100;
  return [
    ...recordsOf(plan, 'source').flatMap((s) => sizeSet(plan, power, s.id, grow, options.book) ?? []),
    ...recordsOf(plan, 'box').flatMap((b) => sizeBox(plan, power, b.id, grow, options.book) ?? []),
    ...power.tree.nodes.flatMap((n) =>
      n.what === 'cable' ? (sizeCable(plan, power, n, grow, options.book) ?? []) : [],
    ),
  ];
};

const most = (power: PowerResult, key: string, q: Quantity): number => {
  const v = power.figures.worst(key, q).value;
  return Number.isNaN(v) ? 0 : v;
};

const worstLeg = (power: PowerResult, key: string): number =>
  Math.max(...LEGS.map((q) => most(power, key, q)));

const fullestLeg = (power: PowerResult, key: string): Quantity =>
  LEGS.reduce((x, q) => (most(power, key, q) > most(power, key, x) ? q : x), 'leg0A');

const sizeSet = (
  plan: Plan,
  power: PowerResult,
  id: Id,
  grow: number,
  book: readonly Kind[],
): Sized | undefined => {
  const record = recordOf(plan, 'source', id);
  const own = record && kindOf(plan, record.kindId, 'source');
  const node = power.tree.byKey.get(id);
  if (!own || !node || own.what !== 'generator' || node.notComputed !== undefined) return undefined;
  const watts = Math.max(most(power, id, 'inW'), most(power, id, 'loadW')) * grow;
  const va = Math.max(most(power, id, 'inVa'), most(power, id, 'loadVa')) * grow;
  const legA = worstLeg(power, id) * grow;
  if (watts === 0) return undefined;
  const { altitudeM, ambientC } = planRecord(plan);
  const share = deratingShare(plan, altitudeM ?? 0, ambientC);
  const pf = limitOf(plan, 'generator-rating-pf').value;
  const factor = limitOf(plan, 'breaker-load-factor').value;
  const gives = (k: {
    ratedKw?: number | undefined;
    ratedKva?: number | undefined;
    system: SourceKind['system'];
  }) => {
    const kva = k.ratedKva ?? (k.ratedKw ?? 0) / pf;
    const kw = k.ratedKw ?? kva * pf;
    const shape = systemShape(k.system);
    return {
      watts: kw * 1000 * share,
      va: kva * 1000 * share,
      legA: shape ? (kva * 1000 * share) / balancedV(shape) : 0,
    };
  };
  const carries = (k: SourceKind): boolean => {
    const g = gives(k);
    const main = k.mainBreakerA === undefined ? Number.POSITIVE_INFINITY : k.mainBreakerA * factor;
    return g.watts >= watts && g.va >= va && g.legA >= legA && main >= legA;
  };
  const sets = book
    .filter(
      (k): k is SourceKind => k.family === 'source' && k.what === 'generator' && k.system === own.system,
    )
    .sort((a, b) => gives(a).va - gives(b).va);
  const kind = sets.find(carries);
  const rating = sourceRating(plan, id);
  const nowKind = {
    ...own,
    ratedKw: rating.kw ?? own.ratedKw,
    ratedKva: rating.kva ?? own.ratedKva,
  } as SourceKind;
  const now = carries(nowKind)
    ? kind && gives(kind).va < gives(nowKind).va * (1 - 1e-9)
      ? 'larger'
      : 'fits'
    : 'too small';
  const pct = Math.round((grow - 1) * 100);
  const told = (k: SourceKind): string =>
    `${k.name}: ${formatWatts(gives(k).watts)}, ${formatVoltAmps(gives(k).va)}, ${formatAmps(gives(k).legA)} a leg`;
  const smaller = kind ? sets[sets.indexOf(kind) - 1] : sets.at(-1);
  const working = sizeWorking(node.label, {
    formula: 'smallest set with kW × share ≥ P, kVA × share ≥ S, and amps a leg and its main breaker ≥ I',
    inputs: [
      worstInput(power, id, 'inW', 'real power', formatWatts),
      worstInput(power, id, 'inVa', 'apparent power', formatVoltAmps),
      worstInput(power, id, fullestLeg(power, id), 'amps on its fullest leg', formatAmps),
      headroomInput(grow),
      sizeInput(
        'share of its rating',
        `${Math.round(share * 100)} %`,
        `derating table at ${altitudeM ?? 0} m and ${ambientC} °C`,
        altitudeM === undefined,
      ),
      sizeInput('generator-rating-pf', `${pf}`, 'rule of the plan, where a kind gives one of kW and kVA'),
      sizeInput('breaker-load-factor', `${factor}`, 'rule of the plan, for its main breaker'),
    ],
    steps: [
      `P = ${formatWatts(watts)}, S = ${formatVoltAmps(va)}, I = ${formatAmps(legA)}, headroom in them`,
      ...(kind ? [`carries it: ${told(kind)}`] : []),
      ...(smaller
        ? [`${kind ? 'the next smaller does not' : 'the largest does not'}: ${told(smaller)}`]
        : []),
    ],
    result: kind?.name ?? 'nothing in the book',
    source:
      'Ratings of the gear book; derating by the practice’s table; headroom is common practice, no published source',
  });
  return {
    working,
    recordId: id,
    label: node.label,
    what: 'generator',
    nowName: own.name,
    kind,
    now,
    reasons: [
      `most in any setup, with ${pct} % headroom: ${formatWatts(watts)}, ${formatVoltAmps(va)}, ${formatAmps(legA)} on a leg`,
      ...(share < 1
        ? [`a set gives ${Math.round(share * 100)} % of its rating at this height and heat`]
        : []),
      kind
        ? `${kind.name} gives ${formatWatts(gives(kind).watts)}, ${formatVoltAmps(gives(kind).va)}, ${formatAmps(gives(kind).legA)} a leg`
        : `no set of the book with ${own.system} V gives that`,
    ],
  };
};

interface Need {
  readonly connector: string;
  readonly legs: number;
  readonly neutral: boolean;
  readonly amps: number;
  /** Trip class of the device it is behind now; a smaller box must have one as well. */
  readonly rcdMa: number | undefined;
}

/** Whether a way has a residual-current device that opens no later than `ma`. */
const guards = (k: BoxKind, wayId: string | undefined, ma: number): boolean =>
  (k.ways.find((w) => w.id === wayId)?.rcdMa ?? Number.POSITIVE_INFINITY) <= ma;

const sizeBox = (
  plan: Plan,
  power: PowerResult,
  id: Id,
  grow: number,
  book: readonly Kind[],
): Sized | undefined => {
  const record = recordOf(plan, 'box', id);
  const own = record && kindOf(plan, record.kindId, 'box');
  const node = power.tree.byKey.get(id);
  const inlet = inletsOf(plan, id)[0];
  if (!own || !node || !inlet || node.notComputed !== undefined) return undefined;
  const feed = feedOf(plan, { recordId: id, portId: inlet.id });
  const socket = (feed && kindOf(plan, feed.kindId, 'cable')?.socket) ?? inlet.connector;
  const needs: Need[] = recordsOf(plan, 'cable').flatMap((c) => {
    if (c.from.recordId !== id) return [];
    const port = outletsOf(plan, id).find((o) => o.id === c.from.portId);
    const plug = kindOf(plan, c.kindId, 'cable')?.plug;
    return port && plug
      ? [
          {
            connector: plug,
            legs: port.legs,
            neutral: port.neutral,
            amps: worstLeg(power, c.id) * grow,
            rcdMa: waysOf(plan, id).find((w) => w.id === port.wayId)?.rcdMa,
          },
        ]
      : [];
  });
  if (needs.length === 0) return undefined;
  const factor = limitOf(plan, 'breaker-load-factor').value;
  const legA = worstLeg(power, id) * grow;
  const carries = (k: BoxKind): boolean => {
    const at = k.inlets[0];
    if (!at || !mates(socket, at.connector) || at.legs !== inlet.legs) return false;
    const main = k.mainBreakerA === undefined ? Number.POSITIVE_INFINITY : k.mainBreakerA * factor;
    if ((connector(at.connector)?.ratingA ?? 0) < legA || main < legA) return false;
    // The largest plugs first, each into the smallest way that carries it; several may share one with room.
    const left = new Map(k.ways.map((w) => [w.id, w.breakerA * factor]));
    const open = [...k.outlets];
    for (const n of [...needs].sort((a, b) => b.amps - a.amps)) {
      const fit = open
        .filter((o) => mates(o.connector, n.connector) && o.legs === n.legs && o.neutral === n.neutral)
        .filter((o) => o.wayId === undefined || (left.get(o.wayId) ?? 0) >= n.amps)
        .filter((o) => n.rcdMa === undefined || guards(k, o.wayId, n.rcdMa))
        .sort((a, b) => (left.get(a.wayId ?? '') ?? 0) - (left.get(b.wayId ?? '') ?? 0))[0];
      if (!fit) return false;
      open.splice(open.indexOf(fit), 1);
      if (fit.wayId !== undefined) left.set(fit.wayId, (left.get(fit.wayId) ?? 0) - n.amps);
    }
    return true;
  };
  const size = (k: BoxKind): number =>
    (connector(k.inlets[0]?.connector ?? '')?.ratingA ?? 0) * 1e6 + k.ways.length * 1e3 + k.massKg;
  const kind = book
    .filter((k): k is BoxKind => k.family === 'box')
    .filter(carries)
    .sort((a, b) => size(a) - size(b))[0];
  const now = carries(own) ? (kind && size(kind) < size(own) ? 'larger' : 'fits') : 'too small';
  const pct = Math.round((grow - 1) * 100);
  const name = (c: string): string => connector(c)?.name ?? c;
  const working = sizeWorking(node.label, {
    formula: 'smallest box whose inlet takes the feed, carries I, and whose ways take every plug with room',
    inputs: [
      worstInput(power, id, fullestLeg(power, id), 'amps on its fullest leg', formatAmps),
      headroomInput(grow),
      sizeInput('feed', name(socket), 'the cable to its inlet'),
      sizeInput('breaker-load-factor', `${factor}`, 'rule of the plan, for ways and main breaker'),
      ...needs.map((n, i) =>
        sizeInput(
          `plug ${i + 1}: ${name(n.connector)}`,
          formatAmps(n.amps),
          `with the headroom${n.rcdMa === undefined ? '' : `; behind a residual-current device of ${n.rcdMa} mA now`}`,
        ),
      ),
    ],
    steps: kind
      ? [
          `I = ${formatAmps(legA)}, headroom in it`,
          'the largest plugs first, each into the smallest way that carries it',
          `${kind.name}: ${kind.ways.length} ways of ${[...new Set(kind.ways.map((w) => `${w.breakerA} A`))].join(', ')}, inlet ${name(kind.inlets[0]?.connector ?? '')}`,
        ]
      : [
          `I = ${formatAmps(legA)}, headroom in it`,
          'every box of the book fails on inlet, main breaker or ways',
        ],
    result: kind?.name ?? 'nothing in the book',
    source: 'Ratings of the gear book and of connectors; limits by the practice’s rules',
  });
  return {
    working,
    recordId: id,
    label: node.label,
    what: 'box',
    nowName: own.name,
    kind,
    now,
    reasons: [
      `${needs.length} ${needs.length === 1 ? 'plug' : 'plugs'}, ${formatAmps(legA)} on a leg with ${pct} % headroom, the largest plug ${formatAmps(Math.max(...needs.map((n) => n.amps)))}`,
      kind
        ? `${kind.name}: ${kind.ways.length} ways, inlet ${connector(kind.inlets[0]?.connector ?? '')?.name ?? ''}`
        : 'no box of the book takes these plugs on this feed with that room',
    ],
  };
};
