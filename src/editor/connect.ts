import type { Id } from '../kernel/ids.ts';
import { fail, ok, type Problem, type Result } from '../kernel/result.ts';
import { connector } from '../plan/connectors.ts';
import { type Bridge, bridges } from '../plan/edits/adapters.ts';
import { outletsFor } from '../plan/edits/outlets-for.ts';
import { cablesThatFit } from '../plan/edits/plug.ts';
import type { AdapterKind } from '../plan/kinds/adapter.ts';
import type { CableKind } from '../plan/kinds/kinds.ts';
import type { InletPort, OutletPort } from '../plan/kinds/ports.ts';
import { portName, recordName } from '../plan/names.ts';
import { kindOf, type Plan, recordOf } from '../plan/plan.ts';
import {
  feedOf,
  inletsOf,
  outletsOf,
  placeOf,
  pluggedInto,
  powerInletRecord,
  waysOf,
} from '../plan/ports.ts';
import type { PortRef } from '../plan/records/index.ts';
import { runsOnWords } from '../report/floor-packs.ts';
import { capital } from './words.ts';

/** A run the plan could get: from an outlet port, to an inlet port, by a cable, and an adapter where no cable has both ends. */
export interface Run {
  readonly from: PortRef;
  readonly to: PortRef;
  readonly bridge: Bridge;
}

/** The record that takes the mains when a person points at this one: a discharge head's is its ballast. */
export const takerOf = (plan: Plan, id: Id): Id => {
  const fixture = recordOf(plan, 'fixture', id);
  return fixture ? powerInletRecord(plan, fixture) : id;
};

export const takesPower = (plan: Plan, id: Id): boolean => inletsOf(plan, takerOf(plan, id)).length > 0;
export const givesPower = (plan: Plan, id: Id): boolean => outletsOf(plan, id).length > 0;

/** A wall outlet has room for several plugs; a port on gear takes one. */
const isFree = (plan: Plan, ref: PortRef): boolean =>
  recordOf(plan, 'outlet', ref.recordId) !== undefined || pluggedInto(plan, ref).length === 0;

/** Words for a connector by its row in the table. */
const plugWords = (id: string): string => connector(id)?.name ?? id;

/**
 * The run from one thing to another: a free outlet port, ways nothing hangs on before ways in
 * use and those before unprotected pass-through ports, an inlet without
 * a feed before one with, and a cable kind that fits both and carries what the way's breaker lets through. A problem says in words why there is none.
 */
export const runBetween = (
  plan: Plan,
  giverId: Id,
  targetId: Id,
  cables: readonly CableKind[],
  adapters: readonly AdapterKind[] = [],
): Result<Run> => {
  const takerId = takerOf(plan, targetId);
  const giver = capital(recordName(plan, giverId));
  const taker = recordName(plan, targetId);
  if (giverId === targetId || giverId === takerId)
    return fail({ what: 'A thing cannot feed itself.', todo: 'Press on something else that gives power.' });
  const outlets = outletsOf(plan, giverId);
  const inlets = inletsOf(plan, takerId);
  if (outlets.length === 0) return fail(noOutlets(plan, giverId, giver));
  if (inlets.length === 0) return fail(noInlets(plan, targetId, taker));
  if (placeOf(plan, giverId)?.floorId !== placeOf(plan, takerId)?.floorId)
    return fail({
      what: `${giver} and ${taker} are on different floors.`,
      todo: 'Bring the power up with a box.',
    });

  const wanted = [...inlets].sort(
    (a, b) => Number(fed(plan, takerId, a.id)) - Number(fed(plan, takerId, b.id)),
  );
  for (const inlet of wanted) {
    const to: PortRef = { recordId: takerId, portId: inlet.id };
    const own = outletsFor(plan, to, cables, adapters).filter((o) => o.ref.recordId === giverId);
    if (feedOf(plan, to)?.from.recordId === giverId)
      return fail({
        what: `${capital(taker)} is plugged into ${portName(plan, feedOf(plan, to)?.from ?? to)} already.`,
      });
    const free = own.filter((o) => isFree(plan, o.ref));
    const ways = usedWays(plan, giverId);
    const chosen =
      free.find((o) => o.port.wayId !== undefined && !ways.has(o.port.wayId)) ??
      free.find((o) => o.port.wayId !== undefined) ??
      free[0];
    if (chosen)
      return ok({
        from: chosen.ref,
        to,
        bridge: {
          ...chosen.bridge,
          cable:
            cableFor(plan, chosen.ref, chosen.port, chosen.bridge.port ?? chosen.port, inlet, cables) ??
            chosen.kind,
        },
      });
    if (own.length > 0)
      return fail({
        what: `Every outlet of ${giver.charAt(0).toLowerCase()}${giver.slice(1)} that fits ${taker} is taken.`,
        todo: 'Unplug one, or use another box.',
      });
  }
  const mating = outlets.some((o) => inlets.some((i) => bridges(o, i, cables, adapters).length > 0));
  if (mating)
    return fail({
      what: `That would make a ring: ${recordName(plan, giverId)} gets its power from ${taker}.`,
      todo: 'Feed it from somewhere nearer the source.',
    });
  const has = [...new Set(outlets.map((o) => plugWords(o.connector)))].join(', ');
  const needs = [...new Set(inlets.map((i) => plugWords(i.connector)))].join(' or ');
  return fail({
    what: `No cable of the gear book leads, even with an adapter, from ${giver} (${has}) to ${taker} (${needs}).`,
    todo: 'Choose an outlet that mates, or put a box between.',
  });
};

