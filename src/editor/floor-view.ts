import type { LabelField } from '../drawing/context.ts';
import { DRAWING_LAYERS, type DrawingLayer } from '../drawing/display-list.ts';
import type { Point } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import { USUAL_WALL, type WallLook, type WallRun } from '../plan/edits/walls.ts';
import type { Crossing, FeatureWhat, Opening } from '../plan/records/index.ts';
import { NO_RADIO, type RadioView } from './radio-view.ts';

/** How one subject of the drawing is shown on the screen. */
export interface LayerState {
  readonly shown: boolean;
  readonly faded: boolean;
  /** Cannot be picked. */
  readonly locked: boolean;
}

/** A dialog that a command asks the screen for. */
export type FloorAsk =
  | 'room'
  | 'row'
  | 'replace'
  | 'circuit'
  | 'plug'
  | 'underlay'
  | 'photos'
  | 'photo'
  | 'floors'
  | 'renumber'
  | 'turn'
  | undefined;

/** How the floor is looked at and what its tools will do next. Never part of the plan. */
export interface FloorView {
  readonly layers: Readonly<Record<DrawingLayer, LayerState>>;
  readonly labelFields: readonly LabelField[];
  /** Area and inside measures of rooms. */
  readonly rooms: boolean;
  /** Fields beside beams, and the patches light makes on the floor. */
  readonly fields: boolean;
  /** Where things that move between setups are in the others, faintly. */
  readonly ghosts: boolean;
  readonly shows: 'drawing' | 'table';
  readonly ask: FloorAsk;
  /** Where the thing the dialog makes is wanted; the middle of the view where nothing is said. */
  readonly askAt: Point | undefined;
  /** Where a wall outlet was pressed for before there was a circuit for it: it comes with the circuit. */
  readonly outletAt: Point | undefined;
  /** The record the dialog is about, where it is about one. */
  readonly askFor: Id | undefined;
  /** What the next walls are made like, and where their measures run. */
  readonly wall: WallLook & { readonly along: WallRun['along'] };
  readonly opening: { readonly what: Opening['what'] };
  /** The time whose sun is shown, by the clocks of the place. */
  readonly sun: { readonly date: string; readonly minute: number } | undefined;
  /** Another floor that shows faintly beneath. */
  readonly beneath: Id | undefined;
  /** What the outdoors tool draws next. Volts are a power line's. */
  readonly feature: {
    readonly what: FeatureWhat;
    readonly heightMm: number;
    readonly voltsV: number | undefined;
  };
  readonly crossing: Pick<Crossing, 'how' | 'heightMm'>;
  /** The circuit the next wall outlets hang on. */
  readonly circuit: { readonly sourceId: Id; readonly wayId: Id } | undefined;
  readonly radio: RadioView;
}

const PLAIN: LayerState = { shown: true, faded: false, locked: false };

export const START_VIEW: FloorView = {
  layers: Object.fromEntries(
    // The coverage picture is made only where it is asked for.
    DRAWING_LAYERS.map((l) => [l, l === 'coverage' ? { ...PLAIN, shown: false } : PLAIN]),
  ) as unknown as FloorView['layers'],
  labelFields: ['kind', 'use', 'power', 'address', 'height'],
  rooms: true,
  fields: false,
  ghosts: true,
  shows: 'drawing',
  ask: undefined,
  askAt: undefined,
  outletAt: undefined,
  askFor: undefined,
  wall: { ...USUAL_WALL, along: 'inside' },
  opening: { what: 'door' },
  sun: undefined,
  beneath: undefined,
  feature: { what: 'road', heightMm: 0, voltsV: undefined },
  crossing: { how: 'ramp', heightMm: 0 },
  circuit: undefined,
  radio: NO_RADIO,
};

/** The view with one layer's state changed. */
export const withLayer = (v: FloorView, layer: DrawingLayer, patch: Partial<LayerState>): FloorView => ({
  ...v,
  layers: { ...v.layers, [layer]: { ...v.layers[layer], ...patch } },
});
