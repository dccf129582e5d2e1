import lists from '../../shared/lists.json' with { type: 'json' };

/** What a list holds and what its columns say, for people who read it elsewhere. */
export interface ListDoc {
  readonly name: string;
  readonly title: string;
  /** Sheet of the set with the same content; empty where it is on none. */
  readonly sheet: string;
  readonly about: string;
  /** Columns in their order. The head `(each setup)` stands for a column with the name of each setup. */
  readonly columns: readonly { readonly head: string; readonly meaning: string }[];
}

export const EACH_SETUP = '(each setup)';

/** Every list that is written, in the order in which they are. */
export const LIST_DOCS: readonly ListDoc[] = lists.rows;

export const listDoc = (name: string): ListDoc | undefined => LIST_DOCS.find((d) => d.name === name);
