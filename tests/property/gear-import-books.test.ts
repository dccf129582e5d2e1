import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type BookMerge,
  bookOfKinds,
  emptyBook,
  gearBook,
  kindDifferences,
  kindHash,
  kindRecord,
  type MergeChoice,
  mergeBook,
  readBook,
  readKindSheet,
  resolveMerge,
  serialiseBook,
  sheetColumns,
  type UserBook,
  writeKindSheet,
} from '../../src/gear/index.ts';
import type { FixtureKind, Kind } from '../../src/plan/kinds/kinds.ts';
import { recordJson } from '../support/json-arbitrary.ts';

const BOOK = gearBook('europe');

/** A kind of the book, changed or not, under one of a few slugs so that books meet. */
const kind = fc
  .tuple(fc.constantFrom(...BOOK), fc.constantFrom('a', 'b', 'c', 'd'), fc.constantFrom(undefined, 1, 2))
  .map(([k, slug, massKg]): Kind => kindRecord({ ...k, slug, ...(massKg === undefined ? {} : { massKg }) }));
const kinds = fc.array(kind, { maxLength: 6 });
const book = kinds.map((list) => bookOfKinds(list));
const choices = fc.dictionary(
  fc.constantFrom('a', 'b', 'c', 'd'),
  fc.constantFrom<MergeChoice>('mine', 'theirs', 'both'),
);

/** Columns of every family besides lights, each once, behind the family’s. */
const MORE_HEADINGS = [
  'family',
  'name',
  ...new Set(sheetColumns().flatMap((f) => f.columns.map((c) => c.heading))),
].join(',');

const need = <T>(r: { ok: true; value: T } | { ok: false; error: { what: string } }): T => {
  if (!r.ok) throw new Error(r.error.what);
  return r.value;
};
const hashes = (b: UserBook): readonly string[] => b.kinds.map((k) => `${k.slug} ${kindHash(k)}`);
const total = (m: BookMerge): number => m.added.length + m.same.length + m.conflicts.length;

describe('merging books', () => {
  test('every kind from elsewhere is counted once; conflicts differ in words, the same do not', () => {
    fc.assert(
      fc.property(book, kinds, (mine, theirs) => {
        const merge = mergeBook(mine, theirs);
        expect(total(merge)).toBe(theirs.length);
        for (const c of merge.conflicts) {
          expect(c.differences.length).toBeGreaterThan(0);
          expect(kindDifferences(c.mine, c.mine)).toEqual([]);
        }
      }),
    );
  });

  test('a book merged with itself is itself; an empty one takes all', () => {
    fc.assert(
      fc.property(book, (b) => {
        const merge = mergeBook(b, b.kinds);
        expect([merge.added, merge.conflicts]).toEqual([[], []]);
        expect(resolveMerge(b, merge)).toEqual(b);
        expect(resolveMerge(emptyBook, mergeBook(emptyBook, b.kinds))).toEqual(b);
      }),
    );
  });

  test('without conflicts the order of books does not matter', () => {
    fc.assert(
      fc.property(book, book, (a, b) => {
        fc.pre(mergeBook(a, b.kinds).conflicts.length === 0);
        const ab = resolveMerge(a, mergeBook(a, b.kinds));
        const ba = resolveMerge(b, mergeBook(b, a.kinds));
        expect(hashes(ab)).toEqual(hashes(ba));
      }),
    );
  });

  test('nothing of the book is lost unless “theirs” was chosen; what was added is the same the next time', () => {
    fc.assert(
      fc.property(book, book, choices, (a, b, chosen) => {
        const merge = mergeBook(a, b.kinds);
        const after = resolveMerge(a, merge, new Map(Object.entries(chosen)));
        for (const k of a.kinds) {
          const replaced = merge.conflicts.some((c) => c.slug === k.slug) && chosen[k.slug] === 'theirs';
          expect(hashes(after).includes(`${k.slug} ${kindHash(k)}`)).toBe(!replaced);
        }
        const again = mergeBook(after, b.kinds);
        expect(again.added).toEqual([]);
        expect(again.conflicts.map((c) => c.slug).sort()).toEqual(
          merge.conflicts
            .map((c) => c.slug)
            .filter((s) => chosen[s] !== 'theirs')
            .sort(),
        );
      }),
    );
  });
});

