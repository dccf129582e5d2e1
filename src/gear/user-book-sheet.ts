import { fail, ok, type Problem, type Result } from '../kernel/result.ts';
import type { FixtureKind, Kind } from '../plan/kinds/kinds.ts';
import { kindFaults } from './kind-faults.ts';
import { EMPTY, kindOfRow, sourceOf } from './sheet-kind.ts';
import { moreCells, moreColumn, moreHeadings, readMoreRow, rowFamily, strayHeadings } from './sheet-more.ts';
import { readSheet, type Sheet, writeSheet } from './sheet-text.ts';
import {
  COLUMNS,
  type Column,
  cellNumber,
  cellOfModes,
  columnOf,
  connectorIdOf,
  modesOfCell,
  mountsOfCell,
} from './sheet-values.ts';

/** Lines with cells of another family that are told one by one. */
const MOST_STRAYS = 20;

/** One row of a list: the kind it gives, or why it gives none. */
export interface SheetRow {
  /** Line of the file the row begins on. */
  readonly line: number;
  readonly kind?: Kind;
  readonly problems: readonly Problem[];
}

/** A list of kinds as read, to be looked at: nothing is in any book yet. */
export interface SheetImport {
  readonly rows: readonly SheetRow[];
  readonly kinds: readonly Kind[];
  /** Columns that were not understood, and the like. */
  readonly notices: readonly string[];
}

/**
 * Reads a spreadsheet saved as CSV (RFC 4180; semicolons or tabs too) into kinds. The first row names the columns, in any
 * order and case. A column `family` says what a row is: light (when empty), stand, grip, rigging, pack or cable; the
 * columns of those besides lights are in sheet-families.ts. Of a light:
 *
 * - `name` (needed), `slug` (made from the name when empty), `also` (other names, between semicolons), `notes`
 * - `source`: led (when empty), tungsten, discharge, fluorescent
 * - `watts` (input watts at full level; empty = not known), `power factor`, `volts min`, `volts max`
 * - `connector`: id or name of a row of shared/connectors.json
 * - `mass kg` (or `mass lb`), `length mm` along the throw, `width mm` across, `height mm` (or `… in`)
 * - `mount`: pin-16, spigot-28, clamp, clip, socket, hung, floor, held, between semicolons
 * - `beam deg`, `field deg`
 * - `modes`: `8-bit:4;16-bit:8`, with independent parts behind a stroke: `pixels:36/12`
 *
 * An empty cell is assumed and marked so. A row with a mistake gives no kind but says what is wrong in which column.
 */
