import { LABEL_FIELDS, type LabelField } from '../drawing/context.ts';
import { DRAWING_LAYERS, type DrawingLayer } from '../drawing/display-list.ts';
import type { Plan } from '../plan/plan.ts';
import type { View } from '../plan/records/index.ts';
import type { FloorView, LayerState } from './floor-view.ts';
import type { SessionState } from './session.ts';

type Seen = Pick<SessionState, 'plan' | 'camera' | 'viewport' | 'floorId' | 'setupId' | 'floorView'>;

/** What is seen now, as it is kept in a saved view; undefined without a floor or a view of it. */
export const seenNow = (s: Seen): Omit<View, 'id' | 'type' | 'name'> | undefined => {
  if (s.floorId === undefined || s.viewport.widthPx <= 0) return undefined;
  const layers: Record<string, View['layers'][string]> = {};
  for (const l of DRAWING_LAYERS) {
    const { shown, faded, locked } = s.floorView.layers[l];
    // A layer in its usual state needs no word. That of the coverage picture is hidden.
    if (shown === (l !== 'coverage') && !faded && !locked) continue;
    layers[l] = { show: shown ? (faded ? 'faded' : 'full') : 'hidden', locked };
  }
  return {
    floorId: s.floorId,
    center: { xMm: Math.round(s.camera.center.xMm), yMm: Math.round(s.camera.center.yMm) },
    spanMm: Math.round(s.viewport.widthPx / s.camera.pxPerMm),
    layers,
    labelFields: [...s.floorView.labelFields],
    ...(s.setupId === undefined ? {} : { setupId: s.setupId }),
  };
};

const layersOf = (view: View): FloorView['layers'] =>
  Object.fromEntries(
    DRAWING_LAYERS.map((l): [DrawingLayer, LayerState] => {
      const kept = view.layers[l];
      return [
        l,
        {
          shown: kept ? kept.show !== 'hidden' : l !== 'coverage',
          faded: kept?.show === 'faded',
          locked: kept?.locked ?? false,
        },
      ];
    }),
  ) as unknown as FloorView['layers'];

/** The session's state that shows a saved view again. What it names that is no longer there stays as it is. */
export const recalled = (
  s: Seen,
  view: View,
): Partial<Pick<SessionState, 'camera' | 'floorId' | 'setupId' | 'floorView'>> => ({
  ...(has(s.plan, view.floorId) ? { floorId: view.floorId } : {}),
  ...(view.setupId !== undefined && has(s.plan, view.setupId) ? { setupId: view.setupId } : {}),
  camera: { center: view.center, pxPerMm: Math.max(1, s.viewport.widthPx) / view.spanMm },
  floorView: {
    ...s.floorView,
    layers: layersOf(view),
    labelFields: view.labelFields
      ? LABEL_FIELDS.filter((f) => view.labelFields?.includes(f))
      : s.floorView.labelFields,
  },
});

const has = (plan: Plan, id: string): boolean => plan.records.has(id);

/** What a browser keeps of how the drawing is looked at. */
export interface KeptLook {
  readonly layers: FloorView['layers'];
  readonly labelFields: readonly LabelField[];
  readonly rooms: boolean;
  readonly fields: boolean;
}

export const lookOf = ({ layers, labelFields, rooms, fields }: FloorView): KeptLook => ({
  layers,
  labelFields,
  rooms,
  fields,
});

/** The floor view with a kept look in it, as far as it can be read. */
export const withLook = (view: FloorView, kept: unknown): FloorView => {
  if (typeof kept !== 'object' || kept === null) return view;
  const k = kept as { layers?: unknown; labelFields?: unknown; rooms?: unknown; fields?: unknown };
  const states = (typeof k.layers === 'object' && k.layers !== null ? k.layers : {}) as Record<
    string,
    Partial<LayerState> | undefined
  >;
  const layers = Object.fromEntries(
    DRAWING_LAYERS.map((l): [DrawingLayer, LayerState] => {
      const s = states[l];
      const now = view.layers[l];
      const flag = (x: unknown, usual: boolean): boolean => (typeof x === 'boolean' ? x : usual);
      return [
        l,
        {
          shown: flag(s?.shown, now.shown),
          faded: flag(s?.faded, now.faded),
          locked: flag(s?.locked, now.locked),
        },
      ];
    }),
  ) as unknown as FloorView['layers'];
  const said = Array.isArray(k.labelFields) ? (k.labelFields as readonly unknown[]) : undefined;
  return {
    ...view,
    layers,
    labelFields: said ? LABEL_FIELDS.filter((f) => said.includes(f)) : view.labelFields,
    rooms: typeof k.rooms === 'boolean' ? k.rooms : view.rooms,
    fields: typeof k.fields === 'boolean' ? k.fields : view.fields,
  };
};
