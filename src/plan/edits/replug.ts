import type { NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import { mates } from '../connectors.ts';
import type { AdapterKind } from '../kinds/adapter.ts';
import type { CableKind } from '../kinds/kinds.ts';
import { kindOf, type Plan, recordOf } from '../plan.ts';
import { autoRoute, feedOf, outletsOf, placeOf, pluggedInto } from '../ports.ts';
import type { PortRef } from '../records/index.ts';
import { type Bridge, plugByBridge } from './adapters.ts';
import { outletsFor } from './outlets-for.ts';
import { plug, removeFeed } from './plug.ts';

/** The first free outlet of a way that takes this inlet by a cable of the book, with an adapter where it needs one; undefined where there is none. */
export const outletOnWay = (
  plan: Plan,
  inlet: PortRef,
  way: { readonly ownerId: string; readonly wayId: string },
  cables: readonly CableKind[],
  adapters: readonly AdapterKind[] = [],
): { readonly ref: PortRef; readonly kind: CableKind; readonly bridge: Bridge } | undefined =>
  outletsFor(plan, inlet, cables, adapters).find((o) => {
    const wall = recordOf(plan, 'outlet', o.ref.recordId);
    const onWay = wall
      ? wall.sourceId === way.ownerId && wall.wayId === way.wayId
      : o.ref.recordId === way.ownerId && o.port.wayId === way.wayId;
    return onWay && pluggedInto(plan, o.ref).length === 0;
  });

/**
 * Moves an inlet's feed to another outlet: the same run where its plug goes in, with its length made up anew, else a run
 * of the kind given in its place.
 */
export const replug = (
  plan: Plan,
  inlet: PortRef,
  to: { readonly ref: PortRef; readonly kind: CableKind; readonly bridge?: Bridge },
  newId: NewId,
): ChangeSet => {
  const old = feedOf(plan, inlet);
  const kind = old && kindOf(plan, old.kindId, 'cable');
  const outlet = outletsOf(plan, to.ref.recordId).find((o) => o.id === to.ref.portId);
  const a = placeOf(plan, to.ref.recordId);
  const b = placeOf(plan, inlet.recordId);
  if (!old || !kind || !outlet || !a || !b || !mates(outlet.connector, kind.plug))
    return to.bridge?.adapter
      ? plugByBridge(plan, to.ref, inlet, to.bridge, newId)
      : plug(plan, to.ref, inlet, to.kind, newId);
  const { piecesMm: _, ...kept } = old;
  const draft = new Draft(plan);
  removeFeed(draft, old, to.ref.recordId, true);
  return draft
    .put({ ...kept, from: to.ref, route: { auto: true, points: [...autoRoute(a.at, b.at)] } })
    .changes();
};
