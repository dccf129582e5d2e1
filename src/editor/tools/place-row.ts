import { distanceMm, lerp, type Point } from '../../kernel/geometry.ts';
import type { Id, NewId } from '../../kernel/ids.ts';
import { ok, type Result } from '../../kernel/result.ts';
import { applyChanges, type ChangeSet, compose } from '../../plan/change-set.ts';
import { linePlaces, repeatAt, runOf } from '../../plan/edits/repeat.ts';
import type { Plan } from '../../plan/plan.ts';
import type { Book } from '../book.ts';
import { type PlaceThere, placeThere } from '../placing.ts';

/** Least and most things of a row placed by hand. */
export const ROW = { least: 2, most: 60 } as const;

/** A row being placed: how many, and from where to where. */
export interface RowPlaces {
  readonly count: number;
  readonly from: Point;
  readonly to: Point;
}

/** What placing several of a kind along a line, evenly spaced, would put on the floor. */
export const placeRow = (
  plan: Plan,
  book: Book,
  what: Omit<PlaceThere, 'at'>,
  row: RowPlaces,
  newId: NewId,
): Result<{ readonly changes: ChangeSet; readonly ids: ReadonlySet<Id>; readonly name: string }> => {
  const first = placeThere(plan, book, { ...what, at: row.from }, newId);
  if (!first.ok) return first;
  const { lengthMm, deg } = runOf(row.from, row.to);
  const one = new Set([first.value.id]);
  const rest = repeatAt(
    applyChanges(plan, first.value.changes),
    one,
    linePlaces(row.count, lengthMm, deg),
    newId,
  );
  return ok({
    changes: compose(first.value.changes, rest.changes),
    ids: new Set([...one, ...rest.copies]),
    name: `${row.count} in a row`,
  });
};

/** The gaps of a row, as lines. */
export const gapsOf = (row: RowPlaces): readonly { readonly from: Point; readonly to: Point }[] =>
  Array.from({ length: row.count - 1 }, (_, i) => ({
    from: lerp(row.from, row.to, i / (row.count - 1)),
    to: lerp(row.from, row.to, (i + 1) / (row.count - 1)),
  })).filter((g) => distanceMm(g.from, g.to) > 1);
