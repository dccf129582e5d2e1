import { distanceMm, type Point, point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { facingOf } from '../plan/edits/arrange.ts';
import { underlayCentre } from '../plan/edits/underlays.ts';
import { fixturePlace, kindOf, type Plan } from '../plan/plan.ts';
import { placeOf } from '../plan/ports.ts';
import { OPTIONS } from './options.ts';
import type { SessionState } from './session.ts';
import { along } from './snap-targets.ts';

export interface Handle {
  readonly what: 'turn' | 'aim';
  readonly at: Point;
}

/** The ring around one selected thing that can be turned, with its handles. Floor millimetres. */
export interface SelectionRing {
  readonly id: Id;
  readonly center: Point;
  readonly radiusMm: number;
  readonly facingDeg: number;
  readonly handles: readonly Handle[];
}

/** Centre and facing of a record that can be turned about itself. */
export const poseOf = (
  plan: Plan,
  id: Id,
): { readonly center: Point; readonly facingDeg: number; readonly reachMm: number } | undefined => {
  const r = plan.records.get(id);
  switch (r?.type) {
    case 'fixture':
      return {
        center: fixturePlace(plan, r).at,
        facingDeg: facingOf(plan, r),
        reachMm: halfSize(plan, r.kindId),
      };
    case 'mark':
      return { center: r.at, facingDeg: r.facingDeg, reachMm: 200 };
    case 'device':
      return {
        center: placeOf(plan, r.id)?.at ?? r.at,
        facingDeg: r.rotationDeg,
        reachMm: halfSize(plan, r.kindId),
      };
    case 'ballast':
    case 'box':
    case 'charger':
    case 'pack':
    case 'source':
    case 'stand':
    case 'grip':
    case 'rigging':
      return { center: r.at, facingDeg: r.rotationDeg, reachMm: halfSize(plan, r.kindId) };
    case 'underlay':
      return {
        center: underlayCentre(r),
        facingDeg: r.rotationDeg,
        reachMm: (Math.min(r.widthUnits, r.heightUnits) * r.mmPerUnit) / 4,
      };
    case 'crossing':
      return { center: r.at, facingDeg: r.rotationDeg, reachMm: r.lengthMm / 2 };
    case 'photo':
      return { center: r.at, facingDeg: r.facingDeg ?? 0, reachMm: 200 };
    case 'outlet':
      return { center: r.at, facingDeg: r.rotationDeg, reachMm: 120 };
    case 'setPiece': {
      const o = r.outline;
      const reachMm =
        o.shape === 'polygon'
          ? Math.max(...o.points.map((p) => distanceMm(p, point(0, 0))))
          : Math.hypot(o.lengthMm, o.widthMm) / 2;
      return { center: r.at, facingDeg: r.rotationDeg, reachMm };
    }
    default:
      return undefined;
  }
};

const halfSize = (plan: Plan, kindId: Id): number => {
  const k = kindOf(plan, kindId);
  return k ? Math.hypot(k.sizeMm.lengthMm, k.sizeMm.widthMm) / 2 : 200;
};

/** The ring for the selection, when it is one thing (its own stand does not count). `plan` may be a preview. */
export const ringFor = (
  plan: Plan,
  s: Pick<SessionState, 'selection' | 'camera' | 'readOnly'>,
): SelectionRing | undefined => {
  const ids = [...s.selection].filter((id) => plan.records.has(id));
  const fixture = ids.length === 2 ? ids.find((id) => standUnder(plan, id, ids)) : undefined;
  const id = fixture ?? (ids.length === 1 ? ids[0] : undefined);
  const pose = id === undefined ? undefined : poseOf(plan, id);
  if (id === undefined || !pose) return undefined;
  const px = s.camera.pxPerMm;
  const radiusMm = Math.max(OPTIONS.ringMinPx, pose.reachMm * px + OPTIONS.ringGapPx) / px;
  const r = plan.records.get(id);
  const handles: Handle[] = [];
  if (!s.readOnly && !r?.locked) {
    if (r?.type === 'fixture')
      handles.push({ what: 'aim', at: along(pose.center, pose.facingDeg, radiusMm) });
    handles.push({ what: 'turn', at: along(pose.center, pose.facingDeg + 180, radiusMm) });
  }
  return { id, center: pose.center, radiusMm, facingDeg: pose.facingDeg, handles };
};

const standUnder = (plan: Plan, id: Id, ids: readonly Id[]): boolean => {
  const r = plan.records.get(id);
  return r?.type === 'fixture' && r.support.on === 'stand' && ids.includes(r.support.standId);
};

/** The handle at a spot, the nearest within reach. */
export const handleAt = (
  ring: SelectionRing | undefined,
  at: Point,
  reachMm: number,
): Handle['what'] | undefined => {
  let found: Handle['what'] | undefined;
  let off = reachMm;
  for (const h of ring?.handles ?? []) {
    const d = distanceMm(h.at, at);
    if (d <= off) {
      off = d;
      found = h.what;
    }
  }
  return found;
};
