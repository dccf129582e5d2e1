import type { DisplayItem, DisplayList } from '../drawing/display-list.ts';
import { drawFloor } from '../drawing/draw-floor.ts';
import type { Id } from '../kernel/ids.ts';
import type { ChangeSet } from '../plan/change-set.ts';
import { fixturePlace, type Plan, recordsOf } from '../plan/plan.ts';
import type { RecordType } from '../plan/records/index.ts';
import { poseOf } from './handles.ts';
import type { SessionState } from './session.ts';

/** An item shown during a drag, moved by so much from where it was drawn. */
export interface PreviewItem {
  readonly item: DisplayItem;
  readonly dxMm: number;
  readonly dyMm: number;
}

export interface During {
  readonly items: readonly PreviewItem[];
  readonly hidden: ReadonlySet<string>;
}

export const NOTHING: During = { items: [], hidden: new Set() };

const touched = new WeakMap<ChangeSet, ReadonlySet<Id>>();
const NONE: ReadonlySet<Id> = new Set();

/** Records that a preview changes. */
export const touchedIds = (preview: ChangeSet | undefined): ReadonlySet<Id> => {
  if (!preview) return NONE;
  let ids = touched.get(preview);
  if (!ids) {
    ids = new Set([
      ...preview.added.map((r) => r.id),
      ...preview.updated.map(({ to }) => to.id),
      ...preview.removed.map((r) => r.id),
    ]);
    touched.set(preview, ids);
  }
  return ids;
};

/** Types that other things are drawn by: with one of them changed, everything is looked at anew. */
const WIDE: readonly RecordType[] = ['wall', 'opening', 'floor', 'plan', 'kind', 'setup', 'universe'];

/** Light of units this near to a shade may change with it. */
const SHADE_MM = 7000;

/** What may look different: what changed, what stands on it, aims at it, hangs on it or is plugged into it. */
const affected = (plan: Plan, ids: ReadonlySet<Id>, preview: ChangeSet): ReadonlySet<Id> | undefined => {
  const wide = (type: RecordType): boolean => WIDE.includes(type);
  if (preview.updated.some((u) => wide(u.to.type)) || preview.removed.some((r) => wide(r.type)))
    return undefined;
  if (preview.added.some((r) => wide(r.type) && r.type !== 'kind')) return undefined;
  const all = new Set(ids);
  for (const f of recordsOf(plan, 'fixture')) {
    const { support, aim } = f;
    if (
      (support.on === 'stand' && ids.has(support.standId)) ||
      (support.on === 'rigged' && support.riggingId !== undefined && ids.has(support.riggingId)) ||
      (aim.at === 'mark' && ids.has(aim.markId))
    )
      all.add(f.id);
  }
  for (const d of recordsOf(plan, 'device'))
    if ([d.standId, d.fixtureId].some((id) => id !== undefined && all.has(id))) all.add(d.id);
  for (const g of recordsOf(plan, 'grip')) if (g.supports.some((s) => ids.has(s))) all.add(g.id);
  // Light that meets a flag, a cloth or a flat that moves changes too.
  for (const id of ids) {
    const r = plan.records.get(id);
    if (r?.type !== 'grip' && r?.type !== 'setPiece') continue;
    for (const f of recordsOf(plan, 'fixture')) {
      const { at } = fixturePlace(plan, f);
      if (Math.hypot(at.xMm - r.at.xMm, at.yMm - r.at.yMm) < SHADE_MM) all.add(f.id);
    }
  }
  for (const b of recordsOf(plan, 'ballast')) if (all.has(b.fixtureId)) all.add(b.id);
  for (const id of ids) {
    const r = plan.records.get(id);
    if (r?.type === 'level') all.add(r.fixtureId);
    if (r?.type === 'labelPlace') all.add(r.recordId);
  }
  for (const c of recordsOf(plan, 'cable'))
    if (all.has(c.from.recordId) || all.has(c.to.recordId)) all.add(c.id);
  return all;
};

interface Known {
  readonly items: ReadonlySet<DisplayItem>;
  readonly byRecord: ReadonlyMap<Id, readonly DisplayItem[]>;
}

const knownLists = new WeakMap<DisplayList, Known>();

const knownOf = (list: DisplayList): Known => {
  let known = knownLists.get(list);
  if (!known) {
    const byRecord = new Map<Id, DisplayItem[]>();
    for (const i of list.items) {
      const own = byRecord.get(i.recordId);
      if (own) own.push(i);
      else byRecord.set(i.recordId, [i]);
    }
    known = { items: new Set(list.items), byRecord };
    knownLists.set(list, known);
  }
  return known;
};

/** Key of the item that writes the length of a unit's throw. */
const throwKey = (id: Id): string => `throw:${id}`;

/**
 * The drawing with the drag in it, as far as it differs: what was moved itself, and what follows from it, such as the
 * cables of a moved box or the units that follow a moved mark. Labels go along with what they belong to until it ends.
 */
export const drawDuring = (s: SessionState, preview: ChangeSet, before: DisplayList, after: Plan): During => {
  const ids = touchedIds(preview);
  const only = affected(after, ids, preview);
  const known = knownOf(before);
  const drawn = drawFloor(after, {
    floorId: before.floorId,
    setupId: s.setupId,
    nominalScale: before.nominalScale,
    only,
    options: {
      // Labels put by hand only: the others find their places when the drag is over.
      labels: only !== undefined && s.floorView.layers.labels.shown,
      labelFields: s.floorView.labelFields,
      dimensions: false,
      fields: s.floorView.fields,
    },
  });
  const now = new Set(drawn.items.map((i) => i.key));
  const changed = drawn.items.filter((i) => !known.items.has(i));
  const hidden = new Set(changed.map((i) => i.key));
  const shown: PreviewItem[] = changed.map((item) => ({ item, dxMm: 0, dyMm: 0 }));
  for (const id of ids)
    for (const item of known.byRecord.get(id) ?? []) {
      if (item.layer === 'labels') {
        if (now.has(item.key)) continue;
        const by = item.key === throwKey(id) ? undefined : movedBy(s.plan, after, id);
        if (!by) continue;
        hidden.add(item.key);
        shown.push({ item, ...by });
      } else if (!now.has(item.key) && item.layer !== 'dimensions') hidden.add(item.key);
    }
  // A throw that changes is not shown with its old length.
  for (const i of changed) if (i.layer === 'beams') hidden.add(throwKey(i.recordId));
  return { hidden, items: shown };
};

const movedBy = (before: Plan, after: Plan, id: Id): { dxMm: number; dyMm: number } | undefined => {
  const a = poseOf(before, id)?.center;
  const b = poseOf(after, id)?.center;
  return a && b ? { dxMm: b.xMm - a.xMm, dyMm: b.yMm - a.yMm } : undefined;
};