describe('books as files', () => {
  test('any kinds of the gear book come back as they were', () => {
    fc.assert(
      fc.property(book, (b) => {
        const text = serialiseBook(b);
        const read = need(readBook(text));
        expect(read.notices).toEqual([]);
        expect(read.book).toEqual(b);
        expect(serialiseBook(read.book)).toBe(text);
      }),
    );
  });

  test('anything that fits the schema of a kind is read or set aside, and writing it again changes nothing', () => {
    const odd = fc.oneof(recordJson('kind'), fc.jsonValue({ maxDepth: 3 }));
    fc.assert(
      fc.property(fc.array(odd, { maxLength: 4 }), (list) => {
        const first = need(readBook(JSON.stringify({ format: 'lampwright-gear', version: 1, kinds: list })));
        expect(first.book.kinds.length + first.book.setAside.length).toBe(list.length);
        const text = serialiseBook(first.book);
        expect(serialiseBook(need(readBook(text)).book)).toBe(text);
      }),
      { numRuns: 150 },
    );
  });

  test('any text is read or refused with what to do', () => {
    const text = fc.oneof(
      fc.string(),
      fc.json(),
      fc.nat({ max: 4000 }).map((n) => serialiseBook(bookOfKinds(BOOK.slice(0, 3))).slice(0, n)),
    );
    fc.assert(
      fc.property(text, (t) => {
        const read = readBook(t);
        if (!read.ok) expect(read.error.todo).toBeTruthy();
      }),
    );
  });
});

