import { unzipSync } from 'fflate';
import readXlsxFile from 'read-excel-file/node';
import { describe, expect, it } from 'vitest';
import { columnName, listsToXlsx } from '../../../src/output/xlsx.ts';
import { allLists } from '../../../src/papers/all-lists.ts';
import { assess } from '../../../src/report/assess.ts';
import { samplePlan } from '../../support/sample-plan.ts';

const plan = samplePlan();
const options = { revision: 'A', date: '', programVersion: '0', setupId: 'su-1' };
const lists = allLists(plan, assess(plan, { revision: 0 }), options);
const list = (...rows: (string | number)[][]) => ({ name: 'x', head: ['a', 'b'], rows });
const sheetsOf = async (bytes: Uint8Array) => readXlsxFile(Buffer.from(bytes));
const back = async (bytes: Uint8Array, sheet: string) =>
  (await sheetsOf(bytes)).find((s) => s.sheet === sheet)?.data ?? [];
const namesOf = async (bytes: Uint8Array) => (await sheetsOf(bytes)).map((s) => s.sheet);

describe('the workbook, read back by an independent reader', () => {
  it('has a sheet for every list with all its rows, texts as texts and numbers as numbers', async () => {
    const bytes = listsToXlsx(lists);
    expect(await namesOf(bytes)).toEqual(lists.map((l) => l.name));
    for (const l of lists) {
      const rows = await back(bytes, l.name);
      expect(rows[0], l.name).toEqual(l.head);
      expect(rows.length - 1, l.name).toBe(l.rows.length);
      l.rows.forEach((row, r) => {
        row.forEach((v, c) => {
          const cell = rows[r + 1]?.[c] ?? null;
          if (typeof v === 'number') expect(cell, `${l.name} ${r}`).toBe(Number.isFinite(v) ? v : null);
          // The reader cuts spaces at the ends.
          else expect(cell, `${l.name} ${r}`).toBe(v.trim() === '' ? null : v.trim());
        });
      });
    }
  });

  it('holds a text that looks like a formula as a text', async () => {
    const bytes = listsToXlsx([list(['=1+1', 3], ['+49', 4], ['@x', 5])]);
    expect((await back(bytes, 'x')).slice(1)).toEqual([
      ['=1+1', 3],
      ['+49', 4],
      ['@x', 5],
    ]);
    const sheet = new TextDecoder().decode(unzipSync(bytes)['xl/worksheets/sheet1.xml']);
    expect(sheet).not.toContain('<f');
  });

  it('keeps every character XML can hold and leaves out the rest', async () => {
    const bytes = listsToXlsx([list(['½″ × Ω 🎬 <b> & "q"', 1], [`a${String.fromCharCode(1)}b\uD800c`, 2])]);
    const rows = await back(bytes, 'x');
    expect(rows[1]?.[0]).toBe('½″ × Ω 🎬 <b> & "q"');
    expect(rows[2]?.[0]).toBe('abc');
  });

  it('gives sheets names that a workbook allows, each once', async () => {
    const bytes = listsToXlsx([
      { ...list(), name: 'a/b:c' },
      { ...list(), name: 'a b c' },
      { ...list(), name: 'x'.repeat(60) },
    ]);
    const names = await namesOf(bytes);
    expect(new Set(names).size).toBe(3);
    for (const n of names) expect(n.length).toBeLessThanOrEqual(31);
  });

  it('is the same bytes twice', () => {
    expect(listsToXlsx(lists)).toEqual(listsToXlsx(lists));
  });

  it('counts columns past Z', () => {
    expect([0, 25, 26, 701, 702].map(columnName)).toEqual(['A', 'Z', 'AA', 'ZZ', 'AAA']);
  });
});
