import type { z } from 'zod';
import { kindSchema } from '../kinds/kinds.ts';
import { deviceSchema, lineSchema, tickSchema } from './control.ts';
import { blockSchema, chargerSchema, floorPackSchema, stockSchema } from './day.ts';
import { dimensionSchema } from './dimension.ts';
import {
  acknowledgementSchema,
  issueSchema,
  levelSchema,
  planRecordSchema,
  setupSchema,
  universeSchema,
} from './document.ts';
import {
  ballastSchema,
  boxSchema,
  cableSchema,
  fixtureSchema,
  outletSchema,
  sourceSchema,
  standSchema,
} from './gear.ts';
import { gripSchema, riggingSchema } from './grip.ts';
import { measurementSchema } from './measurement.ts';
import { otherLoadSchema } from './other-load.ts';
import { floorSchema, markSchema, openingSchema, setPieceSchema, wallSchema } from './place.ts';
import { blobSchema, crossingSchema, featureSchema, photoSchema, underlaySchema } from './scout.ts';
import { labelPlaceSchema, moveSchema, viewSchema } from './view.ts';

/** Every record type by its name. A new type is one line here. */
export const recordSchemas = {
  plan: planRecordSchema,
  floor: floorSchema,
  wall: wallSchema,
  opening: openingSchema,
  setPiece: setPieceSchema,
  mark: markSchema,
  dimension: dimensionSchema,
  underlay: underlaySchema,
  photo: photoSchema,
  feature: featureSchema,
  crossing: crossingSchema,
  blob: blobSchema,
  view: viewSchema,
  labelPlace: labelPlaceSchema,
  stand: standSchema,
  fixture: fixtureSchema,
  grip: gripSchema,
  rigging: riggingSchema,
  ballast: ballastSchema,
  source: sourceSchema,
  outlet: outletSchema,
  box: boxSchema,
  cable: cableSchema,
  otherLoad: otherLoadSchema,
  measurement: measurementSchema,
  universe: universeSchema,
  device: deviceSchema,
  line: lineSchema,
  tick: tickSchema,
  setup: setupSchema,
  level: levelSchema,
  move: moveSchema,
  block: blockSchema,
  stock: stockSchema,
  charger: chargerSchema,
  pack: floorPackSchema,
  acknowledgement: acknowledgementSchema,
  issue: issueSchema,
  kind: kindSchema,
} as const;

export type RecordType = keyof typeof recordSchemas;
export type RecordOf<T extends RecordType> = z.infer<(typeof recordSchemas)[T]>;
export type AnyRecord = { [T in RecordType]: RecordOf<T> }[RecordType];

export type * from './common.ts';
export type * from './control.ts';
export type * from './day.ts';
export type * from './dimension.ts';
export type * from './document.ts';
export type * from './gear.ts';
export type * from './grip.ts';
export type * from './measurement.ts';
export type * from './other-load.ts';
export type * from './place.ts';
export type * from './scout.ts';
export type * from './view.ts';
