import { describe, expect, it } from 'vitest';
import { csvBytes, listToCsv } from '../../../src/output/csv.ts';

const list = (...rows: (string | number)[][]) => ({ name: 'x', head: ['a', 'b'], rows });

describe('CSV', () => {
  it('separates by commas, ends lines with CRLF and doubles quotes', () => {
    expect(listToCsv(list(['one', 2], ['6" pipe, long', Number.NaN]))).toBe(
      'a,b\r\none,2\r\n"6"" pipe, long",\r\n',
    );
  });

  it('keeps line breaks of a text inside quotes', () => {
    expect(listToCsv(list(['two\nlines', 1]))).toBe('a,b\r\n"two\nlines",1\r\n');
  });

  it.each(['=1+1', '+1', '-1', '@x', '\tx', '\rx'])('puts an apostrophe before the text %j', (text) => {
    const line = listToCsv(list([text, 0])).split('\r\n')[1] ?? '';
    expect(line.replace(/^"/, '').startsWith("'")).toBe(true);
  });

  it('leaves negative numbers alone', () => {
    expect(listToCsv(list(['x', -5]))).toContain('x,-5\r\n');
  });

  it('is UTF-8 with a byte-order mark', () => {
    const bytes = csvBytes(list(['½″ × Ω 🎬', 1]));
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(new TextDecoder().decode(bytes)).toContain('½″ × Ω 🎬');
  });
});
