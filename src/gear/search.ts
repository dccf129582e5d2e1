import type { Kind, KindFamily } from '../plan/kinds/kinds.ts';
import type { Practice } from '../plan/records/index.ts';
import { gearBook } from './book.ts';
import { otherWordings, wordsFromFigures } from './synonyms.ts';

export interface SearchOptions {
  readonly families?: readonly KindFamily[];
  readonly limit?: number;
}

interface Text {
  readonly name: string;
  readonly nameWords: readonly string[];
  readonly also: readonly string[];
}

const texts = new WeakMap<Kind, Text>();

const fold = (s: string): string =>
  s
    .toLowerCase()
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .replace(/×/g, 'x')
    .replace(/(\d)\s*(kw|w|a|v|k)\b/g, '$1$2');

const words = (s: string): string[] => fold(s).match(/[a-z0-9.]+(?:x[0-9.]+)*/g) ?? [];

const textOf = (kind: Kind): Text => {
  let t = texts.get(kind);
  if (!t) {
    t = {
      name: fold(kind.name),
      nameWords: words(kind.name),
      also: [...kind.also, ...wordsFromFigures(kind)].flatMap(words),
    };
    texts.set(kind, t);
  }
  return t;
};

/** Whether the letters of `q` come one after the other in `word`, starting with the same letter. */
const inOrder = (q: string, word: string): boolean => {
  if (q[0] !== word[0]) return false;
  let i = 0;
  for (const c of word) if (c === q[i]) i++;
  return i === q.length;
};

/** How well one typed word fits, 0 when not at all. Numbers must start a word: `65` finds 650 but not 1650. */
const score = (q: string, t: Text): number => {
  const isNumber = /^[0-9.]/.test(q);
  if (t.nameWords.includes(q)) return 10;
  if (isNumber && t.nameWords.some((w) => w.replace(/[a-z]+$/, '') === q)) return 9;
  if (t.also.includes(q)) return 7;
  if (t.nameWords.some((w) => w.startsWith(q))) return 6;
  if (t.also.some((w) => w.startsWith(q))) return 4;
  if (isNumber) return 0;
  if (q.length >= 3 && t.name.includes(q)) return 3;
  if (q.length >= 3 && [...t.nameWords, ...t.also].some((w) => inOrder(q, w))) return 1;
  return 0;
};

/** How well all the words fit; below -1 where one of them does not. */
const pointsOf = (typed: readonly string[], t: Text): number => {
  const points = typed.map((q) => score(q, t));
  return points.some((p) => p === 0) ? Number.NEGATIVE_INFINITY : points.reduce((a, b) => a + b, 0);
};

/**
 * Kinds for what a person typed: every word must fit the name, other names or watts, as it stands or by a trade word for it;
 * best first, then the book's order.
 */
export const searchKinds = (kinds: readonly Kind[], query: string, options: SearchOptions = {}): Kind[] => {
  const { families, limit = 50 } = options;
  // What was typed goes before other words for it.
  const asked = otherWordings(words(query)).map(words);
  const found: { kind: Kind; points: number; place: number }[] = [];
  kinds.forEach((kind, place) => {
    if (families && !families.includes(kind.family)) return;
    const points = Math.max(...asked.map((typed, i) => pointsOf(typed, textOf(kind)) - i / 100));
    if (points > -1) found.push({ kind, points, place });
  });
  found.sort((a, b) => b.points - a.points || a.place - b.place);
  return found.slice(0, limit).map((f) => f.kind);
};

/** Searches the built-in book of a practice; an empty query gives its families in their order. */
export const searchGear = (practice: Practice, query: string, options: SearchOptions = {}): Kind[] =>
  searchKinds(gearBook(practice), query, options);
