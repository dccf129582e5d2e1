import { fail, ok, type Result } from './result.ts';

/** How much of a list is taken. */
export interface CsvLimits {
  readonly maxChars: number;
  readonly maxRows: number;
  readonly maxColumns: number;
}

export interface CsvTable {
  /** Cells by row, the header first. Empty rows are left out. */
  readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[];
  /** With semicolons between cells the decimal comma is usual. */
  readonly separator: ',' | ';' | '\t';
}

/**
 * Cells of a CSV text after RFC 4180: quotes, doubled quotes, line breaks inside quotes, CRLF or LF. Semicolons or tabs
 * between cells, as spreadsheets of many countries write them, are told from the first line. An apostrophe that
 * only keeps a text from being taken for a formula is taken off.
 */
export const readCsv = (text: string, name: string, limits: CsvLimits): Result<CsvTable> => {
  if (text.length > limits.maxChars)
    return fail({ what: `${name} is too large for a list.`, todo: 'Split it into several files.' });
  const body = text.replace(/^\ufeff/, '');
  const separator = separatorOf(body);
  const rows: { line: number; cells: string[] }[] = [];
  let cells: string[] = [];
  let line = 1;
  let begun = 1;
  let at = 0;
  const endRow = (): void => {
    if (cells.some((c) => c.trim() !== '')) rows.push({ line: begun, cells });
    cells = [];
  };
  while (at < body.length) {
    if (rows.length > limits.maxRows || cells.length > limits.maxColumns)
      return fail({
        what: `${name} has more than ${limits.maxRows} rows or ${limits.maxColumns} columns.`,
        where: `line ${line}`,
        todo: 'Split it into several files.',
      });
    if (cells.length === 0) begun = line;
    let cell: string;
    if (body[at] === '"') {
      const quoted = quotedCell(body, at);
      if (quoted === undefined)
        return fail({
          what: `${name} has a quote that is never closed.`,
          where: `line ${line}`,
          todo: 'Close it, or save the list as CSV again.',
        });
      line += quoted.cell.split('\n').length - 1;
      cell = quoted.cell;
      at = quoted.end;
      // Text after a closing quote is kept as it is, as most readers do.
      const rest = plainCell(body, at, separator);
      cell += body.slice(at, rest);
      at = rest;
    } else {
      const end = plainCell(body, at, separator);
      cell = body.slice(at, end);
      at = end;
    }
    cells.push(cell.replace(/^'(?='*[=+\-@\t\r])/, ''));
    if (body[at] === separator) {
      at++;
      if (at === body.length) cells.push('');
      continue;
    }
    if (body[at] === '\r' && body[at + 1] === '\n') at++;
    if (at < body.length) at++;
    line++;
    endRow();
  }
  endRow();
  return ok({ rows, separator });
};

const separatorOf = (text: string): CsvTable['separator'] => {
  const first = (/^[^\r\n]*/.exec(text)?.[0] ?? '').replace(/"[^"]*"/g, '');
  const count = (c: string): number => first.split(c).length;
  const by = ([',', ';', '\t'] as const).map((c) => [c, count(c)] as const);
  return by.reduce((a, b) => (b[1] > a[1] ? b : a))[0];
};

const plainCell = (text: string, from: number, separator: string): number => {
  let at = from;
  while (at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r') at++;
  return at;
};

const quotedCell = (
  text: string,
  from: number,
): { readonly cell: string; readonly end: number } | undefined => {
  const parts: string[] = [];
  let at = from + 1;
  for (;;) {
    const close = text.indexOf('"', at);
    if (close < 0) return undefined;
    parts.push(text.slice(at, close));
    if (text[close + 1] !== '"') return { cell: parts.join('"'), end: close + 1 };
    at = close + 2;
  }
};

/** CSV after RFC 4180: commas, CRLF, quotes doubled. Texts a spreadsheet would take for a formula get an apostrophe. */
export const writeCsv = (rows: readonly (readonly (string | number | undefined)[])[]): string =>
  rows.map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

const cellText = (v: string | number | undefined): string => {
  if (v === undefined) return '';
  if (typeof v === 'number') return String(v);
  const safe = /^'*[=+\-@\t\r]/.test(v) ? `'${v}` : v;
  return /[",\r\n]/.test(safe) || safe !== safe.trim() ? `"${safe.replaceAll('"', '""')}"` : safe;
};
