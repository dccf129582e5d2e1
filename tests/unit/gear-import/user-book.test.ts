import { describe, expect, test } from 'vitest';
import {
  type ImportedKind,
  importGdtf,
  kindDifferences,
  kindRecord,
  mergeBook,
  needKind,
  readBook,
  readKindSheet,
  resolveMerge,
  serialiseBook,
  writeKindSheet,
} from '../../../src/gear/index.ts';
import { bookOfKinds, emptyBook } from '../../../src/gear/user-book.ts';
import type { Result } from '../../../src/kernel/result.ts';
import type { FixtureKind, Kind } from '../../../src/plan/kinds/kinds.ts';
import { CELL_BAR, fixtureFile } from '../../support/fixture-files.ts';

const need = <T>(r: Result<T>): T => {
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};

const panel = needKind('europe', 'led-spot-120w', 'fixture');
const changed = (over: Partial<FixtureKind>): Kind => kindRecord({ ...panel, ...over });
const imported = (): ImportedKind => need(importGdtf(fixtureFile(CELL_BAR), 'bar.gdtf'));

describe('user books', () => {
  test('come back as they were written, whatever the order they were put in', () => {
    const kinds = [panel, imported().kind, needKind('europe', 'led-spot-60w', 'fixture')];
    const text = serialiseBook(bookOfKinds(kinds));
    expect(serialiseBook(bookOfKinds(kinds.toReversed()))).toBe(text);
    const { book, notices, newer } = need(readBook(text));
    expect([notices, newer]).toEqual([[], false]);
    expect(new Map(book.kinds.map((k) => [k.slug, k]))).toEqual(new Map(kinds.map((k) => [k.slug, k])));
    expect(serialiseBook(book)).toBe(text);
  });

  test.each([
    ['no JSON', '{"format"', /not readable as JSON/],
    ['a plan', '{"format":"lampwright-plan","version":1,"records":[]}', /not a gear book/],
    ['a list', '[]', /not a gear book/],
    ['no version', '{"format":"lampwright-gear","kinds":[]}', /version number/],
    ['no kinds', '{"format":"lampwright-gear","version":1}', /list of kinds/],
    [
      'a key that is never there',
      '{"format":"lampwright-gear","version":1,"kinds":[],"x":{"__proto__":1}}',
      /never part/,
    ],
  ])('%s is refused', (_name, text, words) => {
    const read = readBook(text);
    expect(read.ok ? '' : read.error.what).toMatch(words);
  });

  test('kinds that cannot be read are set aside with a reason, and written back', () => {
    const good = JSON.parse(JSON.stringify(panel));
    const odd: [unknown, RegExp][] = [
      [42, /not a kind/],
      [{ ...good, slug: 'a', family: 'dragon' }, /family/],
      [{ ...good, slug: 'b', massKg: -2 }, /mass is -2 kg/],
      [{ ...good, slug: 'c', load: { ...good.load, powerFactor: 1.4 } }, /power factor is 1\.4/],
      [{ ...good, slug: 'd', load: { ...good.load, voltsMinV: 300 } }, /range of volts/],
      [{ ...good, slug: 'e/../f' }, /slug/],
      [{ ...good, slug: 'g', modes: [good.modes[0], good.modes[0]] }, /modes have the same id/],
      [JSON.parse('{"slug":"h","a":{"__proto__":{}}}'), /never part/],
      [{ ...good, massKg: 99 }, /same slug/],
    ];
    const text = JSON.stringify({
      format: 'lampwright-gear',
      version: 1,
      kinds: [good, ...odd.map(([k]) => k)],
      later: { a: 1 },
    });
    const { book, notices } = need(readBook(text));
    expect(book.kinds).toEqual([panel]);
    for (const [i, [, words]] of odd.entries()) expect(notices[i]).toMatch(words);
    const again = need(readBook(serialiseBook(book)));
    expect(again.book.setAside).toEqual(book.setAside);
    expect(again.book.extra).toEqual({ later: { a: 1 } });
  });

  test('a newer book is told as such', () => {
    expect(need(readBook('{"format":"lampwright-gear","version":9,"kinds":[]}')).newer).toBe(true);
  });

  test('a kind changed by hand gets the id of its content', () => {
    const text = serialiseBook(bookOfKinds([panel])).replace(/"massKg":[\d.]+/, '"massKg":7.5');
    const [kind] = need(readBook(text)).book.kinds;
    expect(kind?.massKg).toBe(7.5);
    expect(kind?.id).not.toBe(panel.id);
    expect(kind?.id).toBe(changed({ massKg: 7.5 }).id);
  });
});

