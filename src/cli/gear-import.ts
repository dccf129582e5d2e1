import {
  type BookMerge,
  emptyBook,
  type ImportOptions,
  importGdtf,
  type MergeChoice,
  mergeBook,
  readBook,
  readKindSheet,
  resolveMerge,
  serialiseBook,
} from '../gear/index.ts';
import { fail, ok, type Problem, problemText, type Result } from '../kernel/result.ts';
import { formatWatts } from '../kernel/units.ts';
import type { FixtureKind, Kind } from '../plan/kinds/kinds.ts';
import { kindFacts } from '../report/kind-facts.ts';
import { EXIT } from './command.ts';
import { type GearResult, jsonText, refused } from './gear.ts';

/** What a file gave, before any of it is kept. */
export interface ReadGear {
  readonly kinds: readonly Kind[];
  readonly notices: readonly string[];
  readonly problems: readonly Problem[];
}

/**
 * Reads kinds from an open fixture file (GDTF), a user's gear book or a spreadsheet saved as CSV, told apart by what is
 * in the file and, where that does not say, by its name.
 */
export const readGear = (bytes: Uint8Array, name: string, options: ImportOptions = {}): Result<ReadGear> => {
  const first = bytes.subarray(0, 512);
  const head = new TextDecoder('latin1')
    .decode(first)
    .replace(/^\u00ef\u00bb\u00bf/, '')
    .trimStart();
  const binary = first.includes(0);
  if (/\.gdtf$/i.test(name) || binary || head.startsWith('PK') || head.startsWith('<')) {
    const read = importGdtf(bytes, name, options);
    return read.ok ? ok({ ...read.value, kinds: [read.value.kind] }) : read;
  }
  const { text, latin } = textOf(bytes);
  if (head.startsWith('{') || /\.json$/i.test(name)) {
    const read = readBook(text, name);
    return read.ok ? ok({ kinds: read.value.book.kinds, notices: read.value.notices, problems: [] }) : read;
  }
  const read = readKindSheet(text, name);
  if (!read.ok) return read;
  return ok({
    kinds: read.value.kinds,
    notices: [
      ...read.value.notices,
      ...(latin ? ['The list is not in UTF-8; it was read as Western European text.'] : []),
    ],
    problems: read.value.rows.flatMap((r) => r.problems),
  });
};

const textOf = (bytes: Uint8Array): { readonly text: string; readonly latin: boolean } => {
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), latin: false };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), latin: true };
  }
};

export interface ImportInto {
  readonly json: boolean;
  /** Text of the book to put the kinds into; empty for a new one; absent to only show them. */
  readonly book?: string;
  readonly bookName?: string;
  /** What to do where the book has another kind of the same slug. Without it such a book is left alone. */
  readonly conflicts?: MergeChoice;
}

/**
 * Shows what a file would bring and, with a book, gives that book's new text. Nothing is written here. Exit code 2
 * where nothing could be read, or where kinds are in conflict and no choice was made.
 */
export const gearImport = (
  bytes: Uint8Array,
  name: string,
  into: ImportInto,
  options: ImportOptions = {},
): GearResult & { readonly bookText?: string } => {
  const read = readGear(bytes, name, options);
  if (!read.ok) return refused(read.error);
  const { kinds, notices, problems } = read.value;
  const merged = into.book === undefined ? undefined : merge(kinds, into.book, into);
  if (merged && !merged.ok) return refused(merged.error);
  const kept = merged?.value;
  const text = into.json
    ? jsonText({ kinds, notices, problems, ...(kept ? { merge: kept.merge } : {}) })
    : [
        ...kinds.flatMap((k) => kindLines(k, kinds.length === 1)),
        ...section('Notes', notices),
        ...section('Left out', problems.map(problemText)),
        ...(kept
          ? mergeLines(kept.merge, into)
          : kinds.length > 0
            ? ['', 'Nothing is kept yet: --out BOOK puts it into a gear book.']
            : []),
        '',
      ].join('\n');
  if (kinds.length === 0) return { text, exitCode: EXIT.refused };
  if (kept && kept.merge.conflicts.length > 0 && into.conflicts === undefined)
    return { text, exitCode: EXIT.refused };
  return { text, exitCode: EXIT.done, ...(kept ? { bookText: kept.text } : {}) };
};

