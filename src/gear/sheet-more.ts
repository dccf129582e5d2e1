import type { Problem } from '../kernel/result.ts';
import { type Kind, kindSchema } from '../plan/kinds/kinds.ts';
import { kindRecord } from './book.ts';
import { kindFaults } from './kind-faults.ts';
import { SHEET_FAMILIES } from './sheet-families.ts';
import type { SheetFamily, SheetField } from './sheet-fields.ts';
import { EMPTY, OWN, slugOf } from './sheet-kind.ts';
import type { Sheet } from './sheet-text.ts';
import { cellNumber, headingKey } from './sheet-values.ts';

/** Columns every row may have, whatever its family. */
const SHARED = new Set(['name', 'slug', 'also', 'notes', 'family']);

const FAMILY_NAMES: Readonly<Record<string, string>> = {
  light: 'fixture',
  lights: 'fixture',
  fixture: 'fixture',
  fixtures: 'fixture',
  stands: 'stand',
  frame: 'grip',
  frames: 'grip',
  packs: 'pack',
  cables: 'cable',
};

/** Family of a row by its word, a light where the cell is empty; undefined where the word is not known. */
export const rowFamily = (cell: string): string | undefined => {
  const t = cell.trim().toLowerCase();
  if (t === '') return 'fixture';
  if (Object.hasOwn(FAMILY_NAMES, t)) return FAMILY_NAMES[t];
  return Object.hasOwn(SHEET_FAMILIES, t) ? t : undefined;
};

const fieldOf = (family: SheetFamily, key: string): SheetField | undefined =>
  family.fields.find((f) => f.heading === key || (f.number?.other && Object.hasOwn(f.number.other, key)));

/** Fields of a list's columns by family, found once for all its rows. */
const layouts = new WeakMap<readonly string[], Map<string, readonly (SheetField | undefined)[]>>();

const fieldsAt = (
  familyId: string,
  family: SheetFamily,
  headings: readonly string[],
): readonly (SheetField | undefined)[] => {
  const known = layouts.get(headings) ?? new Map<string, readonly (SheetField | undefined)[]>();
  layouts.set(headings, known);
  const at = known.get(familyId) ?? headings.map((h) => fieldOf(family, headingKey(h)));
  known.set(familyId, at);
  return at;
};

/** What a heading of some family besides lights stands for; undefined where none has it. */
export const moreColumn = (heading: string): string | undefined => {
  const key = headingKey(heading);
  if (key === 'family') return 'family';
  return Object.values(SHEET_FAMILIES).flatMap((f) => fieldOf(f, key)?.field ?? [])[0];
};

/** Headings of a row's filled cells that say nothing of its family. */
export const strayHeadings = (
  familyId: string,
  headings: readonly string[],
  cells: readonly string[],
): readonly string[] => {
  const family = SHEET_FAMILIES[familyId];
  if (!family) return [];
  const at = fieldsAt(familyId, family, headings);
  return headings.filter((h, i) => !at[i] && (cells[i]?.trim() ?? '') !== '' && !SHARED.has(headingKey(h)));
};

export interface MoreRow {
  readonly line: number;
  readonly kind?: Kind;
  readonly problems: readonly Problem[];
}

/** A row of another family than lights. What it does not say and may be left empty is assumed, and marked so. */
export const readMoreRow = (
  familyId: string,
  row: Sheet['rows'][number],
  headings: readonly string[],
  separator: Sheet['separator'],
): MoreRow => {
  const family = SHEET_FAMILIES[familyId];
  if (!family) throw new Error(`no family “${familyId}” in lists`);
  const problems: Problem[] = [];
  const keys = headings.map(headingKey);
  const at = fieldsAt(familyId, family, headings);
  const textOf = (key: string): string => row.cells[keys.indexOf(key)]?.trim() ?? '';
  const given: Record<string, unknown> = {};
  const basis: Record<string, string> = { all: OWN };
  const wrong = (heading: string, what: string, todo: string): void => {
    problems.push({ what, where: `line ${row.line}, column “${heading}”`, todo });
  };
  const name = textOf('name');
  if (name === '') wrong('name', 'The row has no name.', 'Give it one that describes the unit.');
  for (const f of family.fields) {
    const i = at.findIndex((column, c) => column === f && (row.cells[c]?.trim() ?? '') !== '');
    const text = row.cells[i]?.trim() ?? '';
    if (text === '') {
      if (f.need)
        wrong(f.heading, `${capital(family.words)} needs “${f.heading}”; the cell is empty.`, f.todo);
      continue;
    }
    const value = cellValue(f, text, keys[i] ?? '', separator);
    if (typeof value === 'string' && f.number) wrong(headings[i]?.trim() ?? f.heading, value, f.todo);
    else if (value === undefined)
      wrong(headings[i]?.trim() ?? f.heading, `“${text.slice(0, 60)}” cannot be read.`, f.todo);
    else given[f.field] = value;
  }
  if (problems.length > 0) return { line: row.line, problems };
  for (const f of family.fields) {
    if (given[f.field] !== undefined || !f.assumed) continue;
    const assumed = f.assumed(given);
    if (assumed === undefined) continue;
    given[f.field] = assumed;
    basis[f.field] = EMPTY;
  }
  const made = kindOf(familyId, family, given, {
    name,
    slug: textOf('slug'),
    also: textOf('also'),
    notes: textOf('notes'),
    basis,
  });
  const faults = made.ok ? [...(family.faults?.(given) ?? []), ...kindFaults(made.kind)] : made.faults;
  if (made.ok && faults.length === 0) return { line: row.line, kind: made.kind, problems };
  return {
    line: row.line,
    problems: faults.map((f) => ({
      what: `“${name}”: ${f}.`,
      where: `line ${row.line}`,
      todo: 'Correct the row.',
    })),
  };
};

