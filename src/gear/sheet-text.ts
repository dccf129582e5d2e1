import { type CsvTable, readCsv, writeCsv } from '../kernel/csv.ts';
import type { Result } from '../kernel/result.ts';

/** A sheet above this is refused before it is read. */
export const MAX_SHEET_CHARS = 8 * 1024 * 1024;
const LIMITS = { maxChars: MAX_SHEET_CHARS, maxRows: 20_000, maxColumns: 200 };

export type Sheet = CsvTable;

/** Cells of a list of gear saved as CSV. */
export const readSheet = (text: string, name: string): Result<Sheet> => readCsv(text, name, LIMITS);

export const writeSheet = writeCsv;
