import type { Point } from '../kernel/geometry.ts';
import type { Id, NewId } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { blobBytes, blobFault, blobOf, roomForBlob } from '../plan/blobs.ts';
import { type ChangeSet, Draft, peekChanges } from '../plan/change-set.ts';
import { freeOutlet } from '../plan/edits/floor-packs.ts';
import { nextLineLabel } from '../plan/edits/lines.ts';
import { nextLabel, nextUnit } from '../plan/edits/place.ts';
import { shifted } from '../plan/edits/shared.ts';
import { type Plan, recordsOf } from '../plan/plan.ts';
import { waysOf } from '../plan/ports.ts';
import { type AnyRecord, type Blob, type PackFrom, recordSchemas } from '../plan/records/index.ts';
import { COPIED, FORMAT } from './clip-copy.ts';

export { clipOf, clipText } from './clip-copy.ts';

/** More than a plan would hold; a text with more is not read. */
const MOST_RECORDS = 20_000;
const MOST_CHARACTERS = 30_000_000;

/** Whether a text is a copy of ours, by its first letters. */
export const isClip = (text: string): boolean => text.startsWith(`{"format":"${FORMAT}"`);

const notOurs = fail({
  what: 'What was copied is not from a plan.',
  todo: 'Copy things on a floor first.',
});

const readClip = (text: string): Result<readonly AnyRecord[]> => {
  if (!isClip(text) || text.length > MOST_CHARACTERS) return notOurs;
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch {
    return fail({ what: 'What was copied is cut off.', todo: 'Copy it again.' });
  }
  const list = (data as { records?: unknown }).records;
  if (!Array.isArray(list) || list.length > MOST_RECORDS) return notOurs;
  const records: AnyRecord[] = [];
  for (const r of list as readonly { type?: unknown }[]) {
    const type = r?.type;
    if (type !== 'kind' && type !== 'blob' && !COPIED.some((t) => t === type)) continue;
    const parsed = recordSchemas[type as AnyRecord['type']].safeParse(r);
    if (!parsed.success)
      return fail({
        what: 'What was copied cannot be read.',
        where: parsed.error.issues[0]?.path.map(String).join('.') ?? '',
        todo: 'Copy it again with this version.',
      });
    records.push(parsed.data as AnyRecord);
  }
  return ok(records);
};

/**
 * Puts copied records on a floor, `by` millimetres from where they were, with new ids and free unit numbers and labels.
 * What leads to something that was not copied and is not here is let go: marks, supports, circuits, addresses.
 */
export const pasteClip = (
  plan: Plan,
  text: string,
  floorId: Id,
  by: Point,
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly ids: ReadonlySet<Id>; readonly left: number }> => {
  const read = readClip(text);
  if (!read.ok) return read;
  const draft = new Draft(plan);
  const things = read.value.filter((r) => r.type !== 'kind' && r.type !== 'blob');
  for (const k of read.value) if (k.type === 'kind' && !plan.records.has(k.id)) draft.put(k);
  for (const b of read.value) if (b.type === 'blob') takeBlob(draft, b);
  const fresh = new Map(things.map((r) => [r.id, newId(r.id.split('-')[0] ?? 'r')]));
  const groups = new Map<string, string>();
  const ids = new Set<Id>();
  let left = 0;
  const inClip = (id: Id | undefined): Id | undefined => (id === undefined ? undefined : fresh.get(id));
  /** The copy of a thing, else the thing itself where this plan has it. */
  const here = (id: Id | undefined): Id | undefined =>
    inClip(id) ?? (id !== undefined && plan.records.has(id) ? id : undefined);

  for (const old of things) {
    const { groupId, locked: _locked, ...bare } = laidBy(shifted(old, by), by);
    const id = fresh.get(old.id) ?? old.id;
    let group: string | undefined;
    if (groupId !== undefined) {
      group = groups.get(groupId) ?? newId('gr');
      groups.set(groupId, group);
    }
    const now = peekChanges(plan, draft.changes());
    const next = rebound(
      { ...bare, id, ...(group ? { groupId: group } : {}) } as AnyRecord,
      now,
      here,
      inClip,
    );
    if (!next) {
      left++;
      continue;
    }
    draft.put('floorId' in next ? ({ ...next, floorId } as AnyRecord) : next);
    if (next.type !== 'cable' && next.type !== 'opening') ids.add(id);
  }
  // A cable that was laid by itself is still laid by itself.
  for (const r of things)
    if (r.type === 'cable' && r.route.auto) {
      const copy = draft.get(fresh.get(r.id) ?? '');
      if (copy?.type === 'cable') draft.put({ ...copy, route: { ...copy.route, auto: true } });
    }
  return ok({ changes: draft.changes(), ids, left });
};

/** A data line with the corners laid by hand moved along with its copies. */
const laidBy = <R extends AnyRecord>(r: R, by: Point): R =>
  r.type === 'line'
    ? {
        ...r,
        routes: r.routes.map((x) => ({
          ...x,
          points: x.points.map((p) => ({ xMm: p.xMm + by.xMm, yMm: p.yMm + by.yMm })),
        })),
      }
    : r;

