import { add, type Box, boxHolds, type Point, scale } from '../kernel/geometry.ts';
import type { Id } from '../kernel/ids.ts';
import type { DrawContext } from './context.ts';
import { memoItem } from './context.ts';
import type { DisplayItem, Primitive } from './display-list.ts';
import type { LabelGrid } from './label-grid.ts';
import {
  type LabelAsk,
  type LabelLine,
  type LabelSpot,
  placeByHand,
  placeLabel,
  placeOverStrokes,
  takeSpot,
} from './label-place.ts';
import { paperPoint, spotDeps, spotPrimitives } from './label-text.ts';
import { itemOf } from './prims.ts';

/** Labels at work: what has been placed, and where there is still room. */
export interface Placer {
  readonly tags: ReadonlyMap<Id, readonly LabelLine[]>;
  readonly ctx: DrawContext;
  readonly grid: LabelGrid;
  readonly bounds: Box | undefined;
  readonly out: DisplayItem[];
  /** Labels put by hand: so far from the place of their record, in floor millimetres. */
  readonly hand: ReadonlyMap<Id, Point>;
  /** Whether those put by hand have their turn, or the others. By hand comes first, so that the others keep clear. */
  handsTurn: boolean;
}

/** Whether the label of a record has its turn. */
export const itsTurn = (p: Placer, id: Id): boolean =>
  p.hand.has(id) === p.handsTurn && (!p.ctx.only || p.ctx.only.has(id));

/** Whether a spot of the floor is in the part that is drawn. */
export const inBounds = (p: Placer, at: Point): boolean =>
  p.bounds === undefined || boxHolds(p.bounds, paperPoint(at, p.ctx.nominalScale));

/** The spot a hand chose for a label, on paper. */
export const byHand = (p: Placer, ask: LabelAsk): LabelSpot | undefined => {
  const off = p.hand.get(ask.owner);
  return off && placeByHand(ask, add(ask.at, scale(off, 1 / p.ctx.nominalScale)));
};

/** The drawn label of a record. */
export const labelItem = (
  recordId: Id,
  nominal: number,
  spot: LabelSpot,
  primitives: readonly Primitive[],
): DisplayItem | undefined => {
  const item = itemOf(`label:${recordId}`, recordId, 'labels', nominal, primitives);
  return item && { ...item, anchor: scale(spot.at, nominal) };
};

export const push = (p: Placer, item: DisplayItem | undefined): void => {
  if (item) p.out.push(item);
};

/** Work that can be put aside after each step and taken up again. */
export type Steps<T> = Generator<undefined, T, undefined>;

/** A text beside a thing, without a bubble. */
export const placeBeside = (
  p: Placer,
  record: object & { readonly id: Id },
  at: Point,
  halfMm: readonly [number, number],
  facingDeg: number,
  texts: readonly LabelLine[],
): void => {
  if (!itsTurn(p, record.id) || !inBounds(p, at)) return;
  const n = p.ctx.nominalScale;
  const tags = p.tags.get(record.id) ?? [];
  const lines = [...texts, ...tags];
  const ask: LabelAsk = {
    at: paperPoint(at, n),
    halfMm: [halfMm[0] / n, halfMm[1] / n],
    facingDeg,
    bubbleMm: 0,
    lines,
    owner: record.id,
    bounds: p.bounds,
    maxMm: 23,
  };
  const whole = byHand(p, ask) ?? placeLabel(p.grid, ask);
  const shown = whole ? lines : [...texts.slice(0, 1), ...tags];
  const spot =
    whole ??
    placeLabel(p.grid, { ...ask, lines: shown }) ??
    placeOverStrokes(p.grid, { ...ask, lines: shown });
  if (!spot) return;
  takeSpot(p.grid, spot, record.id);
  push(
    p,
    memoItem(record, `label|${n}`, spotDeps(spot, shown), () =>
      labelItem(record.id, n, spot, spotPrimitives(spot, shown, n, undefined)),
    ),
  );
};