const word = fc.oneof(
  fc.stringMatching(/^[A-Za-z0-9 ,"'=+@×ü-]{1,20}$/),
  fc.constantFrom('=1+1', "'=x", '-5', '@a', 'a\r\nb', '"', '""', ',', ';'),
);
const name = word.map((w) => w.trim()).filter((w) => w !== '' && w.length < 100);
const figure = fc.option(
  fc.integer({ min: 1, max: 99_999 }).map((n) => n / 100),
  { nil: undefined },
);
const quote = (s: string): string => `"${s.replaceAll('"', '""')}"`;

describe('lists of gear', () => {
  test('kinds read from a list come back from the list written of them', () => {
    const row = fc.record({
      name,
      also: fc.array(fc.stringMatching(/^[a-z]{1,6}$/), { maxLength: 3 }),
      notes: fc.oneof(fc.constant(''), name),
      watts: figure,
      mass: figure,
      length: figure,
      beam: figure,
      source: fc.constantFrom('', 'led', 'Tungsten', 'DISCHARGE', 'fluorescent'),
      connector: fc.constantFrom('', 'iec-c13', 'nema-5-15', 'iec-32-3'),
      mount: fc.constantFrom('', 'pin-16', 'hung;clamp', '28'),
      modes: fc.array(
        fc.tuple(
          fc.stringMatching(/^[a-z0-9: ]{0,5}[a-z]$/),
          fc.nat({ max: 512 }),
          fc.integer({ min: 1, max: 40 }),
        ),
        { maxLength: 3 },
      ),
    });
    fc.assert(
      fc.property(fc.array(row, { maxLength: 5 }), (rows) => {
        const text = [
          'name,slug,also,notes,watts,mass kg,length mm,beam deg,source,connector,mount,modes',
          ...rows.map((r, i) =>
            [
              quote(r.name),
              `s${i}`,
              quote(r.also.join(';')),
              quote(r.notes),
              r.watts ?? '',
              r.mass ?? '',
              r.length ?? '',
              r.beam ?? '',
              r.source,
              r.connector,
              r.mount,
              quote(r.modes.map(([n, s, p]) => `${n}:${s}/${p}`).join(';')),
            ].join(','),
          ),
        ].join('\r\n');
        const first = need(readKindSheet(text));
        expect(first.rows.flatMap((r) => r.problems)).toEqual([]);
        expect(first.kinds).toHaveLength(rows.length);
        expect(need(readKindSheet(writeKindSheet(first.kinds))).kinds).toEqual(first.kinds);
      }),
    );
  });

  test('any text is read row by row or refused, and never throws', () => {
    const cells = fc.array(
      fc.array(word, { maxLength: 5 }).map((r) => r.join(',')),
      { maxLength: 5 },
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string(),
          cells.map((r) => ['name,watts,modes,mount', ...r].join('\n')),
          fc
            .tuple(fc.constantFrom('stand', 'grip', 'rigging', 'pack', 'cable', 'tree', ''), cells)
            .map(([family, r]) => [MORE_HEADINGS, ...r.map((c) => `${family},${c}`)].join('\n')),
        ),
        (text) => {
          const read = readKindSheet(text);
          if (!read.ok) expect(read.error.todo).toBeTruthy();
          else for (const r of read.value.rows) expect(r.kind === undefined).toBe(r.problems.length > 0);
        },
      ),
    );
  });

  test('every stand, grip, rigging, pack and cable of the gear book can be written as a list and read', () => {
    const of = (k: Kind): boolean => ['stand', 'grip', 'rigging', 'pack', 'cable'].includes(k.family);
    const listed = BOOK.filter((k) => of(k));
    const { rows, kinds: read } = need(readKindSheet(writeKindSheet(listed)));
    expect(rows.flatMap((r) => r.problems)).toEqual([]);
    expect(read.map((k) => [k.family, k.name, k.massKg])).toEqual(
      listed.map((k) => [k.family, k.name, k.massKg]),
    );
    const figures = (k: Kind): unknown =>
      k.family === 'stand'
        ? [k.receives, k.ratedLoadKg, k.heightMinMm, k.heightMaxMm, k.legCircleMm]
        : k.family === 'grip'
          ? [k.what, k.areaM2, k.windShare, k.stands, k.guys]
          : k.family === 'rigging'
            ? [k.what, k.ratedLoadKg, k.reachMm, k.people, k.windLimitMps, k.operator, k.fits, k.receives]
            : k.family === 'pack'
              ? [
                  k.plate,
                  k.chemistry,
                  k.cells,
                  k.voltsV,
                  k.fullV,
                  k.emptyV,
                  k.energyWh,
                  k.continuousA,
                  k.peakA,
                ]
              : k.family === 'cable'
                ? [k.conductor, k.ampacityA, k.plug, k.socket, k.stockLengthsMm, k.parallel, k.construction]
                : undefined;
    expect(read.map(figures)).toEqual(listed.map(figures));
    // What was read once comes back whole.
    expect(need(readKindSheet(writeKindSheet(read))).kinds).toEqual(read);
  });

  test('every fixture of the gear book can be written as a list and read', () => {
    const fixtures = BOOK.flatMap((k) => (k.family === 'fixture' && !k.needsBallast ? [k] : []));
    const modes = (k: FixtureKind) => k.modes.map(({ name: n, slots, parts }) => ({ n, slots, parts }));
    const { rows, kinds: all } = need(readKindSheet(writeKindSheet(fixtures)));
    const read = all.flatMap((k) => (k.family === 'fixture' ? [k] : []));
    expect(rows.flatMap((r) => r.problems)).toEqual([]);
    expect(read.map((k) => k.load?.wattsW)).toEqual(fixtures.map((k) => k.load?.wattsW));
    expect(read.map(modes)).toEqual(fixtures.map(modes));
  });
});