describe('merging', () => {
  const heavier = changed({ massKg: 4 });
  const other = needKind('europe', 'led-spot-60w', 'fixture');

  test('parts what is new, the same and in conflict', () => {
    const merge = mergeBook(bookOfKinds([panel]), [other, panel, heavier]);
    expect(merge.added).toEqual([other]);
    expect(merge.same).toEqual([panel]);
    expect(merge.conflicts).toEqual([
      { slug: panel.slug, mine: panel, theirs: heavier, differences: [`mass: ${panel.massKg} kg → 4 kg`] },
    ]);
  });

  test.each([
    ['mine', [panel]],
    ['theirs', [heavier]],
    ['both', [panel, kindRecord({ ...heavier, slug: `${panel.slug}-2` })]],
  ] as const)('a conflict resolved as “%s”', (choice, expected) => {
    const book = bookOfKinds([panel]);
    const after = resolveMerge(book, mergeBook(book, [heavier]), new Map([[panel.slug, choice]]));
    expect(after.kinds).toEqual(expected);
  });

  test('two kinds with one slug from elsewhere are a conflict too', () => {
    const merge = mergeBook(emptyBook, [panel, heavier]);
    expect(merge.conflicts.map((c) => c.mine)).toEqual([panel]);
    expect(resolveMerge(emptyBook, merge).kinds).toEqual([panel]);
  });
});

describe('differences between kinds', () => {
  test('are told field by field, in words and units', () => {
    const [first, ...rest] = panel.modes;
    const load = panel.load ?? undefined;
    if (!first || !load) throw new Error('the kind has no modes or load');
    const b = changed({
      name: 'Another name',
      load: { ...load, wattsW: 150, powerFactor: 0.9 },
      sizeMm: { ...panel.sizeMm, heightMm: 220 },
      modes: [
        { ...first, slots: 7 },
        { id: 'x', name: 'X', slots: 9, parts: 1 },
      ],
      also: ['one', 'two'],
    });
    const lines = kindDifferences(panel, b);
    expect(lines).toContain(`watts: ${load.wattsW} W → 150 W`);
    expect(lines).toContain(`power factor: ${load.powerFactor} → 0.9`);
    expect(lines).toContain('height: none → 220 mm');
    expect(lines).toContain(`mode “${first.id}”, slots: ${first.slots} → 7`);
    expect(lines).toContain('mode “x” added');
    expect(lines).toContain(`mode “${rest[0]?.id}” removed`);
    expect(lines).toContain('name: LED spot 120 W → Another name');
    expect(lines.find((l) => l.startsWith('other names'))).toMatch(/→ one, two$/);
    expect(lines).toHaveLength(7 + rest.length);
  });

  test('there are none between a kind and itself under another origin', () => {
    expect(kindDifferences(panel, { ...panel, id: 'x', origin: { book: 'file', version: '9' } })).toEqual([]);
  });
});