const capital = (s: string): string => `${s.charAt(0).toUpperCase()}${s.slice(1)}`;

/** The value of a cell; a text instead of a number says what is wrong with it. */
const cellValue = (f: SheetField, text: string, key: string, separator: Sheet['separator']): unknown => {
  if (!f.number) return f.read?.(text);
  const factor = f.number.other?.[key];
  const ownUnit = factor === undefined || factor === 1;
  const unit = ownUnit ? f.number.unit : (key.split(' ').at(-1) ?? '');
  const n = cellNumber(text, { field: f.field, unit, ...(ownUnit ? {} : { factor }) }, separator);
  if (n === undefined) return `“${text.slice(0, 40)}” is no number.`;
  if (n < 0) return `${n} is below zero.`;
  return f.number.whole && !Number.isInteger(n) ? `${n} is no whole number.` : n;
};

interface Texts {
  readonly name: string;
  readonly slug: string;
  readonly also: string;
  readonly notes: string;
  readonly basis: Readonly<Record<string, string>>;
}

const kindOf = (
  familyId: string,
  family: SheetFamily,
  given: Readonly<Record<string, unknown>>,
  t: Texts,
):
  | { readonly ok: true; readonly kind: Kind }
  | { readonly ok: false; readonly faults: readonly string[] } => {
  const { lengthMm, widthMm, heightMm, ...rest } = given;
  const { sizeMm, ...finished } = family.finish(given);
  const size = {
    lengthMm,
    widthMm,
    ...(sizeMm as object | undefined),
    ...(heightMm === undefined ? {} : { heightMm }),
  };
  const parsed = kindSchema.safeParse({
    id: 'unhashed',
    type: 'kind',
    family: familyId,
    slug: t.slug || slugOf(t.name),
    name: t.name,
    also: t.also
      .split(';')
      .map((w) => w.trim())
      .filter(Boolean),
    sizeMm: size,
    ...rest,
    ...finished,
    ...(t.notes ? { notes: t.notes } : {}),
    basis: t.basis,
    origin: { book: 'user', version: '1' },
  });
  return parsed.success
    ? { ok: true, kind: kindRecord(parsed.data) }
    : { ok: false, faults: parsed.error.issues.slice(0, 3).map((i) => `${i.path.join(' ')}: ${i.message}`) };
};

/** Cells of a kind of another family than lights, by heading; what was assumed stays empty. */
export const moreCells = (kind: Kind): Readonly<Record<string, string | number>> => {
  const family = SHEET_FAMILIES[kind.family];
  const at = { ...kind, ...kind.sizeMm } as Readonly<Record<string, unknown>>;
  const cells: Record<string, string | number> = { family: kind.family };
  for (const f of family?.fields ?? []) {
    const v = at[f.field];
    if (v === undefined || kind.basis[f.field] === EMPTY) continue;
    cells[f.heading] = f.write ? f.write(v) : typeof v === 'number' ? v : String(v);
  }
  return cells;
};

/** Headings of a family's columns, for a list that is written. */
export const moreHeadings = (familyId: string): readonly string[] =>
  SHEET_FAMILIES[familyId]?.fields.map((f) => f.heading) ?? [];

/** The columns of each family besides lights, for people: heading, what it says, and whether a row needs it. */
export const sheetColumns = (): readonly {
  readonly family: string;
  readonly columns: readonly { readonly heading: string; readonly words: string; readonly need: boolean }[];
}[] =>
  Object.entries(SHEET_FAMILIES).map(([family, f]) => ({
    family,
    columns: f.fields.map((c) => ({ heading: c.heading, words: c.words, need: c.need === true })),
  }));