export const readKindSheet = (text: string, name = 'the list'): Result<SheetImport> => {
  const read = readSheet(text, name);
  if (!read.ok) return read;
  const { rows, separator } = read.value;
  const [head, ...body] = rows;
  const columns = (head?.cells ?? []).map(columnOf);
  const meant = (head?.cells ?? []).map((h, i) => columns[i]?.field ?? moreColumn(h));
  const fields = meant.flatMap((f) => f ?? []);
  if (!head || !fields.includes('name'))
    return fail({
      what: `${name} has no column “name”.`,
      where: 'its first row',
      todo: `Name the columns in the first row: ${Object.keys(COLUMNS).join(', ')}.`,
    });
  const twice = fields.find((f, i) => fields.indexOf(f) !== i);
  if (twice !== undefined)
    return fail({
      what: `${name} has two columns for the same thing (${twice}).`,
      where: 'its first row',
      todo: 'Remove one of them.',
    });
  const unknown = head.cells
    .filter((h, i) => h.trim() !== '' && meant[i] === undefined)
    .map((h) => `“${h.trim().slice(0, 40)}”`);
  const notices = unknown.length > 0 ? [`Columns not understood and left out: ${unknown.join(', ')}.`] : [];
  const lines = new Map<string, number>();
  const familyAt = meant.indexOf('family');
  const foreign = head.cells.map((_, i) => !columns[i] && meant[i] !== undefined && i !== familyAt);
  const known = new Set(head.cells.filter((_, i) => meant[i] !== undefined));
  let strays = 0;
  const found = body.map((row): SheetRow => {
    const family = rowFamily(familyAt < 0 ? '' : (row.cells[familyAt] ?? ''));
    if (family === undefined) return { line: row.line, problems: [noFamily(row, head.cells, familyAt)] };
    const stray =
      family === 'fixture'
        ? head.cells.filter((_, i) => foreign[i] === true && (row.cells[i]?.trim() ?? '') !== '')
        : strayHeadings(family, head.cells, row.cells).filter((h) => known.has(h));
    if (stray.length > 0 && ++strays <= MOST_STRAYS)
      notices.push(
        `Line ${row.line}: ${stray.map((h) => `“${h.trim()}”`).join(', ')} says nothing of its family and was left out.`,
      );
    const one =
      family === 'fixture'
        ? readRow(row, head.cells, columns, separator)
        : readMoreRow(family, row, head.cells, separator);
    const before = one.kind && lines.get(one.kind.slug);
    if (one.kind && before !== undefined)
      return {
        line: row.line,
        problems: [
          {
            what: `“${one.kind.name}” has the same slug as line ${before} (${one.kind.slug}).`,
            where: `line ${row.line}`,
            todo: 'Give it another name or slug.',
          },
        ],
      };
    if (one.kind) lines.set(one.kind.slug, row.line);
    return one;
  });
  if (strays > MOST_STRAYS)
    notices.push(`${strays - MOST_STRAYS} more lines have cells that say nothing of their family.`);
  return ok({ rows: found, kinds: found.flatMap((r) => r.kind ?? []), notices });
};

const noFamily = (row: Sheet['rows'][number], headings: readonly string[], at: number): Problem => ({
  what: `“${(row.cells[at] ?? '').trim().slice(0, 40)}” is no family of gear that a list may hold.`,
  where: `line ${row.line}, column “${headings[at]?.trim() ?? 'family'}”`,
  todo: 'Use light, stand, grip, rigging, pack or cable.',
});

const readRow = (
  row: Sheet['rows'][number],
  headings: readonly string[],
  columns: readonly (Column | undefined)[],
  separator: Sheet['separator'],
): SheetRow => {
  const problems: Problem[] = [];
  const cells = new Map<string, { readonly text: string; readonly column: Column }>();
  columns.forEach((column, i) => {
    const text = row.cells[i]?.trim() ?? '';
    if (column && text !== '') cells.set(column.field, { text, column });
  });
  const wrong = (field: string, what: string, todo: string): undefined => {
    const heading = headings[columns.findIndex((c) => c?.field === field)]?.trim() ?? field;
    problems.push({ what, where: `line ${row.line}, column “${heading}”`, todo });
    return undefined;
  };
  const read = <T>(field: string, by: (text: string) => T | undefined, todo: string): T | undefined => {
    const cell = cells.get(field);
    if (!cell) return undefined;
    return by(cell.text) ?? wrong(field, `“${cell.text.slice(0, 60)}” cannot be read.`, todo);
  };
  const number = (field: string): number | undefined => {
    const cell = cells.get(field);
    if (!cell) return undefined;
    const n = cellNumber(cell.text, cell.column, separator);
    if (n === undefined)
      return wrong(field, `“${cell.text.slice(0, 40)}” is no number.`, 'Write a number like 12.5.');
    return n < 0 ? wrong(field, `${n} is below zero.`, 'Write a number from 0 up.') : n;
  };
  const name = cells.get('name')?.text ?? '';
  if (name === '') wrong('name', 'The row has no name.', 'Give it one that describes the unit.');
  const source =
    read('source', (t) => sourceOf(t), 'Use led, tungsten, discharge or fluorescent.') ?? ('led' as const);
  const connectorId = read('connector', connectorIdOf, 'Use an id of shared/connectors.json, like iec-16-1.');
  const mount = read(
    'mount',
    mountsOfCell,
    'Use pin-16, spigot-28, clamp, clip, socket, hung, floor or held.',
  );
  const modes = read('modes', modesOfCell, 'Write name:slots, several between semicolons: 8-bit:4;16-bit:8.');
  const given = {
    wattsW: number('wattsW'),
    powerFactor: number('powerFactor'),
    voltsMinV: number('voltsMinV'),
    voltsMaxV: number('voltsMaxV'),
    massKg: number('massKg'),
    lengthMm: number('lengthMm'),
    widthMm: number('widthMm'),
    heightMm: number('heightMm'),
    beamDeg: number('beamDeg'),
    fieldDeg: number('fieldDeg'),
  };
  if (problems.length > 0) return { line: row.line, problems };
  const text = (field: string): string | undefined => cells.get(field)?.text;
  const kind = kindOfRow({ name, source, connectorId, mount, modes, given, text });
  const faults = kindFaults(kind);
  if (faults.length === 0) return { line: row.line, kind, problems };
  return {
    line: row.line,
    problems: faults.map((what) => ({
      what: `“${name}”: ${what}.`,
      where: `line ${row.line}`,
      todo: 'Correct the row.',
    })),
  };
};

