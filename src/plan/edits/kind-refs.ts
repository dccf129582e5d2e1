import type { Id } from '../../kernel/ids.ts';
import type { Kind } from '../kinds/kinds.ts';
import { recordName } from '../names.ts';
import { type Plan, recordOf, recordsOf } from '../plan.ts';
import type { AnyRecord } from '../records/index.ts';

/** Kinds a record names beside its own: packs and converters it runs on, accessories, cloth. */
export const otherKindIds = (r: AnyRecord): readonly Id[] => {
  const ids: (Id | undefined)[] = [];
  if (r.type === 'fixture' || r.type === 'device') ids.push(r.packs?.kindId, r.packs?.converterId);
  if (r.type === 'fixture') ids.push(r.packFrom?.converterId, ...(r.accessories ?? []));
  if (r.type === 'grip') ids.push(r.clothId);
  return ids.flatMap((id) => id ?? []);
};

/** A record with another kind in place of one it names beside its own; the record itself where it does not name it. */
export const withOtherKind = (r: AnyRecord, from: Id, to: Id): AnyRecord => {
  if (!otherKindIds(r).includes(from)) return r;
  const now = (id: Id): Id => (id === from ? to : id);
  const of = <T extends { readonly converterId?: Id | undefined }>(use: T): T =>
    use.converterId === undefined ? use : { ...use, converterId: now(use.converterId) };
  if (r.type === 'grip') return { ...r, ...(r.clothId ? { clothId: now(r.clothId) } : {}) };
  if (r.type !== 'fixture' && r.type !== 'device') return r;
  const next = {
    ...r,
    ...(r.packs ? { packs: of({ ...r.packs, kindId: now(r.packs.kindId) }) } : {}),
  };
  if (next.type !== 'fixture') return next;
  return {
    ...next,
    ...(next.packFrom ? { packFrom: of(next.packFrom) } : {}),
    ...(next.accessories ? { accessories: next.accessories.map(now) } : {}),
  };
};

/** Leads that are in an outlet which a pack on the floor has no more with another kind, in words. */
export const leadsWithoutOutlet = (plan: Plan, packId: Id, kind: Kind): readonly string[] => {
  const pack = recordOf(plan, 'pack', packId);
  if (!pack || kind.family !== 'pack') return [];
  return recordsOf(plan, 'fixture').flatMap((f) => {
    const outletId = f.packFrom?.packId === packId ? f.packFrom.outletId : undefined;
    return outletId === undefined || kind.dcOut.some((o) => o.id === outletId)
      ? []
      : [`${recordName(plan, f)}: its lead is in outlet ${outletId}, which the new pack does not have`];
  });
};
