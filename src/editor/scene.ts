import type { DrawFloor } from '../drawing/context.ts';
import { spotItems } from '../drawing/coverage.ts';
import type { DisplayItem, DisplayList, DrawingLayer } from '../drawing/display-list.ts';
import { drawFloor, drawFloorSteps, type FloorDrawing } from '../drawing/draw-floor.ts';
import type { Steps } from '../drawing/labels.ts';
import type { Box } from '../kernel/geometry.ts';
import { boxHolds, growBox, point } from '../kernel/geometry.ts';
import { peekChanges } from '../plan/change-set.ts';
import { type Plan, planRecord, recordsOf } from '../plan/plan.ts';
import { viewBox } from './fit.ts';
import type { FloorView } from './floor-view.ts';
import { poseOf } from './handles.ts';
import { movedItem } from './moved-item.ts';
import { OPTIONS } from './options.ts';
import { createPicker, type Picker } from './picking.ts';
import type { RadioView } from './radio-view.ts';
import { scaleForZoom } from './scale-choice.ts';
import { type During, drawDuring, NOTHING, type PreviewItem } from './scene-during.ts';
import type { Session, SessionState } from './session.ts';
import { sunOf } from './sun.ts';

export { type PreviewItem, touchedIds } from './scene-during.ts';

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
  /** Whether labels are still where they were before the last change. */
  unsettled(): boolean;
  /** Places the labels that are behind, for as long as `more` says; without it to the end. True when they are placed. */
  settle(more?: () => boolean): boolean;
  /** Always up to date with the plan. */
  readonly picker: Picker;
}

/** A zoom further than this from the scale drawn at (as a logarithm) is drawn anew at once. */
const FAR_SCALE = Math.log(2.6);

const NO_ITEMS: readonly DisplayItem[] = [];

/** The value of `make` until one of the things it depends on is another. */
const memo = <T>() => {
  let known: { readonly deps: readonly unknown[]; readonly value: T } | undefined;
  return (deps: readonly unknown[], make: () => T): T => {
    if (!known?.deps.every((d, i) => Object.is(d, deps[i]))) known = { deps, value: make() };
    return known.value;
  };
};

const mutedOf = (v: FloorView): ReadonlySet<DrawingLayer> =>
  new Set((Object.keys(v.layers) as DrawingLayer[]).filter((l) => !v.layers[l].shown || v.layers[l].locked));

interface Labelled {
  readonly plan: Plan;
  readonly items: readonly DisplayItem[];
}

/**
 * The scene of a session. With `labelsLater` a change is drawn at once with the labels as they were, those of moved
 * things moved along; `settle` then places them anew, when there is time.
 */
