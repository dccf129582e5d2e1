import { findKind, gearBook, searchGear, searchKinds } from '../gear/index.ts';
import { type Problem, problemText } from '../kernel/result.ts';
import type { Kind } from '../plan/kinds/kinds.ts';
import type { Practice } from '../plan/records/index.ts';
import { EXIT } from './command.ts';
import { kindText } from './gear-show.ts';

export interface GearResult {
  readonly text: string;
  readonly exitCode: number;
}

export const refused = (problem: Problem): GearResult => ({
  text: `${problemText(problem)}\n`,
  exitCode: EXIT.refused,
});

export const jsonText = (value: unknown): string => `${JSON.stringify(value, undefined, 2)}\n`;

interface From {
  readonly practices: readonly Practice[];
  /** Kinds of a user's book, listed before the built-in ones. */
  readonly own?: readonly Kind[];
}

/**
 * Kinds of the built-in book and of a user's book, all or those that fit the words: one line for each with where it is
 * from, or all their data as JSON.
 */
export const gearList = (
  { practices, own = [] }: From,
  query: string,
  options: { readonly json: boolean },
): GearResult => {
  const mine = query === '' ? own : searchKinds(own, query);
  const found = (p: Practice): readonly Kind[] =>
    query === '' && options.json ? gearBook(p) : searchGear(p, query);
  if (options.json) return { text: jsonText([...mine, ...practices.flatMap(found)]), exitCode: EXIT.done };
  const rows = new Map<string, { readonly kind: Kind; readonly of: string[] }>();
  const add = (kind: Kind, where: string): void => {
    const key = `${kind.slug} ${kind.name}`;
    const row = rows.get(key) ?? { kind, of: [] };
    row.of.push(where);
    rows.set(key, row);
  };
  for (const kind of mine) add(kind, 'own');
  for (const practice of practices) for (const kind of found(practice)) add(kind, practice);
  const lines = [...rows.values()].map(
    ({ kind, of }) => `${kind.slug.padEnd(34)} ${kind.family.padEnd(12)} ${kind.name} [${of.join(', ')}]\n`,
  );
  return { text: lines.join(''), exitCode: EXIT.done };
};

/**
 * One kind with all its figures and where they are from, in lines for people or as JSON. A user's own kind goes before a
 * built-in one. Lengths follow the practice it is found in.
 */
export const gearShow = (
  { practices, own = [] }: From,
  slug: string,
  options: { readonly json: boolean },
): GearResult => {
  const mine = own.find((k) => k.slug === slug);
  const at = practices.find((p) => findKind(p, slug) !== undefined);
  const kind = mine ?? (at && findKind(at, slug));
  if (!kind)
    return refused({
      what: `The gear book has no kind “${slug}”.`,
      todo: 'Look for its name with: lampwright gear list WORDS.',
    });
  if (options.json) return { text: jsonText(kind), exitCode: EXIT.done };
  const practice = at ?? practices[0];
  const units = practice === 'europe' ? 'metric' : 'imperial';
  const other = !mine && practices.find((p) => p !== at && findKind(p, slug) !== undefined);
  const text = kindText(kind, units, mine ? 'own' : `built-in, ${at ?? ''}`);
  return {
    text: other ? `${text}For the kind of ${other}: --practice ${other}.\n` : text,
    exitCode: EXIT.done,
  };
};