const merge = (
  kinds: readonly Kind[],
  bookText: string,
  into: ImportInto,
): Result<{ readonly merge: BookMerge; readonly text: string }> => {
  const name = into.bookName ?? 'the book';
  const read = bookText === '' ? ok({ book: emptyBook, newer: false }) : readBook(bookText, name);
  if (!read.ok) return read;
  if (read.value.newer)
    return fail({ what: `${name} was saved by a newer version of the program.`, todo: 'Name another book.' });
  const { book } = read.value;
  const found = mergeBook(book, kinds);
  const { conflicts } = into;
  const choices = new Map(found.conflicts.map((c) => [c.slug, conflicts ?? 'mine'] as const));
  return ok({ merge: found, text: serialiseBook(resolveMerge(book, found, choices)) });
};

const section = (head: string, lines: readonly string[]): readonly string[] =>
  lines.length > 0 ? ['', head, ...lines.map((l) => `  ${l}`)] : [];

const row = (name: string, text: string): string => `  ${name.padEnd(12)} ${text}`;

const kindLines = (kind: Kind, full: boolean): readonly string[] => {
  const head = `${kind.name} (${kind.slug})`;
  if (!full) return [head];
  if (kind.family !== 'fixture')
    return [
      head,
      ...kindFacts(kind, 'metric')
        .filter((f) => f.value !== '–' && f.name !== 'Figures from')
        .map((f) => row(f.name.toLowerCase(), `${f.value}${/assumed/.test(f.basis) ? ' (assumed)' : ''}`)),
    ];
  const { widthMm, lengthMm, heightMm } = kind.sizeMm;
  const mark = (field: string): string => (kind.basis[field]?.startsWith('assumed') ? ' (assumed)' : '');
  return [
    head,
    ...(kind.also.length > 0 ? [row('own words', kind.also.join(' · '))] : []),
    row('power', powerText(kind)),
    row('mass', `${kind.massKg} kg${mark('massKg')}`),
    row(
      'size',
      `${widthMm} mm across, ${lengthMm} mm along${heightMm === undefined ? '' : `, ${heightMm} mm high`}${mark('sizeMm')}`,
    ),
    row('inlet', `${kind.inlets.map((i) => i.connector).join(', ') || 'none'}${mark('inlets')}`),
    ...kind.modes.map((m) => row('mode', `${m.name}: ${modeText(m)}`)),
  ];
};

const powerText = ({ load, basis }: FixtureKind): string => {
  if (!load) return 'none of its own';
  if (load.unknown === true) return 'watts not known: enter them from the rating plate';
  const from = basis['load.wattsW'];
  return `${formatWatts(load.wattsW)}, power factor ${load.powerFactor}, ${load.voltsMinV} to ${load.voltsMaxV} V${from ? `; ${from}` : ''}`;
};

const modeText = (m: FixtureKind['modes'][number]): string => {
  const breaks = (Array.isArray(m.breaks) ? m.breaks : []) as readonly { number: number; slots: number }[];
  const slots =
    breaks.length > 1
      ? breaks.map((b) => `break ${b.number} ${b.slots} slots`).join(', ')
      : `${m.slots} ${m.slots === 1 ? 'slot' : 'slots'}`;
  return m.parts > 1 ? `${slots}, ${m.parts} parts` : slots;
};

const mergeLines = (m: BookMerge, into: ImportInto): readonly string[] => {
  const name = into.bookName ?? 'the book';
  const lines = [
    '',
    `${name}: ${m.added.length} new, ${m.same.length} the same, ${m.conflicts.length} in conflict.`,
  ];
  for (const c of m.conflicts)
    lines.push(`  ${c.slug}`, ...c.differences.slice(0, 12).map((d) => `    ${d}`));
  if (m.conflicts.length > 0 && into.conflicts === undefined)
    lines.push('', `Nothing was written. Say --conflicts mine, theirs or both.`);
  return lines;
};
