import type { Id, NewId } from '../../kernel/ids.ts';
import { applyChanges, type ChangeSet, compose, noChanges } from '../change-set.ts';
import type { Plan } from '../plan.ts';
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
  net: Net,
  newId: NewId,
): { readonly changes: ChangeSet; readonly copies: ReadonlySet<Id> } => {
  let at = plan;
  let changes = noChanges;
  const copies = new Set<Id>();
  for (let row = 0; row < net.down; row++)
    for (let column = 0; column < net.across; column++) {
      if (row === 0 && column === 0) continue;
      const made = duplicateRecords(at, ids, { xMm: column * net.acrossMm, yMm: row * net.downMm }, newId);
      at = applyChanges(at, made.changes);
      changes = compose(changes, made.changes);
      for (const id of made.copies) copies.add(id);
    }
  return { changes, copies };
};
