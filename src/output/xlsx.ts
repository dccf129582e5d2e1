import { strToU8, zipSync } from 'fflate';
import type { ListTable } from '../papers/lists.ts';

/*
 * A workbook after ECMA-376 (Office Open XML), transitional, with no more than lists need: strings in place, numbers,
 * column widths, a bold first row that stays in view. Our own since it is one page of text, its bytes must be the same
 * every time, and the zip it stands in is in the program anyway.
 */

const XML = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main';
const REL = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006';
/** Characters of one cell at most (ECMA-376, part 1, 18.3.1.4 and the limits of readers). */
const MAX_CELL = 32_767;
/** Names of sheets: at most 31 characters, none of these. */
const MAX_NAME = 31;
const NOT_IN_NAMES = /[\\/?*[\]:]/g;

/** Characters XML 1.0 cannot hold (its production 2) are left out: controls, halves of pairs, and two that are no characters. */
const inXml = (s: string): string =>
  [...s]
    .filter((c) => {
      const n = c.codePointAt(0) ?? 0;
      return n >= 0x20
        ? (n < 0xd800 || n > 0xdfff) && n !== 0xfffe && n !== 0xffff
        : n === 9 || n === 10 || n === 13;
    })
    .join('');

const text = (s: string): string =>
  inXml(s.slice(0, MAX_CELL)).replace(
    /[&<>"]/g,
    (c) => ({ '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' })[c] ?? c,
  );

/** Letters of a column: 0 is A, 26 is AA. */
export const columnName = (index: number): string => {
  let n = index + 1;
  let out = '';
  while (n > 0) {
    out = String.fromCharCode(65 + ((n - 1) % 26)) + out;
    n = Math.floor((n - 1) / 26);
  }
  return out;
};

/** A text is written as an in-place string, never as a formula, whatever it begins with. */
const cell = (v: string | number, column: number, row: number, style: number): string => {
  const at = `${columnName(column)}${row}`;
  if (typeof v === 'number') return Number.isFinite(v) ? `<c r="${at}"><v>${v}</v></c>` : '';
  if (v === '') return '';
  const s = style === 0 ? '' : ` s="${style}"`;
  return `<c r="${at}"${s} t="inlineStr"><is><t xml:space="preserve">${text(v)}</t></is></c>`;
};

const rowXml = (values: readonly (string | number)[], row: number, style: number): string =>
  `<row r="${row}">${values.map((v, i) => cell(v, i, row, style)).join('')}</row>`;

const widthOf = (list: ListTable, column: number): number => {
  const longest = [list.head, ...list.rows].reduce((n, r) => Math.max(n, String(r[column] ?? '').length), 0);
  return Math.min(60, Math.max(6, longest + 2));
};

const sheetXml = (list: ListTable): string => {
  const columns = list.head.map(
    (_, i) => `<col min="${i + 1}" max="${i + 1}" width="${widthOf(list, i)}" customWidth="1"/>`,
  );
  const rows = [rowXml(list.head, 1, 1), ...list.rows.map((r, i) => rowXml(r, i + 2, 0))];
  const last = `${columnName(Math.max(0, list.head.length - 1))}${list.rows.length + 1}`;
  return (
    `${XML}<worksheet xmlns="${MAIN}"><dimension ref="A1:${last}"/>` +
    '<sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews>' +
    `<cols>${columns.join('')}</cols><sheetData>${rows.join('')}</sheetData></worksheet>`
  );
};

const STYLES =
  `${XML}<styleSheet xmlns="${MAIN}"><fonts count="2"><font><sz val="10"/><name val="Calibri"/></font><font><b/><sz val="10"/><name val="Calibri"/></font></fonts>` +
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
  '<borders count="1"><border/></borders><cellStyleXfs count="1"><xf/></cellStyleXfs>' +
  '<cellXfs count="2"><xf/><xf fontId="1" applyFont="1"/></cellXfs>' +
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>';

/** Names of the sheets: fit for a workbook and each once. */
const namesOf = (lists: readonly ListTable[]): readonly string[] => {
  const used = new Set<string>();
  return lists.map((l) => {
    const base = l.name.replace(NOT_IN_NAMES, ' ').trim().slice(0, MAX_NAME) || 'list';
    let name = base;
    for (let i = 2; used.has(name.toLowerCase()); i++) name = `${base.slice(0, MAX_NAME - 4)} ${i}`;
    used.add(name.toLowerCase());
    return name;
  });
};

/** Lists as one spreadsheet workbook, a sheet each. The same lists give the same bytes. */
export const listsToXlsx = (lists: readonly ListTable[]): Uint8Array => {
  const names = namesOf(lists);
  const files: Record<string, string> = {
    '[Content_Types].xml':
      `${XML}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
      '<Default Extension="xml" ContentType="application/xml"/>' +
      '<Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>' +
      '<Override PartName="/xl/styles.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml"/>' +
      lists
        .map(
          (_, i) =>
            `<Override PartName="/xl/worksheets/sheet${i + 1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>`,
        )
        .join('') +
      '</Types>',
    '_rels/.rels': `${XML}<Relationships xmlns="${PACKAGE}/relationships"><Relationship Id="rId1" Type="${REL}/officeDocument" Target="xl/workbook.xml"/></Relationships>`,
    'xl/workbook.xml':
      `${XML}<workbook xmlns="${MAIN}" xmlns:r="${REL}"><sheets>` +
      names.map((n, i) => `<sheet name="${text(n)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`).join('') +
      '</sheets></workbook>',
    'xl/_rels/workbook.xml.rels':
      `${XML}<Relationships xmlns="${PACKAGE}/relationships">` +
      lists
        .map(
          (_, i) =>
            `<Relationship Id="rId${i + 1}" Type="${REL}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
        )
        .join('') +
      `<Relationship Id="rId${lists.length + 1}" Type="${REL}/styles" Target="styles.xml"/></Relationships>`,
    'xl/styles.xml': STYLES,
  };
  lists.forEach((l, i) => {
    files[`xl/worksheets/sheet${i + 1}.xml`] = sheetXml(l);
  });
  // Zip keeps times of its own; a fixed one, so that two runs give the same bytes.
  const mtime = new Date(2000, 0, 1, 12);
  return zipSync(
    Object.fromEntries(Object.entries(files).map(([path, body]) => [path, [strToU8(body), { mtime }]])),
    { level: 6 },
  );
};
