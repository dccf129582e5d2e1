import type { Kind } from '../plan/kinds/kinds.ts';

/**
 * Trade words people type for gear that the book names otherwise: what is typed, and words that find it. No makers, no
 * brands; common practice, no published source. A new word is a line here.
 */
export const SYNONYMS: readonly (readonly [typed: string, ...finds: string[]])[] = [
  ['console', 'lighting desk'],
  ['lighting board', 'lighting desk'],
  ['dimmer board', 'lighting desk'],
  ['board op', 'lighting desk'],
  ['dimmer rack', 'dimmer'],
  ['dimmer pack', 'dimmer'],
  ['variac', 'variable transformer', 'dimmer'],
  ['quad box', 'quad'],
  ['four way', '4 outlets'],
  ['fourway', '4 outlets'],
  ['cube tap', 'tee household'],
  ['two-fer', 'tee 2 outlets', 'splitter'],
  ['twofer', 'tee 2 outlets', 'splitter'],
  ['three-fer', 'tee 3 outlets', 'splitter'],
  ['stinger', 'extension'],
  ['extension cord', 'extension'],
  ['extension lead', 'extension'],
  ['power cord', 'extension'],
  ['lunch box', 'distro'],
  ['lunchbox', 'distro'],
  ['spider box', 'distro'],
  ['distro board', 'distro'],
  ['power distro', 'distro'],
  ['genny', 'generator'],
  ['jenny', 'generator'],
  ['gennie', 'generator'],
  ['batteries', 'pack'],
  ['arc light', 'arc'],
  ['daylight discharge', 'discharge'],
  ['moving light', 'moving head'],
  ['mover', 'moving head'],
  ['light mat', 'led panel'],
  ['china ball', 'lantern'],
  ['gaff stand', 'stand'],
  ['light stand', 'stand'],
];

const TABLE: ReadonlyMap<string, readonly string[]> = new Map(
  SYNONYMS.map(([typed, ...finds]) => [typed, finds]),
);
const MOST_WORDS = Math.max(...SYNONYMS.map(([typed]) => typed.split(/[\s-]/).length));

/** A word with and without the s of several. */
const singular = (word: string): string => (word.length > 3 && word.endsWith('s') ? word.slice(0, -1) : word);

/**
 * What was typed, and the same with one trade word in it put as the book has it: `1000 w genny` also as `1000 w generator`.
 * Words are lower case, parted by spaces; the first is what was typed.
 */
export const otherWordings = (typed: readonly string[]): readonly string[] => {
  const found = [typed.join(' ')];
  for (let count = Math.min(MOST_WORDS, typed.length); count > 0; count--)
    for (let at = 0; at + count <= typed.length; at++) {
      const words = typed.slice(at, at + count);
      const finds =
        TABLE.get(words.join(' ')) ?? TABLE.get(words.join('-')) ?? TABLE.get(words.map(singular).join(' '));
      for (const words of finds ?? [])
        found.push([...typed.slice(0, at), words, ...typed.slice(at + count)].join(' '));
    }
  return found;
};

/** Words that follow from the figures of a kind: what mixes colours is found by the names of its colours. */
export const wordsFromFigures = (kind: Kind): readonly string[] =>
  kind.family === 'fixture' && kind.cct?.color ? ['rgb', 'rgbw', 'full colour color', 'colour mixing'] : [];
