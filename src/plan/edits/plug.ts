import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { mates } from '../connectors.ts';
import type { CableKind } from '../kinds/kinds.ts';
import type { InletPort, OutletPort } from '../kinds/ports.ts';
import { type Plan, recordOf } from '../plan.ts';
import { feedOf, inletsOf, outletsOf, placeOf } from '../ports.ts';
import type { PortRef } from '../records/index.ts';
import { routeBetween } from '../route.ts';
import { ensureKind } from './shared.ts';

/**
 * Runs a cable from an outlet to an inlet, in place of the feed the inlet had. Both ports must exist;
 * whether they mate is for the engines to say, so that a plan can be drawn as it is on the day.
 */
export const plug = (plan: Plan, from: PortRef, to: PortRef, kind: CableKind, newId: NewId): ChangeSet => {
  const a = placeOf(plan, from.recordId);
  const b = placeOf(plan, to.recordId);
  if (!a || !b) throw new Error('a cable needs two ends that are on a floor');
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const old = feedOf(plan, to);
  if (old) draft.remove(old.id);
  draft.put({
    id: newId('cb'),
    type: 'cable',
    kindId: kind.id,
    from,
    to,
    route: { auto: true, points: [...routeBetween(plan, a, b)] },
    label: '',
  });
  return draft.changes();
};

/** Takes the cable off an inlet. */
export const unplug = (plan: Plan, to: PortRef): ChangeSet => {
  const cable = feedOf(plan, to);
  return cable ? new Draft(plan).remove(cable.id).changes() : new Draft(plan).changes();
};

/**
 * The cable kinds that fit between two ports, the lightest that fits the outlet's rating first.
 * `book` gives the candidates, in its order.
 */
export const cablesThatFit = (
  outlet: Pick<OutletPort, 'connector' | 'legs'>,
  inlet: Pick<InletPort, 'connector' | 'legs'>,
  book: Iterable<CableKind>,
): readonly CableKind[] => {
  const fit: CableKind[] = [];
  for (const k of book) {
    if (mates(outlet.connector, k.plug) && mates(k.socket, inlet.connector) && k.legs >= inlet.legs)
      fit.push(k);
  }
  return fit;
};

/** All outlet ports on a floor that could feed this inlet by one of the cables, nearest first by straight line. */
export const outletsFor = (
  plan: Plan,
  inlet: PortRef,
  book: readonly CableKind[],
): readonly {
  readonly ref: PortRef;
  readonly port: OutletPort;
  readonly kind: CableKind;
  readonly distanceMm: number;
}[] => {
  const port = inletsOf(plan, inlet.recordId).find((p) => p.id === inlet.portId);
  const here = placeOf(plan, inlet.recordId);
  if (!port || !here) return [];
  const found: { ref: PortRef; port: OutletPort; kind: CableKind; distanceMm: number }[] = [];
  for (const r of plan.records.values()) {
    if (r.id === inlet.recordId) continue;
    const place = placeOf(plan, r.id);
    if (!place || place.floorId !== here.floorId) continue;
    for (const outlet of outletsOf(plan, r.id)) {
      const kind = cablesThatFit(outlet, port, book)[0];
      if (!kind || isUnder(plan, r.id, inlet.recordId)) continue;
      const distanceMm = Math.hypot(place.at.xMm - here.at.xMm, place.at.yMm - here.at.yMm);
      found.push({ ref: { recordId: r.id, portId: outlet.id }, port: outlet, kind, distanceMm });
    }
  }
  return found.sort((a, b) => a.distanceMm - b.distanceMm);
};

/** Whether `id` gets its power, directly or further up, from `ancestor`: plugging that back would make a ring. */
const isUnder = (plan: Plan, id: Id, ancestor: Id): boolean => {
  const seen = new Set<Id>();
  let at: Id | undefined = id;
  while (at !== undefined && !seen.has(at)) {
    if (at === ancestor) return true;
    seen.add(at);
    const here: Id = at;
    const outlet = recordOf(plan, 'outlet', here);
    const inlet = inletsOf(plan, here)[0];
    at = outlet
      ? outlet.sourceId
      : inlet
        ? (feedOf(plan, { recordId: here, portId: inlet.id })?.from.recordId ??
          recordOf(plan, 'box', here)?.plugsInto?.recordId)
        : undefined;
  }
  return false;
};
