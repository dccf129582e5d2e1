import type { Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { type ChangeSet, Draft } from '../change-set.ts';
import type { Kind, PackKind } from '../kinds/kinds.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { FloorPack, PackFrom, PackUse } from '../records/index.ts';
import { nextLabel } from './place.ts';
import { ensureKind } from './shared.ts';

/** Puts a pack on the floor with the next free label. */
export const addFloorPack = (
  plan: Plan,
  kind: PackKind,
  floorId: Id,
  at: Point,
  newId: NewId,
): { readonly changes: ChangeSet; readonly pack: FloorPack } => {
  const draft = new Draft(plan);
  ensureKind(draft, kind);
  const pack: FloorPack = {
    id: newId('pk'),
    type: 'pack',
    floorId,
    kindId: kind.id,
    at,
    rotationDeg: 0,
    label: nextLabel(plan, 'P'),
    count: 1,
    joined: 'parallel',
    hotSwap: false,
  };
  return { changes: draft.put(pack).changes(), pack };
};

/** Changes how many packs stand there, how they are joined, whether a second one takes over, or the label. */
export const changeFloorPack = (
  plan: Plan,
  packId: Id,
  patch: Partial<Pick<FloorPack, 'count' | 'joined' | 'hotSwap' | 'label'>>,
): ChangeSet => {
  const p = recordOf(plan, 'pack', packId);
  if (!p) throw new Error(`no pack ${packId}`);
  return new Draft(plan).put({ ...p, ...patch }).changes();
};

/** Puts packs on a device that take over when its plug is pulled, or with `undefined` takes them off. */
export const setDevicePacks = (
  plan: Plan,
  deviceId: Id,
  use: PackUse | undefined,
  kinds: readonly Kind[] = [],
): ChangeSet => {
  const d = recordOf(plan, 'device', deviceId);
  if (!d) throw new Error(`no device ${deviceId}`);
  const draft = new Draft(plan);
  for (const k of kinds) ensureKind(draft, k);
  const { packs: _packs, ...rest } = d;
  return draft.put(use ? { ...rest, packs: use } : rest).changes();
};

/** Feeds fixtures from a pack on the floor, or with `undefined` from none. They take no mains then. */
export const setPackFrom = (plan: Plan, fixtureIds: Iterable<Id>, use: PackFrom | undefined): ChangeSet => {
  const draft = new Draft(plan);
  for (const id of fixtureIds) {
    const f = recordOf(plan, 'fixture', id);
    if (!f || f.locked) continue;
    const { packFrom: _from, ...rest } = f;
    draft.put(use ? { ...rest, packFrom: use, onPacks: true } : rest);
  }
  return draft.changes();
};

/** A lead without its outlet where another unit's lead is in that one: the next free outlet is taken then. */
export const freeOutlet = (plan: Plan, from: PackFrom): PackFrom => {
  const { outletId, ...rest } = from;
  const taken = recordsOf(plan, 'fixture').some(
    (f) => f.packFrom?.packId === from.packId && f.packFrom.outletId === outletId,
  );
  return outletId === undefined || !taken ? from : rest;
};

/** Units that a change took off a pack on the floor which went: in both plans, fed before and not now. */
export const takenOffPacks = (
  before: Plan,
  after: Plan,
): readonly { readonly unitId: Id; readonly packId: Id }[] =>
  recordsOf(before, 'fixture').flatMap((f) => {
    const packId = f.packFrom?.packId;
    const now = recordOf(after, 'fixture', f.id);
    return packId !== undefined && now && !now.packFrom && !after.records.has(packId)
      ? [{ unitId: f.id, packId }]
      : [];
  });
