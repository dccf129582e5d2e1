import type { Id } from '../kernel/ids.ts';

/**
 * What colour something is, by meaning. Screen schemes and paper resolve it; nothing else picks colours.
 */
export type ColorRole =
  | 'ink'
  | 'ink-soft'
  | 'ink-faint'
  | 'wall'
  | 'paper'
  | 'glass'
  | 'gear'
  | 'gear-fill'
  | 'stand'
  | 'cable'
  | 'feeder'
  | 'data'
  | 'beam'
  | 'aim'
  | 'dimension'
  | 'set-piece'
  | 'accent'
  | 'stop'
  | 'warn'
  | 'note';

/** Line weights in paper millimetres, from the standard series. */
export interface Stroke {
  readonly role: ColorRole;
  readonly weightMm: number;
  /** Dash lengths in paper millimetres. */
  readonly dashMm?: readonly number[];
}

export interface Fill {
  readonly role: ColorRole;
  readonly opacity?: number;
  /** Position 0 to 1 on the scale of a field of values (dark to light), in place of the role's colour. */
  readonly scale?: number;
  /** A colour of the subject itself (`#rrggbb`), like that of a part of a unit; in place of the role's. */
  readonly color?: string;
  /** Hatch instead of solid: lines at an angle, spaced in paper millimetres. */
  readonly hatch?: { readonly angleDeg: number; readonly spacingMm: number; readonly weightMm: number };
}

/** M, L, C and Z commands in floor millimetres (or symbol millimetres inside a symbol). */
export type PathCommand =
  | readonly ['M', number, number]
  | readonly ['L', number, number]
  | readonly ['C', number, number, number, number, number, number]
  | readonly ['Z'];

/** Geometry in floor millimetres; weights and text in paper millimetres at the view's nominal scale. */
export type Primitive =
  | {
      readonly kind: 'path';
      readonly d: readonly PathCommand[];
      readonly stroke?: Stroke;
      readonly fill?: Fill;
    }
  | {
      readonly kind: 'circle';
      readonly xMm: number;
      readonly yMm: number;
      readonly stroke?: Stroke;
      readonly fill?: Fill;
      /** Radius in floor millimetres, or in paper millimetres for unit bubbles. */
      readonly rMm: number;
      readonly space: 'floor' | 'paper';
    }
  | {
      readonly kind: 'symbol';
      readonly symbolId: string;
      readonly xMm: number;
      readonly yMm: number;
      readonly rotationDeg: number;
      /** Real size it is stretched to, along and across the throw. */
      readonly lengthMm: number;
      readonly widthMm: number;
      /** Broken outline: off in the shown setup. */
      readonly broken: boolean;
      readonly role: ColorRole;
    }
  | {
      readonly kind: 'text';
      /** Anchor on the floor, and the text's own offset from it on paper. */
      readonly xMm: number;
      readonly yMm: number;
      readonly dxPaperMm: number;
      readonly dyPaperMm: number;
      readonly text: string;
      /** Capital height on paper. */
      readonly capMm: number;
      readonly weight: 'regular' | 'semibold';
      readonly align: 'left' | 'center' | 'right';
      readonly role: ColorRole;
      readonly rotationDeg?: number;
    }
  | {
      /** A stored picture with its upper left corner at the point, turned about it. */
      readonly kind: 'image';
      readonly blobId: Id;
      readonly mediaType: 'image/png' | 'image/jpeg';
      readonly base64: string;
      readonly xMm: number;
      readonly yMm: number;
      readonly rotationDeg: number;
      readonly widthMm: number;
      readonly heightMm: number;
      readonly opacity: number;
    };

/** Layers by subject, drawn in this order. */
export const DRAWING_LAYERS = [
  'underlay',
  'coverage',
  'architecture',
  'set',
  'beams',
  'cables',
  'data',
  'stands',
  'gear',
  'notes',
  'dimensions',
  'labels',
] as const;

export type DrawingLayer = (typeof DRAWING_LAYERS)[number];

/** Everything drawn for one record on one layer. Items keep their identity while nothing in them changed. */
export interface DisplayItem {
  readonly key: string;
  /** Of a label: the spot of the floor it is held by when it is moved by hand. */
  readonly anchor?: { readonly xMm: number; readonly yMm: number };
  readonly recordId: Id;
  readonly layer: DrawingLayer;
  readonly primitives: readonly Primitive[];
  /** Box in floor millimetres around the geometry, for culling and picking (text at nominal scale included). */
  readonly box: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
}

export interface DisplayList {
  readonly floorId: Id;
  /** 48 for 1:48. */
  readonly nominalScale: number;
  readonly items: readonly DisplayItem[];
}
