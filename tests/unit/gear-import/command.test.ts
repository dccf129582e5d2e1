import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { lampwright } from '../../support/command.ts';
import { CELL_BAR, fixtureFile } from '../../support/fixture-files.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'gear-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

const path = (name: string): string => join(folder, name);
const file = (name: string, content: string | Uint8Array): string => {
  writeFileSync(path(name), content);
  return path(name);
};

describe('gear import', () => {
  test('shows what a fixture file would bring and keeps nothing', async () => {
    const { status, out, err } = await lampwright('gear', 'import', file('bar.gdtf', fixtureFile(CELL_BAR)));
    expect([status, err]).toEqual([0, '']);
    expect(out).toMatch(/^LED bar, 4 parts, 1000 mm, 135 W \(file-cell-bar-4-\w+\)/);
    expect(out).toMatch(/135 W, power factor 0\.95, 100 to 240 V/);
    expect(out).toMatch(/1000 mm across, 80 mm along, 100 mm high/);
    expect(out).toMatch(/14 slot cells: 14 slots, 4 parts/);
    expect(out).toMatch(/appliance-lock-20 \(assumed\)/);
    expect(out).toContain('Nothing is kept yet');
    expect(readdirSync(folder)).toEqual(['bar.gdtf']);
  });

  test('as JSON gives kind, notices and problems', async () => {
    const { out } = await lampwright(
      'gear',
      'import',
      file('bar.gdtf', fixtureFile(CELL_BAR)),
      '--json',
      '--watts',
      '150',
      '--name',
      'My bar',
    );
    const data = JSON.parse(out);
    expect(data.kinds[0]).toMatchObject({
      name: 'My bar',
      load: { wattsW: 150 },
      modes: [{ slots: 14, parts: 4 }],
    });
    expect(data.problems).toEqual([]);
    expect(data.notices[0]).toMatch(/^Assumed/);
  });

  test('puts kinds into a book, finds them again, and asks where they are in conflict', async () => {
    const bar = file('bar.gdtf', fixtureFile(CELL_BAR));
    const book = path('own.json');
    expect(await lampwright('gear', 'import', bar, '--out', book)).toMatchObject({ status: 0, err: '' });
    const first = readFileSync(book, 'utf8');
    const again = await lampwright('gear', 'import', bar, '--out', book);
    expect(again.out).toContain('0 new, 1 the same, 0 in conflict');
    expect(readFileSync(book, 'utf8')).toBe(first);

    const { out: list } = await lampwright('gear', 'list', 'cell', 'bar', '--book', book);
    const slug = list.split(/\s/, 1)[0] ?? '';
    expect(list).toMatch(/\[own\]/);
    expect(JSON.parse((await lampwright('gear', 'show', slug, '--json', '--book', book)).out)).toMatchObject({
      slug,
    });

    const heavier = file('bar2.gdtf', fixtureFile(CELL_BAR.replace('Value="3.2"', 'Value="4"')));
    const asked = await lampwright('gear', 'import', heavier, '--out', book);
    expect(asked.status).toBe(2);
    expect(asked.err).toMatch(/mass: 3\.2 kg → 4 kg/);
    expect(readFileSync(book, 'utf8')).toBe(first);
    await lampwright('gear', 'import', heavier, '--out', book, '--conflicts', 'both');
    expect(readFileSync(book, 'utf8').match(/"massKg":[\d.]+/g)).toEqual(['"massKg":3.2', '"massKg":4']);
    await lampwright('gear', 'import', heavier, '--out', book, '--conflicts', 'theirs');
    expect(readFileSync(book, 'utf8').match(/"massKg":[\d.]+/g)).toEqual(['"massKg":4', '"massKg":4']);
    // The book itself can be brought into another one.
    const moved = await lampwright('gear', 'import', book, '--out', path('other.json'));
    expect(moved.out).toContain('2 new');
    expect(readFileSync(path('other.json'), 'utf8')).toBe(readFileSync(book, 'utf8'));
  });

  test('reads lists, in Western European text too, and tells the rows it left out', async () => {
    const text = 'name,watts\nGrößer,100\nB,lots\n';
    const { status, out } = await lampwright('gear', 'import', file('l.csv', Buffer.from(text, 'latin1')));
    expect(status).toBe(0);
    expect(out).toContain('Größer (own-gro-er)');
    expect(out).toMatch(/Left out\n {2}“lots” is no number\. At: line 3, column “watts”/);
    expect((await lampwright('gear', 'import', file('m.csv', 'name,watts\nB,lots\n'))).status).toBe(2);
  });

  test('shows what a list of one stand would bring, and puts it into a book', async () => {
    const list =
      'family,name,offers,rated load kg,lowest mm,highest mm,leg circle mm,mass kg\nstand,House stand,28,30,1500,3600,1250,11\n';
    const { status, out } = await lampwright('gear', 'import', file('s.csv', list));
    expect(status).toBe(0);
    expect(out).toMatch(/House stand \(own-house-stand\)\n.*size .*\(assumed\)/);
    expect(out).toMatch(/rated load +30 kg\n/);
    const book = path('stands.json');
    await lampwright('gear', 'import', path('s.csv'), '--out', book);
    const shown = await lampwright('gear', 'show', 'own-house-stand', '--book', book, '--practice', 'europe');
    expect(shown.out).toMatch(/Rated load +30 kg {2}\[/);
  });

  test.each([
    ['a file that is not there', () => path('none.gdtf'), /There is no file/],
    ['a folder', () => folder, /not a file/],
    ['a broken fixture file', () => file('x.gdtf', 'PK nonsense'), /no zip container/],
    ['bytes of no known sort', () => file('x.bin', new Uint8Array(200)), /no zip container/],
    ['another program’s JSON', () => file('x.json', '{"a":1}'), /not a gear book/],
    [
      '100 MB',
      () => {
        const large = file('large.gdtf', 'PK');
        truncateSync(large, 100_000_000);
        return large;
      },
      /too large \(100 MB/,
    ],
  ])('%s is refused in words, with status 2 and nothing on standard output', async (_name, make, words) => {
    const { status, out, err } = await lampwright('gear', 'import', make(), '--out', path('never.json'));
    expect([status, out]).toEqual([2, '']);
    expect(err).toMatch(words);
    expect(existsSync(path('never.json'))).toBe(false);
  });

  test('never writes over the file it reads, and leaves a book it cannot read alone', async () => {
    const book = file('same.json', '{"format":"lampwright-gear","version":1,"kinds":[]}');
    expect((await lampwright('gear', 'import', book, '--out', book)).status).toBe(2);
    const broken = file('broken.json', '{"format":"lampwr');
    const bar = file('bar.gdtf', fixtureFile(CELL_BAR));
    expect((await lampwright('gear', 'import', bar, '--out', broken)).err).toMatch(/not readable as JSON/);
    const newer = file('newer.json', '{"format":"lampwright-gear","version":7,"kinds":[]}');
    expect((await lampwright('gear', 'import', bar, '--out', newer)).err).toMatch(/newer version/);
    expect(readFileSync(broken, 'utf8')).toBe('{"format":"lampwr');
    expect(readFileSync(newer, 'utf8')).toContain('"version":7');
  });

  test('wrong options are told with the usage', async () => {
    const bar = file('bar.gdtf', fixtureFile(CELL_BAR));
    for (const more of [['--watts', 'many'], ['--conflicts', 'ours'], ['--practice', 'mars'], ['extra']])
      expect(await lampwright('gear', 'import', bar, ...more)).toMatchObject({ status: 2, out: '' });
  });
});
