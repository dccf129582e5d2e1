import type { Kind } from '../plan/kinds/kinds.ts';
import { kindHash, kindRecord } from './book.ts';
import { kindDifferences } from './kind-differences.ts';
import { bookOfKinds, type UserBook } from './user-book.ts';

/** Two kinds with one slug that say different things. */
export interface KindConflict {
  readonly slug: string;
  readonly mine: Kind;
  readonly theirs: Kind;
  /** From mine to theirs, in words. */
  readonly differences: readonly string[];
}

/** What kinds from elsewhere would do to a book. Nothing is changed until `resolveMerge`. */
export interface BookMerge {
  readonly added: readonly Kind[];
  readonly same: readonly Kind[];
  readonly conflicts: readonly KindConflict[];
}

/** Keep the book's own kind, take the other, or keep both, the other under a slug of its own. */
export type MergeChoice = 'mine' | 'theirs' | 'both';

/** Compares kinds with those of a book by slug and content. */
export const mergeBook = (book: UserBook, incoming: readonly Kind[]): BookMerge => {
  const known = new Map(book.kinds.map((k) => [k.slug, k]));
  const added: Kind[] = [];
  const same: Kind[] = [];
  const conflicts: KindConflict[] = [];
  for (const theirs of incoming) {
    const mine = known.get(theirs.slug);
    if (!mine) {
      known.set(theirs.slug, theirs);
      added.push(theirs);
    } else if (kindHash(mine) === kindHash(theirs)) same.push(theirs);
    else conflicts.push({ slug: theirs.slug, mine, theirs, differences: kindDifferences(mine, theirs) });
  }
  return { added, same, conflicts };
};

/** The book with a merge carried out. A conflict without a choice keeps the book's own kind. */
export const resolveMerge = (
  book: UserBook,
  merge: BookMerge,
  choices: ReadonlyMap<string, MergeChoice> = new Map(),
): UserBook => {
  const kinds = new Map([...book.kinds, ...merge.added].map((k) => [k.slug, k]));
  for (const { slug, theirs } of merge.conflicts) {
    const choice = choices.get(slug) ?? 'mine';
    if (choice === 'theirs') kinds.set(slug, theirs);
    if (choice !== 'both') continue;
    let n = 2;
    while (kinds.has(`${slug}-${n}`)) n++;
    const other = kindRecord({ ...theirs, slug: `${slug}-${n}` });
    kinds.set(other.slug, other);
  }
  return bookOfKinds([...kinds.values()], book);
};
