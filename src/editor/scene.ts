import type { DisplayItem, DisplayList } from '../drawing/display-list.ts';
import { drawFloor } from '../drawing/draw-floor.ts';
import type { Box } from '../kernel/geometry.ts';
import { boxHolds, growBox, point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { applyChanges, type ChangeSet } from '../plan/change-set.ts';
import { type Plan, planRecord } from '../plan/plan.ts';
import { viewBox } from './fit.ts';
import { poseOf } from './handles.ts';
import { OPTIONS } from './options.ts';
import { createPicker, type Picker } from './picking.ts';
import { scaleForZoom } from './scale-choice.ts';
import type { Session, SessionState } from './session.ts';

/** An item shown during a drag, moved by so much from where it was drawn. */
export interface PreviewItem {
  readonly item: DisplayItem;
  readonly dxMm: number;
  readonly dyMm: number;
}

/** The drawing of the session's floor, made anew only when something in it changed. */
export interface Scene {
  /** Undefined while the plan has no floor. */
  list(): DisplayList | undefined;
  /** Items in and around the view. The list stays the same one while the view stays inside what was gathered. */
  visible(): readonly DisplayItem[];
  /** What the drag at work shows in place of the hidden originals. */
  preview(): readonly PreviewItem[];
  /** Keys of the items that are hidden while the drag shows others in their place. */
  hidden(): ReadonlySet<string>;
  /** The plan with the drag at work in it. */
  previewPlan(): Plan;
  /** Always up to date with the plan. */
  readonly picker: Picker;
}

const touched = new WeakMap<ChangeSet, ReadonlySet<Id>>();
const NONE: ReadonlySet<Id> = new Set();
const NO_ITEMS: readonly DisplayItem[] = [];

interface During {
  readonly items: readonly PreviewItem[];
  readonly hidden: ReadonlySet<string>;
}

const NOTHING: During = { items: [], hidden: new Set() };

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

/** The value of `make` until one of the things it depends on is another. */
const memo = <T>() => {
  let known: { readonly deps: readonly unknown[]; readonly value: T } | undefined;
  return (deps: readonly unknown[], make: () => T): T => {
    if (!known?.deps.every((d, i) => Object.is(d, deps[i]))) known = { deps, value: make() };
    return known.value;
  };
};

export const createScene = (session: Session): Scene => {
  const picker = createPicker();
  const listMemo = memo<DisplayList | undefined>();
  const planMemo = memo<Plan>();
  const previewMemo = memo<During>();
  let scale: number | undefined;
  let gathered: { list: DisplayList; box: Box; items: readonly DisplayItem[] } | undefined;

  const nominal = (s: SessionState): number => {
    scale = scaleForZoom(s.camera.pxPerMm, planRecord(s.plan).lengthUnits, scale);
    return scale;
  };

  const list = (): DisplayList | undefined => {
    const s = session.getState();
    const nominalScale = nominal(s);
    return listMemo([s.plan, s.floorId, s.setupId, s.assessment, nominalScale], () => {
      if (s.floorId === undefined) return undefined;
      const made = drawFloor(s.plan, {
        floorId: s.floorId,
        setupId: s.setupId,
        nominalScale,
        assessment: s.assessment,
      });
      picker.update(made, s.plan);
      return made;
    });
  };

  const visible = (): readonly DisplayItem[] => {
    const now = list();
    const { camera, viewport } = session.getState();
    if (!now || viewport.widthPx <= 0) return NO_ITEMS;
    const view = viewBox(camera, viewport);
    const holds =
      gathered !== undefined &&
      boxHolds(gathered.box, point(view.minX, view.minY)) &&
      boxHolds(gathered.box, point(view.maxX, view.maxY));
    // Far zoomed in, most of what was gathered is out of sight.
    const far = gathered && gathered.box.maxX - gathered.box.minX > 4 * (view.maxX - view.minX);
    if (!gathered || !holds || far || gathered.list !== now) {
      const box = growBox(view, OPTIONS.cullMargin * Math.max(view.maxX - view.minX, view.maxY - view.minY));
      gathered = { list: now, box, items: picker.itemsIn(box) };
    }
    return gathered.items;
  };

  const previewPlan = (): Plan => {
    const { plan, preview } = session.getState();
    return planMemo([plan, preview], () => (preview ? applyChanges(plan, preview) : plan));
  };

  const during = (): During => {
    const s = session.getState();
    const before = list();
    return previewMemo([s.plan, s.preview, s.floorId, s.setupId, before], () =>
      s.preview && before ? drawDuring(s, s.preview, before, previewPlan()) : NOTHING,
    );
  };

  const fresh =
    <A extends readonly unknown[], R>(f: (...args: A) => R) =>
    (...args: A): R => {
      list();
      return f(...args);
    };

  return {
    list,
    visible,
    preview: () => during().items,
    hidden: () => during().hidden,
    previewPlan,
    picker: {
      update: picker.update,
      pick: fresh(picker.pick),
      within: fresh(picker.within),
      touching: fresh(picker.touching),
      boxOf: fresh(picker.boxOf),
      itemsIn: fresh(picker.itemsIn),
    },
  };
};

/** Key of the item that writes the length of a unit's throw. */
const throwKey = (id: Id): string => `throw:${id}`;

/**
 * The drawing with the drag in it, as far as it differs: what was moved itself, and what follows from it, such as the
 * cables of a moved box or the units that follow a moved mark.
 */
const drawDuring = (s: SessionState, preview: ChangeSet, before: DisplayList, after: Plan): During => {
  const ids = touchedIds(preview);
  const drawn = drawFloor(after, {
    floorId: before.floorId,
    setupId: s.setupId,
    nominalScale: before.nominalScale,
    assessment: s.assessment,
    options: { labels: false, dimensions: false },
  });
  const known = new Set(before.items);
  const now = new Set(drawn.items.map((i) => i.key));
  const changed = drawn.items.filter((i) => !known.has(i));
  const hidden = new Set(changed.map((i) => i.key));
  for (const i of before.items)
    if (ids.has(i.recordId) && !now.has(i.key) && i.layer !== 'dimensions') hidden.add(i.key);
  const labels = movedLabels(s.plan, after, before.items, ids);
  for (const { item } of labels) hidden.add(item.key);
  // A throw that changes is not shown with its old length.
  for (const i of changed) if (i.layer === 'beams') hidden.add(throwKey(i.recordId));
  return { hidden, items: [...changed.map((item) => ({ item, dxMm: 0, dyMm: 0 })), ...labels] };
};

/** Labels are placed when a drag ends; until then they go along with what they belong to. */
const movedLabels = (
  before: Plan,
  after: Plan,
  items: readonly DisplayItem[],
  ids: ReadonlySet<Id>,
): PreviewItem[] => {
  const moved: PreviewItem[] = [];
  for (const item of items) {
    if (item.layer !== 'labels' || !ids.has(item.recordId) || item.key === throwKey(item.recordId)) continue;
    const a = poseOf(before, item.recordId)?.center;
    const b = poseOf(after, item.recordId)?.center;
    if (a && b) moved.push({ item, dxMm: b.xMm - a.xMm, dyMm: b.yMm - a.yMm });
  }
  return moved;
};
