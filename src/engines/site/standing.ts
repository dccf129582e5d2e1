import { recordLabel } from '../../derive/labels.ts';
import type { Point } from '../../kernel/geometry.ts';
import type { Id } from '../../kernel/ids.ts';
import { fixturePlace, kindOf, type Plan, recordsOf } from '../../plan/plan.ts';
import type { Fixture } from '../../plan/records/index.ts';

/** A thing on a floor with its body: a circle around its place, up to a height. Millimetres. */
export interface Standing {
  readonly id: Id;
  readonly floorId: Id;
  readonly label: string;
  readonly at: Point;
  readonly radiusMm: number;
  /** Top of it as drawn, and at the most it can be run up to. */
  readonly topMm: number;
  readonly mostTopMm: number;
  /** Stands on the floor itself. */
  readonly onFloor: boolean;
}

const halfOf = (plan: Plan, kindId: Id): number => {
  const k = kindOf(plan, kindId);
  return k ? Math.hypot(k.sizeMm.lengthMm, k.sizeMm.widthMm) / 2 : 250;
};

/** Everything a crew puts on the floors, by record id order within its type. */
export const standingOf = (plan: Plan): readonly Standing[] => {
  const label = (id: Id): string => recordLabel(plan, plan.records.get(id));
  const fixtures = recordsOf(plan, 'fixture').map((f): Standing => {
    const place = fixturePlace(plan, f);
    const half = halfOf(plan, f.kindId);
    const stand = f.support.on === 'stand' ? plan.records.get(f.support.standId) : undefined;
    const most = stand?.type === 'stand' ? kindOf(plan, stand.kindId, 'stand')?.heightMaxMm : undefined;
    return {
      id: f.id,
      floorId: f.floorId,
      label: `unit ${f.unit}`,
      at: place.at,
      radiusMm: half,
      topMm: place.heightMm + half,
      mostTopMm: Math.max(place.heightMm, most ?? 0) + half,
      onFloor: f.support.on === 'floor',
    };
  });
  const carried = new Map<Id, Fixture>();
  for (const f of recordsOf(plan, 'fixture'))
    if (f.support.on === 'stand' && !carried.has(f.support.standId)) carried.set(f.support.standId, f);
  const stands = recordsOf(plan, 'stand').map((s): Standing => {
    const kind = kindOf(plan, s.kindId, 'stand');
    const on = carried.get(s.id);
    return {
      id: s.id,
      floorId: s.floorId,
      label: on ? `stand of unit ${on.unit}` : 'a stand',
      at: s.at,
      radiusMm: (kind?.legCircleMm ?? 1000) / 2,
      topMm: s.heightMm,
      // What a stand carries tells its own top.
      mostTopMm: carried.has(s.id) ? s.heightMm : Math.max(s.heightMm, kind?.heightMaxMm ?? 0),
      onFloor: true,
    };
  });
  const grips = recordsOf(plan, 'grip').map((g): Standing => {
    const half = halfOf(plan, g.kindId);
    const top = g.heightMm + half;
    const onFloor = g.supports.length === 0 && g.riggingId === undefined && g.heightMm < 500;
    return {
      id: g.id,
      floorId: g.floorId,
      label: label(g.id),
      at: g.at,
      radiusMm: half,
      topMm: top,
      mostTopMm: top,
      onFloor,
    };
  });
  const riggings = recordsOf(plan, 'rigging').map((r): Standing => {
    const kind = kindOf(plan, r.kindId, 'rigging');
    const lift = kind?.heightMaxMm !== undefined;
    return {
      id: r.id,
      floorId: r.floorId,
      label: label(r.id),
      at: r.at,
      radiusMm: halfOf(plan, r.kindId) + (r.reachMm ?? 0),
      topMm: r.heightMm,
      mostTopMm: Math.max(r.heightMm, kind?.heightMaxMm ?? 0),
      onFloor: lift,
    };
  });
  const boxes = [
    ...recordsOf(plan, 'box'),
    ...recordsOf(plan, 'source'),
    ...recordsOf(plan, 'ballast'),
    ...recordsOf(plan, 'charger'),
    ...recordsOf(plan, 'pack'),
  ].map((b): Standing => {
    const kind = kindOf(plan, b.kindId);
    // A house panel and a wall circuit are on the wall.
    const inWall = kind?.family === 'source' && (kind.what === 'house-panel' || kind.what === 'wall-circuit');
    const radiusMm = halfOf(plan, b.kindId);
    return {
      id: b.id,
      floorId: b.floorId,
      label: label(b.id),
      at: b.at,
      radiusMm,
      topMm: 1000,
      mostTopMm: 1000,
      onFloor: !inWall,
    };
  });
  return [...stands, ...fixtures, ...grips, ...riggings, ...boxes];
};