/**
 * Kinds as a list for a spreadsheet, one row each: lights, and those of other families that a list may hold. Other kinds
 * are left out. What was assumed on reading a list stays empty, so that reading the list again gives the same kinds.
 */
export const writeKindSheet = (kinds: readonly Kind[]): string => {
  const lights = Object.keys(COLUMNS);
  const more = [...new Set(kinds.map((k) => k.family))].flatMap((f) => moreHeadings(f));
  if (more.length === 0)
    return writeSheet([lights, ...kinds.flatMap((k) => (k.family === 'fixture' ? [rowOf(k)] : []))]);
  const shared = ['name', 'slug', 'also', 'notes'] as const;
  const withLights = kinds.some((k) => k.family === 'fixture');
  const headings = [
    ...new Set(['name', 'family', 'slug', ...(withLights ? lights : []), ...more, ...shared]),
  ];
  const rows = kinds.flatMap((k): (string | number | undefined)[][] => {
    if (k.family === 'fixture') {
      const row = rowOf(k);
      return [headings.map((h) => (h === 'family' ? 'light' : row[lights.indexOf(h)]))];
    }
    if (moreHeadings(k.family).length === 0) return [];
    const cells: Readonly<Record<string, string | number | undefined>> = {
      ...moreCells(k),
      name: k.name,
      slug: k.slug,
      also: k.also.join(';') || undefined,
      notes: k.notes,
    };
    return [headings.map((h) => cells[h])];
  });
  return writeSheet([headings, ...rows]);
};

const rowOf = (k: FixtureKind): readonly (string | number | undefined)[] => {
  const values: Readonly<Record<string, string | number | undefined>> = {
    name: k.name,
    slug: k.slug,
    source: k.source,
    wattsW: k.load?.unknown === true ? undefined : k.load?.wattsW,
    powerFactor: k.load?.powerFactor,
    voltsMinV: k.load?.voltsMinV,
    voltsMaxV: k.load?.voltsMaxV,
    connector: k.inlets[0]?.connector,
    massKg: k.massKg,
    lengthMm: k.sizeMm.lengthMm,
    widthMm: k.sizeMm.widthMm,
    heightMm: k.sizeMm.heightMm,
    mount: k.mount.fits.join(';'),
    beamDeg: k.beamDeg,
    fieldDeg: k.fieldDeg,
    modes: cellOfModes(k.modes),
    also: k.also.join(';'),
    notes: k.notes,
  };
  return Object.values(COLUMNS).map((c) => (k.basis[c.field] === EMPTY ? undefined : values[c.field]));
};
