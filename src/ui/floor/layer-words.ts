import type { DrawingLayer } from '../../drawing/display-list.ts';

/** Layers in the user's words. */
export const LAYER_WORDS: Readonly<Record<DrawingLayer, string>> = {
  underlay: 'Underlay',
  coverage: 'Radio coverage',
  architecture: 'Architecture',
  set: 'Set and marks',
  beams: 'Beams and aim lines',
  cables: 'Cables',
  data: 'Data lines',
  stands: 'Stands and grip',
  gear: 'Lighting and power gear',
  notes: 'Notes and photos',
  dimensions: 'Dimensions',
  labels: 'Labels',
};
