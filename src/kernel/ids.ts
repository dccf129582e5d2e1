/** Identifies one record in a plan. Plain text, never shown as a title. */
export type Id = string;

const ALPHABET = '23456789abcdefghjkmnpqrstuvwxyz';

/** Makes new ids. Random numbers come in from outside, so that pure code stays repeatable. */
export type NewId = (prefix: string) => Id;

/**
 * An id maker over a source of random numbers in [0, 1). Ten characters of a 31-letter alphabet: about 49 bits.
 */
export const idMaker =
  (random: () => number): NewId =>
  (prefix) => {
    let s = '';
    for (let i = 0; i < 10; i++) s += ALPHABET[Math.floor(random() * ALPHABET.length)] ?? '2';
    return `${prefix}-${s}`;
  };

/** Compares ids (and any plain text) the same way on every machine. */
export const compareIds = (a: Id, b: Id): number => (a < b ? -1 : a > b ? 1 : 0);

type Parts = readonly (string | number)[];

const MOST_SPLIT = 5000;
const known = new Map<string, Parts>();

/** A text in runs of digits, as numbers, and what is between them; remembered, since sorting asks for one text often. */
const split = (s: string): Parts => {
  let parts = known.get(s);
  if (!parts) {
    parts = (s.match(/\d+|\D+/g) ?? []).map((run) => (/^\d/.test(run) ? Number(run) : run));
    if (known.size >= MOST_SPLIT) known.clear();
    known.set(s, parts);
  }
  return parts;
};

/** Compares unit numbers and labels as people do: 2 before 10, then by text. */
export const compareNatural = (a: string, b: string): number => {
  const x = split(a);
  const y = split(b);
  for (let i = 0; i < Math.min(x.length, y.length); i++) {
    const p = x[i] ?? '';
    const q = y[i] ?? '';
    const d = typeof p === 'number' && typeof q === 'number' ? p - q : compareIds(String(p), String(q));
    if (d !== 0) return d;
  }
  return x.length - y.length;
};