export const createScene = (session: Session, how: { readonly labelsLater?: boolean } = {}): Scene => {
  const picker = createPicker();
  const listMemo = memo<DisplayList | undefined>();
  const planMemo = memo<Plan>();
  const previewMemo = memo<During>();
  const muteMemo = memo<void>();
  let scale: number | undefined;
  let gathered: { list: DisplayList; radio: RadioView; box: Box; items: readonly DisplayItem[] } | undefined;
  let labelled: Labelled | undefined;
  let behind = false;
  let work:
    | { readonly list: DisplayList; readonly scale: number; readonly steps: Steps<FloorDrawing> }
    | undefined;
  /** The scale of what is drawn; while the zoom moves it may be one behind. */
  let drawnScale: number | undefined;
  let drawnFloor: string | undefined;
  let placed: FloorDrawing | undefined;
  let version = 0;

  const nominal = (s: SessionState): number => {
    scale = scaleForZoom(s.camera.pxPerMm, planRecord(s.plan).lengthUnits, scale);
    return scale;
  };

  /** The scale to draw at now: where labels come later, the one before until there is time for another. */
  const scaleNow = (s: SessionState): number => {
    const target = nominal(s);
    const jump =
      drawnScale === undefined ? Number.POSITIVE_INFINITY : Math.abs(Math.log(target / drawnScale));
    if (how.labelsLater !== true || drawnScale === undefined || jump > FAR_SCALE || drawnFloor !== s.floorId)
      drawnScale = target;
    drawnFloor = s.floorId;
    return drawnScale;
  };

  const wanted = (s: SessionState, labels: boolean, nominalScale = scaleNow(s)): DrawFloor => ({
    floorId: s.floorId ?? '',
    setupId: s.setupId,
    nominalScale,
    beneathId: s.floorView.beneath,
    sun: sunOf(s),
    options: {
      labelFields: s.floorView.labelFields,
      rooms: s.floorView.rooms,
      fields: s.floorView.fields,
      ghosts: s.floorView.ghosts,
      labels,
    },
  });

  /** The labels of before, for what is still there, moved along with it. */
  const oldLabels = (s: SessionState): readonly DisplayItem[] => {
    const put = handLabelsChanged(s);
    const anew = new Set(put.map((i) => i.key));
    const kept = (labelled?.items ?? []).flatMap((item) => {
      if (!labelled || anew.has(item.key) || !s.plan.records.has(item.recordId)) return [];
      if (labelled.plan.records.get(item.recordId) === s.plan.records.get(item.recordId)) return [item];
      const a = poseOf(labelled.plan, item.recordId)?.center;
      const b = poseOf(s.plan, item.recordId)?.center;
      return a && b ? [movedItem(item, { xMm: b.xMm - a.xMm, yMm: b.yMm - a.yMm })] : [item];
    });
    return [...kept, ...put];
  };

  /** Labels that were moved by hand since labels were placed last: they are where the hand left them at once. */
  const handLabelsChanged = (s: SessionState): readonly DisplayItem[] => {
    const before = labelled?.plan;
    const places = recordsOf(s.plan, 'labelPlace');
    if (!before || places === recordsOf(before, 'labelPlace')) return [];
    const ids = places.flatMap((l) => (before.records.get(l.id) === l ? [] : [l.recordId]));
    if (ids.length === 0) return [];
    return drawFloor(s.plan, { ...wanted(s, true), only: new Set(ids) }).items.filter(
      (i) => i.layer === 'labels',
    );
  };

  const list = (): DisplayList | undefined => {
    const s = session.getState();
    const nominalScale = scaleNow(s);
    const { labelFields, rooms, fields, ghosts, beneath, sun, layers } = s.floorView;
    muteMemo([layers], () => picker.mute(mutedOf(s.floorView)));
    const deps = [
      s.plan,
      s.floorId,
      s.setupId,
      nominalScale,
      labelFields,
      rooms,
      fields,
      ghosts,
      beneath,
      sun,
      layers.labels.shown,
    ];
    return listMemo([...deps, version], () => {
      if (s.floorId === undefined) return undefined;
      const later = how.labelsLater === true && !placed && layers.labels.shown;
      const drawn = placed ?? drawFloor(s.plan, wanted(s, !later && layers.labels.shown));
      const made = later ? { ...drawn, items: [...drawn.items, ...oldLabels(s)] } : drawn;
      if (!later) labelled = { plan: s.plan, items: drawn.items.filter((i) => i.layer === 'labels') };
      behind = later;
      picker.update(made, s.plan);
      return made;
    });
  };

  const visible = (): readonly DisplayItem[] => {
    const now = list();
    const { camera, viewport, floorId, floorView } = session.getState();
    const { radio } = floorView;
    const { picture, spots } = radio;
    if (!now || viewport.widthPx <= 0) return NO_ITEMS;
    const view = viewBox(camera, viewport);
    const holds =
      gathered !== undefined &&
      boxHolds(gathered.box, point(view.minX, view.minY)) &&
      boxHolds(gathered.box, point(view.maxX, view.maxY));
    // Far zoomed in, most of what was gathered is out of sight.
    const far = gathered && gathered.box.maxX - gathered.box.minX > 4 * (view.maxX - view.minX);
    if (!gathered || !holds || far || gathered.list !== now || gathered.radio !== radio) {
      const box = growBox(view, OPTIONS.cullMargin * Math.max(view.maxX - view.minX, view.maxY - view.minY));
      // The coverage picture and the places found lie under and over the drawing; they are no part of it.
      const under = picture && picture.floorId === floorId ? picture.items : NO_ITEMS;
      const over =
        spots && spots.floorId === floorId
          ? spotItems(spots.floorId, spots.choices, now.nominalScale)
          : NO_ITEMS;
      gathered = { list: now, radio, box, items: [...under, ...picker.itemsIn(box), ...over] };
    }
    return gathered.items;
  };

  const previewPlan = (): Plan => {
    const { plan, preview } = session.getState();
    return planMemo([plan, preview], () => (preview ? peekChanges(plan, preview) : plan));
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
    unsettled: () => {
      list();
      return behind || nominal(session.getState()) !== drawnScale;
    },
    settle: (more = () => true) => {
      const now = list();
      const s = session.getState();
      const target = nominal(s);
      if (!now || (!behind && target === drawnScale)) return true;
      if (work?.list !== now || work.scale !== target)
        work = {
          list: now,
          scale: target,
          steps: drawFloorSteps(s.plan, wanted(s, s.floorView.layers.labels.shown, target)),
        };
      do {
        const step = work.steps.next();
        if (!step.done) continue;
        work = undefined;
        placed = step.value;
        drawnScale = target;
        version++;
        list();
        placed = undefined;
        return true;
      } while (more());
      return false;
    },
    picker: {
      update: picker.update,
      mute: picker.mute,
      pick: fresh(picker.pick),
      labelAt: fresh(picker.labelAt),
      within: fresh(picker.within),
      touching: fresh(picker.touching),
      boxOf: fresh(picker.boxOf),
      itemsIn: fresh(picker.itemsIn),
    },
  };
};