/** Ways of a giver that something hangs on already: a way of its own comes before the second socket of one in use. */
const usedWays = (plan: Plan, giverId: Id): ReadonlySet<string> =>
  new Set(
    outletsOf(plan, giverId).flatMap((o) =>
      o.wayId !== undefined && pluggedInto(plan, { recordId: giverId, portId: o.id }).length > 0
        ? [o.wayId]
        : [],
    ),
  );

/** Of the cables that fit, the first that carries what the way's breaker lets through; else the one that carries most. */
const cableFor = (
  plan: Plan,
  from: PortRef,
  outlet: OutletPort,
  /** Where the cable starts: the outlet, or that of the adapter in it. */
  start: OutletPort,
  inlet: InletPort,
  cables: readonly CableKind[],
): CableKind | undefined => {
  const fit = cablesThatFit(start, inlet, cables);
  const owner = recordOf(plan, 'outlet', from.recordId)?.sourceId ?? from.recordId;
  const breakerA = waysOf(plan, owner).find((w) => w.id === outlet.wayId)?.breakerA ?? 0;
  return (
    fit.find((k) => k.ampacityA >= breakerA) ??
    fit.reduce<CableKind | undefined>(
      (best, k) => (best && best.ampacityA >= k.ampacityA ? best : k),
      undefined,
    )
  );
};

const fed = (plan: Plan, recordId: Id, portId: string): boolean =>
  feedOf(plan, { recordId, portId }) !== undefined;

const noOutlets = (plan: Plan, id: Id, giver: string): Problem => {
  const source = recordOf(plan, 'source', id);
  return source
    ? { what: `${giver} has no outlets of its own.`, todo: 'Press on one of its wall outlets.' }
    : { what: `${giver} gives no power.`, todo: 'Press on a box, a wall outlet or a source.' };
};

const noInlets = (plan: Plan, id: Id, taker: string): Problem => {
  const fixture = recordOf(plan, 'fixture', id);
  if (fixture && kindOf(plan, fixture.kindId, 'fixture')?.needsBallast)
    return {
      what: `${capital(taker)} has no ballast in the plan.`,
      todo: 'Place it again with its ballast.',
    };
  if (fixture) {
    const on = runsOnWords(plan, fixture);
    return {
      what: `${capital(taker)} takes no mains: it runs on ${on === 'own cells' ? 'its own cells' : on}.`,
    };
  }
  return { what: `${capital(taker)} takes no power.`, todo: 'Press on a unit or a box.' };
};

/**
 * The run between two things pressed in either order. Where both could feed the other, the one without a feed
 * takes the power; where that does not decide, power goes from the first to the second.
 */
export const runEitherWay = (
  plan: Plan,
  firstId: Id,
  secondId: Id,
  cables: readonly CableKind[],
  adapters: readonly AdapterKind[] = [],
): Result<Run> => {
  const there = givesPower(plan, firstId) && takesPower(plan, secondId);
  const back = givesPower(plan, secondId) && takesPower(plan, firstId);
  if (there && back) {
    const unfed = (id: Id): boolean => {
      const taker = takerOf(plan, id);
      return inletsOf(plan, taker).some((i) => !fed(plan, taker, i.id));
    };
    const backFirst = unfed(firstId) && !unfed(secondId);
    const a = runBetween(plan, ...order(backFirst, firstId, secondId), cables, adapters);
    if (a.ok) return a;
    const b = runBetween(plan, ...order(!backFirst, firstId, secondId), cables, adapters);
    return b.ok ? b : a;
  }
  if (!there && !back && !givesPower(plan, firstId) && !givesPower(plan, secondId))
    return fail({
      what: `Neither ${recordName(plan, firstId)} nor ${recordName(plan, secondId)} gives power.`,
      todo: 'Press on a box, a wall outlet or a source.',
    });
  return back
    ? runBetween(plan, secondId, firstId, cables, adapters)
    : runBetween(plan, firstId, secondId, cables, adapters);
};

const order = (back: boolean, first: Id, second: Id): readonly [Id, Id] =>
  back ? [second, first] : [first, second];
