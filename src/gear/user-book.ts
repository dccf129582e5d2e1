import { canonicalJson } from '../kernel/canonical.ts';
import { compareIds } from '../kernel/ids.ts';
import { fail, ok, type Result } from '../kernel/result.ts';
import { type Kind, kindSchema } from '../plan/kinds/kinds.ts';
import type { SetAside } from '../plan/plan.ts';
import { kindRecord } from './book.ts';
import { kindFaults } from './kind-faults.ts';

export const BOOK_FORMAT = 'lampwright-gear';
/** Raised with every change that older programs could not read. */
export const BOOK_FORMAT_VERSION = 1;
/** Files above this are refused before they are decoded. */
export const MAX_BOOK_BYTES = 32 * 1024 * 1024;
const MAX_NESTING = 40;

/** A user's own kinds, kept apart from the built-in book. One kind for each slug, in the order of slugs. */
export interface UserBook {
  readonly kinds: readonly Kind[];
  /** What a file held that could not be read as a kind; written back as it was. */
  readonly setAside: readonly SetAside[];
  /** Top-level keys this program does not know; written back as they were. */
  readonly extra: Readonly<Record<string, unknown>>;
}

export const emptyBook: UserBook = { kinds: [], setAside: [], extra: {} };

/** A book of these kinds. Of two with one slug the later stays. */
export const bookOfKinds = (kinds: readonly Kind[], base: UserBook = emptyBook): UserBook => {
  const bySlug = new Map(kinds.map((k) => [k.slug, k]));
  return { ...base, kinds: [...bySlug.values()].sort((a, b) => compareIds(a.slug, b.slug)) };
};

export interface ReadBook {
  readonly book: UserBook;
  /** What was set aside, in words. */
  readonly notices: readonly string[];
  /** A file of a newer version is shown but never written back. */
  readonly newer: boolean;
}

/**
 * Reads the text of a user book. A kind that cannot be read, has figures that cannot be, or has the slug of another
 * is set aside with a reason; a text that is no book at all gives a problem. Ids are worked out anew from the content.
 */
export const readBook = (text: string, name = 'the file'): Result<ReadBook> => {
  if (text.length > MAX_BOOK_BYTES)
    return fail({
      what: `${name} is too large for a gear book (the limit is ${Math.round(MAX_BOOK_BYTES / 1e6)} MB).`,
      todo: 'Choose a book saved by this program.',
    });
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch (cause) {
    return fail({
      what: `${name} is not readable as JSON: ${cause instanceof Error ? (cause.message.split('\n')[0] ?? '').slice(0, 160) : 'unknown error'}.`,
      todo: 'The file may be cut off or changed by hand. Open the last good copy.',
    });
  }
  if (!isObject(data) || data.format !== BOOK_FORMAT)
    return fail({
      what: `${name} is not a gear book: it lacks "format": "${BOOK_FORMAT}".`,
      where: 'the top of the file',
      todo: 'Choose a book saved by this program.',
    });
  const { format: _f, version, kinds: list, ...extra } = data;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1 || !Array.isArray(list))
    return fail({
      what: `${name} has no valid version number or no list of kinds.`,
      where: '"version" and "kinds" at the top of the file',
      todo: 'Open the last good copy.',
    });
  if (unsafe(extra))
    return fail({
      what: `${name} holds a key that is never part of a book, or is nested too deeply.`,
      where: 'the top of the file',
      todo: 'Remove it with a text editor if you trust the rest of the file.',
    });
  const kinds: Kind[] = [];
  const setAside: SetAside[] = [];
  const slugs = new Set<string>();
  list.forEach((value: unknown, i) => {
    const key = isObject(value) && typeof value.slug === 'string' ? value.slug : `kind ${i + 1}`;
    const read = readKind(value);
    const reason = !read.ok
      ? read.error
      : slugs.has(read.value.slug)
        ? 'another kind has the same slug'
        : undefined;
    if (!read.ok || reason !== undefined) setAside.push({ key, value, reason: reason ?? '' });
    else {
      slugs.add(read.value.slug);
      kinds.push(read.value);
    }
  });
  const newer = version > BOOK_FORMAT_VERSION;
  const notices = setAside.map(
    (s) => `${s.key} could not be read and was set aside, unchanged: ${s.reason}.`,
  );
  if (newer) notices.unshift('This book was saved by a newer version of the program. It is shown read-only.');
  return ok({ book: { ...bookOfKinds(kinds), setAside, extra }, notices, newer });
};

const readKind = (value: unknown): Result<Kind, string> => {
  if (!isObject(value)) return fail('it is not a kind');
  if (unsafe(value)) return fail('it holds a key that is never part of a kind, or is nested too deeply');
  const parsed = kindSchema.safeParse({ id: 'unhashed', type: 'kind', ...value });
  if (!parsed.success) {
    const first = parsed.error.issues[0];
    return fail(
      first ? `${first.path.map(String).join('.') || 'kind'}: ${first.message}` : 'it does not fit a kind',
    );
  }
  const faults = kindFaults(parsed.data);
  return faults.length > 0 ? fail(faults.join('; ')) : ok(kindRecord(parsed.data));
};

/** The text of a book: UTF-8 JSON, one kind per line by slug, keys sorted. The same book always gives the same bytes. */
export const serialiseBook = (book: UserBook): string => {
  const lines = [
    ...bookOfKinds(book.kinds).kinds.map(canonicalJson),
    ...book.setAside.map((s) => JSON.stringify(s.value)),
  ];
  const extra = Object.keys(book.extra)
    .sort()
    .map((k) => `,\n${JSON.stringify(k)}: ${JSON.stringify(book.extra[k])}`)
    .join('');
  return `{"format": "${BOOK_FORMAT}", "version": ${BOOK_FORMAT_VERSION}, "kinds": [\n${lines.join(',\n')}\n]${extra}}\n`;
};

const isObject = (v: unknown): v is Record<string, unknown> =>
  typeof v === 'object' && v !== null && !Array.isArray(v);

const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

const unsafe = (value: unknown, depth = 0): boolean =>
  typeof value === 'object' &&
  value !== null &&
  (depth > MAX_NESTING || Object.entries(value).some(([k, v]) => FORBIDDEN.has(k) || unsafe(v, depth + 1)));
