import type { Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { mates } from '../connectors.ts';
import type { AdapterKind } from '../kinds/adapter.ts';
import type { CableKind } from '../kinds/kinds.ts';
import type { InletPort, OutletPort } from '../kinds/ports.ts';
import { type Plan, recordsOf } from '../plan.ts';
import { feedOf, outletsOf, placeOf } from '../ports.ts';
import type { Box, PortRef } from '../records/index.ts';
import { routeBetween } from '../route.ts';
import { cablesThatFit, removeFeed } from './plug.ts';
import { ensureKind } from './shared.ts';

/** What joins an outlet and an inlet that do not mate: a cable with other ends, or an adapter in the outlet and a cable. */
export interface Bridge {
  readonly adapter: AdapterKind | undefined;
  /** The adapter's outlet the cable starts from. */
  readonly port: OutletPort | undefined;
  readonly cable: CableKind;
}

/**
 * Ways to join an outlet and an inlet, the simplest first: a cable that fits both, then an adapter plugged straight into the
 * outlet with a cable from it. A cable that is there already goes before others. Ends with fewer legs, or without the
 * neutral that the inlet wants, are no way.
 */
export const bridges = (
  outlet: Pick<OutletPort, 'connector' | 'legs' | 'neutral'>,
  inlet: Pick<InletPort, 'connector' | 'legs' | 'neutral'>,
  cables: readonly CableKind[],
  adapters: readonly AdapterKind[],
  current?: CableKind,
): readonly Bridge[] => {
  const own = current ? [current, ...cables.filter((k) => k.id !== current.id)] : cables;
  const direct = cablesThatFit(outlet, inlet, own).map(
    (cable): Bridge => ({ adapter: undefined, port: undefined, cable }),
  );
  const through = adapters.flatMap((adapter): Bridge[] => {
    const [into] = adapter.inlets;
    // A fan is no adapter: its circuits need ways of their own.
    if (
      !into ||
      adapter.inlets.length > 1 ||
      adapter.circuits > 1 ||
      !mates(outlet.connector, into.connector)
    )
      return [];
    const port = adapter.outlets.find(
      (o) => o.legs >= inlet.legs && (o.neutral || !inlet.neutral) && cablesThatFit(o, inlet, own).length > 0,
    );
    const cable = port && cablesThatFit(port, inlet, own)[0];
    return port && cable ? [{ adapter, port, cable }] : [];
  });
  const rank = (b: Bridge): number =>
    (b.cable.id === current?.id ? 0 : 1) + (b.adapter?.what === 'adapter' ? 0 : 2);
  return [...direct, ...through.sort((a, b) => rank(a) - rank(b))];
};

/** Offset of an adapter from the outlet it is plugged into and from the next, so that each can be picked on the floor. */
const OFFSET_MM = 250;

/** Where an adapter in an outlet of a record is drawn: beside it, past those that are there. */
export const besideOutlet = (plan: Plan, recordId: Id, at: Point): Point => ({
  xMm: at.xMm + OFFSET_MM * (1 + straightInto(plan, recordId).length),
  yMm: at.yMm + OFFSET_MM,
});

/** What a bridge is made of, in words: `adapter, 20 A household to 20 A stage pin, and stage pin 20 A, 12/3`. */
export const bridgeWords = (b: Bridge): string =>
  b.adapter ? `${b.adapter.name}, with ${b.cable.name}` : b.cable.name;

/** The next free label of an adapter: A1, A2, A3. */
const nextLabel = (plan: Plan): string => {
  const used = new Set(recordsOf(plan, 'box').map((b) => b.label));
  let n = 1;
  while (used.has(`A${n}`)) n++;
  return `A${n}`;
};

/**
 * Plugs an inlet into an outlet by a bridge, in place of the feed it had. A cable of the same kind keeps its label, pieces and
 * lock. Both ends must be on a floor.
 */
export const plugByBridge = (
  plan: Plan,
  from: PortRef,
  to: PortRef,
  bridge: Bridge,
  newId: NewId,
): ChangeSet => {
  const a = placeOf(plan, from.recordId);
  const b = placeOf(plan, to.recordId);
  if (!a || !b) throw new Error('a cable needs two ends that are on a floor');
  const draft = new Draft(plan);
  ensureKind(draft, bridge.cable);
  let start = from;
  if (bridge.adapter && bridge.port) {
    ensureKind(draft, bridge.adapter);
    const id: Id = newId('bx');
    const box: Box = {
      id,
      type: 'box',
      floorId: a.floorId,
      kindId: bridge.adapter.id,
      at: besideOutlet(plan, from.recordId, a.at),
      rotationDeg: 0,
      label: nextLabel(plan),
      plugsInto: from,
    };
    draft.put(box);
    start = { recordId: id, portId: bridge.port.id };
  }
  const old = feedOf(plan, to);
  removeFeed(draft, old, start.recordId);
  const kept = old?.kindId === bridge.cable.id ? old : undefined;
  draft.put({
    ...(kept ?? { label: '' }),
    id: kept?.id ?? newId('cb'),
    type: 'cable',
    kindId: bridge.cable.id,
    from: start,
    to,
    route: { auto: true, points: [...routeBetween(plan, a, b)] },
  });
  return draft.changes();
};

/** Adapters, tees and splitters that are plugged straight into an outlet of a record. */
export const straightInto = (plan: Plan, recordId: Id, portId?: string): readonly Box[] =>
  recordsOf(plan, 'box').filter(
    (b) =>
      b.plugsInto?.recordId === recordId &&
      (portId === undefined || b.plugsInto.portId === portId) &&
      outletsOf(plan, recordId).some((o) => o.id === b.plugsInto?.portId),
  );
