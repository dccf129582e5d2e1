import { utf8Bytes } from '../kernel/canonical.ts';
import type { ListTable } from '../papers/lists.ts';

/** Texts that a spreadsheet would take for a formula. */
const FORMULA = /^[=+\-@\t\r]/;

const cellText = (v: string | number): string => {
  if (typeof v === 'number') return Number.isFinite(v) ? String(v) : '';
  const safe = FORMULA.test(v) ? `'${v}` : v;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
};

/**
 * A list as CSV after RFC 4180: commas, CRLF, quotes doubled. A text that begins with = + - @, tab or return gets an
 * apostrophe in front, so that no program takes it for a formula; numbers are left alone.
 */
export const listToCsv = (list: ListTable): string =>
  [list.head, ...list.rows].map((row) => `${row.map(cellText).join(',')}\r\n`).join('');

/** The CSV text as UTF-8 bytes with a byte-order mark, so that spreadsheets read × and ² right. */
export const csvBytes = (list: ListTable): Uint8Array => utf8Bytes(`\uFEFF${listToCsv(list)}`);
