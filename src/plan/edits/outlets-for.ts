import type { Id } from '../../kernel/ids.ts';
import type { AdapterKind } from '../kinds/adapter.ts';
import type { CableKind } from '../kinds/kinds.ts';
import type { OutletPort } from '../kinds/ports.ts';
import { type Plan, recordOf } from '../plan.ts';
import { feedOf, inletsOf, outletsOf, placeOf } from '../ports.ts';
import type { PortRef } from '../records/index.ts';
import { type Bridge, bridges } from './adapters.ts';

/** An outlet that could feed an inlet, and what runs between them. */
export interface OutletFor {
  readonly ref: PortRef;
  readonly port: OutletPort;
  readonly kind: CableKind;
  /** The cable, and the adapter it starts from where no cable has both ends. */
  readonly bridge: Bridge;
  /** Straight on the floor. */
  readonly distanceMm: number;
}

/**
 * All outlet ports on a floor that could feed this inlet by one of the cables, or by an adapter in the outlet and a cable where
 * no cable has both ends; nearest first by straight line.
 */
export const outletsFor = (
  plan: Plan,
  inlet: PortRef,
  cables: readonly CableKind[],
  adapters: readonly AdapterKind[] = [],
): readonly OutletFor[] => {
  const port = inletsOf(plan, inlet.recordId).find((p) => p.id === inlet.portId);
  const here = placeOf(plan, inlet.recordId);
  if (!port || !here) return [];
  const found: OutletFor[] = [];
  const bridgeTo = new Map<string, Bridge | undefined>();
  for (const r of plan.records.values()) {
    if (r.id === inlet.recordId) continue;
    const place = placeOf(plan, r.id);
    if (!place || place.floorId !== here.floorId) continue;
    for (const outlet of outletsOf(plan, r.id)) {
      const ends = `${outlet.connector}/${outlet.legs}/${outlet.neutral}`;
      if (!bridgeTo.has(ends)) bridgeTo.set(ends, bridges(outlet, port, cables, adapters)[0]);
      const bridge = bridgeTo.get(ends);
      if (!bridge || isUnder(plan, r.id, inlet.recordId)) continue;
      const distanceMm = Math.hypot(place.at.xMm - here.at.xMm, place.at.yMm - here.at.yMm);
      found.push({
        ref: { recordId: r.id, portId: outlet.id },
        port: outlet,
        kind: bridge.cable,
        bridge,
        distanceMm,
      });
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
