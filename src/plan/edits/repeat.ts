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

/** Repeats records in a row or a grid with even spacing, as one edit. The originals are the first place of the net. */
export const repeatRecords = (
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
