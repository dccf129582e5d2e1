import {
  add,
  angleDeg,
  direction,
  distanceMm,
  type Point,
  point,
  rotate,
  scale,
} from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { applyChanges, type ChangeSet, compose, noChanges } from '../change-set.ts';
import type { Plan } from '../plan.ts';
import { rotateAbout, selectionCentre } from './align.ts';
import { duplicateRecords } from './duplicate.ts';

/** A net of copies: how many in all each way, and how far from one to the next in millimetres. */
export interface Net {
  readonly across: number;
  readonly down: number;
  readonly acrossMm: number;
  readonly downMm: number;
}

/** Where a copy goes: so far from the original, and turned about its own middle by so much. */
export interface CopyPlace {
  readonly by: Point;
  readonly turnDeg: number;
}

export interface Repeated {
  readonly changes: ChangeSet;
  readonly copies: ReadonlySet<Id>;
}

/** Places of a row or a grid; the originals stand at the first. */
export const netPlaces = (net: Net): readonly CopyPlace[] =>
  Array.from({ length: net.down * net.across }, (_, i) => {
    const [row, column] = [Math.floor(i / net.across), i % net.across];
    return { by: point(column * net.acrossMm, row * net.downMm), turnDeg: 0 };
  }).slice(1);

/** Places along a straight line of this length, evenly spaced, the originals at its start. Degrees clockwise from +x. */
export const linePlaces = (count: number, lengthMm: number, deg: number): readonly CopyPlace[] =>
  Array.from({ length: Math.max(0, count - 1) }, (_, i) => ({
    by: scale(direction(deg), (lengthMm * (i + 1)) / (count - 1)),
    turnDeg: 0,
  }));

export interface Arc {
  readonly count: number;
  readonly radiusMm: number;
  /** From the originals to the middle of the arc. */
  readonly towardsDeg: number;
  /** From the first to the last; a full turn puts one at each step of it and none twice. */
  readonly sweepDeg: number;
  /** Whether each is turned along with the arc, so that all face its middle as the first does. */
  readonly turns: boolean;
}

/** Places on an arc, evenly spaced, the originals at its start. */
export const arcPlaces = (arc: Arc): readonly CopyPlace[] => {
  const out = scale(direction(arc.towardsDeg), arc.radiusMm);
  const full = Math.abs(arc.sweepDeg) >= 360;
  const step = arc.sweepDeg / Math.max(1, full ? arc.count : arc.count - 1);
  return Array.from({ length: Math.max(0, arc.count - 1) }, (_, i) => {
    const deg = step * (i + 1);
    return { by: add(out, rotate(scale(out, -1), deg)), turnDeg: arc.turns ? deg : 0 };
  });
};

/** Copies of records at these places, as one edit. */
export const repeatAt = (
  plan: Plan,
  ids: ReadonlySet<Id>,
  places: readonly CopyPlace[],
  newId: NewId,
): Repeated => {
  let at = plan;
  let changes = noChanges;
  const copies = new Set<Id>();
  const take = (c: ChangeSet): void => {
    at = applyChanges(at, c);
    changes = compose(changes, c);
  };
  const centre = selectionCentre(plan, ids);
  for (const { by, turnDeg } of places) {
    const made = duplicateRecords(at, ids, by, newId);
    take(made.changes);
    if (turnDeg !== 0 && centre) take(rotateAbout(at, made.copies, add(centre, by), turnDeg));
    for (const id of made.copies) copies.add(id);
  }
  return { changes, copies };
};

/** Repeats records in a row or a grid with even spacing, as one edit. The originals are the first place of the net. */
export const repeatRecords = (plan: Plan, ids: ReadonlySet<Id>, net: Net, newId: NewId): Repeated =>
  repeatAt(plan, ids, netPlaces(net), newId);

/** How a line from one spot to another runs: its length in millimetres and its direction. */
export const runOf = (from: Point, to: Point): { readonly lengthMm: number; readonly deg: number } => ({
  lengthMm: distanceMm(from, to),
  deg: distanceMm(from, to) < 1 ? 0 : angleDeg(from, to),
});