describe('lists from a spreadsheet', () => {
  const HEAD =
    'Name,Watts,Power factor,Volts min,Volts max,Connector,Mass (kg),Length mm,Width mm,Mount,Beam deg,Modes';

  test('a row gives a kind with its figures, the rest assumed and marked', () => {
    const { kinds, rows, notices } = need(
      readKindSheet(
        `${HEAD},Colour\r\n"Soft box, large",300 W,0.95,100,240,iec-c13,6.5,200,600,28;16,110,"8-bit:4;16-bit:8",red\r\nBare row,,,,,,,,,,,,\r\n`,
      ),
    );
    expect(rows.map((r) => r.problems)).toEqual([[], []]);
    expect(notices.join()).toContain('“Colour”');
    expect(kinds[0]).toMatchObject({
      slug: 'own-soft-box-large',
      name: 'Soft box, large',
      massKg: 6.5,
      sizeMm: { lengthMm: 200, widthMm: 600 },
      mount: { fits: ['spigot-28', 'pin-16'] },
      inlets: [{ id: 'in', connector: 'iec-c13', legs: 1, neutral: true }],
      load: { wattsW: 300, powerFactor: 0.95, voltsMinV: 100, voltsMaxV: 240 },
      modes: [
        { id: '8-bit', name: '8-bit', slots: 4, parts: 1 },
        { id: '16-bit', name: '16-bit', slots: 8, parts: 1 },
      ],
      beamDeg: 110,
      origin: { book: 'user' },
    });
    expect((kinds[0] as FixtureKind).load?.unknown).toBeUndefined();
    expect((kinds[1] as FixtureKind).load).toMatchObject({ wattsW: 0, unknown: true });
    expect(kinds[1]?.basis.massKg).toMatch(/^assumed/);
    expect(kinds[0]?.basis.massKg).toBeUndefined();
  });

  test('semicolons with decimal commas, tabs, a byte order mark, pounds and inches are read', () => {
    const semi = need(readKindSheet('\ufeffname;mass kg;modes\nA;3,25;"a:1;b:2"\n'));
    expect(semi.kinds[0]).toMatchObject({ massKg: 3.25, modes: [{ slots: 1 }, { slots: 2 }] });
    const tabs = need(readKindSheet('name\tmass lb\tlength in\nA\t10\t12\n'));
    expect(tabs.kinds[0]).toMatchObject({ massKg: 4.536, sizeMm: { lengthMm: 304.8 } });
  });

  test('each mistake is told with line and column, and the other rows are read', () => {
    const { kinds, rows } = need(
      readKindSheet(
        `${HEAD}\nA,lots,,,,,,,,,,\nB,100,1.2,,,,,,,,,\nC,100,,240,100,,,,,,,\nD,100,,,,wall,,,,,,\nE,100,,,,,-3,,,,,\nF,100,,,,,,,,glue,,\nG,100,,,,,,,,,,8-bit\n,100,,,,,,,,,,\nH,1,,,,,,,,,,\nH,2,,,,,,,,,,\n`,
      ),
    );
    expect(kinds.map((k) => k.name)).toEqual(['H']);
    const told = rows.flatMap((r) => r.problems.map((p) => `${p.where}: ${p.what}`));
    expect(told).toEqual([
      'line 2, column “Watts”: “lots” is no number.',
      'line 3: “B”: its power factor is 1.2.',
      'line 4: “C”: its range of volts is 240 to 100 V.',
      'line 5, column “Connector”: “wall” cannot be read.',
      'line 6, column “Mass (kg)”: -3 is below zero.',
      'line 7, column “Mount”: “glue” cannot be read.',
      'line 8, column “Modes”: “8-bit” cannot be read.',
      'line 9, column “Name”: The row has no name.',
      'line 11: “H” has the same slug as line 10 (own-h).',
    ]);
  });

  test.each([
    ['without a name column', 'Watts\n1\n', /no column “name”/],
    ['with two columns for one thing', 'name,mass kg,mass lb\n', /two columns/],
    ['with an open quote', 'name\n"A\n', /never closed/],
    ['that is empty', '', /no column “name”/],
    ['with too many rows', `name\n${'A\n'.repeat(30_000)}`, /more than 20000 rows/],
  ])('a list %s is refused', (_name, text, words) => {
    const read = readKindSheet(text);
    expect(read.ok ? '' : read.error.what).toMatch(words);
  });

  test('texts that look like formulas are written as texts and read back', () => {
    const { kinds } = need(readKindSheet(`name,slug,notes\n'=1+1,a,'+x\n"say ""hi""\n twice",b,@y\n`));
    expect(kinds.map((k) => k.name)).toEqual(['=1+1', 'say "hi"\n twice']);
    const text = writeKindSheet(kinds);
    expect(text).toContain("'=1+1");
    expect(need(readKindSheet(text)).kinds).toEqual(kinds);
  });

  test('a cell with a hundred thousand modes is refused', () => {
    const { rows } = need(readKindSheet(`name,modes\nA,${'m:1;'.repeat(100_000)}\n`));
    expect(rows[0]?.problems[0]?.where).toBe('line 2, column “modes”');
  });

  test('lines are counted through quoted line breaks', () => {
    const { rows } = need(readKindSheet('name,watts\n"A\nB",1\nC,x\n'));
    expect(rows.map((r) => r.line)).toEqual([2, 4]);
  });
});
