import { MOUNTS } from './sheet-values.ts';

/** What a row says, by field of the kind; assumed values are added as they are needed. */
export type Given = Readonly<Record<string, unknown>>;

/** A column of a list, for the families that have it. */
export interface SheetField {
  /** Its heading, as it is written. */
  readonly heading: string;
  /** Where the value goes: a field of the kind, or of its `sizeMm`. */
  readonly field: string;
  /** What is asked for, in words, for the list of columns. */
  readonly words: string;
  /** What to do where the cell cannot be read. */
  readonly todo: string;
  /** The row gives no kind without it. */
  readonly need?: boolean;
  /** A number: letters that may stand behind it, other headings with their factors, and whether it is a whole one. */
  readonly number?: {
    readonly unit: string;
    readonly other?: Readonly<Record<string, number>>;
    readonly whole?: boolean;
  };
  /** Reads a cell that is no number; undefined where it cannot be read. */
  readonly read?: (text: string) => unknown;
  readonly write?: (value: unknown) => string;
  /** Taken where the cell is empty, and marked so; undefined: the field is left out. */
  readonly assumed?: (given: Given) => unknown;
}

export interface SheetFamily {
  /** With its article. */
  readonly words: string;
  readonly fields: readonly SheetField[];
  /** What follows from the rest: symbol, ports. */
  readonly finish: (given: Given) => Readonly<Record<string, unknown>>;
  /** What does not go together. */
  readonly faults?: (given: Given) => readonly string[];
}

type Words = Readonly<Record<string, string>>;

export const yours = (...words: readonly string[]): Words => Object.fromEntries(words.map((w) => [w, w]));

const wordOf = (words: Words, text: string): string | undefined => {
  const t = text.trim().toLowerCase();
  if (Object.hasOwn(words, t)) return words[t];
  const joined = t.replace(/\s+/g, '-');
  return Object.hasOwn(words, joined) ? words[joined] : undefined;
};

const among = (words: Words): string => [...new Set(Object.values(words))].join(', ');

export const numberField = (
  heading: string,
  field: string,
  unit: string,
  more: Partial<SheetField> & { readonly other?: Readonly<Record<string, number>> } = {},
): SheetField => {
  const { other, ...rest } = more;
  return {
    heading,
    field,
    words: '',
    todo: 'Write a number like 12.5.',
    number: { unit, ...(other ? { other } : {}) },
    ...rest,
  };
};

export const wholeField = (heading: string, field: string, words: string): SheetField => ({
  heading,
  field,
  words,
  todo: 'Write a whole number.',
  number: { unit: '', whole: true },
});

/** One word of several. */
export const one = (heading: string, field: string, words: Words, what: string): SheetField => ({
  heading,
  field,
  words: `${what}: ${among(words)}`,
  todo: `Use one of ${among(words)}.`,
  read: (t) => wordOf(words, t),
});

/** Words between semicolons or bars. */
export const list = (heading: string, field: string, words: Words, what: string): SheetField => ({
  heading,
  field,
  words: `${what}, between semicolons: ${among(words)}`,
  todo: `Use ${among(words)}, between semicolons.`,
  read: (t) => {
    const found = t
      .split(/[;|]/)
      .filter((w) => w.trim() !== '')
      .map((w) => wordOf(words, w));
    return found.length > 0 && found.every((w) => w !== undefined) ? [...new Set(found)] : undefined;
  },
  write: (v) => (v as readonly string[]).join(';'),
});

export const text = (heading: string, field: string, words: string): SheetField => ({
  heading,
  field,
  words,
  todo: 'Write a text.',
  read: (t) => t,
});

const PINS = Object.fromEntries(
  Object.entries(MOUNTS).filter(([, m]) => m === 'pin-16' || m === 'spigot-28'),
);

/** What the top of a stand takes. */
export const STAND_TOPS: Words = { ...PINS, ...yours('grip-head', 'clamp') };
export const RECEIVERS: Words = {
  ...PINS,
  ...yours('grip-head', 'clamp', 'hung', 'frame', 'wall', 'beam', 'floor', 'held'),
};
export const RIGGING_SORTS = yours(
  'pipe',
  'truss',
  'point',
  'arm',
  'head',
  'clamp',
  'plate',
  'spreader',
  'bond',
  'lift',
  'crane',
);
export const PLATES = yours(
  'v-plate',
  'three-stud',
  'slide-7v',
  'block-28',
  'block-48',
  'belt-xlr4',
  'terminals',
  'built-in',
);
export const CHEMISTRIES = yours('li-ion', 'lifepo4', 'nimh', 'lead-acid');