/** Puts the bytes of a picture into the plan where they are sound, are what their id says, and there is room for them. */
const takeBlob = (draft: Draft, blob: Blob): void => {
  if (draft.get(blob.id)) return;
  const bytes = blobFault(blob) === undefined ? blobBytes(blob) : undefined;
  if (!bytes || blobOf(bytes, blob.mediaType).id !== blob.id) return;
  if (roomForBlob(peekChanges(draft.base, draft.changes()), bytes.length).ok) draft.put(blob);
};

type Find = (id: Id | undefined) => Id | undefined;

/** A copy's lead: to the copy of the pack, in the same outlet; else to the pack that is here, in that outlet where it is free. */
const packLead = (plan: Plan, from: PackFrom, here: Find, inClip: Find): PackFrom | undefined => {
  const copy = inClip(from.packId);
  if (copy !== undefined) return { ...from, packId: copy };
  return here(from.packId) === undefined ? undefined : freeOutlet(plan, from);
};

/** A copied record with its references led to the copies; undefined where it makes no sense without what was not copied. */
const rebound = (r: AnyRecord, plan: Plan, here: Find, inClip: Find): AnyRecord | undefined => {
  switch (r.type) {
    case 'fixture': {
      const { patch: _patch, packFrom, ...bare } = r;
      const fed = packFrom && packLead(plan, packFrom, here, inClip);
      const taken = recordsOf(plan, 'fixture').some((f) => f.unit === r.unit);
      const stand = r.support.on === 'stand' ? inClip(r.support.standId) : undefined;
      const rigging = r.support.on === 'rigged' ? here(r.support.riggingId) : undefined;
      const mark = r.aim.at === 'mark' ? here(r.aim.markId) : undefined;
      return {
        ...bare,
        ...(fed ? { packFrom: fed } : {}),
        unit: taken ? nextUnit(plan) : r.unit,
        support:
          r.support.on === 'stand'
            ? stand
              ? { on: 'stand', standId: stand }
              : { on: 'floor' }
            : r.support.on === 'rigged'
              ? { on: 'rigged', ...(rigging ? { riggingId: rigging } : {}) }
              : r.support,
        aim:
          r.aim.at === 'facing'
            ? r.aim
            : mark
              ? { at: 'mark', markId: mark }
              : { at: 'facing', facingDeg: 0, tiltDeg: 0 },
      };
    }
    case 'grip':
      return { ...r, supports: r.supports.flatMap((s) => inClip(s) ?? []) };
    case 'ballast': {
      const fixtureId = inClip(r.fixtureId);
      return fixtureId ? { ...r, fixtureId } : undefined;
    }
    case 'opening': {
      const wallId = inClip(r.wallId);
      return wallId ? { ...r, wallId } : undefined;
    }
    case 'outlet': {
      const sourceId = here(r.sourceId);
      if (!sourceId || !waysOf(plan, sourceId).some((w) => w.id === r.wayId)) return undefined;
      return { ...r, sourceId, label: freeLabel(plan, r.label) };
    }
    case 'cable': {
      const [from, to] = [inClip(r.from.recordId), inClip(r.to.recordId)];
      if (!from || !to) return undefined;
      return { ...r, from: { ...r.from, recordId: from }, to: { ...r.to, recordId: to } };
    }
    case 'dimension': {
      const anchor = (a: typeof r.from): typeof r.from => {
        const { recordId, ...bare } = a;
        const id = inClip(recordId);
        return id ? { ...bare, recordId: id } : bare;
      };
      return { ...r, from: anchor(r.from), to: anchor(r.to) };
    }
    case 'device': {
      const { standId, fixtureId, listensToId, ...bare } = r;
      const [stand, fixture, heard] = [inClip(standId), inClip(fixtureId), here(listensToId)];
      return {
        ...bare,
        label: freeLabel(plan, r.label),
        ports: r.ports.filter((p) => plan.records.has(p.universeId)),
        ...(stand ? { standId: stand } : {}),
        ...(fixture ? { fixtureId: fixture } : {}),
        ...(heard ? { listensToId: heard } : {}),
      };
    }
    case 'box': {
      const { patch: _patch, ...bare } = r;
      return { ...bare, label: freeLabel(plan, r.label) };
    }
    case 'charger':
    case 'pack':
    case 'source':
    case 'rigging':
      return { ...r, label: freeLabel(plan, r.label) };
    case 'line': {
      const from = inClip(r.from.recordId);
      const stops = r.stops.flatMap((s) => inClip(s) ?? []);
      if (!from || stops.length < r.stops.length) return undefined;
      return { ...r, label: nextLineLabel(plan), from: { ...r.from, recordId: from }, stops };
    }
    case 'underlay':
      return plan.records.has(r.blobId) ? r : undefined;
    case 'photo':
      return plan.records.has(r.blobId) ? { ...r, label: freeLabel(plan, r.label) } : undefined;
    default:
      return r;
  }
};

const freeLabel = (plan: Plan, label: string): string => {
  if (label === '') return label;
  for (const r of plan.records.values())
    if ('label' in r && r.label === label) return nextLabel(plan, label.replace(/\d+$/, '') || 'K');
  return label;
};
